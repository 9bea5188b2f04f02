package org.arcsay.session;

import java.util.List;
import org.arcsay.model.Mode;
import org.arcsay.model.Side;
import org.arcsay.model.Slot;
import org.arcsay.model.Visit;

/** What a plan still wants from a visit. */
@FunctionalInterface
public interface Series {
    /** Slots of this hand and mode that have neither a reading nor a reason, in the order of the plan. */
    List<Slot> missing(Visit visit, Side side, Mode mode);
}
