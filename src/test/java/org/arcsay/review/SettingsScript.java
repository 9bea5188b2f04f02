package org.arcsay.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Two settings, of which one has a bad value. Used by one thread. */
public final class SettingsScript implements SettingsActions {
    private final List<Map<String, String>> saved = new ArrayList<>();

    @Override
    public List<SettingField> fields() {
        return List.of(
                new SettingField(
                        "unit",
                        "Unit of distances",
                        "Unit of opposition distances when none is said.",
                        List.of(
                                new SettingField.Choice("mm", "Millimetres"),
                                new SettingField.Choice("cm", "Centimetres")),
                        "mm"),
                new SettingField(
                        "pace", "Pace of spoken answers", "A number from 0.7 to 1.7; 1 is normal.", List.of(), "1"));
    }

    @Override
    public String places() {
        return "Settings file: /home/demo/settings.properties";
    }

    @Override
    public String save(Map<String, String> changes) throws HomeException {
        if ("9".equals(changes.get("pace"))) {
            throw new HomeException("settings.properties, line 4: pace cannot be '9'.", null);
        }
        saved.add(Map.copyOf(changes));
        return "";
    }

    /** What was saved, in order. */
    public List<Map<String, String>> saved() {
        return saved;
    }
}
