package org.arcsay.report.pdf;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** The embedded font of one document in two weights, with its measures. For one thread. */
final class Typeface {
    private final PDFont regular;
    private final PDFont bold;

    Typeface(PDDocument document) throws IOException {
        regular = load(document, "OpenSans-Regular.ttf");
        bold = load(document, "OpenSans-Semibold.ttf");
    }

    private static PDFont load(PDDocument document, String name) throws IOException {
        try (InputStream in =
                Objects.requireNonNull(Typeface.class.getResourceAsStream("/org/arcsay/fonts/" + name), name)) {
            return PDType0Font.load(document, in, true);
        }
    }

    PDFont font(Style style) {
        return style.bold() ? bold : regular;
    }

    float width(String text, Style style) {
        try {
            return font(style).getStringWidth(printable(text)) / 1000 * style.size();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What can be printed of a text: line breaks become spaces, and a character that the font lacks its code point. */
    String printable(String text) {
        StringBuilder printable = new StringBuilder();
        Normalizer.normalize(text, Normalizer.Form.NFC).codePoints().forEach(code -> {
            if (Character.isWhitespace(code) || Character.isISOControl(code)) {
                printable.append(' ');
            } else if (has(code)) {
                printable.appendCodePoint(code);
            } else {
                printable.append(String.format("[U+%04X]", code));
            }
        });
        return printable.toString();
    }

    private boolean has(int code) {
        try {
            regular.encode(Character.toString(code));
            return true;
        } catch (IllegalArgumentException e) {
            return false;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The text in lines no wider than that; a word that is wider alone is cut. At least one line. */
    List<String> wrap(String text, Style style, float width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : printable(text).strip().split(" +")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (width(longer, style) <= width) {
                line.setLength(0);
                line.append(longer);
                continue;
            }
            if (!line.isEmpty()) {
                lines.add(line.toString());
            }
            line.setLength(0);
            line.append(cut(word, style, width, lines));
        }
        lines.add(line.toString());
        return lines;
    }

    private String cut(String word, Style style, float width, List<String> lines) {
        String rest = word;
        while (width(rest, style) > width && rest.codePointCount(0, rest.length()) > 1) {
            int end = rest.offsetByCodePoints(0, 1);
            while (width(rest.substring(0, rest.offsetByCodePoints(end, 1)), style) <= width) {
                end = rest.offsetByCodePoints(end, 1);
            }
            lines.add(rest.substring(0, end));
            rest = rest.substring(end);
        }
        return rest;
    }
}
