package org.arcsay.report.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.arcsay.model.Side;
import org.arcsay.report.content.AcceptedFinding;
import org.arcsay.report.content.Brief;
import org.arcsay.report.content.RangeTrend;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.Section;

/** The blocks of the page of one thumb, in order. Immutable but for its typeface: for one thread. */
final class ThumbPage {
    private static final String PANEL_KEY =
            "Each bar reaches from the straightest to the most bent position. The number at its foot is what lacks to neutral"
                    + " (above the 0 line) or goes beyond neutral (below it).";

    private final Report report;
    private final Side side;
    private final Typeface typeface;
    private final float width;
    private final Density density;
    private final boolean longer;
    private final Remarks remarks;

    /**
     * @param longer whether what table and drawings show anyway stands in sentences too
     */
    ThumbPage(Report report, Side side, Typeface typeface, float width, Density density, boolean longer) {
        this.report = report;
        this.side = side;
        this.typeface = typeface;
        this.width = width;
        this.density = density;
        this.longer = longer;
        this.remarks = new Remarks(report, side);
    }

    List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new PageHead(report, side, width));
        blocks.addAll(new SeriesTable(report, side, remarks, typeface, width, density.pad()).blocks());
        blocks.add(Block.gap(3));
        tableKey(blocks);
        remarks(blocks);
        totals(blocks);
        sections(blocks);
        asked(blocks);
        dials(blocks);
        panels(blocks);
        small(blocks);
        return blocks;
    }

    private void tableKey(List<Block> blocks) {
        String error =
                "Square and bold type: beyond measurement error; plain: within it; question mark: error not known."
                        + " Beyond: past neutral. (prel.): preliminary, not confirmed.";
        blocks.add(Paragraph.of(error, Style.SMALL, typeface, width));
    }

    private void remarks(List<Block> blocks) {
        List<String> sentences = remarks.sentences();
        for (int i = 0; i < sentences.size(); i++) {
            if (i == 0) {
                blocks.add(Block.gap(4));
            }
            blocks.addAll(Paragraph.hanging(Integer.toString(i + 1), sentences.get(i), Style.NOTE, typeface, width));
        }
    }

    private void totals(List<Block> blocks) {
        List<String> sentences = report.totals().stream()
                .filter(line -> line.total().side() == side)
                .map(line -> Wording.capital(Brief.degrees(Stream.concat(
                                        Stream.of(line.words()), (longer ? line.longer() : List.<String>of()).stream())
                                .collect(Collectors.joining("; "))))
                        + ".")
                .toList();
        if (!sentences.isEmpty()) {
            blocks.add(Block.gap(3));
            sentences.forEach(words -> blocks.add(Paragraph.of(words, Style.NOTE, typeface, width)));
        }
    }

    private void sections(List<Block> blocks) {
        report.sections().stream()
                .filter(section -> longer || Section.ESSENTIAL.contains(section.title()))
                .filter(section -> !section.briefly(side).isEmpty())
                .forEach(section -> blocks.add(small(
                        section.briefTitle() + ": " + Brief.degrees(String.join(". ", section.briefly(side))) + ".")));
    }

    private void asked(List<Block> blocks) {
        List<Block> asked = report.accepted().stream()
                .filter(accepted -> accepted.entry().reading().side() == side)
                .<Block>map(accepted -> Paragraph.of(question(accepted), Style.NOTE, typeface, width))
                .toList();
        section(blocks, "Asked about", asked);
    }

    private static String question(AcceptedFinding accepted) {
        return Wording.capital(accepted.entry().reading().measure().words()) + ": "
                + Brief.degrees(accepted.finding().sentence()) + " " + Wording.capital(accepted.outcome()) + ".";
    }

    /** The table above says the same in words. */
    private void dials(List<Block> blocks) {
        List<Dial> dials = report.ranges().stream()
                .filter(range -> range.side() == side)
                .map(Dial::new)
                .toList();
        if (!dials.isEmpty()) {
            DialRow row = new DialRow(dials, width, density.dials());
            section(blocks, "Range now", List.of(new Stack(List.of(row, new DialRow.Key(side)))));
        }
    }

    private void panels(List<Block> blocks) {
        List<RangeTrend> trends = report.rangeTrends().stream()
                .filter(trend -> trend.side() == side && trend.steps().size() > 1)
                .toList();
        if (!trends.isEmpty()) {
            Block row = new PanelRow(trends.stream().map(RangePanel::new).toList(), width, density.panels());
            String words =
                    String.join(". ", trends.stream().map(RangeTrend::words).toList()) + ".";
            section(
                    blocks,
                    "Over the visits",
                    List.of(new Stack(List.of(row, small(PANEL_KEY))), small(Brief.degrees(words))));
        }
    }

    private void small(List<Block> blocks) {
        List<Block> paragraphs = Stream.of(report.legend(), report.basis(), report.cautions(), versions())
                .map(sentences -> small(String.join(" ", sentences)))
                .toList();
        section(blocks, "How to read this, and what it rests on", paragraphs);
    }

    private Block small(String text) {
        return Paragraph.of(text, Style.SMALL, typeface, width);
    }

    private List<String> versions() {
        return report.versions().stream()
                .map(v -> "Grammar " + v.grammar() + ", speech model " + v.model() + ", rules " + v.rules() + ".")
                .toList();
    }

    /** The heading never stands alone at the end of a page. */
    private void section(List<Block> blocks, String title, List<Block> content) {
        if (content.isEmpty()) {
            return;
        }
        Block heading = new Paragraph(List.of(title), Style.SECTION, 0);
        blocks.add(new Stack(List.of(Block.gap(density.gap()), heading, Block.gap(1), content.get(0))));
        blocks.addAll(content.subList(1, content.size()));
    }
}
