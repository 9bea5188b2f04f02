package org.arcsay.report.json;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The shape of the exported JSON; the schema {@code docs/schema/arcsay-report-1.schema.json} says what each part means. A
 * number is never negative: its kind or direction says which way it points.
 */
record JsonReport(
        String format,
        int version,
        String program,
        String created,
        String patient,
        long visit,
        String status,
        Settings settings,
        List<Line> series,
        List<Sum> totals,
        List<Course> trends,
        List<Question> asked,
        List<Part> sections,
        List<Session> visits,
        List<String> legend,
        List<String> basis,
        List<String> errors,
        List<String> cautions) {

    record Settings(String spokenMinus, String lengthUnit, NormSet normSet, String confidence, String rater) {}

    record NormSet(String id, String title) {}

    record Number(String kind, Optional<BigDecimal> number, String unit, String detail, String words) {}

    record Line(
            String measure,
            String mode,
            String words,
            Optional<Hand> right,
            Optional<Hand> left,
            Optional<Norm> norm) {}

    record Hand(
            List<Taken> entries,
            Optional<Change> otherHand,
            Optional<Change> lastVisit,
            Optional<Change> firstVisit,
            Optional<Change> bestVisit) {}

    record Taken(int entry, String status, Number value) {}

    record Change(
            Number then,
            String thenAt,
            BigDecimal amount,
            String unit,
            String direction,
            String trend,
            String verdict,
            Optional<BigDecimal> threshold,
            String words) {}

    record Norm(
            Number mean,
            Optional<BigDecimal> sd,
            Optional<Number> low,
            Optional<Number> high,
            String sample,
            String source,
            String known) {}

    record Sum(
            String total,
            String side,
            String mode,
            String abbreviation,
            Optional<BigDecimal> degrees,
            BigDecimal reference,
            Optional<BigDecimal> percentOfReference,
            Optional<BigDecimal> percentOfOtherHand,
            Optional<String> grade,
            String scale,
            List<String> missing,
            String words) {}

    record Course(String side, String measure, String mode, List<Point> points, String words) {}

    record Point(String at, Number value) {}

    record Question(
            int entry,
            String slot,
            String rule,
            String severity,
            String sentence,
            boolean settled,
            String by,
            String why) {}

    record Part(String title, List<Fact> facts) {}

    record Fact(Optional<String> side, String words) {}

    record Session(
            long visit,
            String started,
            Optional<String> ended,
            String status,
            List<Entry> entries,
            List<Event> journal) {}

    record Entry(
            int entry,
            String takenAt,
            String side,
            String measure,
            String mode,
            Number value,
            String placement,
            List<Remark> remarks,
            String state,
            String status,
            OptionalInt replaces,
            List<Finding> findings,
            Heard heard) {}

    record Remark(String kind, String code, OptionalInt score, String words) {}

    record Finding(
            String rule, String severity, String sentence, List<Compared> numbers, Optional<Number> alternative) {}

    record Compared(String label, String number, String unit) {}

    record Heard(
            String words,
            String source,
            double confidence,
            double start,
            double end,
            String grammar,
            String model,
            String rules) {}

    record Event(String event, String at, OptionalInt entry, Optional<Remark> remark, String by, String why) {}
}
