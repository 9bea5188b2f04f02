package org.arcsay.ui;

import org.arcsay.report.compare.CompareModel;

/** Opens the comparison from a program that knows nothing of windows. */
public final class CompareApp {
    private CompareApp() {}

    /**
     * Shows the comparison and returns when it was closed. To be called once, from the main thread; from then on the model belongs
     * to the window's thread.
     *
     * @param look theme, size of text, and what can be said
     * @throws NoScreenException when no window can be opened here
     */
    public static void run(CompareModel model, Look look) throws NoScreenException {
        WindowHost.run(stage -> CompareWindow.show(stage, model, look));
    }
}
