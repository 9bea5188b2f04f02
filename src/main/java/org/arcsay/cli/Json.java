package org.arcsay.cli;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.arcsay.model.Entry;
import org.arcsay.model.Finding;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Remark;
import org.arcsay.model.Value;
import org.arcsay.model.ValueForm;
import org.arcsay.model.Visit;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.ObjectWriter;
import tools.jackson.databind.json.JsonMapper;

/** The stable machine-readable form of what commands print. Fields are only ever added. */
final class Json {
    private static final ObjectWriter WRITER = JsonMapper.builder().build().writerWithDefaultPrettyPrinter();

    private Json() {}

    static String text(Object view) {
        return WRITER.writeValueAsString(view);
    }

    record VisitView(
            String format,
            long visit,
            String patient,
            String startedAt,
            @Nullable String endedAt,
            boolean isFinal,
            List<EntryView> entries,
            @Nullable String sound) {
        static VisitView of(Visit visit, Optional<Path> sound) {
            return new VisitView(
                    "arcsay.visit/1",
                    visit.id(),
                    visit.patient().text(),
                    visit.startedAt().toString(),
                    visit.endedAt().map(Object::toString).orElse(null),
                    visit.isFinal(),
                    visit.entries().stream().map(EntryView::of).toList(),
                    sound.map(Path::toString).orElse(null));
        }
    }

    record EntryView(
            int entry,
            String status,
            String side,
            String site,
            String motion,
            String mode,
            String kind,
            @Nullable BigDecimal value,
            @Nullable String unit,
            String words,
            String heard,
            double confidence,
            List<String> remarks,
            List<FindingView> findings,
            @Nullable Integer replaces,
            String takenAt,
            String grammar,
            String model,
            String rules) {
        static EntryView of(Entry entry) {
            Amount amount = Amount.of(entry.reading().value());
            return new EntryView(
                    entry.number(),
                    lower(entry.status()),
                    lower(entry.reading().side()),
                    entry.reading().measure().site().code(),
                    lower(entry.reading().measure().motion()),
                    lower(entry.reading().mode()),
                    amount.kind(),
                    amount.number(),
                    amount.unit(),
                    entry.reading().words(),
                    entry.heard().words(),
                    entry.heard().confidence(),
                    entry.remarks().stream().map(Remark::words).toList(),
                    entry.findings().stream().map(FindingView::of).toList(),
                    entry.replaces().isPresent() ? entry.replaces().getAsInt() : null,
                    entry.takenAt().toString(),
                    entry.heard().versions().grammar(),
                    entry.heard().versions().model(),
                    entry.heard().versions().rules());
        }
    }

    record FindingView(String rule, String severity, String sentence) {
        static FindingView of(Finding finding) {
            return new FindingView(finding.rule(), lower(finding.severity()), finding.sentence());
        }
    }

    /** A value as kind, unsigned number and unit. */
    record Amount(
            String kind,
            @Nullable BigDecimal number,
            @Nullable String unit) {
        static Amount of(Value value) {
            ValueForm form = ValueForm.of(value);
            String unit = form.kind().isAngle()
                    ? "deg"
                    : form.length().map(LengthUnit::symbol).orElse(null);
            return new Amount(kind(form), form.number().orElse(null), unit);
        }

        private static String kind(ValueForm form) {
            String words = form.word().map(Json::words).orElseGet(() -> lower(form.kind()));
            return form.kind() == ValueForm.Kind.NOT_TESTED ? "not tested: " + words : words;
        }
    }

    private static String words(String constant) {
        return constant.toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private static String lower(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT);
    }
}
