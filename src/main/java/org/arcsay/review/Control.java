package org.arcsay.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.Mode;
import org.arcsay.model.Side;
import org.arcsay.session.Context;
import org.arcsay.session.Question;

/** Everything that voice can steer, for keyboard and mouse. */
public enum Control {
    STAND_BY("stand by", "_Pause listening", Group.LISTEN),
    GO_AHEAD("go ahead", "_Resume listening", Group.LISTEN),
    UNDO("disregard that", "_Undo last reading", Group.LISTEN),
    END("end session", "_End session", Group.LISTEN),
    LEFT("left hand", "Measure _left hand", Group.CHANGE),
    RIGHT("right hand", "Measure ri_ght hand", Group.CHANGE),
    ACTIVE("active", "Measure active motion", Group.CHANGE),
    PASSIVE("passive", "Measure passive motion", Group.CHANGE),
    NEXT("next", "Go to next measure", Group.ASK),
    SAY_AGAIN("say again", "Repeat last answer", Group.ASK),
    READ_BACK("read back", "Read back all readings", Group.ASK),
    WHERE_AM_I("where am i", "Tell current position", Group.ASK),
    MISSING("what is missing", "Tell missing measures", Group.ASK),
    YES("affirm", "Answer _yes", Group.ANSWER),
    NO("negative", "Answer n_o", Group.ANSWER),
    SECOND_TRIAL("second trial", "Keep as second tr_ial", Group.ANSWER),
    REPLACE("correct that", "Replace earlier rea_ding", Group.ANSWER),
    HYPEREXTENSION("hyperextension", "Answer h_yperextension", Group.ANSWER),
    DEFICIT("extension deficit", "Answer extension de_ficit", Group.ANSWER),
    SKIP_PAIN("skip that because of pain", "Skip because of pain", Group.SKIP),
    SKIP_WOUND("skip that because of wound", "Skip because of wound", Group.SKIP),
    SKIP_PIN("skip that because of pin", "Skip because of pin", Group.SKIP),
    SKIP_SPLINT("skip that because of splint", "Skip because of splint", Group.SKIP),
    SKIP_PROTOCOL("skip that because of protocol", "Skip because of protocol", Group.SKIP),
    SKIP_DECLINED("skip that because patient declined", "Skip because patient declined", Group.SKIP);

    private final String words;
    private final String label;
    private final Group group;

    Control(String words, String label, Group group) {
        this.words = words;
        this.label = label;
        this.group = group;
    }

    /** Where a control belongs on the screen. */
    public enum Group {
        LISTEN,
        CHANGE,
        ASK,
        ANSWER,
        SKIP
    }

    /** What would be said. */
    public String words() {
        return words;
    }

    /** What the button says; an underscore stands before the letter that Alt reaches it by. */
    public String label() {
        return label;
    }

    public Group group() {
        return group;
    }

    /** The controls that make sense now, in the order of the screen, without {@link #answers}. */
    public static List<Control> offered(MeasuringState state) {
        if (state.listening() == Listening.ENDED) {
            return List.of();
        }
        if (state.listening() == Listening.PAUSED) {
            return List.of(GO_AHEAD);
        }
        List<Control> offered = new ArrayList<>(List.of(STAND_BY));
        if (state.last().isPresent()) {
            offered.add(UNDO);
        }
        offered.add(END);
        offered.addAll(context(state.context()));
        offered.addAll(List.of(NEXT, SAY_AGAIN, READ_BACK, WHERE_AM_I, MISSING));
        if (state.expected().isPresent()) {
            offered.addAll(List.of(SKIP_PAIN, SKIP_WOUND, SKIP_PIN, SKIP_SPLINT, SKIP_PROTOCOL, SKIP_DECLINED));
        }
        return offered;
    }

    /** The answers that a question can have without a number; a number is typed. */
    public static List<Control> answers(Question question) {
        if (question instanceof Question.IsItRight) {
            return List.of(YES, NO);
        }
        if (question instanceof Question.Again) {
            return List.of(SECOND_TRIAL, REPLACE);
        }
        if (question instanceof Question.WhichHand) {
            return List.of(LEFT, RIGHT);
        }
        return question instanceof Question.WhichKind ? List.of(HYPEREXTENSION, DEFICIT) : List.of();
    }

    private static List<Control> context(Context context) {
        List<Control> changes = new ArrayList<>();
        if (!context.side().equals(Optional.of(Side.LEFT))) {
            changes.add(LEFT);
        }
        if (!context.side().equals(Optional.of(Side.RIGHT))) {
            changes.add(RIGHT);
        }
        changes.add(context.mode() == Mode.ACTIVE ? PASSIVE : ACTIVE);
        return changes;
    }
}
