package org.arcsay.report.pdf;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Stream;
import org.arcsay.report.content.Brief;
import org.arcsay.report.content.DegreeRange;
import org.arcsay.report.content.RangeTrend;

/**
 * Bars over the visits, one a visit, each from where the joint rests straight to where it is most bent.
 *
 * @param trend what is drawn
 */
record RangePanel(RangeTrend trend) {
    private static final int SLOTS_WITH_NUMBERS = 8;
    private static final float TOP = 17;
    private static final float BOTTOM = 11;

    void draw(Pen pen, float x, float y, float width, float height) {
        pen.text(trend.title(), Style.CELL_BOLD, x, y + 8);
        Frame frame = new Frame(pen, x + 18, y + TOP, width - 26, height - TOP - BOTTOM, low(), high());
        frame.grid();
        trend.reference().ifPresent(level -> drawReference(frame, level.floatValue(), y + 7));
        float slot = frame.width / steps().size();
        for (int i = 0; i < steps().size(); i++) {
            frame.bar(steps().get(i).range(), frame.x + (i + 0.5f) * slot, Math.min(slot * 0.5f, 18), numbered());
        }
        dates(pen, frame, slot, y + height - 3);
    }

    private void drawReference(Frame frame, float level, float keyY) {
        float right = frame.x + frame.width;
        String words = Brief.degrees(trend.referenceWords());
        frame.pen.dashed(frame.x, frame.level(level), right, frame.level(level), 0.8f, 0.3f, 2.2f);
        frame.pen.textRight(words, Style.SMALL, right, keyY);
        float key = right - frame.pen.typeface().width(words, Style.SMALL) - 3;
        frame.pen.dashed(key - 14, keyY - 2, key, keyY - 2, 0.8f, 0.3f, 2.2f);
    }

    private boolean numbered() {
        return steps().size() <= SLOTS_WITH_NUMBERS;
    }

    private void dates(Pen pen, Frame frame, float slot, float y) {
        for (int i = 0; i < steps().size(); i++) {
            boolean end = i == 0 || i == steps().size() - 1;
            if (end || steps().size() <= 4) {
                String day = Wording.shortDay(steps().get(i).at());
                pen.textCentred(day, Style.SMALL, frame.x + (i + 0.5f) * slot, y);
            }
        }
    }

    private List<RangeTrend.Step> steps() {
        return trend.steps();
    }

    private float low() {
        double low = steps().stream()
                .flatMap(step -> Stream.of(step.range().from(), step.range().to()))
                .mapToDouble(BigDecimal::doubleValue)
                .min()
                .orElse(0);
        return Math.min(0, (float) Math.floor(low / 30) * 30);
    }

    private float high() {
        double high = steps().stream()
                .mapToDouble(step -> step.range().to().doubleValue())
                .max()
                .orElse(90);
        double reference = trend.reference().map(BigDecimal::doubleValue).orElse(0d);
        return (float) Math.ceil((Math.max(high, reference) + 8) / 30) * 30;
    }

    /** The coordinate frame of one panel. For one thread. */
    private record Frame(Pen pen, float x, float y, float width, float height, float low, float high) {
        private static final float ROOM_FOR_NUMBER = 9;
        private static final Style WHITE = new Style(6.2f, true, 1);

        float level(float degrees) {
            return y + height * (high - degrees) / (high - low);
        }

        void grid() {
            float step = high - low > 120 ? 60 : 30;
            for (float degrees = low; degrees <= high; degrees += step) {
                boolean zero = degrees == 0;
                pen.line(x, level(degrees), x + width, level(degrees), zero ? 0.9f : 0.3f, zero ? 0.2f : 0.75f);
                pen.textRight(Math.round(Math.abs(degrees)) + "°", Style.SMALL, x - 3, level(degrees) + 2.2f);
            }
        }

        void bar(DegreeRange range, float centre, float barWidth, boolean numbered) {
            float top = level(range.to().floatValue());
            float bottom = level(range.from().floatValue());
            pen.fill(centre - barWidth / 2, top, barWidth, bottom - top, 0.3f);
            if (numbered) {
                upperEnd(range.to().toPlainString(), centre, top - 2);
                lowerEnd(range.from(), centre, barWidth, bottom - top, bottom);
            }
        }

        private void upperEnd(String number, float centre, float baseline) {
            float left = centre - pen.typeface().width(number, Style.SMALL_BOLD) / 2;
            pen.textOnWhite(number, Style.SMALL_BOLD, left, baseline);
        }

        private void lowerEnd(BigDecimal degrees, float centre, float barWidth, float barHeight, float bottom) {
            String number = degrees.abs().toPlainString();
            if (degrees.signum() != 0 && barHeight > ROOM_FOR_NUMBER) {
                pen.textCentred(number, WHITE, centre, bottom - 2);
            } else if (degrees.signum() != 0) {
                pen.textOnWhite(number, Style.SMALL_BOLD, centre + barWidth / 2 + 2, bottom + 1);
            }
        }
    }
}
