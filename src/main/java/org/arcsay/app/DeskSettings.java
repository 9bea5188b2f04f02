package org.arcsay.app;

import java.io.IOException;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
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
            Map<String, String> values = Settings.values(folder.settings(), file().lines());
            Settings now = Settings.read(folder.settings());
            return Arrays.stream(SettingKey.values())
                    .map(key -> field(key, values.getOrDefault(key.text(), key.usual()), now))
                    .toList();
        } catch (SettingsException e) {
            throw new HomeException(String.valueOf(e.getMessage()), e);
        }
    }

    private static SettingField field(SettingKey key, String value, Settings now) {
        Map<String, String> choices = new LinkedHashMap<>(key.allowed());
        if (key == SettingKey.NORMS) {
            now.habits().normSets().forEach(set -> choices.putIfAbsent(set.id(), set.title()));
        }
        if (key == SettingKey.PLAN) {
            now.habits().plans().forEach(plan -> choices.putIfAbsent(plan.id(), plan.title()));
        }
        return new SettingField(
                key.text(),
                key.title(),
                key.meaning(),
                choices.entrySet().stream()
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
