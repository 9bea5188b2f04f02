package org.arcsay.ui;

import org.arcsay.review.Listening;
import org.arcsay.review.MeasuringModel;
import org.arcsay.review.MeasuringScript;
import org.arcsay.review.MeasuringState.Loudness;

/** Shows the measuring screen, to look at: {@code MeasuringDemo light|dark percent doubt|saved|paused|signal|lost|typing|start|refused}. */
public final class MeasuringDemo {
    private MeasuringDemo() {}

    public static void main(String[] args) throws NoScreenException {
        MeasuringScript script = new MeasuringScript();
        MeasuringModel model = script.model();
        if (!args[2].equals("start")) {
            script.untilDoubt();
        }
        switch (args[2]) {
            case "saved" -> {
                script.say("negative eighty");
                script.say("opposition ring thirty eight millimeters");
            }
            case "paused" -> {
                script.say("affirm");
                script.say("stand by");
            }
            case "refused" -> {
                script.say("affirm");
                script.say("flexion of the weather");
            }
            case "signal" ->
                model.update(state -> state.with(
                        Listening.NO_SIGNAL,
                        "The microphone delivers no signal. Check that it is switched on and not muted."));
            case "lost" ->
                model.update(state -> state.with(
                        Listening.DEVICE_LOST,
                        "The microphone is gone. Plug it in again; listening goes on by itself."));
            case "typing" ->
                model.update(state -> state.with(
                        Listening.TYPING,
                        "No microphone was found. Plug one in and try again; entries can also be typed."));
            default -> {}
        }
        model.update(state -> state.with(new Loudness(0.62, false)));
        Look look = new Look(args[0].equals("dark"), Integer.parseInt(args[1]));
        WindowHost.run(stage -> MeasuringWindow.show(stage, model, look));
    }
}
