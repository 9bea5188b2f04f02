package org.arcsay.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/** For one thread. Runs commands in one data folder, as somebody who may or may not sit at a terminal. */
final class Shell {
    private final Path home;
    private final Deque<String> typed = new ArrayDeque<>();

    Shell(Path home) {
        this.home = home;
    }

    /** What a command said, and its exit code. */
    record Answer(int code, String out, String err) {
        Answer mustSay(int expectedCode, String... phrases) {
            assertEquals(expectedCode, code, this::toString);
            for (String phrase : phrases) {
                assertTrue((out + err).contains(phrase), () -> "no '" + phrase + "' in " + this);
            }
            assertFalse((out + err).contains("\tat "), () -> "a stack trace in " + this);
            assertFalse((out + err).contains("should not have"), () -> "an unforeseen failure in " + this);
            return this;
        }
    }

    /** What is typed when the next command asks; without it there is nobody to ask. */
    Shell typing(String... answers) {
        typed.addAll(List.of(answers));
        return this;
    }

    Answer arcsay(String... arguments) {
        List<String> all = new ArrayList<>(Arrays.asList(arguments));
        if (!all.contains("--home")) {
            all.addAll(List.of("--home", home.toString()));
        }
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = ArcsayCommand.run(
                new PrintWriter(out, true), new PrintWriter(err, true), new Hands(), all.toArray(String[]::new));
        assertTrue(typed.isEmpty(), () -> "never asked for " + typed);
        return new Answer(code, out.toString(), err.toString());
    }

    private final class Hands implements Keyboard {
        @Override
        public Optional<String> line(String question) {
            return Optional.ofNullable(typed.poll());
        }

        @Override
        public Optional<char[]> secret(String question) {
            return line(question).map(String::toCharArray);
        }
    }
}
