package org.arcsay.ui;

import org.arcsay.review.DemoVisit;
import org.arcsay.review.ListJournal;
import org.arcsay.review.MemoryDrafts;
import org.arcsay.review.ReviewModel;

/** The review window with the invented visit. */
abstract class ReviewWindowTest extends HeadlessWindow {
    protected final ListJournal journal = new ListJournal();
    protected ReviewModel model;

    @Override
    protected void show() {
        model = ReviewModel.open(
                DemoVisit.visit(),
                DemoVisit.events(),
                journal,
                DemoVisit::judge,
                DemoVisit.context(),
                new MemoryDrafts());
        ReviewWindow.show(stage, model);
    }
}
