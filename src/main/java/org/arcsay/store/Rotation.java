package org.arcsay.store;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.time.temporal.IsoFields;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import org.arcsay.store.Backup.Purpose;

/** Which daily backups may go: the newest of each of 7 days, 5 weeks and 12 months that have one are kept. */
final class Rotation {
    private static final int DAYS = 7;
    private static final int WEEKS = 5;
    private static final int MONTHS = 12;

    private Rotation() {}

    /**
     * @param newestFirst all backups
     * @return those that no rule keeps
     */
    static List<Backup> superfluous(List<Backup> newestFirst) {
        List<Backup> daily =
                newestFirst.stream().filter(b -> b.purpose() == Purpose.DAILY).toList();
        Set<Backup> kept = new HashSet<>();
        kept.addAll(newestOfEach(daily, DAYS, day -> day));
        kept.addAll(newestOfEach(
                daily,
                WEEKS,
                day -> day.get(IsoFields.WEEK_BASED_YEAR) * 100 + day.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR)));
        kept.addAll(newestOfEach(daily, MONTHS, YearMonth::from));
        return daily.stream().filter(backup -> !kept.contains(backup)).toList();
    }

    private static List<Backup> newestOfEach(List<Backup> newestFirst, int periods, Function<LocalDate, ?> period) {
        Set<Object> seen = new HashSet<>();
        List<Backup> newest = new ArrayList<>();
        for (Backup backup : newestFirst) {
            if (newest.size() < periods && seen.add(period.apply(LocalDate.ofInstant(backup.made(), ZoneOffset.UTC)))) {
                newest.add(backup);
            }
        }
        return newest;
    }
}
