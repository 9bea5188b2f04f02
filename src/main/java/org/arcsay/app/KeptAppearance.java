package org.arcsay.app;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import org.arcsay.app.Settings.SettingsException;
import org.arcsay.review.Appearance;

/**
 * Keeps how the windows look in the settings file. For one thread.
 *
 * @param settings the file
 */
public record KeptAppearance(Path settings) implements Appearance.Keeper {
    @Override
    public void keep(Appearance chosen) {
        try {
            new SettingsFile(settings)
                    .set(Map.of(
                            SettingKey.THEME.text(),
                            chosen.dark() ? "dark" : "light",
                            SettingKey.TEXT_SIZE.text(),
                            String.valueOf(chosen.textPercent())));
        } catch (IOException | SettingsException notKept) {
            // The windows look as chosen all the same, until the program ends.
        }
    }
}
