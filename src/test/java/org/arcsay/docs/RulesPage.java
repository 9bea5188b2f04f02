package org.arcsay.docs;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.arcsay.model.Mode;
import org.arcsay.session.ContextDoubt;
import org.arcsay.session.HearingDoubt;
import org.arcsay.tables.MeasurePattern;
import org.arcsay.validate.Limit;
import org.arcsay.validate.Rule;
import org.arcsay.validate.RuleInfo;
import org.arcsay.validate.RuleTables;
import org.arcsay.validate.SideDifferences;
import org.arcsay.validate.Thresholds;
import org.arcsay.validate.Validator;

/** Writes the page that lists every rule and its numbers. */
final class RulesPage {
    private RulesPage() {}

    static String markdown(Validator validator, RuleTables tables) {
        return """
                # Plausibility rules

                This page is written by the program from the rules themselves. Do not edit it.

                A rule never changes a value. **Hold**: the entry waits for an answer, because it cannot be true as heard or
                contradicts another one. **Ask**: the entry is kept and flagged, and asked about once. **Note**: worth a look in
                review. Unusual values may be true.

                """
                + Stream.concat(
                                Stream.of(HearingDoubt.INFO, ContextDoubt.INFO),
                                validator.rules().stream().map(Rule::info))
                        .map(RulesPage::section)
                        .collect(Collectors.joining())
                + limits(tables.limits().lines())
                + sides(tables.sides().lines())
                + thresholds(tables.thresholds().lines());
    }

    private static String section(RuleInfo info) {
        return "## `" + info.id() + "` (" + severities(info) + ")\n\n" + info.looksAt() + "\n\n" + info.why()
                + "\n\nBasis: " + info.basis().words() + ".\n\n";
    }

    private static String severities(RuleInfo info) {
        return info.severities().stream()
                .map(severity -> severity.name().toLowerCase(Locale.ROOT))
                .collect(Collectors.joining(" or "));
    }

    private static String limits(List<Limit> lines) {
        return "## Limits\n\n| measure | mode | direction | ask above | hold above | unit | basis |\n|---|---|---|---|---|---|---|\n"
                + lines.stream()
                        .map(line -> Markdown.row(
                                measure(line.pattern()),
                                mode(line.pattern()),
                                line.kind().name().toLowerCase(Locale.ROOT),
                                number(line.ask()),
                                number(line.hold()),
                                line.unit(),
                                line.provenance().words()))
                        .collect(Collectors.joining());
    }

    private static String sides(List<SideDifferences.Line> lines) {
        return "\n## Differences between two hands\n\n| measure | mode | unusual above | rare above | unit | basis |\n"
                + "|---|---|---|---|---|---|\n"
                + lines.stream()
                        .map(line -> Markdown.row(
                                measure(line.pattern()),
                                mode(line.pattern()),
                                line.unusual().toPlainString(),
                                line.rare().toPlainString(),
                                line.unit(),
                                line.provenance().words()))
                        .collect(Collectors.joining());
    }

    private static String thresholds(List<Thresholds.Line> lines) {
        return "\n## Single numbers\n\n| id | value | meaning | basis |\n|---|---|---|---|\n"
                + lines.stream()
                        .map(line -> Markdown.row(
                                line.id(),
                                line.value().toPlainString() + " " + line.unit(),
                                line.meaning(),
                                line.provenance().words()))
                        .collect(Collectors.joining());
    }

    static String measure(MeasurePattern pattern) {
        String site = pattern.site().equals("*") ? "any site" : pattern.site();
        return site + " " + pattern.motion().words();
    }

    static String mode(MeasurePattern pattern) {
        return pattern.mode().map(Mode::word).orElse("any");
    }

    private static String number(Optional<BigDecimal> number) {
        return number.map(BigDecimal::toPlainString).orElse("none");
    }
}
