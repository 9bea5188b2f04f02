package org.arcsay.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeoutException;
import javafx.scene.Node;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Labeled;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.testfx.api.FxRobot;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;

/** A window on a screen in memory. */
@Tag("window")
abstract class HeadlessWindow extends FxRobot {
    protected Stage stage;

    @BeforeAll
    static void useAScreenInMemory() {
        System.setProperty("testfx.robot", "glass");
        System.setProperty("testfx.headless", "true");
        System.setProperty("glass.platform", "Monocle");
        System.setProperty("monocle.platform", "Headless");
        System.setProperty("prism.order", "sw");
        System.setProperty("prism.text", "t2k");
    }

    @BeforeEach
    void open() throws TimeoutException {
        stage = FxToolkit.registerPrimaryStage();
        interact(this::show);
        WaitForAsyncUtils.waitForFxEvents();
    }

    /** Shows the window under test in the stage; called by the JavaFX thread. */
    protected abstract void show();

    @AfterEach
    void close() throws TimeoutException {
        interact(() -> stage.setOnCloseRequest(null));
        FxToolkit.cleanupStages();
    }

    protected void everyControlHasARoleANameAndRoomAtEverySize() {
        assertEquals(List.of(), SceneCheck.nameless(stage.getScene()));
        for (int size = 0; size < 5; size++) {
            assertEquals(List.of(), SceneCheck.tooSmall(stage.getScene()));
            assertEquals(List.of(), SceneCheck.cutOff(stage.getScene()));
            push(KeyCode.CONTROL, KeyCode.PLUS);
        }
    }

    protected void everyControlIsReachedByTabAndShowsThatItHasTheFocus() {
        Set<Node> reached = new HashSet<>();
        for (int step = 0; step < 60; step++) {
            push(KeyCode.TAB);
            Node focused = drawnFocus();
            assertTrue(SceneCheck.showsFocus(focused), () -> "no frame around " + focused);
            reached.add(focused);
        }
        assertEquals(List.of(), SceneCheck.notAmong(stage.getScene(), reached));
    }

    /** The control that has the focus, styled as it is drawn next: a busy machine may not have drawn it yet. */
    private Node drawnFocus() {
        return WaitForAsyncUtils.waitForAsyncFx(10_000, () -> {
            stage.getScene().getRoot().applyCss();
            return focused();
        });
    }

    protected Node focused() {
        return stage.getScene().getFocusOwner();
    }

    /** Clicks the button of that name. */
    protected void press(String name) {
        clickOn(button(name));
    }

    protected ButtonBase button(String name) {
        return lookup((Node node) ->
                        node instanceof ButtonBase && name.equals(node.getAccessibleText()) && onScreen(node))
                .query();
    }

    protected boolean shows(String text) {
        return lookup((Node node) -> node instanceof Labeled labeled
                        && labeled.getText() != null
                        && labeled.getText().contains(text)
                        && onScreen(node))
                .tryQuery()
                .isPresent();
    }

    private static boolean onScreen(Node node) {
        return node.isVisible() && (node.getParent() == null || onScreen(node.getParent()));
    }
}
