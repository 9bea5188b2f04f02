package org.arcsay.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Pane;
import org.arcsay.report.ReportWriters;
import org.arcsay.report.compare.CompareModel;
import org.arcsay.report.compare.DemoRecords;
import org.arcsay.report.content.DemoCase;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CompareWindowTest extends HeadlessWindow {
    @TempDir
    private Path folder;

    private String proposed = "";

    @Override
    protected void show() {
        CompareModel model = new CompareModel(new DemoRecords(), DemoCase::source, ReportWriters.standard());
        CompareWindow.show(stage, model, Look.standard(), name -> {
            proposed = name;
            return Optional.of(folder.resolve(name));
        });
    }

    @Test
    void everyControlHasARoleANameAndRoom() {
        assertEquals(List.of(), SceneCheck.nameless(stage.getScene()));
        assertEquals(List.of(), SceneCheck.tooSmall(stage.getScene()));
        assertEquals(List.of(), SceneCheck.cutOff(stage.getScene()));
        for (int step = 0; step < 4; step++) {
            push(KeyCode.CONTROL, KeyCode.PLUS);
        }
        assertEquals(List.of(), SceneCheck.tooSmall(stage.getScene()));
        assertEquals(List.of(), SceneCheck.cutOff(stage.getScene()));
    }

    /** Four joints and three courses, each with a text for those who do not see it and the same in words beside it. */
    @Test
    void everyPictureHasItsText() {
        List<Node> pictures = pictures();
        assertEquals(7, pictures.size());
        for (Node picture : pictures) {
            assertEquals(AccessibleRole.IMAGE_VIEW, picture.getAccessibleRole());
            assertTrue(picture.getAccessibleText().matches("(?s).*\\d+ degrees.*"), picture.getAccessibleText());
        }
        assertTrue(shows("flexion 58\u00B0, left 84\u00B0; extension lacks 5\u00B0, left hyperextends 55\u00B0"));
        assertTrue(shows("IP, active range: 2026-01-12 lacks 35\u00B0, to 40\u00B0"));
    }

    @Test
    void visitsAreChosenByKeyboardAlone() {
        assertTrue(shows("This visit is amended."));
        push(KeyCode.DOWN);
        assertTrue(shows("This visit is final."));
        assertTrue(shows("lacks 15\u00B0"));
        assertFalse(shows("not tested: pain"), "only the last visit has that");
        push(KeyCode.DOWN);
        push(KeyCode.DOWN);
        assertEquals(4, pictures().size(), "the first visit has no course");
    }

    @Test
    void theOtherHandIsShownWhenItWasMeasured() {
        clickOn(button("left hand"));
        assertTrue(shows("demo-07, left hand"));
        assertTrue(shows("60 straighter, beyond error"));
    }

    @Test
    void theReportIsExportedFromHere() throws Exception {
        push(KeyCode.CONTROL, KeyCode.E);
        assertEquals("arcsay-demo-07-visit-4.pdf", proposed);
        assertTrue(shows("The report is in " + folder.resolve(proposed)));
        assertTrue(Files.size(folder.resolve(proposed)) > 10_000);
    }

    private List<Node> pictures() {
        return SceneCheck.nodes(stage.getScene().getRoot())
                .filter(node -> node instanceof Pane && node.getAccessibleRole() == AccessibleRole.IMAGE_VIEW)
                .toList();
    }

    @Test
    void everyControlIsReachedByKeyboard() {
        everyControlIsReachedByTabAndShowsThatItHasTheFocus();
    }
}
