package org.arcsay.recogniser;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Collection;
import java.util.Collections;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * SHA-256 checksums of files; immutable, for any thread. Their text form is that of the {@code sha256sum} program, so a
 * list can be made and checked without us.
 *
 * @param byFile lower-case hexadecimal checksum by path inside a folder, with forward slashes
 */
record Checksums(SortedMap<String, String> byFile) {
    static final Checksums NONE = new Checksums(Collections.emptySortedMap());

    private static final int BUFFER_BYTES = 1 << 16;
    private static final int SHORT = 12;

    /** Reads a list. */
    static Checksums parse(Reader text) throws IOException {
        SortedMap<String, String> byFile = new TreeMap<>();
        for (String line : new BufferedReader(text).lines().toList()) {
            String[] fields = line.strip().split("\\s+\\*?", 2);
            if (fields.length != 2) {
                throw new IOException("not a line of a checksum list: " + line);
            }
            byFile.put(fields[1].replaceFirst("^\\./", ""), fields[0]);
        }
        return new Checksums(byFile);
    }

    static Checksums parse(InputStream text) throws IOException {
        return parse(new InputStreamReader(text, StandardCharsets.UTF_8));
    }

    /** Computes those of the given files. */
    static Checksums of(Path folder, Collection<String> files) throws IOException {
        SortedMap<String, String> byFile = new TreeMap<>();
        for (String file : files) {
            byFile.put(file, of(folder.resolve(file)));
        }
        return new Checksums(byFile);
    }

    /** Computes those of files that are not written yet. */
    static Checksums of(Map<String, byte[]> contents) {
        SortedMap<String, String> byFile = new TreeMap<>();
        contents.forEach((file, content) -> byFile.put(file, of(content)));
        return new Checksums(byFile);
    }

    private static String of(Path file) throws IOException {
        MessageDigest digest = sha256();
        byte[] buffer = new byte[BUFFER_BYTES];
        try (InputStream in = Files.newInputStream(file)) {
            for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                digest.update(buffer, 0, n);
            }
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    private static String of(byte[] bytes) {
        return HexFormat.of().formatHex(sha256().digest(bytes));
    }

    /** The files of another list that this one lacks or holds otherwise. */
    List<String> differing(Checksums expected) {
        return expected.byFile.entrySet().stream()
                .filter(entry -> !entry.getValue().equals(byFile.get(entry.getKey())))
                .map(Map.Entry::getKey)
                .toList();
    }

    /** Those of some of the files. */
    Checksums only(Collection<String> files) {
        SortedMap<String, String> some = new TreeMap<>(byFile);
        some.keySet().retainAll(files);
        return new Checksums(some);
    }

    /** Short name for the whole list. */
    String id() {
        String text = byFile.entrySet().stream()
                .map(entry -> entry.getValue() + "  " + entry.getKey() + "\n")
                .collect(Collectors.joining());
        return of(text.getBytes(StandardCharsets.UTF_8)).substring(0, SHORT);
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new AssertionError("every Java has SHA-256", e);
        }
    }
}
