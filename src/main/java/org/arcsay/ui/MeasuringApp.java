package org.arcsay.ui;

import org.arcsay.review.MeasuringModel;

/** Opens the measuring screen from a program that knows nothing of windows. */
public final class MeasuringApp {
    private MeasuringApp() {}

    /**
     * Shows the screen and returns when it was closed. To be called once, from the main thread; the capture runs beside it in
     * threads of its own.
     *
     * @param look theme, size of text, and what can be said
     * @throws NoScreenException when no window can be opened here
     */
    public static void run(MeasuringModel model, Look look) throws NoScreenException {
        WindowHost.run(stage -> MeasuringWindow.show(stage, model, look));
    }
}
