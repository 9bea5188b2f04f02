package org.arcsay.report.pdf;

import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.arcsay.analysis.Difference;
import org.arcsay.analysis.Difference.Verdict;
import org.arcsay.analysis.TotalDifference;
import org.arcsay.model.Entry;
import org.arcsay.model.EntryStatus;
import org.arcsay.report.content.Brief;
import org.arcsay.report.content.Cell;

/** The short wording of table cells. */
final class Wording {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);
    private static final DateTimeFormatter SHORT_DAY = DateTimeFormatter.ofPattern("d MMM yy", Locale.ENGLISH);
    private static final DateTimeFormatter MINUTE =
            DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm xxx", Locale.ENGLISH);

    private Wording() {}

    static String cell(Cell cell) {
        return cell.entries().stream().map(Wording::entry).collect(Collectors.joining("; "));
    }

    private static String entry(Entry entry) {
        return Brief.value(entry.reading().value()) + (entry.status() == EntryStatus.CONFIRMED ? "" : " (prel.)");
    }

    static String difference(Optional<Difference> difference) {
        return difference.map(known -> known.brief() + unsure(known.verdict())).orElse("");
    }

    static String total(Optional<TotalDifference> difference) {
        return difference
                .map(known -> (known.change().signum() == 0
                                ? "the same"
                                : known.change().abs().toPlainString()
                                        + (known.change().signum() > 0 ? " more" : " less"))
                        + unsure(known.verdict()))
                .orElse("");
    }

    private static String unsure(Verdict verdict) {
        return verdict == Verdict.UNKNOWN ? " ?" : "";
    }

    static boolean beyond(Optional<Verdict> verdict) {
        return verdict.isPresent() && verdict.get() == Verdict.BEYOND;
    }

    static String day(OffsetDateTime time) {
        return DAY.format(time);
    }

    static String shortDay(OffsetDateTime time) {
        return SHORT_DAY.format(time);
    }

    static String minute(OffsetDateTime time) {
        return MINUTE.format(time);
    }

    static String capital(String text) {
        return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
