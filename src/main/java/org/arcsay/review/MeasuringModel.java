package org.arcsay.review;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;

/** Safe for any thread: what the measuring screen shows, fed by the capture, and what the screen asks for. */
public final class MeasuringModel {
    private final MeasuringActions actions;
    private final List<Consumer<MeasuringState>> listeners = new CopyOnWriteArrayList<>();
    private MeasuringState state;

    public MeasuringModel(MeasuringState start, MeasuringActions actions) {
        this.state = start;
        this.actions = actions;
    }

    public synchronized MeasuringState state() {
        return state;
    }

    /**
     * Goes on to the next state; listeners hear of it in the thread that calls.
     *
     * @param change from the present state to the next
     */
    public synchronized void update(UnaryOperator<MeasuringState> change) {
        state = change.apply(state);
        listeners.forEach(listener -> listener.accept(state));
    }

    /** Calls back after every change; a listener must be quick and must not update. */
    public void onChange(Consumer<MeasuringState> listener) {
        listeners.add(listener);
    }

    /** Does what saying these words would do. Blank text does nothing. */
    public void say(String words) {
        if (!words.isBlank()) {
            actions.say(words.strip());
        }
    }

    /** Opens the review of this visit, once the session has ended. */
    public ReviewModel review() throws HomeException {
        return actions.review();
    }

    /** What is always to be shown, or empty. */
    public String remark() {
        return actions.remark();
    }

    public void closed() {
        actions.closed();
    }
}
