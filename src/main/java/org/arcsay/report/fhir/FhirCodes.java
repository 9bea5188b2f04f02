package org.arcsay.report.fhir;

import java.util.List;
import java.util.Set;
import org.arcsay.tables.Row;
import org.arcsay.tables.Table;

/**
 * Codes that a clinic has looked up itself. None are shipped: no published code is known to be right for thumb motion, and a
 * wrong code is worse than plain text.
 */
public final class FhirCodes {
    private static final Set<String> PARTS = Set.of("code", "bodySite", "method");

    private final List<Line> lines;

    private FhirCodes(List<Line> lines) {
        this.lines = lines;
    }

    private record Line(String part, String key, FhirBundle.Coding coding) {
        static Line read(Row row) {
            String part = row.text("part");
            if (!PARTS.contains(part)) {
                throw new IllegalArgumentException("'part' must be code, bodySite or method, not '" + part + "'");
            }
            return new Line(
                    part,
                    row.text("key"),
                    new FhirBundle.Coding(
                            row.text("system"),
                            row.text("code"),
                            row.optional("display").orElse("")));
        }
    }

    public static FhirCodes none() {
        return new FhirCodes(List.of());
    }

    /**
     * The codes of a clinic, in the form of {@code docs/fhir-codes.tsv}.
     *
     * @throws org.arcsay.tables.TableException naming the line that cannot be used
     */
    public static FhirCodes read(String name, String text) {
        return new FhirCodes(Table.read(name, text).map(Line::read));
    }

    /** The text with every code that the clinic gave for the key. */
    FhirBundle.Concept concept(String part, String key, String text) {
        return new FhirBundle.Concept(
                lines.stream()
                        .filter(line -> line.part().equals(part) && line.key().equals(key))
                        .map(Line::coding)
                        .toList(),
                text);
    }
}
