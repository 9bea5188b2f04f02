package org.arcsay.session;

import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.arcsay.model.Finding;
import org.arcsay.model.Finding.LabelledNumber;
import org.arcsay.model.Measure;
import org.arcsay.model.Reading;
import org.arcsay.model.Severity;
import org.arcsay.model.Value;
import org.arcsay.model.Visit;
import org.arcsay.parser.Command;
import org.arcsay.parser.Command.ControlWord;
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
    /** What is outside weighs so much beside other meanings. */
    private static final double WEIGHT_OF_OUTSIDE = 0.25;

    /** The greatest weighed share that is no doubt in quiet. */
    private static final double ALLOWED_IN_QUIET = 0.15;

    /** A value is seldom changed by the ways of hearing outside: docs/decisions/0019-heard-twice.md. */
    private static final Limits READINGS = new Limits(0.0016, 0.4);

    /** A command may be so much less sure in noise than a reading: it changes no value, is announced, and can be said again. */
    private static final int TIMES_FOR_COMMANDS = 3;

    private static final Limits COMMANDS = new Limits(TIMES_FOR_COMMANDS * READINGS.ofPower(), 0.25);

    /**
     * The greatest shares of the probability for something else that are no doubt.
     *
     * @param ofPower of the ratio between the powers of the speech and of the sound around it, for the weighed share in noise
     * @param outside for sound that is no sentence of the grammar
     */
    private record Limits(double ofPower, double outside) {
        double allowed(double decibels) {
            return Math.min(ALLOWED_IN_QUIET, ofPower * Math.pow(10, decibels / 10));
        }

        double doubt(Understood said, double decibels) {
            double weighed = said.others() + WEIGHT_OF_OUTSIDE * said.outside();
            return Math.max(weighed / allowed(decibels), said.outside() / outside);
        }
    }

    /** They tell something, or end a pause, and change no reading. */
    private static final Set<ControlWord> HARMLESS = EnumSet.of(
            ControlWord.SAY_AGAIN,
            ControlWord.READ_BACK,
            ControlWord.WHAT_IS_MISSING,
            ControlWord.WHERE_AM_I,
            ControlWord.NEXT,
            ControlWord.STAND_BY,
            ControlWord.GO_AHEAD);

    /** What the documentation says about it, as about the rules. */
    public static final RuleInfo INFO = new RuleInfo(
            Question.HEARING,
            List.of(Severity.HOLD),
            "The sound could have meant something else: other meanings, and " + WEIGHT_OF_OUTSIDE
                    + " times what is no sentence (what sounds the same counts once), have together more than "
                    + ALLOWED_IN_QUIET
                    + " of the probability of all that the recogniser found, or what is no sentence has more than "
                    + READINGS.outside() + ". In noise less is enough: " + READINGS.ofPower()
                    + " times the ratio between the powers of the speech and of the sound around it, which is "
                    + atDecibels(20) + " at 20 dB, " + atDecibels(15) + " at 15 dB and " + atDecibels(5)
                    + " at 5 dB. A command may have " + TIMES_FOR_COMMANDS
                    + " times as much in noise, but what is no sentence at most " + COMMANDS.outside() + ".",
            "This doubts the hearing and not the value, so it comes from the recogniser and not from a rule below. The other"
                    + " value is offered where there is one. Commands that would change something are not carried out in that"
                    + " case.",
            new Provenance(Mark.OUR_DEFAULT, "measured, see decisions/0019-heard-twice.md"));

    private static String atDecibels(int decibels) {
        return String.format(Locale.ROOT, "%.2g", READINGS.allowed(decibels));
    }

    /** Whether what was understood is done at once: it is clear enough, or nothing is lost if it was not meant. */
    public static boolean isActedOn(Understood said) {
        return isHarmless(said.command()) || !isDoubtful(said);
    }

    /** Whether something else was likely enough. A value heard in noise may also be of somebody else, or of nobody. */
    static boolean isDoubtful(Understood said) {
        return doubt(said) > 1;
    }

    static boolean givesReading(Command command) {
        return command instanceof Command.Dictated
                || command instanceof Command.Number
                || command instanceof Command.Arc
                || (command instanceof Command.No no && no.instead().isPresent());
    }

    private static boolean isHarmless(Command command) {
        return command instanceof Command.Rejected
                || (command instanceof Command.Control control && HARMLESS.contains(control.word()));
    }

    /** How many times what is allowed speaks for something else than this reading or command; more than 1 is a doubt. */
    public static double doubt(Understood said) {
        return doubt(said, said.signalToNoise());
    }

    private static double doubt(Understood said, double decibels) {
        return (givesReading(said.command()) ? READINGS : COMMANDS).doubt(said, decibels);
    }

    private static boolean isUnclear(Understood reading) {
        return doubt(reading, Double.POSITIVE_INFINITY) > 1;
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
