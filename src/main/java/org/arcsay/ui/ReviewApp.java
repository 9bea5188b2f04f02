package org.arcsay.ui;

import org.arcsay.review.ReviewModel;

/** Opens the review from a program that knows nothing of windows. */
public final class ReviewApp {
    private ReviewApp() {}

    /**
     * Shows the review and returns when it was closed. To be called once, from the main thread; from then on the model belongs
     * to the window's thread.
     *
     * @param look theme, size of text, and what can be said
     * @throws NoScreenException when no window can be opened here
     */
    public static void run(ReviewModel model, Look look) throws NoScreenException {
        WindowHost.run(stage -> ReviewWindow.show(stage, model, look));
    }
}
