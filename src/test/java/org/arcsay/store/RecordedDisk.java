package org.arcsay.store;

import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/**
 * For one thread. What a process did to its files, replayed up to a loss of power.
 *
 * <p>What was forced to the disk is there. Of what was written since, each sector of 512 bytes is there or not, by chance; of the
 * names given and taken away since the folder was forced, the first few are.
 */
final class RecordedDisk {
    private static final int SECTOR = 512;

    /** One call: W write, S force, T cut, U remove, R rename. */
    record Step(char kind, String path, String other, long number, byte[] bytes) {}

    /** The content of one file: what is safe and what came since. */
    private static final class Content {
        private byte[] safe = new byte[0];
        private final List<Step> since = new ArrayList<>();

        void force() {
            byte[] now = safe;
            for (Step step : since) {
                now = step.kind() == 'T'
                        ? Arrays.copyOf(now, (int) step.number())
                        : write(now, (int) step.number(), step.bytes(), 0, step.bytes().length);
            }
            safe = now;
            since.clear();
        }

        byte[] afterLoss(Random random) {
            byte[] now = safe;
            for (Step step : since) {
                if (step.kind() == 'T') {
                    now = random.nextBoolean() ? Arrays.copyOf(now, (int) step.number()) : now;
                } else {
                    now = someSectors(now, step, random);
                }
            }
            return now;
        }

        private static byte[] someSectors(byte[] before, Step step, Random random) {
            byte[] now = before;
            for (int from = 0; from < step.bytes().length; from += SECTOR) {
                if (random.nextBoolean()) {
                    int length = Math.min(SECTOR, step.bytes().length - from);
                    now = write(now, (int) step.number() + from, step.bytes(), from, length);
                }
            }
            return now;
        }

        private static byte[] write(byte[] before, int at, byte[] bytes, int from, int length) {
            byte[] now = at + length > before.length ? Arrays.copyOf(before, at + length) : before.clone();
            System.arraycopy(bytes, from, now, at, length);
            return now;
        }
    }

    private final Path folder;
    private final Map<String, Content> names = new LinkedHashMap<>();
    private final List<Map<String, Content>> namesSinceForced = new ArrayList<>(List.of(Map.of()));

    RecordedDisk(Path folder) {
        this.folder = folder;
    }

    static List<Step> read(Path log) throws IOException {
        List<Step> steps = new ArrayList<>();
        try (DataInputStream in = new DataInputStream(new java.io.BufferedInputStream(Files.newInputStream(log)))) {
            for (String line = line(in); line != null; line = line(in)) {
                steps.add(step(line.split(" "), in));
            }
        }
        return steps;
    }

    private static Step step(String[] words, DataInputStream in) throws IOException {
        char kind = words[0].charAt(0);
        return switch (kind) {
            case 'W' -> {
                byte[] bytes = new byte[Integer.parseInt(words[3])];
                in.readFully(bytes);
                yield new Step(kind, words[1], "", Long.parseLong(words[2]), bytes);
            }
            case 'T' -> new Step(kind, words[1], "", Long.parseLong(words[2]), new byte[0]);
            case 'R' -> new Step(kind, words[1], words[2], 0, new byte[0]);
            default -> new Step(kind, words[1], "", 0, new byte[0]);
        };
    }

    private static String line(DataInputStream in) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            for (byte b = in.readByte(); b != '\n'; b = in.readByte()) {
                bytes.write(b);
            }
        } catch (EOFException e) {
            return null;
        }
        return bytes.toString(StandardCharsets.UTF_8);
    }

    void apply(Step step) {
        switch (step.kind()) {
            case 'U' -> names.remove(step.path());
            case 'R' -> names.put(step.other(), names.remove(step.path()));
            case 'S' -> force(step.path());
            default ->
                names.computeIfAbsent(step.path(), path -> new Content()).since.add(step);
        }
        if (!names.equals(namesSinceForced.get(namesSinceForced.size() - 1))) {
            namesSinceForced.add(Map.copyOf(names));
        }
    }

    private void force(String path) {
        if (path.equals(folder.toString())) {
            namesSinceForced.clear();
            namesSinceForced.add(Map.copyOf(names));
        } else {
            names.computeIfAbsent(path, created -> new Content()).force();
        }
    }

    /** Puts what the loss of power leaves into another folder. */
    void lose(Random random, Path target) throws IOException {
        Map<String, Content> left = namesSinceForced.get(random.nextInt(namesSinceForced.size()));
        for (Map.Entry<String, Content> file : left.entrySet()) {
            Path name = target.resolve(folder.relativize(Path.of(file.getKey())));
            Files.write(name, file.getValue().afterLoss(random));
        }
    }
}
