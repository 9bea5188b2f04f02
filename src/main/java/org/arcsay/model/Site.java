package org.arcsay.model;

/**
 * A joint or landmark, named by its code in the table {@code sites.tsv} ("IP", "MP", "index tip", "index PIP", "wrist").
 *
 * @param code the code: letters, digits and single spaces
 */
public record Site(String code) implements Comparable<Site> {
    public Site {
        if (!code.matches("[A-Za-z0-9]+( [A-Za-z0-9]+)*")) {
            throw new IllegalArgumentException("not a site code: '" + code + "'");
        }
    }

    @Override
    public int compareTo(Site other) {
        return code.compareTo(other.code);
    }

    @Override
    public String toString() {
        return code;
    }
}
