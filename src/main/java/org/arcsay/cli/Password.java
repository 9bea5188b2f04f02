package org.arcsay.cli;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The option for a password, which never stands on the command line itself. Used by the thread that runs the command. */
final class Password {
    @Option(
            names = "--password-file",
            paramLabel = "FILE",
            description = "Take the password from the first line of FILE instead of asking for it;"
                    + " /dev/fd/3 is what the shell opened with 3<.")
    private @Nullable Path file;

    /** A password for a new file, typed twice; the caller clears it. */
    char[] fresh(Keyboard keyboard) throws CliException {
        if (file != null) {
            return fromFile(file);
        }
        char[] typed = ask(keyboard, "New password (at least 12 characters): ");
        char[] again = ask(keyboard, "The same password again: ");
        boolean same = Arrays.equals(typed, again);
        Arrays.fill(again, ' ');
        if (!same) {
            Arrays.fill(typed, ' ');
            throw new CliException(ExitCode.USAGE, "The two passwords differ. Nothing was written. Try again.");
        }
        return typed;
    }

    /** The password of an existing file; the caller clears it. */
    char[] known(Keyboard keyboard) throws CliException {
        return file != null ? fromFile(file) : ask(keyboard, "Password: ");
    }

    private static char[] ask(Keyboard keyboard, String question) throws CliException {
        return keyboard.secret(question)
                .orElseThrow(() -> new CliException(
                        ExitCode.USAGE,
                        "There is no terminal to ask for the password. Give --password-file FILE. Nothing was done."));
    }

    private static char[] fromFile(Path file) throws CliException {
        byte[] bytes;
        try {
            bytes = Files.readAllBytes(file);
        } catch (IOException e) {
            throw new CliException(
                    ExitCode.USAGE, "The password file " + file + " cannot be read. Nothing was done. Check its name.");
        }
        CharBuffer text = StandardCharsets.UTF_8.decode(ByteBuffer.wrap(bytes));
        int end = 0;
        while (end < text.length() && text.charAt(end) != '\n' && text.charAt(end) != '\r') {
            end++;
        }
        char[] line = new char[end];
        text.get(line);
        Arrays.fill(text.array(), ' ');
        Arrays.fill(bytes, (byte) 0);
        return line;
    }
}
