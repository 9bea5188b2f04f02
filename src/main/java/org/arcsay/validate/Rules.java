package org.arcsay.validate;

import java.util.List;

/** The list of all rules. */
final class Rules {
    private Rules() {}

    static List<Rule> all(Limits limits) {
        return List.of(
                new HighValue(limits),
                new FlexionBelowDeficit(),
                new DeficitAndHyperextension(),
                new Repeat(),
                new MixedUnits(),
                new SoundAlikeInVisit());
    }
}
