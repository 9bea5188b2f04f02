package org.arcsay.ui;

import java.nio.file.Path;
import java.util.List;
import org.arcsay.review.DemoVisit;
import org.arcsay.review.Draft;
import org.arcsay.review.FileDrafts;
import org.arcsay.review.ListJournal;
import org.arcsay.review.ReviewModel;

/** Shows the review of the invented visit, to look at: {@code ReviewDemo light|dark percent [reading|form|unsaved]}. */
public final class ReviewDemo {
    private ReviewDemo() {}

    public static void main(String[] args) throws NoScreenException {
        ListJournal journal = new ListJournal();
        ReviewModel model = ReviewModel.open(
                DemoVisit.visit(),
                DemoVisit.events(),
                journal,
                DemoVisit::judge,
                DemoVisit.context(),
                new FileDrafts(Path.of(System.getProperty("java.io.tmpdir"), "arcsay-demo")));
        for (int number : List.of(DemoVisit.MP_FLEXION_ENTRY, DemoVisit.MP_EXTENSION_ENTRY)) {
            model.markSeen(number);
            model.confirm(number);
        }
        Look look = new Look(args[0].equals("dark"), Integer.parseInt(args[1]));
        WindowHost.run(stage -> {
            ReviewWindow window = ReviewWindow.show(stage, model, look);
            switch (args[2]) {
                case "form" -> window.editSelected();
                case "missed" -> window.edit(Draft.empty());
                case "reject" -> window.askToReject();
                case "unsaved" -> {
                    journal.failAfter(0);
                    window.finish(model.save(model.draftOf(DemoVisit.DOUBTFUL_ENTRY)
                            .withValue("50")
                            .withWhy("misheard")));
                }
                default -> {}
            }
        });
    }
}
