package org.arcsay.app;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.arcsay.app.Settings.SettingsException;

/**
 * The settings file as lines, of which single values are changed; comments and everything else stay as they are. Any thread
 * may use it.
 *
 * @param file need not exist
 */
record SettingsFile(Path file) {
    /** The lines as they are; where there is no file, every key with its meaning, commented out. */
    List<String> lines() throws SettingsException {
        return Files.exists(file) ? Settings.lines(file) : template();
    }

    private static List<String> template() {
        List<String> lines = new ArrayList<>(List.of(
                "# Settings of Arcsay: one 'key = value' a line. What stands after # is a comment.",
                "# Remove the # before a key to set it."));
        for (SettingKey key : SettingKey.values()) {
            lines.add("");
            lines.add("# " + key.meaning());
            if (!key.allowed().isEmpty()) {
                lines.add("# One of: " + String.join(", ", key.allowed().keySet()));
            }
            lines.add(("# " + key.text() + " = " + key.usual()).stripTrailing());
        }
        return lines;
    }

    /**
     * Changes values, all or none.
     *
     * @param changes keys with values; a blank value goes back to what is usual
     * @throws SettingsException when a value is not allowed, with the line that it would have; nothing is written then
     * @throws IOException when the file cannot be written; it is then as it was
     */
    void set(Map<String, String> changes) throws SettingsException, IOException {
        List<String> lines = new ArrayList<>(lines());
        changes.forEach((key, value) ->
                set(lines, key, value.replaceFirst("(^|\\s)#.*", "").strip()));
        Settings.of(file, lines);
        write(lines);
    }

    private static void set(List<String> lines, String key, String value) {
        int active = last(lines, key, "\\s*");
        if (value.isEmpty()) {
            while (active >= 0) {
                lines.set(active, "# " + lines.get(active));
                active = last(lines, key, "\\s*");
            }
            return;
        }
        String line = key + " = " + value;
        int place = active >= 0 ? active : last(lines, key, "\\s*#\\s*");
        if (place < 0) {
            lines.add(line);
        } else {
            lines.set(place, active >= 0 ? line + comment(lines.get(place)) : line);
        }
    }

    /** The last line that sets the key, since that one holds; -1 for none. */
    private static int last(List<String> lines, String key, String before) {
        Pattern setting = Pattern.compile(before + Pattern.quote(key) + "\\s*=.*");
        for (int i = lines.size() - 1; i >= 0; i--) {
            if (setting.matcher(lines.get(i)).matches()) {
                return i;
            }
        }
        return -1;
    }

    private static String comment(String line) {
        Matcher comment = Pattern.compile("\\s+#.*").matcher(line);
        return comment.find() ? comment.group() : "";
    }

    private void write(List<String> lines) throws IOException {
        Path fresh = Files.createTempFile(file.toAbsolutePath().getParent(), "settings", ".new");
        Files.write(fresh, lines, StandardCharsets.UTF_8);
        Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
    }
}
