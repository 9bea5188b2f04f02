package org.arcsay.report.csv;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Several texts in one cell: joined by a separator, with a backslash before a separator or backslash inside a text. */
final class Packing {
    private Packing() {}

    static String join(char separator, List<String> parts) {
        return parts.stream()
                .map(part -> escape(separator, part))
                .collect(Collectors.joining(String.valueOf(separator)));
    }

    /** The reverse of {@link #join} for one part or more; an empty cell is one empty part. */
    static List<String> split(char separator, String cell) {
        List<String> parts = new ArrayList<>();
        StringBuilder part = new StringBuilder();
        for (int i = 0; i < cell.length(); i++) {
            char c = cell.charAt(i);
            if (c == '\\' && i + 1 < cell.length()) {
                part.append(cell.charAt(++i));
            } else if (c == separator) {
                parts.add(part.toString());
                part.setLength(0);
            } else {
                part.append(c);
            }
        }
        parts.add(part.toString());
        return parts;
    }

    private static String escape(char separator, String part) {
        return part.replace("\\", "\\\\").replace(String.valueOf(separator), "\\" + separator);
    }
}
