package org.arcsay.review;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The settings on the screen, used by one thread; nothing is written before it is saved. */
public final class SettingsModel {
    private final SettingsActions actions;
    private final Map<String, String> changes = new LinkedHashMap<>();
    private List<SettingField> fields = List.of();
    private String message = "";

    public SettingsModel(SettingsActions actions) {
        this.actions = actions;
        read();
    }

    private void read() {
        try {
            fields = actions.fields();
        } catch (HomeException unreadable) {
            message = String.valueOf(unreadable.getMessage());
        }
    }

    public List<SettingField> fields() {
        return fields;
    }

    public String places() {
        return actions.places();
    }

    /** What came of the last saving, or what is wrong. */
    public String message() {
        return message;
    }

    /** Whether something was changed and not saved. */
    public boolean isChanged() {
        return !changes.isEmpty();
    }

    /** Takes a value as typed or chosen; blank goes back to what is usual. */
    public void change(String key, String value) {
        boolean same = fields.stream()
                .anyMatch(field -> field.key().equals(key) && field.value().equals(value.strip()));
        if (same) {
            changes.remove(key);
        } else {
            changes.put(key, value.strip());
        }
    }

    /** Writes what was changed. When that fails, it is kept to be mended. */
    public boolean save() {
        try {
            String more = actions.save(changes);
            changes.clear();
            read();
            message = ("Saved. It holds from the next visit on. " + more).strip();
            return true;
        } catch (HomeException failed) {
            message = "Nothing was saved. " + failed.getMessage();
            return false;
        }
    }
}
