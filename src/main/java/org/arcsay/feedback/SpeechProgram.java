package org.arcsay.feedback;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/**
 * A program of the operating system that speaks text.
 *
 * @param speak its name and arguments; the text follows as the last one
 * @param cancel a command that silences it when ending the program is not enough, or empty
 */
public record SpeechProgram(List<String> speak, List<String> cancel) {
    private static final int NORMAL_WORDS_A_MINUTE = 175;

    public SpeechProgram {
        speak = List.copyOf(speak);
        cancel = List.copyOf(cancel);
    }

    /** The first of {@code say}, {@code espeak-ng} and {@code spd-say} that is on the search path of this machine. */
    public static Optional<SpeechProgram> find(double rate) {
        return find(rate, SpeechProgram::onPath);
    }

    static Optional<SpeechProgram> find(double rate, Predicate<String> installed) {
        String words = Long.toString(Math.round(NORMAL_WORDS_A_MINUTE * rate));
        String percent = Long.toString(Math.max(-100, Math.min(100, Math.round((rate - 1) * 100))));
        List<SpeechProgram> known = List.of(
                new SpeechProgram(List.of("say", "-r", words, "--"), List.of()),
                new SpeechProgram(List.of("espeak-ng", "-s", words, "--"), List.of()),
                new SpeechProgram(List.of("spd-say", "--wait", "-r", percent, "--"), List.of("spd-say", "--cancel")));
        return known.stream()
                .filter(program -> installed.test(program.speak().get(0)))
                .findFirst();
    }

    /** The whole command for a text. */
    List<String> saying(String text) {
        List<String> command = new ArrayList<>(speak);
        command.add(text);
        return command;
    }

    private static boolean onPath(String name) {
        String path = Optional.ofNullable(System.getenv("PATH")).orElse("");
        return Pattern.compile(Pattern.quote(File.pathSeparator))
                .splitAsStream(path)
                .filter(folder -> !folder.isBlank())
                .anyMatch(folder -> Files.isExecutable(Path.of(folder, name)));
    }
}
