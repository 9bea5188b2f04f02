package org.arcsay.app;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import org.arcsay.app.Settings.Habits;
import org.arcsay.app.Settings.SettingsException;
import org.arcsay.review.HomeException;
import org.arcsay.review.SettingField;
import org.arcsay.review.SettingsActions;
import org.arcsay.store.DataFolder;

/**
 * The settings file behind its screen. For one thread.
 *
 * @param folder where it lies
 * @param use is given the settings after every change
 */
record DeskSettings(DataFolder folder, Consumer<Settings> use) implements SettingsActions {
    private static final Set<String> AT_START = Set.of("model", "grammar", "lexicon", "pause");

    @Override
    public List<SettingField> fields() throws HomeException {
        try {
            List<String> lines = file().lines();
            Map<String, String> values = Settings.values(folder.settings(), lines);
            Habits habits = Settings.of(folder.settings(), lines).habits();
            return Arrays.stream(SettingKey.values())
                    .map(key -> field(key, values.getOrDefault(key.text(), key.usual()), habits))
                    .toList();
        } catch (SettingsException e) {
            throw new HomeException(String.valueOf(e.getMessage()), e);
        }
    }

    private static SettingField field(SettingKey key, String value, Habits habits) {
        return new SettingField(
                key.text(),
                key.title(),
                key.meaning(),
                key.allowed(habits).entrySet().stream()
                        .map(choice -> new SettingField.Choice(choice.getKey(), choice.getValue()))
                        .toList(),
                value);
    }

    @Override
    public String places() {
        return "Settings file: " + folder.settings() + "\nRecords: " + folder.database() + "\nBackups: "
                + folder.backups()
                + "\nThe folder is chosen at the start, with --home FOLDER or the variable ARCSAY_HOME.";
    }

    @Override
    public String save(Map<String, String> changes) throws HomeException {
        try {
            file().set(changes);
            use.accept(Settings.read(folder.settings()));
        } catch (SettingsException e) {
            throw new HomeException(String.valueOf(e.getMessage()), e);
        } catch (IOException e) {
            throw new HomeException(
                    "The settings file " + folder.settings() + " cannot be written (" + e.getMessage()
                            + "). Make room or allow writing there, and save again.",
                    e);
        }
        return changes.keySet().stream().anyMatch(AT_START::contains)
                ? "Speech model, grammar, pronunciations and pause hold after Arcsay was started again."
                : "";
    }

    private SettingsFile file() {
        return new SettingsFile(folder.settings());
    }
}
