package org.arcsay.ui;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import javafx.scene.image.ImageView;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.arcsay.review.DemoVisit;
import org.arcsay.review.HomeModel;
import org.arcsay.review.HomeScript;
import org.junit.jupiter.api.Test;

/** The report is reached from the review by a key. */
class ReportWindowTest extends HeadlessWindow {
    @Override
    protected void show() {
        ReviewWindow.show(
                stage,
                new HomeModel(new HomeScript(DemoVisit.visit())).review(7).orElseThrow(),
                Look.standard());
    }

    private Stage report() {
        return (Stage) listTargetWindows().stream()
                .filter(window ->
                        window instanceof Stage other && other.getTitle().startsWith("Report"))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aKeyShowsThePagesAndEscapeLeadsBack() {
        push(KeyCode.CONTROL, KeyCode.R);
        Stage opened = report();
        assertTrue(lookup((ImageView page) -> "Page 1 of 1".equals(page.getAccessibleText()))
                .tryQuery()
                .isPresent());
        push(KeyCode.ESCAPE);
        assertFalse(opened.isShowing());
        assertTrue(stage.isShowing());
    }

    @Test
    void thePhrasesAreShownFromTheReviewToo() {
        push(KeyCode.F3);
        assertTrue(listWindows().stream()
                .anyMatch(window ->
                        window instanceof Stage other && other.getTitle().startsWith("What can be said")));
    }
}
