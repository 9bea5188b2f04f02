package org.arcsay.report.json;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Optional;
import java.util.OptionalInt;
import org.arcsay.analysis.Amount;
import org.arcsay.analysis.Difference;
import org.arcsay.analysis.Percent;
import org.arcsay.model.Dimension;
import org.arcsay.model.Entry;
import org.arcsay.model.Finding;
import org.arcsay.model.Heard;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.Remark;
import org.arcsay.model.Slot;
import org.arcsay.model.Value;
import org.arcsay.model.Visit;
import org.arcsay.report.content.AcceptedFinding;
import org.arcsay.report.content.Cell;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.ReportSource;
import org.arcsay.report.content.Row;
import org.arcsay.report.content.Section;
import org.arcsay.report.content.TotalLine;
import org.arcsay.report.content.Trend;
import org.arcsay.report.content.ValueParts;
import org.arcsay.report.content.VisitRecord;

/** Turns a report into its exported shape. */
final class JsonReportMaker {
    private static final int PERCENT_PLACES = 1;

    private JsonReportMaker() {}

    static JsonReport make(Report report) {
        ReportSource source = report.source();
        Visit visit = report.current().visit();
        return new JsonReport(
                "arcsay-report",
                1,
                source.program(),
                time(source.createdAt()),
                visit.patient().text(),
                visit.id(),
                report.standing().code(),
                settings(source),
                report.rows().stream().map(row -> line(report, row)).toList(),
                report.totals().stream().map(JsonReportMaker::sum).toList(),
                report.trends().stream().map(JsonReportMaker::course).toList(),
                report.accepted().stream().map(JsonReportMaker::question).toList(),
                report.sections().stream().map(JsonReportMaker::part).toList(),
                source.visits().stream().map(JsonReportMaker::session).toList(),
                report.legend(),
                report.basis(),
                report.errors(),
                report.cautions());
    }

    private static JsonReport.Part part(Section section) {
        return new JsonReport.Part(
                section.title(),
                section.facts().stream()
                        .map(fact -> new JsonReport.Fact(fact.side().map(ValueParts::lower), fact.words()))
                        .toList());
    }

    private static JsonReport.Settings settings(ReportSource source) {
        return new JsonReport.Settings(
                ValueParts.lower(source.settings().signConvention()),
                source.settings().lengthUnit().symbol(),
                new JsonReport.NormSet(source.norms().id(), source.norms().label()),
                source.yardstick().confidence().words(),
                source.yardstick().rater().words());
    }

    private static JsonReport.Line line(Report report, Row row) {
        return new JsonReport.Line(
                row.measure().id(),
                ValueParts.lower(row.mode()),
                row.words(),
                hand(report.current(), row.right()),
                hand(report.current(), row.left()),
                row.norm().map(norm -> norm(row, norm)));
    }

    private static Optional<JsonReport.Hand> hand(VisitRecord visit, Cell cell) {
        if (cell.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new JsonReport.Hand(
                cell.entries().stream()
                        .map(entry -> new JsonReport.Taken(
                                entry.number(),
                                visit.standing(entry).code(),
                                number(entry.reading().value())))
                        .toList(),
                cell.comparison().otherHand().map(JsonReportMaker::change),
                cell.comparison().last().map(JsonReportMaker::change),
                cell.comparison().first().map(JsonReportMaker::change),
                cell.comparison().best().map(JsonReportMaker::change)));
    }

    private static JsonReport.Change change(Difference difference) {
        return new JsonReport.Change(
                number(difference.then().value()),
                time(difference.thenAt()),
                difference.change().abs(),
                difference.scale().unit(),
                direction(difference.change()),
                ValueParts.lower(difference.trend()),
                ValueParts.lower(difference.verdict()),
                difference.threshold().map(threshold -> threshold.amount()),
                difference.words());
    }

    private static String direction(BigDecimal change) {
        if (change.signum() == 0) {
            return "same";
        }
        return change.signum() > 0 ? "more" : "less";
    }

    private static JsonReport.Norm norm(Row row, org.arcsay.analysis.Norm norm) {
        return new JsonReport.Norm(
                amount(row, norm.mean(), norm.scale()),
                norm.sd(),
                norm.low().map(low -> amount(row, low, norm.scale())),
                norm.high().map(high -> amount(row, high, norm.scale())),
                norm.sample(),
                norm.provenance().source(),
                norm.provenance().mark().words());
    }

    private static JsonReport.Number amount(Row row, BigDecimal number, Amount.Scale scale) {
        String kind = ValueParts.lower(row.measure().dimension());
        if (row.measure().dimension() == Dimension.EXTENSION) {
            kind = number.signum() < 0 ? "deficit" : number.signum() == 0 ? "neutral" : "hyperextension";
        }
        String unit = scale == Amount.Scale.DEGREES ? "deg" : scale == Amount.Scale.MILLIMETRES ? "mm" : "";
        return new JsonReport.Number(kind, Optional.of(number.abs()), unit, "", "");
    }

