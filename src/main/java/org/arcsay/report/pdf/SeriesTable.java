package org.arcsay.report.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.arcsay.analysis.Difference;
import org.arcsay.analysis.Norm;
import org.arcsay.analysis.Total;
import org.arcsay.analysis.TotalDifference;
import org.arcsay.model.Mode;
import org.arcsay.model.Side;
import org.arcsay.report.content.Brief;
import org.arcsay.report.content.Cell;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.Row;
import org.arcsay.report.content.TotalLine;
import org.arcsay.report.pdf.TableRow.Text;

/** The series of one hand as a table. Immutable, so any thread may use it. */
final class SeriesTable {
    private static final float[] SHARES = {0.175f, 0.13f, 0.13f, 0.14f, 0.13f, 0.115f, 0.15f, 0.03f};

    private final Report report;
    private final Side side;
    private final Remarks remarks;
    private final Typeface typeface;
    private final float[] columns;
    private final float padding;
    private final Block heading;

    SeriesTable(Report report, Side side, Remarks remarks, Typeface typeface, float width, float padding) {
        this.report = report;
        this.side = side;
        this.remarks = remarks;
        this.typeface = typeface;
        this.columns = new float[SHARES.length + 1];
        for (int i = 0; i < SHARES.length; i++) {
            columns[i + 1] = columns[i] + SHARES[i] * width;
        }
        this.padding = padding;
        this.heading = heading();
    }

    List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(heading);
        for (Mode mode : Mode.values()) {
            List<Row> rows = report.rows().stream()
                    .filter(row -> row.mode() == mode && !row.cell(side).isEmpty())
                    .toList();
            if (!rows.isEmpty()) {
                blocks.add(row(Style.CELL_BOLD, false, List.of(Text.of(Wording.capital(mode.word()) + " motion"))));
                rows.forEach(row -> blocks.add(row(row)));
                totals(mode).forEach(line -> blocks.add(total(line)));
            }
        }
        return blocks;
    }

    private Block heading() {
        return TableRow.of(columns, titles(), Style.COLUMN, false, padding, Optional.empty(), typeface);
    }

    private List<Text> titles() {
        return List.of(
                Text.of("Motion"),
                Text.of(Wording.capital(side.word()) + ", now"),
                Text.of(Wording.capital(side.other().word()) + ", now"),
                Text.of(Wording.capital(side.word()) + " beside " + side.other().word()),
                Text.of(Wording.capital(side.word()) + ", last time"),
                Text.of("Change since"),
                Text.of("Norm, mean (range)"),
                Text.of("See"));
    }

    private Block row(Row row) {
        Cell cell = row.cell(side);
        Optional<Difference> other = cell.comparison().otherHand();
        Optional<Difference> last = cell.comparison().last();
        return row(
                Style.CELL,
                false,
                List.of(
                        Text.of(row.measure().words()),
                        Text.of(Wording.cell(cell)),
                        Text.of(Wording.cell(row.cell(side.other()))),
                        new Text(Wording.difference(other), Wording.beyond(other.map(Difference::verdict))),
                        Text.of(last.map(then -> Brief.value(then.then().value()))
                                .orElse("")),
                        new Text(Wording.difference(last), Wording.beyond(last.map(Difference::verdict))),
                        Text.of(row.norm().map(Norm::brief).orElse("").replace("beyond neutral", "beyond")),
                        Text.of(remarks.numbers(row))));
    }

    private List<TotalLine> totals(Mode mode) {
        return report.totals().stream()
                .filter(line -> line.total().side() == side && line.total().mode() == mode)
                .filter(line -> line.total().degrees().isPresent())
                .toList();
    }

    private Block total(TotalLine line) {
        Total total = line.total();
        Optional<TotalDifference> last = line.last().map(TotalLine.Since::difference);
        return row(
                Style.CELL,
                true,
                List.of(
                        Text.of(total.abbreviation() + ", " + total.motion().title()),
                        Text.of(degrees(total)),
                        Text.of(line.otherHand().map(d -> degrees(d.then())).orElse("")),
                        new Text(Wording.total(line.otherHand()), beyond(line.otherHand())),
                        Text.of(last.map(d -> degrees(d.then())).orElse("")),
                        new Text(Wording.total(last), beyond(last)),
                        Text.of("full motion " + total.motion().reference().toPlainString()),
                        Text.of("")));
    }

    private static boolean beyond(Optional<TotalDifference> difference) {
        return Wording.beyond(difference.map(TotalDifference::verdict));
    }

    private static String degrees(Total total) {
        return total.degrees().map(d -> d.toPlainString() + "°").orElse("");
    }

    private Block row(Style style, boolean shaded, List<Text> texts) {
        return TableRow.of(columns, texts, style, shaded, padding, Optional.of(heading), typeface);
    }
}
