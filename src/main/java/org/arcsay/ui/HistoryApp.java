package org.arcsay.ui;

import org.arcsay.report.history.HistoryModel;

/** Opens the history from a program that knows nothing of windows. */
public final class HistoryApp {
    private HistoryApp() {}

    /**
     * Shows the history and returns when it was closed. To be called once, from the main thread; from then on the model belongs
     * to the window's thread.
     *
     * @throws NoScreenException when no window can be opened here
     */
    public static void run(HistoryModel model) throws NoScreenException {
        WindowHost.run(stage -> HistoryWindow.show(stage, model));
    }
}
