package org.arcsay.ui;

import java.util.ArrayList;
import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Label;
import javafx.scene.layout.Pane;
import javafx.scene.shape.Line;
import javafx.scene.shape.Rectangle;
import org.arcsay.report.content.RangeTrend;

/** A range over the visits, one bar a visit; the same as text stands below it. JavaFX thread only. */
final class TrendBars extends Pane {
    private static final double LEFT = 44;
    private static final double TOP = 22;
    private static final double BOTTOM = 6;
    private static final int BARS_WITH_NUMBERS = 8;
    private static final int STEP = 30;

    private final RangeTrend trend;
    private final double low;
    private final double high;
    private final List<Level> levels = new ArrayList<>();
    private final List<Bar> bars = new ArrayList<>();

    /** A level of degrees with its line and name. */
    private record Level(double degrees, Line line, Label name) {}

    /** A visit's bar with the number of its upper end. */
    private record Bar(double from, double to, Rectangle shape, Label number) {}

    TrendBars(RangeTrend trend) {
        this.trend = trend;
        low = Math.min(
                0,
                down(trend.steps().stream()
                        .mapToDouble(s -> s.range().from().min(s.range().to()).doubleValue())
                        .min()
                        .orElse(0)));
        high = -down(-Math.max(
                trend.steps().stream()
                        .mapToDouble(s -> s.range().to().doubleValue())
                        .max()
                        .orElse(0),
                trend.reference().map(Number::doubleValue).orElse(0d)));
        getStyleClass().add("trend-bars");
        for (double degrees = low; degrees <= high; degrees += high - low > 4 * STEP ? 2 * STEP : STEP) {
            level(degrees, degrees == 0 ? "trend-zero" : "trend-level");
        }
        trend.steps()
                .forEach(step ->
                        bar(step.range().from().doubleValue(), step.range().to().doubleValue()));
        trend.reference().ifPresent(reference -> level(reference.doubleValue(), "trend-reference"));
        setAccessibleRole(AccessibleRole.IMAGE_VIEW);
        setAccessibleText("Bars over the visits, " + trend.side().word() + ", " + trend.words());
    }

    private static double down(double degrees) {
        return Math.floor(degrees / STEP) * STEP;
    }

    private void level(double degrees, String style) {
        Line line = Lines.styled(style);
        boolean named = !style.equals("trend-reference");
        Label name = new Label(named ? Math.round(Math.abs(degrees)) + "\u00B0" : "");
        name.getStyleClass().add("trend-number");
        name.setAlignment(Pos.CENTER_RIGHT);
        levels.add(new Level(degrees, line, name));
        getChildren().addAll(line, name);
    }

    private void bar(double from, double to) {
        Rectangle shape = new Rectangle();
        shape.getStyleClass().add("trend-bar");
        boolean numbered = trend.steps().size() <= BARS_WITH_NUMBERS;
        Label number = new Label(numbered ? String.valueOf(Math.round(to)) : "");
        number.getStyleClass().add("trend-number");
        number.setAlignment(Pos.BASELINE_CENTER);
        bars.add(new Bar(from, to, shape, number));
        getChildren().addAll(shape, number);
    }

    @Override
    protected void layoutChildren() {
        for (Level level : levels) {
            double y = y(level.degrees());
            Lines.place(level.line(), LEFT, y, getWidth(), y);
            level.name().resizeRelocate(0, y - 10, LEFT - 6, 20);
        }
        double slot = (getWidth() - LEFT) / bars.size();
        double width = Math.max(1, Math.min(slot * 0.5, 34));
        for (int i = 0; i < bars.size(); i++) {
            Bar bar = bars.get(i);
            double centre = LEFT + (i + 0.5) * slot;
            bar.shape().setX(centre - width / 2);
            bar.shape().setWidth(width);
            bar.shape().setY(y(bar.to()));
            bar.shape().setHeight(Math.max(1, y(bar.from()) - y(bar.to())));
            bar.number().resizeRelocate(centre - 30, y(bar.to()) - 20, 60, 20);
        }
    }

    private double y(double degrees) {
        return TOP + (getHeight() - TOP - BOTTOM) * (high - degrees) / Math.max(1, high - low);
    }
}
