package org.arcsay.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Runs command lines on one data folder and keeps what they print. */
record Terminal(Path home) {
    /** What a command answered. */
    record Answer(int code, String out, String err) {
        void mustSay(int expectedCode, String... phrases) {
            assertEquals(expectedCode, code, this::toString);
            for (String phrase : phrases) {
                assertTrue((out + err).contains(phrase), () -> "no '" + phrase + "' in " + this);
            }
            assertFalse((out + err).contains("\tat "), () -> "a stack trace in " + this);
            assertFalse((out + err).contains("should not have"), () -> "an unforeseen failure in " + this);
        }
    }

    Answer arcsay(String... arguments) {
        List<String> all = new ArrayList<>(Arrays.asList(arguments));
        all.add("--home");
        all.add(home.toString());
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code =
                ArcsayCommand.run(new PrintWriter(out, true), new PrintWriter(err, true), all.toArray(String[]::new));
        return new Answer(code, out.toString(), err.toString());
    }
}
