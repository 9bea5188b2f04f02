package org.arcsay.ui;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javafx.scene.control.Button;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import org.arcsay.model.Dimension;
import org.arcsay.model.Measure;

/** Buttons that write the kind or unit of a value into the text field, for the mouse. JavaFX thread only. */
final class ValueChips extends FlowPane {
    private static final Pattern NUMBER = Pattern.compile("\\d+(?:[.,]\\d+)?");

    private final TextField value;
    private List<String> shown = List.of();

    ValueChips(TextField value) {
        this.value = value;
        getStyleClass().add("chips");
        Parts.show(this, false);
    }

    /** Offers what fits the measure; "#" stands for the number typed so far. */
    void offer(Optional<Measure> measure) {
        List<String> forms =
                measure.map(Measure::dimension).map(ValueChips::forms).orElse(List.of());
        if (!forms.equals(shown)) {
            shown = forms;
            getChildren().setAll(forms.stream().map(this::chip).toList());
            Parts.show(this, !forms.isEmpty());
        }
    }

    private static List<String> forms(Dimension dimension) {
        return switch (dimension) {
            case EXTENSION -> List.of("lacks #", "neutral", "hyper #");
            case GAP -> List.of("# mm", "# cm", "# in", "touches");
            case SPAN -> List.of("# mm", "# cm", "# in");
            case ANGLE, SCORE -> List.of();
        };
    }

    private Button chip(String form) {
        String words = form.replace("#", "\u2026");
        return Parts.button("Write \u201c" + words + "\u201d", "Changes the text of the value", () -> write(form));
    }

    private void write(String form) {
        Matcher number = NUMBER.matcher(value.getText());
        value.setText(form.replace("#", number.find() ? number.group() : "").strip());
        value.requestFocus();
        value.end();
    }
}
