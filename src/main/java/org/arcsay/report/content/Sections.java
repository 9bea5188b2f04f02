package org.arcsay.report.content;

import java.math.RoundingMode;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.arcsay.analysis.Amount;
import org.arcsay.analysis.Arc;
import org.arcsay.analysis.Comparison;
import org.arcsay.analysis.Completeness;
import org.arcsay.analysis.Difference;
import org.arcsay.analysis.ErrorFigure;
import org.arcsay.analysis.ExtensionLoss;
import org.arcsay.analysis.GapBand;
import org.arcsay.analysis.Notation;
import org.arcsay.analysis.Opposition;
import org.arcsay.analysis.Rater;
import org.arcsay.analysis.SeriesPlan;
import org.arcsay.analysis.SeriesPlans;
import org.arcsay.analysis.Total;
import org.arcsay.analysis.TotalDifference;
import org.arcsay.analysis.Totals;
import org.arcsay.model.Mode;
import org.arcsay.model.PatientProtocol;
import org.arcsay.model.Side;
import org.arcsay.model.Site;
import org.arcsay.model.Sites;
import org.arcsay.model.Slot;
import org.arcsay.model.Visit;
import org.arcsay.report.content.Section.Fact;

/** What a report says beyond the table of the series: protocol, completeness, opposition, arcs, trials and earlier visits. */
final class Sections {
    private static final List<Side> SIDES = List.of(Side.RIGHT, Side.LEFT);

    private final ReportSource source;
    private final VisitRecord record;
    private final Visit visit;
    private final List<Row> rows;

    Sections(ReportSource source, VisitRecord record, List<Row> rows) {
        this.source = source;
        this.record = record;
        this.visit = record.visit();
        this.rows = rows;
    }

    List<Section> all() {
        return Stream.of(
                        new Section(Section.PROTOCOL, protocol()),
                        new Section(Section.SERIES, ofHands(this::series)),
                        new Section(Section.OPPOSITION, ofHands(this::opposition)),
                        new Section("Joints, " + source.customs().notation().title(), ofHands(this::joints)),
                        new Section("Several trials", ofHands(this::trials)),
                        new Section(
                                Section.OTHER_HAND,
                                "Beyond measurement error beside the other hand at an earlier visit",
                                ofHands(this::otherHandBefore)),
                        new Section(
                                Section.LONGER,
                                "Beyond measurement error since the first visit and from the best so far",
                                ofHands(this::longer)))
                .filter(section -> !section.facts().isEmpty())
                .toList();
    }

    private static List<Fact> ofHands(Function<Side, Stream<Words>> facts) {
        return SIDES.stream()
                .flatMap(side ->
                        facts.apply(side).map(words -> new Fact(Optional.of(side), words.full(), words.brief())))
                .toList();
    }

    private record Words(String full, String brief) {
        static Words same(String words) {
            return new Words(words, words);
        }
    }

    private List<Fact> protocol() {
        return record.protocol().statements().stream()
                .map(statement -> new Fact(Optional.empty(), statement, statement))
                .toList();
    }

    /** The series of a hand that was measured at all. */
    private Stream<Words> series(Side side) {
        return SeriesPlans.standard().named(record.plan()).filter(plan -> measured(side)).stream()
                .map(plan -> Completeness.of(permitted(plan, record.protocol()), visit, side))
                .map(Sections::words);
    }

    private static SeriesPlan permitted(SeriesPlan plan, PatientProtocol protocol) {
        return protocol.passivePermitted() ? plan : plan.without(Mode.PASSIVE);
    }

    private boolean measured(Side side) {
        return visit.counting().stream().anyMatch(entry -> entry.reading().side() == side);
    }

    private static Words words(Completeness series) {
        List<String> parts = new ArrayList<>();
        parts.add(series.plan().title() + ": " + series.settled() + " of " + series.required() + " settled");
        list("missing", series.open().stream().filter(item -> item.entry().isEmpty()), Sections::slot)
                .ifPresent(parts::add);
        list("no number", in(series, Completeness.State.NO_NUMBER), Sections::slot)
                .ifPresent(parts::add);
        list("waits for an answer", in(series, Completeness.State.HELD), Sections::slot)
                .ifPresent(parts::add);
        list("not tested without a reason", in(series, Completeness.State.REASON_MISSING), Sections::slot)
                .ifPresent(parts::add);
        list(
                        "not tested",
                        series.notTested().stream(),
                        item -> slot(item) + " because of "
                                + item.entry()
                                        .orElseThrow()
                                        .reading()
                                        .value()
                                        .words()
                                        .replace("not tested: ", ""))
                .ifPresent(parts::add);
        String full = String.join("; ", parts);
        return new Words(full, parts.size() > 1 ? full : "");
    }

