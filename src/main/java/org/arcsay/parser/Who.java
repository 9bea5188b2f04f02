package org.arcsay.parser;

import java.util.Optional;
import org.arcsay.model.Mode;
import org.arcsay.model.Side;

/**
 * Hand and mode as far as they were said.
 *
 * @param side the hand, if said
 * @param mode active or passive, if said
 */
public record Who(Optional<Side> side, Optional<Mode> mode) {
    public static final Who UNSAID = new Who(Optional.empty(), Optional.empty());
}
