package org.arcsay.parser;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Measure;
import org.arcsay.model.Remark;
import org.arcsay.model.Value.NotTestedReason;

/** What an utterance means. */
public sealed interface Command {

    /**
     * One or more readings.
     *
     * @param readings at least one, in the order said
     * @param correction whether it replaces the last reading
     */
    record Dictated(Who who, List<SpokenReading> readings, boolean correction) implements Command {
        public Dictated {
            readings = List.copyOf(readings);
        }
    }

    /**
     * A measure without a value; the number may follow after a pause.
     *
     * @param kind direction of an extension, if said
     */
    record Named(Who who, Measure measure, Optional<SpokenKind> kind, boolean motionImplied) implements Command {}

    /**
     * A value without a measure.
     *
     * @param unit unit of length, if said
     * @param kind direction of an extension, if said
     * @param correction whether it replaces the value of the last reading
     */
    record Number(BigDecimal number, Optional<LengthUnit> unit, Optional<SpokenKind> kind, boolean correction)
            implements Command {}

    /** An arc such as "ten to fifty" without a joint. */
    record Arc(BigDecimal from, BigDecimal to, boolean correction) implements Command {}

    /** Hand or mode of the last reading were wrong. */
    record CorrectContext(Who who) implements Command {}

    /** Hand, mode or placement from now on. */
    record SetContext(Who who) implements Command {}

    /** From now on the other hand. */
    record OtherHand() implements Command {}

    record AddRemark(Remark remark) implements Command {}

    /** The expected measure is left out, with its reason. */
    record Skip(NotTestedReason reason) implements Command {}

    /** The answer "yes". */
    record Yes() implements Command {}

    /** The answer "no", with the right number if said. */
    record No(Optional<Number> instead) implements Command {}

    /** The answer that names a direction of extension. */
    record KindNamed(SpokenKind kind) implements Command {}

    /** A word of control that carries nothing else. */
    record Control(ControlWord word) implements Command {}

    enum ControlWord {
        BEGIN,
        END,
        UNDO,
        SAY_AGAIN,
        READ_BACK,
        WHAT_IS_MISSING,
        WHERE_AM_I,
        NEXT,
        STAND_BY,
        GO_AHEAD,
        /** Keep both readings of a repeated measure. */
        SECOND_TRIAL,
        /** The repeated reading replaces the earlier one. */
        REPLACE
    }

    /**
     * Not understood, and so nothing is stored.
     *
     * @param reason why
     * @param detail a sentence for a person
     */
    record Rejected(Reason reason, String detail) implements Command {}

    enum Reason {
        /** Sound that is no known word was among the words. */
        UNKNOWN_WORDS,
        /** Known words in an order that means nothing. */
        NOT_A_PHRASE,
        /** Two meanings for the same words. */
        TWO_MEANINGS,
        /** A number that cannot exist, such as 180.5 degrees. */
        IMPOSSIBLE_NUMBER
    }
}
