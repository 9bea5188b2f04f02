package org.arcsay.ui;

import javafx.scene.AccessibleRole;
import javafx.scene.layout.Pane;
import javafx.scene.shape.Arc;
import javafx.scene.shape.ArcType;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Line;
import org.arcsay.model.Reading;
import org.arcsay.model.Value;
import org.arcsay.model.Value.Angle;
import org.arcsay.model.Value.Extension;
import org.arcsay.model.Value.ExtensionKind;

/** A joint seen from the side with its angle drawn; the number in words always stands beside it. JavaFX thread only. */
final class ArcDial extends Pane {
    private final double degreesUp;
    private final Line fixed = Lines.styled("dial-bone");
    private final Line neutral = Lines.styled("dial-neutral");
    private final Line moving = Lines.styled("dial-bone");
    private final Arc arc = new Arc();
    private final Circle joint = new Circle();

    private ArcDial(double degreesUp, String words) {
        this.degreesUp = degreesUp;
        getStyleClass().add("dial");
        arc.getStyleClass().add("dial-arc");
        arc.setType(ArcType.OPEN);
        joint.getStyleClass().add("dial-joint");
        setAccessibleRole(AccessibleRole.IMAGE_VIEW);
        setAccessibleText("Drawing of the joint: " + words);
        getChildren().addAll(neutral, arc, fixed, moving, joint);
    }

    /** Whether this reading is an angle that can be drawn. */
    static boolean draws(Value value) {
        return value instanceof Angle || value instanceof Extension;
    }

    /** Flexion and what lacks to straight bend downwards, hyperextension and every other motion opens upwards. */
    static ArcDial of(Reading reading) {
        return new ArcDial(upwards(reading), reading.value().words());
    }

    private static double upwards(Reading reading) {
        if (reading.value() instanceof Extension extension) {
            double degrees = extension.degrees().doubleValue();
            return extension.kind() == ExtensionKind.DEFICIT ? -degrees : degrees;
        }
        double degrees = ((Angle) reading.value()).degrees().doubleValue();
        return switch (reading.measure().motion()) {
            case FLEXION, ULNAR_DEVIATION, PRONATION, ADDUCTION -> -degrees;
            default -> degrees;
        };
    }

    @Override
    protected void layoutChildren() {
        double arm = Math.min(getWidth() / 2, getHeight() * 0.75) * 0.9;
        double x = getWidth() / 2;
        double y = getHeight() * (degreesUp < 0 ? 0.18 : 0.82);
        double turn = Math.toRadians(degreesUp);
        Lines.place(fixed, x, y, x - arm, y);
        Lines.place(neutral, x, y, x + arm, y);
        Lines.place(moving, x, y, x + arm * Math.cos(turn), y - arm * Math.sin(turn));
        arc.setCenterX(x);
        arc.setCenterY(y);
        arc.setRadiusX(arm * 0.6);
        arc.setRadiusY(arm * 0.6);
        arc.setStartAngle(0);
        arc.setLength(degreesUp);
        joint.setCenterX(x);
        joint.setCenterY(y);
        joint.setRadius(arm * 0.1);
    }
}
