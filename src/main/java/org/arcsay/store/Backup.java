package org.arcsay.store;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A copy of the whole database.
 *
 * @param file where it lies
 * @param made when, to the millisecond
 * @param purpose why
 */
public record Backup(Path file, Instant made, Purpose purpose) {
    /** Why a backup was made. */
    public enum Purpose {
        /** By the program, day by day; old ones make room for new ones. */
        DAILY,
        /** Because the user wanted it; never removed by the program. */
        ASKED,
        /** Before a change of the schema; never removed by the program. */
        SCHEMA
    }

    private static final Pattern NAME = Pattern.compile("arcsay-(\\d{8}T\\d{9})Z-(daily|asked|schema)\\.db");
    private static final DateTimeFormatter TIME =
            DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmssSSS", Locale.ROOT).withZone(ZoneOffset.UTC);

    static Backup in(Path folder, Instant made, Purpose purpose) {
        String name = "arcsay-" + stamp(made) + "-" + purpose.name().toLowerCase(Locale.ROOT) + ".db";
        return new Backup(folder.resolve(name), made, purpose);
    }

    /** The moment as it stands in names of files. */
    static String stamp(Instant moment) {
        return TIME.format(moment) + "Z";
    }

    /** The backup that lies under that name; empty when it is no name of a backup. */
    static Optional<Backup> at(Path file) {
        Matcher name = NAME.matcher(String.valueOf(file.getFileName()));
        if (!name.matches()) {
            return Optional.empty();
        }
        try {
            return Optional.of(new Backup(
                    file,
                    TIME.parse(name.group(1), Instant::from),
                    Purpose.valueOf(name.group(2).toUpperCase(Locale.ROOT))));
        } catch (DateTimeParseException e) {
            return Optional.empty();
        }
    }
}
