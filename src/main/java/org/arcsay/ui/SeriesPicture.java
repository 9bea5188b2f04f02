package org.arcsay.ui;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.arcsay.analysis.Completeness;
import org.arcsay.analysis.Completeness.Item;
import org.arcsay.model.Entry;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Slot;
import org.arcsay.model.Value;
import org.arcsay.model.Value.Angle;
import org.arcsay.model.Value.Extension;
import org.arcsay.model.Value.NotTested;

/** The series of one hand as a table of shapes: what is done, held, left out, missing and next. JavaFX thread only. */
final class SeriesPicture extends VBox {
    private final Label title = Parts.label("", "title");
    private final Label count = Parts.label("", "quiet");
    private final GridPane grid = new GridPane();
    private Optional<Node> next = Optional.empty();

    SeriesPicture() {
        getStyleClass().add("series");
        grid.getStyleClass().add("series-grid");
        ColumnConstraints words = new ColumnConstraints();
        words.setHgrow(Priority.ALWAYS);
        words.setMinWidth(90);
        grid.getColumnConstraints().setAll(words, new ColumnConstraints(), new ColumnConstraints());
        getChildren().addAll(title, count, grid);
    }

    /** Where the next measure is shown, to bring it into view. */
    Optional<Node> next() {
        return next;
    }

    void show(Optional<Completeness> series, Optional<Slot> expected) {
        grid.getChildren().clear();
        next = Optional.empty();
        if (series.isEmpty()) {
            title.setText("Which hand?");
            Parts.say(count, "Say \u201cright hand\u201d or \u201cleft hand\u201d; then the series is shown here.");
            return;
        }
        title.setText(series.get().plan().title() + ", " + series.get().side().word() + " hand");
        Parts.say(count, counted(series.get()));
        fill(series.get(), expected);
    }

    private static String counted(Completeness series) {
        long open = series.items().stream().filter(Item::open).count();
        return series.done().size() + " measured, " + (open == 0 ? "nothing missing" : open + " still open");
    }

    private void fill(Completeness series, Optional<Slot> expected) {
        Map<Measure, Integer> rows = new LinkedHashMap<>();
        for (Mode mode : Mode.values()) {
            if (series.items().stream().anyMatch(item -> item.slot().mode() == mode)) {
                grid.add(Parts.label(mode.word(), "series-head"), column(mode), 0);
            }
        }
        for (Item item : series.items()) {
            Measure measure = item.slot().measure();
            int row = rows.computeIfAbsent(measure, unseen -> {
                int below = rows.size() + 1;
                grid.add(Parts.label(measure.words()), 0, below);
                return below;
            });
            boolean isNext = expected.equals(Optional.of(item.slot()));
            Label cell = cell(item, isNext);
            grid.add(cell, column(item.slot().mode()), row);
            if (isNext) {
                next = Optional.of(cell);
            }
        }
    }

    private static int column(Mode mode) {
        return mode == Mode.ACTIVE ? 1 : 2;
    }

    private static Label cell(Item item, boolean isNext) {
        String shape = isNext ? "next" : shape(item);
        Label cell = Parts.label(isNext ? "next" : words(item), "series-cell", "state-" + shape);
        cell.setMinWidth(USE_PREF_SIZE);
        cell.setGraphic(Parts.mark(shape));
        cell.setAccessibleText(item.words() + (isNext ? ", next" : ""));
        return cell;
    }

    private static String shape(Item item) {
        return switch (item.state()) {
            case DONE -> item.doubtful() ? "doubt" : "sure";
            case HELD -> "held";
            case NO_NUMBER, REASON_MISSING -> "doubt";
            case NOT_TESTED -> "rejected";
            case MISSING -> "open";
        };
    }

    private static String words(Item item) {
        return item.entry()
                .map(Entry::reading)
                .map(reading -> brief(reading.value()))
                .orElseGet(() -> item.step().optional() ? "optional" : "missing");
    }

    private static String brief(Value value) {
        if (value instanceof Angle angle) {
            return angle.degrees().toPlainString() + "\u00b0";
        }
        if (value instanceof Extension extension) {
            return extension.words().replace(" degrees", "\u00b0").replace("reaches neutral, ", "");
        }
        return value instanceof NotTested ? "not tested" : value.words();
    }
}
