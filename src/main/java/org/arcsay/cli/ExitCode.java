package org.arcsay.cli;

/** What the program tells the shell when it ends; part of the interface and never renumbered. */
final class ExitCode {
    static final int OK = 0;
    /** Something failed that has no code of its own. */
    static final int FAILURE = 1;
    /** The command line was wrong. */
    static final int USAGE = 2;
    /** The sound could not be read, or there is no microphone. */
    static final int AUDIO = 3;
    /** The speech model is missing, damaged or unusable. */
    static final int MODEL = 4;
    /** The records file could not be opened or written. */
    static final int RECORDS = 5;
    /** There is no such patient or visit. */
    static final int UNKNOWN = 6;
    /** The settings or grammar file has an error. */
    static final int SETTINGS = 7;
    /** The self-check found something that needs attention. */
    static final int CHECK_FAILED = 8;
    /** Everything worked, but not one reading was understood. */
    static final int NO_READING = 9;
    /** The password does not open the file. */
    static final int PASSWORD = 10;
    /** Something that cannot be undone was not confirmed, so nothing was done. */
    static final int NOT_CONFIRMED = 11;
    /** The file to import is not sound, or cannot be read; nothing of it was stored. */
    static final int IMPORT = 12;

    private ExitCode() {}
}
