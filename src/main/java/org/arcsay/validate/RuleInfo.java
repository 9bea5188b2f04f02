package org.arcsay.validate;

import java.util.List;
import org.arcsay.model.Severity;
import org.arcsay.tables.Provenance;

/**
 * What the documentation says about a rule.
 *
 * @param id stable id, such as "limit.high"
 * @param severities the severities its findings can have, mildest first
 * @param looksAt one sentence: when it speaks
 * @param why one sentence: the reason for asking
 * @param basis where its numbers or its reason come from
 */
public record RuleInfo(String id, List<Severity> severities, String looksAt, String why, Provenance basis) {
    public RuleInfo {
        severities = List.copyOf(severities);
    }
}
