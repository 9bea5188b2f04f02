package org.arcsay.store;

import java.util.OptionalInt;
import org.arcsay.model.Remark;
import org.arcsay.model.Remark.Feel;
import org.arcsay.model.Remark.PainPlace;

/**
 * A remark as the three columns in which it is stored.
 *
 * @param kind which kind of remark
 * @param text the place of pain, the feel, or the note itself
 * @param score the pain score, if one was said
 */
record RemarkColumns(String kind, String text, OptionalInt score) {

    static RemarkColumns of(Remark remark) {
        if (remark instanceof Remark.Pain pain) {
            return new RemarkColumns("PAIN", pain.place().name(), pain.score());
        }
        if (remark instanceof Remark.Quality quality) {
            return new RemarkColumns("QUALITY", quality.feel().name(), OptionalInt.empty());
        }
        return new RemarkColumns("NOTE", ((Remark.Note) remark).text(), OptionalInt.empty());
    }

    /**
     * @throws IllegalArgumentException when the columns make no remark
     */
    Remark remark() {
        return switch (kind) {
            case "PAIN" -> new Remark.Pain(PainPlace.valueOf(text), score);
            case "QUALITY" -> new Remark.Quality(Feel.valueOf(text));
            case "NOTE" -> new Remark.Note(text);
            default -> throw new IllegalArgumentException("no remark of kind " + kind);
        };
    }
}
