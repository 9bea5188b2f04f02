package org.arcsay.ui;

import atlantafx.base.theme.PrimerDark;
import atlantafx.base.theme.PrimerLight;
import java.util.List;
import java.util.Locale;
import javafx.application.Application;
import javafx.scene.Scene;
import org.arcsay.model.HelpCard;

/** What all windows share: theme, text size and the card of phrases; used by the JavaFX thread only. */
public final class Look {
    /** On the classpath; JavaFX resolves it there. */
    private static final String SHEET = "/org/arcsay/ui/arcsay.css";

    private static final double BASE_SIZE = 14;
    private static final int SMALLEST = 100;
    private static final int LARGEST = 200;
    private static final int STEP = 25;

    /** From here on the biggest letters grow less than the others. */
    private static final int LARGE = 150;

    private final HelpCard card;
    private boolean dark;
    private int percent;

    /**
     * @param dark light text on dark ground
     * @param percent size of text, 100 to 200
     */
    public Look(boolean dark, int percent) {
        this(dark, percent, new HelpCard(List.of()));
    }

    private Look(boolean dark, int percent, HelpCard card) {
        this.card = card;
        this.dark = dark;
        this.percent = Math.max(SMALLEST, Math.min(LARGEST, percent));
    }

    public static Look standard() {
        return new Look(false, SMALLEST);
    }

    /** The standard look of windows that can show this card. */
    static Look with(HelpCard card) {
        return new Look(false, SMALLEST, card);
    }

    /** What can be said, shown by every window. */
    HelpCard card() {
        return card;
    }

    boolean dark() {
        return dark;
    }

    int percent() {
        return percent;
    }

    void switchTheme() {
        dark = !dark;
    }

    void larger() {
        percent = Math.min(LARGEST, percent + STEP);
    }

    boolean largest() {
        return percent == LARGEST;
    }

    boolean large() {
        return percent >= LARGE;
    }

    /** One step larger, and back to the smallest after the largest. */
    void nextSize() {
        percent = largest() ? SMALLEST : percent + STEP;
    }

    void smaller() {
        percent = Math.max(SMALLEST, percent - STEP);
    }

    void apply(Scene scene) {
        Application.setUserAgentStylesheet((dark ? new PrimerDark() : new PrimerLight()).getUserAgentStylesheet());
        if (!scene.getStylesheets().contains(SHEET)) {
            scene.getStylesheets().add(SHEET);
            scene.getRoot().getStyleClass().add("arcsay");
        }
        Parts.style(scene.getRoot(), "large-text", large());
        Palette palette = dark ? Palette.DARK : Palette.LIGHT;
        scene.getRoot()
                .setStyle(palette.css()
                        + String.format(Locale.ROOT, " -fx-font-size: %.1fpx;", BASE_SIZE * percent / 100));
    }
}
