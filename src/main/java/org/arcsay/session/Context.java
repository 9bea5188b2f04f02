package org.arcsay.session;

import java.util.Optional;
import org.arcsay.model.Mode;
import org.arcsay.model.Placement;
import org.arcsay.model.Side;
import org.arcsay.parser.Who;

/**
 * Hand, mode and placement that hold until changed.
 *
 * @param side empty until it is said for the first time
 * @param mode active unless said otherwise
 * @param placement of the goniometer for angles; unstated unless said
 */
public record Context(Optional<Side> side, Mode mode, Placement placement) {
    public static final Context START = new Context(Optional.empty(), Mode.ACTIVE);

    public Context(Optional<Side> side, Mode mode) {
        this(side, mode, Placement.UNSTATED);
    }

    /** This context with whatever was said on top. */
    public Context with(Who who) {
        return new Context(
                who.side().or(() -> side),
                who.mode().orElse(mode),
                who.placement().orElse(placement));
    }

    public Context with(Side other) {
        return new Context(Optional.of(other), mode, placement);
    }
}
