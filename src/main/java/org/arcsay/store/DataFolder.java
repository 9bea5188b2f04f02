package org.arcsay.store;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Where this program keeps its files.
 *
 * <p>Linux follows the XDG Base Directory Specification 0.8 (a variable counts only when it holds an absolute path).
 *
 * @param data the records and their backups
 * @param config settings as text
 * @param cache what can be made again, such as the unpacked speech model
 */
public record DataFolder(Path data, Path config, Path cache) {
    /** The environment variable that names one folder for everything. */
    public static final String VARIABLE = "ARCSAY_HOME";

    private static final String NAME = "arcsay";

    /**
     * The folder of this machine and user: the option if given, else the variable {@value #VARIABLE}, else the place that the
     * operating system foresees. Creates nothing.
     *
     * @param option a folder named by the user
     */
    public static DataFolder resolve(Optional<Path> option) {
        return resolve(
                option, System.getenv(), System.getProperty("os.name"), Path.of(System.getProperty("user.home")));
    }

    static DataFolder resolve(Optional<Path> option, Map<String, String> environment, String system, Path home) {
        if (option.isPresent()) {
            return under(option.get());
        }
        String variable = environment.getOrDefault(VARIABLE, "");
        if (!variable.isBlank()) {
            return under(Path.of(variable));
        }
        String name = system.toLowerCase(Locale.ROOT);
        if (name.startsWith("mac")) {
            return mac(home.resolve("Library"));
        }
        return name.startsWith("windows") ? windows(environment, home) : xdg(environment, home);
    }

    private static DataFolder under(Path folder) {
        Path root = folder.toAbsolutePath().normalize();
        return new DataFolder(root, root.resolve("config"), root.resolve("cache"));
    }

    private static DataFolder mac(Path library) {
        Path support = library.resolve("Application Support").resolve("Arcsay");
        return new DataFolder(
                support, support.resolve("config"), library.resolve("Caches").resolve("Arcsay"));
    }

    private static DataFolder windows(Map<String, String> environment, Path home) {
        return under(
                absolute(environment, "LOCALAPPDATA", home.resolve("AppData").resolve("Local"))
                        .resolve("Arcsay"));
    }

    private static DataFolder xdg(Map<String, String> environment, Path home) {
        return new DataFolder(
                absolute(environment, "XDG_DATA_HOME", home.resolve(".local").resolve("share"))
                        .resolve(NAME),
                absolute(environment, "XDG_CONFIG_HOME", home.resolve(".config"))
                        .resolve(NAME),
                absolute(environment, "XDG_CACHE_HOME", home.resolve(".cache")).resolve(NAME));
    }

    private static Path absolute(Map<String, String> environment, String variable, Path otherwise) {
        String value = environment.getOrDefault(variable, "");
        return !value.isBlank() && Path.of(value).isAbsolute() ? Path.of(value) : otherwise;
    }

    /**
     * Creates what is missing, readable and writable by the owner only.
     *
     * @return this
     * @throws StoreException when a folder cannot be created
     */
    public DataFolder create() throws StoreException {
        for (Path folder : new Path[] {data, backups(), config, cache}) {
            try {
                OwnerOnly.createFolder(folder);
            } catch (IOException e) {
                throw Failures.of(folder, e);
            }
        }
        return this;
    }

    /** The file with all visits. */
    public Path database() {
        return data.resolve("arcsay.db");
    }

    /** Where a review keeps what is half typed. */
    public Path drafts() {
        return data.resolve("drafts");
    }

    public Path backups() {
        return data.resolve("backups");
    }

    /** Recordings of visits, where the user wanted them kept. */
    public KeptSound sound() {
        return new KeptSound(data.resolve("sound"));
    }

    /** Where a bundled speech model is unpacked. */
    public Path models() {
        return cache.resolve("models");
    }

    /** The settings file, which need not exist. */
    public Path settings() {
        return config.resolve("settings.properties");
    }
}
