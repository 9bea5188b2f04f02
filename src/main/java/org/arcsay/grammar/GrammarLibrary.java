package org.arcsay.grammar;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** Where the text of an imported grammar comes from: {@code arcsay.spoken} is in a file {@code spoken.jsgf}. */
@FunctionalInterface
interface GrammarLibrary {
    /**
     * The text of a grammar, or nothing where there is none of that name.
     *
     * @param grammar full name, such as {@code arcsay.spoken}
     * @throws GrammarException when there is one and it cannot be read
     */
    Optional<String> text(String grammar) throws GrammarException;

    /** The grammars that come with the program. */
    static Optional<String> bundled(String grammar) {
        try (InputStream in = GrammarLibrary.class.getResourceAsStream("/org/arcsay/grammar/" + fileName(grammar))) {
            return in == null ? Optional.empty() : Optional.of(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The grammars beside a file; those that are not there are the ones that come with the program. */
    static GrammarLibrary beside(Path file) {
        return grammar -> {
            Path other = file.resolveSibling(fileName(grammar));
            return Files.exists(other) ? Optional.of(SpokenGrammar.textOf(other)) : bundled(grammar);
        };
    }

    private static String fileName(String grammar) {
        return grammar.substring(grammar.lastIndexOf('.') + 1) + ".jsgf";
    }
}
