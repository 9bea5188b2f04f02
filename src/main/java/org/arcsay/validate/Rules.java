package org.arcsay.validate;

import java.util.List;

/** The list of all rules, in the order in which their findings of one severity are shown and asked. */
final class Rules {
    private Rules() {}

    static List<Rule> all(RuleTables tables) {
        Thresholds thresholds = tables.thresholds();
        ErrorLimits error = new ErrorLimits(tables.error());
        HandPair pairs = new HandPair(tables.sides());
        Rule signFlip = new SignFlip(error);
        Rule soundAlike = new SoundAlikeFits(error);
        Rule otherHand = new FitsOtherHand(error, thresholds.number("jump-factor"));
        return List.of(
                new ProtocolPassive(),
                new ProtocolResisted(),
                new ProtocolRange(),
                new HighValue(tables.limits()),
                new FlexionBelowDeficit(),
                new DeficitAndHyperextension(),
                new ActiveBeyondPassive(thresholds),
                signFlip,
                soundAlike,
                otherHand,
                new Jump(error, thresholds, List.of(signFlip, soundAlike, otherHand)),
                new UninvolvedWorse(pairs),
                new MixedUnits(),
                new Tenfold(thresholds),
                new ScoreAndGap(),
                new SoundAlikeInVisit(),
                new Repeat(),
                new NoNumber(),
                new ReasonMissing(),
                new SideDifference(pairs),
                new NearerTarget(thresholds),
                new LateralAdvice(thresholds),
                new SoundAlikeUnchecked());
    }
}
