package org.arcsay.app;

/** Entry point of the program. */
public final class Main {
    private Main() {}

    public static void main(String[] args) {}
}
