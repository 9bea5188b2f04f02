package org.arcsay.review;

import java.util.List;
import java.util.Map;

/** What the settings screen asks for; called by the thread of the screen. */
public interface SettingsActions {
    /** Every setting as it holds now. */
    List<SettingField> fields() throws HomeException;

    /** Where the settings and the records lie, in words. */
    String places();

    /**
     * Writes changed values into the settings file and uses them from the next visit on.
     *
     * @param changes keys with values as they are to stand in the file; blank for what is usual
     * @return what has to be done before all of them hold, or empty
     * @throws HomeException when a value is not allowed, naming the line, or the file cannot be written; nothing is changed
     */
    String save(Map<String, String> changes) throws HomeException;
}
