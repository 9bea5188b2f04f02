package org.arcsay.app;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.SignConvention;

/**
 * The settings file of a clinic: one {@code key = value} a line, comments after {@code #}.
 *
 * @param clinic the decisions that change what is understood
 * @param model folder of another speech model, if one is set
 * @param microphone name of the recording device, if one is set
 */
public record Settings(ClinicSettings clinic, Optional<Path> model, Optional<String> microphone) {
    private static final Map<String, SignConvention> SIGNS = Map.of(
            "ask", SignConvention.UNSET,
            "minus-is-deficit", SignConvention.MINUS_IS_DEFICIT,
            "minus-is-hyperextension", SignConvention.MINUS_IS_HYPEREXTENSION);
    private static final Map<String, LengthUnit> UNITS =
            Map.of("mm", LengthUnit.MILLIMETRE, "cm", LengthUnit.CENTIMETRE, "in", LengthUnit.INCH);

    public static Settings defaults() {
        return new Settings(ClinicSettings.defaults(), Optional.empty(), Optional.empty());
    }

    /** The settings file cannot be used; the message names the line and says what is allowed. */
    public static final class SettingsException extends Exception {
        private static final long serialVersionUID = 1L;

        SettingsException(String message) {
            super(message);
        }
    }

    /**
     * Reads a settings file; a file that is not there gives the defaults.
     *
     * @throws SettingsException naming the line with an unknown key or a value that is not allowed
     */
    public static Settings read(Path file) throws SettingsException {
        if (!Files.exists(file)) {
            return defaults();
        }
        Settings settings = defaults();
        List<String> lines = lines(file);
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i).replaceFirst("(^|\\s)#.*", "").strip();
            if (!line.isEmpty()) {
                settings = settings.with(line, file + ", line " + (i + 1) + ": ");
            }
        }
        return settings;
    }

    private static List<String> lines(Path file) throws SettingsException {
        try {
            return new ArrayList<>(Files.readAllLines(file, StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new SettingsException("The settings file " + file + " cannot be read as text (" + e.getMessage()
                    + "). Mend or remove it; without it the defaults hold.");
        }
    }

    private Settings with(String line, String where) throws SettingsException {
        int equals = line.indexOf('=');
        if (equals < 0) {
            throw new SettingsException(where + "expected 'key = value' and found '" + line + "'");
        }
        String key = line.substring(0, equals).strip();
        String value = line.substring(equals + 1).strip();
        return switch (key) {
            case "sign" ->
                new Settings(
                        new ClinicSettings(one(SIGNS, value, where + "sign"), clinic.lengthUnit()), model, microphone);
            case "unit" ->
                new Settings(
                        new ClinicSettings(clinic.signConvention(), one(UNITS, value, where + "unit")),
                        model,
                        microphone);
            case "model" -> new Settings(clinic, Optional.of(folder(value, where)), microphone);
            case "microphone" -> new Settings(clinic, model, Optional.of(value));
            default ->
                throw new SettingsException(
                        where + "unknown key '" + key + "'; known are sign, unit, model, microphone");
        };
    }

    private static Path folder(String value, String where) throws SettingsException {
        try {
            return Path.of(value);
        } catch (InvalidPathException e) {
            throw new SettingsException(where + "model cannot be '" + value + "'; give the path of a folder");
        }
    }

    private static <T> T one(Map<String, T> allowed, String value, String what) throws SettingsException {
        T known = allowed.get(value);
        if (known == null) {
            throw new SettingsException(what + " cannot be '" + value + "'; use one of "
                    + String.join(", ", allowed.keySet().stream().sorted().toList()));
        }
        return known;
    }
}
