package org.arcsay.cli;

import java.io.Console;
import java.util.Optional;

/** Where a command asks its user something; used by the thread that runs the command. */
interface Keyboard {
    /** What was typed after the question; empty when there is nobody to ask. */
    Optional<String> line(String question);

    /** As above, without showing what is typed; the caller clears it. */
    Optional<char[]> secret(String question);

    /** The terminal, if the program runs in one. */
    static Keyboard ofTerminal() {
        Optional<Console> console = Optional.ofNullable(System.console());
        return new Keyboard() {
            @Override
            public Optional<String> line(String question) {
                return console.map(terminal -> terminal.readLine("%s", question));
            }

            @Override
            public Optional<char[]> secret(String question) {
                return console.map(terminal -> terminal.readPassword("%s", question));
            }
        };
    }
}
