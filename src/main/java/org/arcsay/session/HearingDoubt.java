package org.arcsay.session;

import java.util.List;
import java.util.Optional;
import org.arcsay.model.Finding;
import org.arcsay.model.Finding.LabelledNumber;
import org.arcsay.model.Measure;
import org.arcsay.model.Reading;
import org.arcsay.model.Severity;
import org.arcsay.model.Value;
import org.arcsay.model.Visit;
import org.arcsay.parser.Command;
import org.arcsay.parser.SpokenReading;
import org.arcsay.parser.Understood;
import org.arcsay.tables.Mark;
import org.arcsay.tables.Provenance;
import org.arcsay.validate.RuleInfo;

/**
 * Says of a reading that the sound could have meant something else: it is held until it is answered.
 *
 * @param resolver completes the values that were possible as well
 */
public record HearingDoubt(Resolver resolver) {
    /** A greater share of the probability for other meanings together is a doubt; see docs/decisions/0018-two-kinds-of-doubt.md. */
    private static final double OTHER_COMMANDS = 0.15;

    private static final double OTHER_READINGS = 0.08;

    /** So is a greater share for sound that is no sentence of the grammar. */
    private static final double OUTSIDE = 0.25;

    /** Below it (dB) a reading must be more certain than in quiet; how it is measured: docs/decisions/0016-readings-in-noise.md. */
    private static final double NOISY = 15;

    private static final double OTHER_READINGS_IN_NOISE = 0.02;

    private static final double OUTSIDE_IN_NOISE = 0.1;

    /** Below it (dB) every reading is asked about. */
    private static final double LOUD = 7;

    /** What the documentation says about it, as about the rules. */
    public static final RuleInfo INFO = new RuleInfo(
            Question.HEARING,
            List.of(Severity.HOLD),
            "The sound could have meant something else: other meanings have together more than " + OTHER_READINGS
                    + " of the probability of all that the recogniser found, or sound that is no sentence more than "
                    + OUTSIDE + "; more than " + OTHER_READINGS_IN_NOISE + " or " + OUTSIDE_IN_NOISE
                    + " where it was spoken less than " + (int) NOISY
                    + " dB above the sound around it; or it was spoken less than "
                    + (int) LOUD + " dB above that.",
            "This doubts the hearing and not the value, so it comes from the recogniser and not from a rule below. The other"
                    + " value is offered where there is one. Commands that would change something are not carried out in that"
                    + " case.",
            new Provenance(Mark.OUR_DEFAULT, "measured, see decisions/0018-two-kinds-of-doubt.md"));

    /** Of a command: whether something else was likely enough. */
    public static boolean isDoubtful(Understood said) {
        return exceeds(said, OTHER_COMMANDS, OUTSIDE);
    }

    /** Of a reading: a value heard in noise may be of somebody else, or of nobody. */
    public static boolean isDoubtfulReading(Understood said) {
        double decibels = said.signalToNoise();
        return decibels < LOUD
                || isUnclear(said)
                || (decibels < NOISY && exceeds(said, OTHER_READINGS_IN_NOISE, OUTSIDE_IN_NOISE));
    }

    private static boolean isUnclear(Understood reading) {
        return exceeds(reading, OTHER_READINGS, OUTSIDE);
    }

    private static boolean exceeds(Understood said, double others, double outside) {
        return said.others() > others || said.outside() > outside;
    }

    Finding finding(Understood said, Reading candidate, Visit visit) {
        Optional<Value> other = said.rivals().stream()
                .flatMap(rival -> value(rival, candidate, visit).stream())
                .filter(value -> !value.equals(candidate.value()))
                .findFirst();
        String sentence = candidate.words()
                + other.map(value -> " was not clear and could be " + value.words() + "; say which of the two it is.")
                        .orElse((isUnclear(said) ? " was not heard clearly;" : " was spoken into noise;")
                                + " say yes if it is right, or say it again.");
        List<LabelledNumber> numbers = other.stream()
                .map(value -> new LabelledNumber("could be", value.words(), ""))
                .toList();
        return new Finding(Question.HEARING, Severity.HOLD, sentence, numbers, other);
    }

    /** Of a reading after which something was said at once that makes no sentence with it. */
    Finding endUnclear(Understood said, Reading candidate, Visit visit) {
        Finding finding = finding(said, candidate, visit);
        if (finding.alternative().isPresent()) {
            return finding;
        }
        String sentence = candidate.words()
                + " was followed at once by something that was not understood; say yes if it is right, or say it again.";
        return new Finding(Question.HEARING, Severity.HOLD, sentence, List.of(), Optional.empty());
    }

    private Optional<Value> value(Command rival, Reading candidate, Visit visit) {
        try {
            return spoken(rival, candidate).flatMap(reading -> resolver.value(reading, visit));
        } catch (IllegalArgumentException | ArithmeticException e) {
            return Optional.empty();
        }
    }

    private static Optional<SpokenReading> spoken(Command rival, Reading candidate) {
        Measure measure = candidate.measure();
        if (rival instanceof Command.Dictated dictated) {
            return dictated.readings().stream()
                    .filter(reading -> reading.measure().equals(measure))
                    .findFirst();
        }
        Optional<Command.Number> number = rival instanceof Command.Number alone
                ? Optional.of(alone)
                : rival instanceof Command.No no ? no.instead() : Optional.empty();
        return number.map(said -> new SpokenReading(measure, SpokenValues.inPlaceOf(candidate, said), false));
    }
}
