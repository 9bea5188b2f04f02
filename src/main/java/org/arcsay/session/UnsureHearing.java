package org.arcsay.session;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.arcsay.model.Finding;
import org.arcsay.model.Heard;
import org.arcsay.model.Severity;

/**
 * The doubt that comes from hearing: another sentence of the grammar was nearly as likely as the one understood.
 *
 * <p>The recogniser decodes within the grammar alone, so the confidence of a word is the share of all likely sentences that have
 * it there; a word at two thirds has a rival half as likely. A sure word can still be wrong, so sureness proves nothing.
 */
public final class UnsureHearing {
    /** Id of the finding. */
    public static final String RULE = "heard.unsure";

    /** Below this, a reading is asked about; chosen by measurement, see {@code docs/live-capture.md}. */
    static final double SURE = 0.8;

    private UnsureHearing() {}

    /** The finding, unless every word was heard surely; typed words are sure. */
    static Optional<Finding> of(Heard heard) {
        if (heard.confidence() >= SURE) {
            return Optional.empty();
        }
        String share = String.format(Locale.ROOT, "%.0f", heard.confidence() * 100);
        return Optional.of(new Finding(
                RULE,
                Severity.ASK,
                "I may have misheard \u201c" + heard.words() + "\u201d. Is that right?",
                List.of(new Finding.LabelledNumber("least sure word", share, "%"))));
    }
}
