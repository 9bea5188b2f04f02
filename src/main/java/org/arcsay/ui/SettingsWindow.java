package org.arcsay.ui;

import java.util.List;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.VBox;
import javafx.stage.Stage;
import org.arcsay.review.SettingField;
import org.arcsay.review.SettingField.Choice;
import org.arcsay.review.SettingsModel;

/** The settings file as a form. JavaFX thread only. */
final class SettingsWindow {
    private static final WindowFrame.Size SIZE = new WindowFrame.Size(1000, 800, 560, 480);

    private final Stage stage;
    private final SettingsModel model;
    private final Label status = Parts.label("", "settings-status");

    private SettingsWindow(Stage stage, SettingsModel model, Look look) {
        this.stage = stage;
        this.model = model;
        LookButtons lookButtons = new LookButtons(look);
        Scene scene =
                WindowFrame.fill(stage, "Settings \u2013 Arcsay", layout(lookButtons), SIZE, lookButtons, () -> {});
        WindowFrame.onControl(scene, KeyCode.S, this::save);
        WindowFrame.onKey(scene, KeyCode.ESCAPE, stage::close);
    }

    static void show(Stage stage, SettingsModel model, Look look) {
        SettingsWindow window = new SettingsWindow(stage, model, look);
        window.tell(model.message().isEmpty() ? "Ctrl+S saves. Esc closes without saving." : model.message());
        stage.show();
    }

    private BorderPane layout(LookButtons lookButtons) {
        VBox form = new VBox(6);
        form.getStyleClass().add("home");
        model.fields().stream().map(this::field).forEach(form.getChildren()::add);
        form.getChildren().addAll(Parts.heading("Where things lie"), Parts.label(model.places()));
        VBox head = WindowFrame.head(
                Parts.label("Settings", "patient"),
                Parts.label(
                        "They hold from the next visit on. The file may be edited by hand too; its comments stay.",
                        "quiet"));
        Button save = Parts.strongButton("_Save settings", "Control S", this::save);
        Button close = Parts.button("_Close settings", "Escape. What was not saved is dropped", stage::close);
        return WindowFrame.page(
                head,
                WindowFrame.scrolling(form, "Settings"),
                WindowFrame.foot(status, WindowFrame.buttons(List.of(save, close), lookButtons.buttons())));
    }

    private VBox field(SettingField field) {
        Control control = field.choices().isEmpty() ? text(field) : choice(field);
        control.setAccessibleHelp(field.meaning());
        Label name = Parts.label(field.title(), "field-name");
        name.setLabelFor(control);
        VBox box = new VBox(name, control, Parts.label(field.meaning(), "quiet"));
        box.getStyleClass().add("settings-field");
        return box;
    }

    private Control text(SettingField field) {
        TextField text = Parts.textField(field.title(), "not set");
        text.setText(field.value());
        text.textProperty().addListener((seen, before, now) -> change(field, now));
        return text;
    }

    private Control choice(SettingField field) {
        ComboBox<Choice> box = Parts.choice(field.title(), Choice::words);
        box.getItems().setAll(field.choices());
        field.choices().stream()
                .filter(choice -> choice.value().equals(field.value()))
                .findFirst()
                .ifPresent(box::setValue);
        box.valueProperty().addListener((seen, before, now) -> change(field, now.value()));
        return box;
    }

    private void change(SettingField field, String value) {
        model.change(field.key(), value);
        tell(model.isChanged() ? "Changed and not saved yet. Ctrl+S saves." : "");
    }

    private void save() {
        Node focused = stage.getScene().getFocusOwner();
        boolean saved = model.save();
        Parts.style(status, "problem", !saved);
        status.setText(model.message());
        if (focused != null) {
            focused.requestFocus();
        }
    }

    private void tell(String message) {
        Parts.style(status, "problem", false);
        status.setText(message);
    }
}
