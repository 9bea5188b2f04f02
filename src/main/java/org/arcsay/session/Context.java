package org.arcsay.session;

import java.util.Optional;
import org.arcsay.model.Mode;
import org.arcsay.model.Side;
import org.arcsay.parser.Who;

/**
 * Hand and mode that hold until changed.
 *
 * @param side empty until it is said for the first time
 * @param mode active unless said otherwise
 */
public record Context(Optional<Side> side, Mode mode) {
    public static final Context START = new Context(Optional.empty(), Mode.ACTIVE);

    /** This context with whatever was said on top. */
    public Context with(Who who) {
        return new Context(who.side().isPresent() ? who.side() : side, who.mode().orElse(mode));
    }

    public Context with(Side other) {
        return new Context(Optional.of(other), mode);
    }
}