    private static JsonReport.Sum sum(TotalLine line) {
        return new JsonReport.Sum(
                line.total().motion().id(),
                ValueParts.lower(line.total().side()),
                ValueParts.lower(line.total().mode()),
                line.total().abbreviation(),
                line.total().degrees(),
                line.total().motion().reference(),
                line.total().percentOfReference().map(JsonReportMaker::percent),
                line.ofOtherHand().map(JsonReportMaker::percent),
                line.total().grade().map(band -> band.label()),
                line.total().motion().scale().title(),
                line.total().missing().stream().map(slot -> slot.measure().id()).toList(),
                line.words());
    }

    private static BigDecimal percent(Percent percent) {
        return percent.rounded(PERCENT_PLACES);
    }

    private static JsonReport.Course course(Trend trend) {
        Slot slot = trend.slot();
        return new JsonReport.Course(
                ValueParts.lower(slot.side()),
                slot.measure().id(),
                ValueParts.lower(slot.mode()),
                trend.points().stream()
                        .map(point -> new JsonReport.Point(
                                time(point.at()), number(point.reading().value())))
                        .toList(),
                trend.words());
    }

    private static JsonReport.Question question(AcceptedFinding accepted) {
        return new JsonReport.Question(
                accepted.entry().number(),
                accepted.entry().reading().slot().words(),
                accepted.finding().rule(),
                ValueParts.lower(accepted.finding().severity()),
                accepted.finding().sentence(),
                accepted.settled(),
                accepted.by(),
                accepted.why());
    }

    private static JsonReport.Session session(VisitRecord record) {
        Visit visit = record.visit();
        return new JsonReport.Session(
                visit.id(),
                time(visit.startedAt()),
                visit.endedAt().map(JsonReportMaker::time),
                record.standing().code(),
                visit.entries().stream().map(entry -> entry(record, entry)).toList(),
                record.journal().stream().map(JsonReportMaker::event).toList());
    }

    private static JsonReport.Entry entry(VisitRecord record, Entry entry) {
        Slot slot = entry.reading().slot();
        return new JsonReport.Entry(
                entry.number(),
                time(entry.takenAt()),
                ValueParts.lower(slot.side()),
                slot.measure().id(),
                ValueParts.lower(slot.mode()),
                number(entry.reading().value()),
                ValueParts.lower(entry.reading().placement()),
                entry.remarks().stream().map(JsonReportMaker::remark).toList(),
                ValueParts.lower(entry.status()),
                record.standing(entry).code(),
                entry.replaces(),
                entry.findings().stream().map(JsonReportMaker::finding).toList(),
                heard(entry.heard()));
    }

    private static JsonReport.Remark remark(Remark remark) {
        if (remark instanceof Remark.Pain pain) {
            return new JsonReport.Remark("pain", ValueParts.lower(pain.place()), pain.score(), pain.words());
        }
        if (remark instanceof Remark.Quality quality) {
            return new JsonReport.Remark(
                    "feel", ValueParts.lower(quality.feel()), OptionalInt.empty(), quality.words());
        }
        return new JsonReport.Remark("note", "", OptionalInt.empty(), remark.words());
    }

    private static JsonReport.Finding finding(Finding finding) {
        return new JsonReport.Finding(
                finding.rule(),
                ValueParts.lower(finding.severity()),
                finding.sentence(),
                finding.numbers().stream()
                        .map(n -> new JsonReport.Compared(n.label(), n.number(), n.unit()))
                        .toList(),
                finding.alternative().map(JsonReportMaker::number));
    }

    private static JsonReport.Heard heard(Heard heard) {
        return new JsonReport.Heard(
                heard.words(),
                ValueParts.lower(heard.source()),
                heard.confidence(),
                seconds(heard.start()),
                seconds(heard.end()),
                heard.versions().grammar(),
                heard.versions().model(),
                heard.versions().rules());
    }

    private static double seconds(Duration duration) {
        return duration.toNanos() / 1e9;
    }

    private static JsonReport.Event event(JournalEvent event) {
        if (event instanceof JournalEvent.Taken e) {
            return event("taken", e.at(), e.entry(), e.by(), e.why());
        }
        if (event instanceof JournalEvent.Remarked e) {
            Optional<JsonReport.Remark> remark = Optional.of(remark(e.remark()));
            return new JsonReport.Event("remarked", time(e.at()), OptionalInt.of(e.entry()), remark, e.by(), "");
        }
        if (event instanceof JournalEvent.Released e) {
            return event("accepted", e.at(), e.entry(), e.by(), e.why());
        }
        if (event instanceof JournalEvent.Rejected e) {
            return event("rejected", e.at(), e.entry(), e.by(), e.why());
        }
        if (event instanceof JournalEvent.Confirmed e) {
            return event("confirmed", e.at(), e.entry(), e.by(), "");
        }
        JournalEvent.Ended e = (JournalEvent.Ended) event;
        return new JsonReport.Event("ended", time(e.at()), OptionalInt.empty(), Optional.empty(), e.by(), "");
    }

    private static JsonReport.Event event(String name, OffsetDateTime at, int entry, String by, String why) {
        return new JsonReport.Event(name, time(at), OptionalInt.of(entry), Optional.empty(), by, why);
    }

    private static JsonReport.Number number(Value value) {
        ValueParts parts = ValueParts.of(value);
        return new JsonReport.Number(
                ValueParts.code(parts.kind()), parts.number(), parts.unit(), parts.detail(), value.words());
    }

    private static String time(OffsetDateTime time) {
        return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(time);
    }
}
