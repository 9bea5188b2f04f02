package org.arcsay.ui;

import atlantafx.base.theme.PrimerDark;
import atlantafx.base.theme.PrimerLight;
import java.util.List;
import java.util.Locale;
import javafx.application.Application;
import javafx.scene.Scene;
import org.arcsay.model.HelpCard;
import org.arcsay.review.Appearance;

/** What all windows share: theme, text size and the card of phrases; used by the JavaFX thread only. */
public final class Look {
    /** On the classpath; JavaFX resolves it there. */
    private static final String SHEET = "/org/arcsay/ui/arcsay.css";

    private static final double BASE_SIZE = 14;
    private static final int SMALLEST = Appearance.SIZES.get(0);
    private static final int LARGEST = Appearance.SIZES.get(Appearance.SIZES.size() - 1);

    /** From here on the biggest letters grow less than the others. */
    private static final int LARGE = 150;

    private final HelpCard card;
    private final Appearance.Keeper keeper;
    private boolean dark;
    private int percent;

    /**
     * @param dark light text on dark ground
     * @param percent size of text, as {@link Appearance#SIZES}
     */
    public Look(boolean dark, int percent) {
        this(new HelpCard(List.of()), new Appearance(dark, percent), Appearance.Keeper.NONE);
    }

    private Look(HelpCard card, Appearance chosen, Appearance.Keeper keeper) {
        this.card = card;
        this.keeper = keeper;
        this.dark = chosen.dark();
        this.percent = chosen.textPercent();
    }

    public static Look standard() {
        return new Look(false, SMALLEST);
    }

    /**
     * A look that was chosen before.
     *
     * @param card what can be said
     * @param keeper is told what is chosen from now on
     */
    public static Look of(HelpCard card, Appearance chosen, Appearance.Keeper keeper) {
        return new Look(card, chosen, keeper);
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
        choose(!dark, percent);
    }

    boolean largest() {
        return percent == LARGEST;
    }

    boolean large() {
        return percent >= LARGE;
    }

    void larger() {
        choose(dark, step(1));
    }

    void smaller() {
        choose(dark, step(-1));
    }

    /** One step larger, and back to the smallest after the largest. */
    void nextSize() {
        choose(dark, largest() ? SMALLEST : step(1));
    }

    private int step(int by) {
        int next = Appearance.SIZES.indexOf(percent) + by;
        return Appearance.SIZES.get(Math.max(0, Math.min(Appearance.SIZES.size() - 1, next)));
    }

    private void choose(boolean nowDark, int nowPercent) {
        dark = nowDark;
        percent = nowPercent;
        keeper.keep(new Appearance(dark, percent));
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
