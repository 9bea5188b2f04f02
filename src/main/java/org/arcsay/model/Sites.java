package org.arcsay.model;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;

/** The table of joints and landmarks: adding one is a line in {@code tables/sites.tsv}. */
public final class Sites {
    private static final Sites STANDARD = load();

    private final Map<Site, Info> bySite;

    private Sites(Map<Site, Info> bySite) {
        this.bySite = bySite;
    }

    /**
     * What is known of a site.
     *
     * @param site the site
     * @param ray the part it belongs to: "thumb", "index", "middle", "ring", "little" or "wrist"
     * @param naturalExtension whether extension past neutral is natural there, so that "extension 20" needs no kind
     * @param label short name for headings
     */
    public record Info(Site site, String ray, boolean naturalExtension, String label) {}

    public static Sites standard() {
        return STANDARD;
    }

    /**
     * @throws IllegalArgumentException when the table has no such site
     */
    public Info info(Site site) {
        Info info = bySite.get(site);
        if (info == null) {
            throw new IllegalArgumentException("unknown joint or landmark: '" + site + "'");
        }
        return info;
    }

    public boolean knows(Site site) {
        return bySite.containsKey(site);
    }

    public Collection<Info> all() {
        return bySite.values();
    }

    private static Sites load() {
        Map<Site, Info> sites = new LinkedHashMap<>();
        try (InputStream in = Objects.requireNonNull(Sites.class.getResourceAsStream("/org/arcsay/tables/sites.tsv"));
                BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            reader.lines()
                    .filter(line -> !line.isBlank() && !line.startsWith("#"))
                    .map(line -> line.split("\t"))
                    .map(cell -> new Info(new Site(cell[0]), cell[1], cell[2].equals("yes"), cell[3]))
                    .forEach(info -> sites.put(info.site(), info));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new Sites(sites);
    }
}
