package org.arcsay.docs;

import static org.arcsay.docs.RulesPage.measure;
import static org.arcsay.docs.RulesPage.mode;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.arcsay.analysis.GradeScale;
import org.arcsay.analysis.NormSet;
import org.arcsay.analysis.NormSets;
import org.arcsay.analysis.OppositionTargets;
import org.arcsay.analysis.SeriesPlans;
import org.arcsay.analysis.Totals;
import org.arcsay.tables.Mark;
import org.arcsay.tables.Provenance;
import org.arcsay.validate.RuleTables;

/** Writes the list of all numbers that nobody has seen in a source: remembered ones, habits and defaults. */
final class NumbersPage {
    private NumbersPage() {}

    private record Item(String what, String number, Provenance provenance) {}

    static String markdown(RuleTables tables) {
        List<Item> items = Stream.of(rules(tables), error(tables), analysis())
                .flatMap(List::stream)
                .filter(item -> !item.provenance().mark().citable())
                .toList();
        return """
                # Numbers without a source that was seen

                This page is written by the program from its tables. Do not edit it.

                Everything else in the tables was seen in the named source or quoted by a second one.
                """
                + Stream.of(Mark.FROM_MEMORY, Mark.COMMON_PRACTICE, Mark.OUR_DEFAULT)
                        .map(mark -> section(mark, items))
                        .collect(Collectors.joining());
    }

    private static String section(Mark mark, List<Item> items) {
        String rows = items.stream()
                .filter(item -> item.provenance().mark() == mark)
                .map(item -> Markdown.row(
                        item.what(), item.number(), item.provenance().source()))
                .distinct()
                .collect(Collectors.joining());
        return "\n## " + Character.toUpperCase(mark.words().charAt(0))
                + mark.words().substring(1) + "\n\n| what | number | source or reason |\n|---|---|---|\n" + rows;
    }

    private static List<Item> rules(RuleTables tables) {
        List<Item> items = new ArrayList<>();
        tables.limits()
                .lines()
                .forEach(line -> items.add(new Item(
                        "limit of " + measure(line.pattern()) + ", " + mode(line.pattern()) + ", "
                                + line.kind().name().toLowerCase(Locale.ROOT),
                        "ask " + text(line.ask()) + ", hold " + text(line.hold()) + " " + line.unit(),
                        line.provenance())));
        tables.sides()
                .lines()
                .forEach(line -> items.add(new Item(
                        "difference between two hands, " + measure(line.pattern()),
                        line.unusual().toPlainString() + " and " + line.rare().toPlainString() + " " + line.unit(),
                        line.provenance())));
        tables.thresholds()
                .lines()
                .forEach(line -> items.add(
                        new Item(line.meaning(), line.value().toPlainString() + " " + line.unit(), line.provenance())));
        return items;
    }

    private static List<Item> error(RuleTables tables) {
        return tables.error().lines().stream()
                .map(line -> new Item(
                        "MDC95 of " + measure(line.pattern()) + ", " + mode(line.pattern()) + ", "
                                + line.figure().rater().words(),
                        line.figure().mdc95().toPlainString() + " "
                                + line.figure().scale().unit(),
                        line.figure().provenance()))
                .toList();
    }

    private static List<Item> analysis() {
        List<Item> items = new ArrayList<>();
        for (NormSet set : NormSets.standard().all()) {
            set.norms()
                    .forEach(norm -> items.add(new Item(
                            "norm of " + measure(norm.pattern()) + " in " + set.title(),
                            norm.mean().toPlainString()
                                    + norm.sd()
                                            .map(sd -> ", SD " + sd.toPlainString())
                                            .orElse("") + " "
                                    + norm.scale().unit(),
                            norm.provenance())));
        }
        for (GradeScale scale : GradeScale.standard()) {
            scale.bands()
                    .forEach(band -> items.add(new Item("grade in " + scale.title(), band.words(), band.provenance())));
        }
        Totals.standard()
                .motions()
                .forEach(total -> items.add(
                        new Item(total.title(), total.reference().toPlainString() + " degrees", total.provenance())));
        OppositionTargets.standard().stages().stream()
                .sorted(Comparator.comparingInt(OppositionTargets.Stage::points))
                .forEach(stage -> items.add(
                        new Item("opposition score: " + stage.reaches(), "" + stage.points(), stage.provenance())));
        SeriesPlans.standard()
                .all()
                .forEach(plan -> items.add(new Item(
                        "steps of the plan " + plan.title(), plan.steps().size() + " steps", plan.provenance())));
        return items;
    }

    private static String text(Optional<BigDecimal> number) {
        return number.map(BigDecimal::toPlainString).orElse("none");
    }
}
