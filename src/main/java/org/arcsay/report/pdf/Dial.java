package org.arcsay.report.pdf;

import java.math.BigDecimal;
import java.util.stream.Stream;
import org.arcsay.report.content.DegreeRange;
import org.arcsay.report.content.JointRange;
import org.arcsay.report.pdf.Pen.Turn;

/**
 * One joint drawn from the side: where it comes to rest straight and bent, beside the other hand and the norm. Degrees grow
 * downwards from the neutral line; what is beyond neutral lies above it. Radii are shares of the outermost one.
 *
 * @param range what is drawn
 */
record Dial(JointRange range) {
    private static final float BONE = 26;
    private static final float WORDS = 50;
    private static final float NOW_INNER = 0.42f;
    private static final float NOW_OUTER = 0.7f;
    private static final float OTHER_INNER = 0.75f;
    private static final float OTHER_OUTER = 0.89f;
    private static final float LABEL_GAP = 9;

    /** Room needed beside the radius: the bone at the left and words such as "lacks 35°" at the right. */
    static final float BESIDE = BONE + 5 + LABEL_GAP + WORDS;

    private static final float LABELS_APART = 22;
    private static final Style NUMBER = new Style(7.6f, true, 0);

    /** How far the drawing reaches above the neutral line. */
    float above() {
        return (float)
                Math.max(0, bands().mapToDouble(band -> sine(-from(band))).max().orElse(0));
    }

    /** How far the drawing reaches below the neutral line. */
    float below() {
        return (float)
                Math.max(0.3, bands().mapToDouble(band -> sine(to(band))).max().orElse(0));
    }

    private static double sine(float degrees) {
        return Math.sin(Math.toRadians(Math.min(degrees, 90)));
    }

    private Stream<DegreeRange> bands() {
        return Stream.of(range.other().stream(), range.norm().stream(), Stream.of(range.now()))
                .flatMap(band -> band);
    }

    /** Draws with the joint's axis at that height and that outermost radius. */
    void draw(Pen pen, float x, float axis, float radius) {
        float centre = x + BONE + 5;
        pen.dashed(centre, axis, centre + radius + 5, axis, 0.6f, 0.45f, 1.6f);
        range.norm().map(Dial::turn).ifPresent(turn -> drawNorm(pen, centre, axis, radius, turn));
        range.other().map(Dial::turn).ifPresent(turn -> {
            pen.ring(centre, axis, radius * OTHER_INNER, radius * OTHER_OUTER, turn, 0.8f);
            pen.ringOutline(centre, axis, radius * OTHER_INNER, radius * OTHER_OUTER, turn, 0.5f, 0.35f);
        });
        pen.ring(centre, axis, radius * NOW_INNER, radius * NOW_OUTER, turn(range.now()), 0.15f);
        labels(pen, centre, axis, radius);
        bone(pen, centre, axis);
    }

    /** What the drawing tells. */
    String words() {
        String straight = range.hinge() ? start(range.now().from()) + " to " : "";
        return range.title() + " " + straight + range.now().to().toPlainString() + "\u00B0";
    }

    private static float from(DegreeRange range) {
        return range.from().floatValue();
    }

    private static float to(DegreeRange range) {
        return range.to().floatValue();
    }

    private static Turn turn(DegreeRange range) {
        return new Turn(from(range), to(range));
    }

    private static void drawNorm(Pen pen, float x, float y, float radius, Turn turn) {
        pen.arc(x, y, radius, turn, 1.1f, 0.25f, 2.2f);
        end(pen, x, y, radius, turn.from());
        end(pen, x, y, radius, turn.to());
    }

    private static void end(Pen pen, float x, float y, float radius, double degrees) {
        float cos = (float) Math.cos(Math.toRadians(degrees));
        float sin = (float) Math.sin(Math.toRadians(degrees));
        float inner = radius - 2;
        float outer = radius + 3;
        pen.line(x + inner * cos, y + inner * sin, x + outer * cos, y + outer * sin, 1.1f, 0.25f);
    }

    private void labels(Pen pen, float x, float y, float radius) {
        float from = from(range.now());
        float to = to(range.now());
        float spread = range.hinge() ? Math.max(0, LABELS_APART - (to - from)) / 2 : 0;
        if (range.hinge()) {
            label(pen, start(range.now().from()), x, y, radius + LABEL_GAP, from - spread);
        }
        label(pen, range.now().to().toPlainString() + "\u00B0", x, y, radius + LABEL_GAP, to + spread);
    }

    /** The straight end in words, because a bare number would not say on which side of neutral it is. */
    private static String start(BigDecimal from) {
        String number = from.abs().toPlainString() + "\u00B0";
        if (from.signum() == 0) {
            return number;
        }
        return from.signum() > 0 ? "lacks " + number : number + " beyond";
    }

    /** Left of its place the more, the steeper the place is below the axis. */
    private static void label(Pen pen, String text, float x, float y, float radius, double degrees) {
        double cos = Math.cos(Math.toRadians(degrees));
        float width = pen.typeface().width(text, NUMBER);
        float left = x + (float) (radius * cos - width * (1 - Math.max(0, cos)) / 2);
        pen.textOnWhite(text, NUMBER, left, y + (float) (radius * Math.sin(Math.toRadians(degrees))) + 2.8f);
    }

    private static void bone(Pen pen, float x, float y) {
        pen.line(x - BONE, y, x - 3, y, 5, 0.55f);
        pen.dot(x, y, 4.6f, 0.15f);
        pen.dot(x, y, 2.2f, 1);
    }
}
