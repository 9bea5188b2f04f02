package org.arcsay.app;

/** What the program is called. */
public final class Program {
    /** Name and version, as reports and {@code --version} show them. */
    public static final String NAME = "Arcsay 0.1.0";

    private Program() {}
}