    private static Stream<Completeness.Item> in(Completeness series, Completeness.State state) {
        return series.items().stream().filter(item -> item.state() == state);
    }

    private static String slot(Completeness.Item item) {
        return item.slot().measure().words() + " " + item.slot().mode().word();
    }

    private static Optional<String> list(
            String title, Stream<Completeness.Item> items, Function<Completeness.Item, String> words) {
        List<String> named = items.map(words).toList();
        return named.isEmpty() ? Optional.empty() : Optional.of(title + ": " + String.join(", ", named));
    }

    private Stream<Words> opposition(Side side) {
        return Stream.of(Mode.values())
                .map(mode -> Opposition.of(visit, side, mode, source.settings().lengthUnit()))
                .filter(opposition -> !opposition.gaps().isEmpty())
                .map(Sections::words);
    }

    private static Words words(Opposition opposition) {
        String gaps = opposition.gaps().stream()
                .map(gap -> gap.target().code() + " " + gap.distance())
                .collect(Collectors.joining(", "));
        String score =
                opposition.score().map(points -> "; score " + points.words()).orElse("");
        String fits = opposition.disagreements().stream()
                .map(Opposition.Disagreement::words)
                .collect(Collectors.joining("; "));
        String verdict = opposition.score().isEmpty() || !fits.isEmpty() ? "" : ", no gap contradicts it";
        String band = opposition
                .widestToFinger()
                .map(gap -> "; widest to a finger tip " + gap + ", "
                        + GapBand.of(gap).words() + " (" + GapBand.SOURCE + ")")
                .orElse("");
        return new Words(
                opposition.mode().word() + ", gaps " + gaps + score + verdict + (fits.isEmpty() ? "" : "; " + fits)
                        + band,
                fits);
    }

    private Stream<Words> joints(Side side) {
        return Sites.standard().all().stream()
                .map(Sites.Info::site)
                .flatMap(site -> Stream.concat(
                        Stream.of(Mode.values()).flatMap(mode -> arc(side, site, mode).stream()),
                        loss(side, site).map(Words::same).stream()));
    }

    /** Plain words say no more than the table. */
    private Optional<Words> arc(Side side, Site site, Mode mode) {
        Notation notation = source.customs().notation();
        return Arc.of(visit, side, site, mode)
                .map(arc -> site.code() + " " + mode.word() + ": " + notation.print(arc))
                .map(words -> new Words(words, notation == Notation.PLAIN_WORDS ? "" : words));
    }

    private Optional<String> loss(Side side, Site site) {
        return ExtensionLoss.of(visit, side, site)
                .map(ExtensionLoss::words)
                .filter(words -> !words.isEmpty())
                .map(words -> site.code() + ": " + words);
    }

    private Stream<Words> trials(Side side) {
        return cells(side)
                .filter(cell -> cell.comparison().trials().count() > 1)
                .map(cell -> slotWords(cell.comparison().slot()) + ": "
                        + cell.comparison().trials().words())
                .map(Words::same);
    }

    private Stream<Cell> cells(Side side) {
        return rows.stream().map(row -> row.cell(side)).filter(cell -> !cell.isEmpty());
    }

    private static String slotWords(Slot slot) {
        return slot.measure().words() + ", " + slot.mode().word();
    }

    private Stream<Words> otherHandBefore(Side side) {
        return Stream.concat(
                otherMotionsBefore(side),
                Stream.of(Mode.values())
                        .flatMap(mode -> Totals.standard().of(visit, side, mode).stream())
                        .flatMap(total -> otherTotalBefore(total).stream()));
    }

    private Optional<Words> otherTotalBefore(Total total) {
        Side other = total.side().other();
        if (Totals.standard()
                .of(total.motion(), visit, other, total.mode())
                .degrees()
                .isPresent()) {
            return Optional.empty();
        }
        List<VisitRecord> records = source.visits();
        for (int i = records.size() - 2; i >= 0; i--) {
            Visit before = records.get(i).visit();
            Total then = Totals.standard().of(total.motion(), before, other, total.mode());
            Optional<Words> words = TotalDifference.between(
                            total, then, source.yardstick(), source.yardstick().rater())
                    .map(known -> words(total, then, day(before.startedAt()), known));
            if (words.isPresent()) {
                return words;
            }
        }
        return Optional.empty();
    }

