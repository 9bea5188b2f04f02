package org.arcsay.report;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** The formats of a report. */
public enum Format {
    /** Plain text for pasting into a record. */
    TEXT("txt"),
    /** Every visit, one row a reading; can be read back. */
    CSV("csv"),
    /** Everything, described by a schema. */
    JSON("json"),
    /** The reported visit as an HL7 FHIR R4 bundle of observations. */
    FHIR("fhir.json"),
    /** The reported visit on one page for each thumb. */
    PDF("pdf");

    private final String extension;

    Format(String extension) {
        this.extension = extension;
    }

    /** The usual end of a file name, without the dot. */
    public String extension() {
        return extension;
    }

    /** The lower-case name. */
    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The format that a file's name ends in; the longest ending that fits counts. */
    public static Optional<Format> ofFile(Path file) {
        String name = file.toString().toLowerCase(Locale.ROOT);
        return Arrays.stream(values())
                .filter(format -> name.endsWith("." + format.extension))
                .max(Comparator.comparingInt(format -> format.extension.length()));
    }
}
