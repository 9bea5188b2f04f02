package org.arcsay.report;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

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

    /**
     * The format of that name in any case.
     *
     * @throws IllegalArgumentException when there is none; the message lists them
     */
    public static Format parse(String name) {
        return Arrays.stream(values())
                .filter(format -> format.name().equalsIgnoreCase(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("'" + name + "' is not a format: use one of "
                        + Arrays.stream(values())
                                .map(format -> format.name().toLowerCase(Locale.ROOT))
                                .collect(Collectors.joining(", "))));
    }
}
