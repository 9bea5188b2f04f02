package org.arcsay.session;

import java.util.List;
import org.arcsay.model.Finding;
import org.arcsay.model.Reading;
import org.arcsay.model.Visit;

/** Judges a reading against the visit so far, and against earlier visits where there are any. */
@FunctionalInterface
public interface Judge {
    /**
     * @param candidate the reading as it would be stored
     * @param visit the visit without the entry that the reading would replace
     * @return what is unusual, most severe first; empty when nothing is
     */
    List<Finding> judge(Reading candidate, Visit visit);
}
