package org.arcsay.report.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.arcsay.model.Side;
import org.arcsay.report.content.AcceptedFinding;
import org.arcsay.report.content.JointRange;
import org.arcsay.report.content.RangeTrend;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.TotalLine;

/** The blocks of the page of one thumb, in order. Immutable but for its typeface: for one thread. */
final class ThumbPage {
    private final Report report;
    private final Side side;
    private final Typeface typeface;
    private final float width;
    private final Remarks remarks;

    ThumbPage(Report report, Side side, Typeface typeface, float width) {
        this.report = report;
        this.side = side;
        this.typeface = typeface;
        this.width = width;
        this.remarks = new Remarks(report, side);
    }

    List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new PageHead(report, side, width));
        blocks.addAll(new SeriesTable(report, side, remarks, typeface, width).blocks());
        blocks.add(Block.gap(3));
        tableKey(blocks);
        remarks(blocks);
        totals(blocks);
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
            blocks.add(Paragraph.hanging(Integer.toString(i + 1), sentences.get(i), Style.NOTE, typeface, width));
        }
    }

    private void totals(List<Block> blocks) {
        report.totals().stream()
                .filter(line -> line.total().side() == side)
                .map(TotalLine::words)
                .map(words -> Paragraph.of(Wording.capital(Wording.degrees(words)) + ".", Style.NOTE, typeface, width))
                .forEach(blocks::add);
    }

    private void asked(List<Block> blocks) {
        List<AcceptedFinding> asked = report.accepted().stream()
                .filter(accepted -> accepted.entry().reading().side() == side)
                .toList();
        if (!asked.isEmpty()) {
            heading(blocks, "Asked about");
            asked.forEach(accepted -> blocks.add(Paragraph.of(question(accepted), Style.NOTE, typeface, width)));
        }
    }

    private static String question(AcceptedFinding accepted) {
        return Wording.capital(accepted.entry().reading().measure().words()) + ": "
                + Wording.degrees(accepted.finding().sentence()) + " " + Wording.capital(accepted.outcome()) + ".";
    }

    private void dials(List<Block> blocks) {
        List<JointRange> ranges =
                report.ranges().stream().filter(range -> range.side() == side).toList();
        if (!ranges.isEmpty()) {
            heading(blocks, "Range now");
            blocks.add(new DialRow(ranges.stream().map(Dial::new).toList(), width));
            blocks.add(new DialRow.Key(side));
            blocks.add(Paragraph.of(Wording.degrees(rangeWords(ranges)), Style.SMALL, typeface, width));
        }
    }

    private static String rangeWords(List<JointRange> ranges) {
        return String.join(
                        ". ",
                        ranges.stream()
                                .map(range -> range.title() + ": " + range.words())
                                .toList()) + ".";
    }

    private void panels(List<Block> blocks) {
        List<RangeTrend> trends = report.rangeTrends().stream()
                .filter(trend -> trend.side() == side && trend.steps().size() > 1)
                .toList();
        if (!trends.isEmpty()) {
            heading(blocks, "Over the visits");
            blocks.add(new PanelRow(trends.stream().map(RangePanel::new).toList(), width));
            String words =
                    String.join(". ", trends.stream().map(RangeTrend::words).toList()) + ".";
            blocks.add(Paragraph.of(Wording.degrees(words), Style.SMALL, typeface, width));
        }
    }

    private void small(List<Block> blocks) {
        heading(blocks, "How to read this, and what it rests on");
        Stream.of(report.legend(), report.basis(), report.cautions(), versions())
                .map(sentences -> String.join(" ", sentences))
                .forEach(text -> blocks.add(Paragraph.of(text, Style.SMALL, typeface, width)));
    }

    private List<String> versions() {
        return report.versions().stream()
                .map(v -> "Grammar " + v.grammar() + ", speech model " + v.model() + ", rules " + v.rules() + ".")
                .toList();
    }

    private static void heading(List<Block> blocks, String title) {
        blocks.add(Block.gap(5));
        blocks.add(new Paragraph(List.of(title), Style.SECTION, 0));
        blocks.add(Block.gap(1));
    }
}
