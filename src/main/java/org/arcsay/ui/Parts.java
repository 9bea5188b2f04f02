package org.arcsay.ui;

import java.util.function.Function;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.RadioButton;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;

/** Makes controls that carry their name for a screen reader and a style class of ours. */
final class Parts {
    private Parts() {}

    /**
     * @param text verb and object, with an underscore before the letter that Alt reaches it by
     * @param help what it does and which key does the same
     */
    static Button button(String text, String help, Runnable action) {
        Button button = new Button(text);
        button.setAccessibleText(text.replace("_", ""));
        button.setAccessibleHelp(help);
        button.setOnAction(event -> action.run());
        button.setMinWidth(Region.USE_PREF_SIZE);
        return button;
    }

    static Button strongButton(String text, String help, Runnable action) {
        Button button = button(text, help, action);
        button.getStyleClass().add("strong");
        return button;
    }

    static Label label(String text, String... styles) {
        Label label = new Label(text);
        label.getStyleClass().addAll(styles);
        label.setWrapText(true);
        label.setMinHeight(Region.USE_PREF_SIZE);
        return label;
    }

    static Label heading(String text) {
        return label(text, "heading");
    }

    static TextField textField(String name, String prompt) {
        TextField field = new TextField();
        field.setPromptText(prompt);
        field.setMinHeight(Region.USE_PREF_SIZE);
        field.setAccessibleText(name);
        return field;
    }

    static RadioButton radio(String text, String name, ToggleGroup group) {
        RadioButton radio = new RadioButton(text);
        radio.setToggleGroup(group);
        radio.setAccessibleText(name);
        return radio;
    }

    static <T> ComboBox<T> choice(String name, Function<T, String> words) {
        ComboBox<T> box = new ComboBox<>();
        box.setAccessibleText(name);
        box.setConverter(new StringConverter<>() {
            @Override
            public String toString(T item) {
                return item == null ? "" : words.apply(item);
            }

            @Override
            public T fromString(String text) {
                throw new UnsupportedOperationException("this box is not editable");
            }
        });
        box.setMaxWidth(Double.MAX_VALUE);
        box.setMinHeight(Region.USE_PREF_SIZE);
        return box;
    }

    /** A control under its name, with room for what is wrong below it. */
    static VBox field(String name, Node control, Label problem) {
        Label label = label(name, "field-name");
        label.setLabelFor(control);
        show(problem, !problem.getText().isEmpty());
        VBox box = new VBox(label, control, problem);
        box.getStyleClass().add("field");
        return box;
    }

    /** Shows a text, or takes no room when there is none. */
    static void say(Labeled label, String text) {
        label.setText(text);
        show(label, !text.isEmpty());
    }

    static void show(Node node, boolean shown) {
        node.setVisible(shown);
        node.setManaged(shown);
    }

    /** Puts a style class on or takes it off. */
    static void style(Node node, String style, boolean on) {
        node.getStyleClass().remove(style);
        if (on) {
            node.getStyleClass().add(style);
        }
    }

    /** A shape that stands for a state; the word always stands beside it. */
    static Region mark(String shape) {
        Region mark = new Region();
        mark.getStyleClass().addAll("mark", "mark-" + shape);
        mark.setAccessibleRole(AccessibleRole.IMAGE_VIEW);
        mark.setAccessibleText(shape);
        return mark;
    }
}