    private static Words words(Total total, Total other, String day, TotalDifference known) {
        String name = total.abbreviation() + " (" + total.motion().title() + ", "
                + total.mode().word() + ")";
        String share =
                total.percentOf(other).map(percent -> ", " + percent.words()).orElse("");
        return new Words(
                name + ", " + day + ": " + known.words() + share,
                known.verdict() == Difference.Verdict.BEYOND ? name + ", " + day + ": " + known.words() : "");
    }

    private Stream<Words> otherMotionsBefore(Side side) {
        return cells(side).map(Cell::comparison).flatMap(comparison -> comparison.otherHandBefore().stream()
                .map(known -> new Words(
                        slotWords(comparison.slot()) + ", " + day(known) + ": " + known.words(),
                        known.verdict() == Difference.Verdict.BEYOND
                                ? briefSlot(comparison.slot()) + " " + known.brief() + ", " + day(known)
                                : "")));
    }

    private static String day(Difference known) {
        return day(known.thenAt());
    }

    private static String day(OffsetDateTime at) {
        return DateTimeFormatter.ISO_LOCAL_DATE.format(at);
    }

    private static String briefSlot(Slot slot) {
        return slotWords(slot).replace(", " + Mode.ACTIVE.word(), "");
    }

    /** The first visit and the best one where they are not the last one, which the table shows. */
    private Stream<Words> longer(Side side) {
        return cells(side).map(Cell::comparison).flatMap(comparison -> longer(comparison).stream());
    }

    private static Optional<Words> longer(Comparison comparison) {
        Optional<OffsetDateTime> last = comparison.last().map(Difference::thenAt);
        Map<OffsetDateTime, List<String>> labels = new LinkedHashMap<>();
        Map<OffsetDateTime, Difference> differences = new LinkedHashMap<>();
        collect("first", comparison.first(), labels, differences);
        collect("best so far", comparison.best(), labels, differences);
        last.ifPresent(differences::remove);
        if (differences.isEmpty()) {
            return Optional.empty();
        }
        String full = differences.values().stream()
                .map(known -> label(known, labels) + ", " + day(known) + ": " + known.words())
                .collect(Collectors.joining("; "));
        String brief = differences.values().stream()
                .filter(known -> known.verdict() == Difference.Verdict.BEYOND)
                .map(known -> label(known, labels) + " " + known.brief())
                .collect(Collectors.joining(", "));
        return Optional.of(new Words(
                slotWords(comparison.slot()) + ": " + full,
                brief.isEmpty() ? "" : briefSlot(comparison.slot()) + " " + brief));
    }

    private static String label(Difference known, Map<OffsetDateTime, List<String>> labels) {
        return String.join(" and ", labels.getOrDefault(known.thenAt(), List.of()));
    }

    private static void collect(
            String label,
            Optional<Difference> difference,
            Map<OffsetDateTime, List<String>> labels,
            Map<OffsetDateTime, Difference> differences) {
        difference.ifPresent(known -> {
            labels.computeIfAbsent(known.thenAt(), at -> new ArrayList<>()).add(label);
            differences.put(known.thenAt(), known);
        });
    }

    /** The figures of measurement error behind the series, with where each comes from. */
    List<String> errors() {
        Map<String, List<String>> measures = new LinkedHashMap<>();
        for (Row row : rows) {
            for (Rater rater : Rater.values()) {
                source.yardstick()
                        .error()
                        .of(row.measure(), row.mode(), rater)
                        .ifPresent(figure -> measures.computeIfAbsent(words(figure), text -> new ArrayList<>())
                                .add(row.words()));
            }
        }
        return measures.entrySet().stream()
                .map(entry -> String.join("; ", entry.getValue()) + ": " + entry.getKey())
                .toList();
    }

    private static String words(ErrorFigure figure) {
        Amount.Scale scale = figure.scale();
        return figure.rater().words() + ", SEM " + figure.sem().setScale(1, RoundingMode.HALF_UP) + ", MDC90 "
                + figure.mdc90().setScale(1, RoundingMode.HALF_UP) + ", MDC95 "
                + scale.count(figure.mdc95().setScale(1, RoundingMode.HALF_UP).toPlainString()) + "; "
                + figure.provenance().words();
    }
}
