package org.arcsay.validate;

import java.util.List;
import org.arcsay.model.Finding;

/** One thing that is looked at in every reading. A rule is stateless and only ever answers with findings. */
public interface Rule {
    RuleInfo info();

    /** What this rule has to say about the reading; usually nothing. */
    List<Finding> judge(Case judged);
}
