package org.arcsay.ui;

import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import org.arcsay.model.Side;
import org.arcsay.report.compare.CompareLine;
import org.arcsay.report.compare.CompareLine.Verdicted;

/** The series of one hand beside the other hand, the last visit and the norm. JavaFX thread only. */
final class CompareGrid extends GridPane {
    private static final double[] SHARES = {17, 13, 13, 17, 13, 15, 12};

    CompareGrid(List<CompareLine> lines, Side side) {
        getStyleClass().add("compare");
        for (double share : SHARES) {
            ColumnConstraints column = new ColumnConstraints();
            column.setPercentWidth(share);
            getColumnConstraints().add(column);
        }
        addRow(
                0,
                head("Motion"),
                head(side.word() + ", now"),
                head(side.other().word() + ", now"),
                head(side.word() + " beside " + side.other().word()),
                head(side.word() + ", last time"),
                head("Change since"),
                head("Norm"));
        for (int i = 0; i < lines.size(); i++) {
            CompareLine line = lines.get(i);
            addRow(
                    i + 1,
                    cell(line.measure()),
                    strong(line.now()),
                    cell(line.other()),
                    verdict(line.beside()),
                    cell(line.last()),
                    verdict(line.since()),
                    cell(line.norm()));
        }
    }

    private static Node head(String text) {
        return Parts.label(Character.toUpperCase(text.charAt(0)) + text.substring(1), "heading");
    }

    private static Label cell(String text) {
        return Parts.label(text);
    }

    private static Node strong(String text) {
        return Parts.label(text, "compare-now");
    }

    /** Bold with a square when it is beyond measurement error; the words say it too. */
    private static Node verdict(Verdicted difference) {
        if (!difference.counts()) {
            return cell(difference.words());
        }
        HBox marked = new HBox(5, Parts.mark("square"), Parts.label(difference.words(), "compare-counts"));
        marked.setAlignment(Pos.CENTER_LEFT);
        return marked;
    }
}
