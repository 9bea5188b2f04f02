package org.arcsay.review;

import java.util.List;

/**
 * One setting, to be shown and changed.
 *
 * @param key as it stands in the settings file
 * @param title what it is called
 * @param meaning what it does
 * @param choices what can be chosen, the usual one first; empty for free text
 * @param value as it holds now; empty where nothing is set and there is no usual one
 */
public record SettingField(String key, String title, String meaning, List<Choice> choices, String value) {
    public SettingField {
        choices = List.copyOf(choices);
    }

    /**
     * One of the values that are allowed.
     *
     * @param value as it stands in the file
     * @param words what it means
     */
    public record Choice(String value, String words) {}
}
