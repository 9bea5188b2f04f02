package org.arcsay.ui;

import javafx.scene.AccessibleRole;
import javafx.scene.layout.Pane;
import javafx.scene.shape.Arc;
import javafx.scene.shape.ArcType;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Line;
import org.arcsay.report.content.DegreeRange;
import org.arcsay.report.content.JointRange;

/** The range of a joint beside the other hand and the norm; the same as text stands below it. JavaFX thread only. */
final class RangeDial extends Pane {
    private static final double NOW = 0.52;
    private static final double OTHER = 0.72;
    private static final double NORM = 0.88;

    private final JointRange range;
    private final Line bone = Lines.styled("dial-bone");
    private final Line neutral = Lines.styled("dial-neutral");
    private final Circle joint = new Circle();

    RangeDial(JointRange range) {
        this.range = range;
        getStyleClass().add("range-dial");
        joint.getStyleClass().add("dial-joint");
        getChildren().addAll(neutral, bone);
        range.norm().ifPresent(norm -> add(norm, "range-norm", NORM));
        range.other().ifPresent(other -> add(other, "range-other", OTHER));
        add(range.now(), "range-now", NOW);
        getChildren().add(joint);
        setAccessibleRole(AccessibleRole.IMAGE_VIEW);
        setAccessibleText(
                "Drawing of the " + range.title() + " range, " + range.side().word() + ": " + range.words());
    }

    private void add(DegreeRange degrees, String style, double share) {
        Arc arc = new Arc();
        arc.getStyleClass().add(style);
        arc.setType(ArcType.OPEN);
        arc.setStartAngle(-degrees.from().doubleValue());
        arc.setLength(degrees.from().subtract(degrees.to()).doubleValue());
        arc.setUserData(share);
        getChildren().add(arc);
    }

    @Override
    protected void layoutChildren() {
        double radius = Math.min(getWidth() * 0.62, getHeight() * 0.5);
        double x = getWidth() * 0.34;
        double y = getHeight() * (range.hinge() ? 0.47 : 0.3);
        Lines.place(bone, x - radius * 0.5, y, x, y);
        Lines.place(neutral, x, y, x + radius, y);
        joint.setCenterX(x);
        joint.setCenterY(y);
        joint.setRadius(radius * 0.1);
        getChildren().stream()
                .filter(Arc.class::isInstance)
                .map(Arc.class::cast)
                .forEach(arc -> {
                    arc.setCenterX(x);
                    arc.setCenterY(y);
                    arc.setRadiusX(radius * (double) arc.getUserData());
                    arc.setRadiusY(radius * (double) arc.getUserData());
                });
    }
}
