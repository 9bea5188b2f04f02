package org.arcsay.ui;

import org.arcsay.review.HomeModel;

/** Opens the first screen from a program that knows nothing of windows. */
public final class HomeApp {
    private HomeApp() {}

    /**
     * Shows the first screen and returns when the last window was closed. To be called once, from the main thread.
     *
     * @param look theme, size of text, and what can be said
     * @throws NoScreenException when no window can be opened here
     */
    public static void run(HomeModel model, Look look) throws NoScreenException {
        WindowHost.run(stage -> HomeWindow.show(stage, model, look));
    }
}
