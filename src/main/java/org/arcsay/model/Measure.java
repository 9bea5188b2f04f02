package org.arcsay.model;

import java.util.Locale;

/**
 * Something that can be measured once a side and a mode are known: a motion at a site.
 *
 * @param site the joint or landmark
 * @param motion what is measured there
 */
public record Measure(Site site, Motion motion) {
    public static Measure of(String siteCode, Motion motion) {
        return new Measure(new Site(siteCode), motion);
    }

    /** Stable text identity, such as {@code IP:FLEXION}, used in files and in the database. */
    public String id() {
        return site.code() + ":" + motion.name();
    }

    /**
     * The reverse of {@link #id()}.
     *
     * @throws IllegalArgumentException when the text is not an id
     */
    public static Measure parse(String id) {
        int colon = id.indexOf(':');
        if (colon < 0) {
            throw new IllegalArgumentException("not a measure id: '" + id + "'");
        }
        return of(id.substring(0, colon), Motion.valueOf(id.substring(colon + 1).toUpperCase(Locale.ROOT)));
    }

    public Dimension dimension() {
        return motion.dimension();
    }

    /** The same site with another motion, for rules that compare flexion with extension. */
    public Measure withMotion(Motion other) {
        return new Measure(site, other);
    }

    /** Plain words, such as "IP flexion", "opposition to index tip" or "opposition score". */
    public String words() {
        return switch (motion) {
            case OPPOSITION_GAP -> "opposition to " + site.code();
            case OPPOSITION_SCORE -> "opposition score";
            case WEB_SPAN -> "web space";
            default -> site.code() + " " + motion.words();
        };
    }
}
