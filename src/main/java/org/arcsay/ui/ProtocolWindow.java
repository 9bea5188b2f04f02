package org.arcsay.ui;

import java.util.List;
import java.util.Optional;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextArea;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.VBox;
import javafx.stage.Stage;
import org.arcsay.model.Side;
import org.arcsay.review.ProtocolModel;

/** What a patient's treatment protocol permits, as a form. JavaFX thread only. */
final class ProtocolWindow {
    private static final WindowFrame.Size SIZE = new WindowFrame.Size(900, 720, 560, 480);

    private static final String FORMS =
            "One limit a line, such as: IP flexion at most 40. Or: passive IP flexion at most 30. IP extension lacks at least"
                    + " 20. MP extension not beyond neutral. MP extension hyperextends at most 10.";

    private final Stage stage;
    private final ProtocolModel model;
    private final ComboBox<Optional<Side>> involved =
            Parts.choice("Hand under treatment", side -> side.map(hand -> hand == Side.LEFT ? "Left" : "Right")
                    .orElse("Not said: limits hold for both hands"));
    private final ComboBox<Boolean> passive = permission("Passive motion");
    private final ComboBox<Boolean> resisted = permission("Resisted motion");
    private final TextArea ranges = new TextArea();
    private final TextField by = Parts.textField("Role or initials", "such as AK");
    private final Label status = Parts.label("", "settings-status");

    private ProtocolWindow(Stage stage, ProtocolModel model, Look look) {
        this.stage = stage;
        this.model = model;
        LookButtons lookButtons = new LookButtons(look);
        Scene scene = WindowFrame.fill(
                stage, "Treatment protocol \u2013 Arcsay", layout(lookButtons), SIZE, lookButtons, () -> {});
        WindowFrame.onControl(scene, KeyCode.S, this::save);
        WindowFrame.onKey(scene, KeyCode.ESCAPE, stage::close);
    }

    static void show(Stage stage, ProtocolModel model, Look look) {
        ProtocolWindow window = new ProtocolWindow(stage, model, look);
        window.fill();
        window.status.setText("Now: " + model.protocol().words() + ".");
        stage.show();
    }

    private BorderPane layout(LookButtons lookButtons) {
        ranges.setAccessibleText("Range limits, one a line");
        ranges.setAccessibleHelp(FORMS);
        ranges.setPrefRowCount(5);
        ranges.addEventFilter(KeyEvent.KEY_PRESSED, this::leaveRanges);
        involved.getItems().setAll(Optional.empty(), Optional.of(Side.LEFT), Optional.of(Side.RIGHT));
        VBox form = new VBox(
                12,
                Parts.field("Hand under treatment", involved, Parts.label("")),
                Parts.field("Passive motion", passive, Parts.label("")),
                Parts.field("Resisted motion", resisted, Parts.label("")),
                Parts.field("Range limits of that hand", ranges, Parts.label("")),
                Parts.label(FORMS, "quiet"),
                Parts.field("Set by", by, Parts.label("")));
        form.getStyleClass().add("home");
        VBox head = WindowFrame.head(
                Parts.label("Treatment protocol of " + model.patient(), "patient"),
                Parts.label(
                        "What is measured against it is asked about, never refused. It holds for visits that begin from now"
                                + " on, and every change is kept.",
                        "quiet"));
        List<Button> buttons = List.of(
                Parts.strongButton("_Save protocol", "Control S", this::save),
                Parts.button("_Close protocol", "Escape. What was not saved is dropped", stage::close));
        return WindowFrame.page(
                head,
                WindowFrame.scrolling(form, "Treatment protocol"),
                WindowFrame.foot(status, WindowFrame.buttons(buttons, lookButtons.buttons())));
    }

    private static ComboBox<Boolean> permission(String name) {
        ComboBox<Boolean> box = Parts.choice(name, permitted -> permitted ? "Permitted" : "Not permitted");
        box.getItems().setAll(true, false);
        return box;
    }

    /** Tab leaves the field, as it leaves every other one. */
    private void leaveRanges(KeyEvent event) {
        if (event.getCode() == KeyCode.TAB) {
            (event.isShiftDown() ? resisted : by).requestFocus();
            event.consume();
        }
    }

    private void fill() {
        involved.setValue(model.protocol().involvedSide());
        passive.setValue(model.protocol().passivePermitted());
        resisted.setValue(model.protocol().resistedPermitted());
        ranges.setText(model.ranges());
    }

    private void save() {
        boolean kept = model.save(
                involved.getValue(), passive.getValue(), resisted.getValue(), ranges.getText(), by.getText());
        Parts.style(status, "problem", !kept);
        status.setText(model.message());
        if (kept) {
            fill();
        }
    }
}
