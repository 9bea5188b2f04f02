package org.arcsay.report.pdf;

import java.math.BigDecimal;
import org.arcsay.report.content.DegreeRange;
import org.arcsay.report.content.JointRange;
import org.arcsay.report.pdf.Pen.Turn;

/**
 * One joint drawn from the side: where it comes to rest straight and bent, beside the other hand and the norm. Degrees grow
 * downwards from the neutral line; what is beyond neutral lies above it.
 *
 * @param range what is drawn
 */
record Dial(JointRange range) {
    static final float HEIGHT = 110;

    private static final float BONE = 22;
    private static final float NOW_INNER = 20;
    private static final float NOW_OUTER = 31;
    private static final float OTHER_INNER = 33;
    private static final float OTHER_OUTER = 39;
    private static final float NORM = 43;
    private static final float LABEL = 49;
    private static final Style NUMBER = new Style(7.6f, true, 0);

    void draw(Pen pen, float x, float y, float width) {
        float centreX = x + 0.36f * width;
        float centreY = y + 50;
        pen.text(range.title(), Style.CELL_BOLD, x, y + 8);
        scale(pen, centreX, centreY);
        range.norm().map(Dial::turn).ifPresent(turn -> drawNorm(pen, centreX, centreY, turn));
        range.other().map(Dial::turn).ifPresent(turn -> {
            pen.ring(centreX, centreY, OTHER_INNER, OTHER_OUTER, turn, 0.8f);
            pen.ringOutline(centreX, centreY, OTHER_INNER, OTHER_OUTER, turn, 0.5f, 0.35f);
        });
        Turn now = turn(range.now());
        pen.ring(centreX, centreY, NOW_INNER, NOW_OUTER, now, 0.15f);
        if (range.hinge()) {
            label(pen, centreX, centreY, range.now().from());
        }
        label(pen, centreX, centreY, range.now().to());
        bone(pen, centreX, centreY);
    }

    private static Turn turn(DegreeRange range) {
        return new Turn(range.from().floatValue(), range.to().floatValue());
    }

    private static void scale(Pen pen, float x, float y) {
        pen.dashed(x, y, x + NORM + 4, y, 0.6f, 0.45f, 1.6f);
        for (int degrees = -60; degrees <= 90; degrees += 30) {
            float cos = (float) Math.cos(Math.toRadians(degrees));
            float sin = (float) Math.sin(Math.toRadians(degrees));
            pen.line(x + 14 * cos, y + 14 * sin, x + 17.5f * cos, y + 17.5f * sin, 0.5f, 0.5f);
        }
    }

    private static void drawNorm(Pen pen, float x, float y, Turn turn) {
        pen.arc(x, y, NORM, turn, 1.1f, 0.25f, 2.2f);
        for (float end : new float[] {turn.from(), turn.to()}) {
            float cos = (float) Math.cos(Math.toRadians(end));
            float sin = (float) Math.sin(Math.toRadians(end));
            pen.line(
                    x + (NORM - 2) * cos,
                    y + (NORM - 2) * sin,
                    x + (NORM + 3) * cos,
                    y + (NORM + 3) * sin,
                    1.1f,
                    0.25f);
        }
    }

    private static void label(Pen pen, float x, float y, BigDecimal degrees) {
        double angle = Math.toRadians(degrees.doubleValue());
        float px = x + (float) ((LABEL + 6) * Math.cos(angle));
        float py = y + (float) ((angle > 0 ? LABEL + 6 : LABEL) * Math.sin(angle)) + 2.8f;
        String number = degrees.abs().toPlainString() + "°";
        pen.textCentred(number, NUMBER, px, py);
    }

    private static void bone(Pen pen, float x, float y) {
        pen.line(x - BONE, y, x - 3, y, 5, 0.55f);
        pen.dot(x, y, 4.6f, 0.15f);
        pen.dot(x, y, 2.2f, 1);
    }
}
