package org.arcsay.parser;

import java.util.Optional;
import org.arcsay.model.Mode;
import org.arcsay.model.Placement;
import org.arcsay.model.Side;

/**
 * Hand, mode and placement of the instrument as far as they were said.
 *
 * @param side the hand, if said
 * @param mode active or passive, if said
 * @param placement where the goniometer lies, if said
 */
public record Who(Optional<Side> side, Optional<Mode> mode, Optional<Placement> placement) {
    public static final Who UNSAID = new Who(Optional.empty(), Optional.empty());

    public Who(Optional<Side> side, Optional<Mode> mode) {
        this(side, mode, Optional.empty());
    }
}
