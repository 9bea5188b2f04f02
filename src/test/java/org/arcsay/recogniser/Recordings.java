package org.arcsay.recogniser;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.arcsay.audio.AudioException;
import org.arcsay.audio.AudioSource;
import org.arcsay.audio.WavSource;
import org.arcsay.model.Utterance;

/** The recordings among the test resources, and how they are heard. */
final class Recordings {
    static final Path FOLDER = Path.of("src/test/resources/speech");

    /** The whole visit that {@code visit.tsv} describes; it comes with the program as its demo. */
    static final Path VISIT = Path.of("src/main/resources/org/arcsay/demo/visit.wav");

    private static final int FRAMES_AT_A_TIME = 1600;

    /** A recording, who speaks and the words spoken in it. */
    record Clip(Path wav, String speaker, String words) {}

    private Recordings() {}

    static List<Clip> clips(Path folder) throws IOException {
        return Files.readAllLines(folder.resolve("clips.tsv")).stream()
                .skip(1)
                .map(line -> line.split("\t"))
                .map(fields -> new Clip(folder.resolve(fields[0]), fields[1], fields[2]))
                .toList();
    }

    static List<Utterance> hear(Recogniser recogniser, Path wav) throws AudioException {
        try (WavSource source = WavSource.open(wav)) {
            return hear(recogniser, source);
        }
    }

    static List<Utterance> hear(Recogniser recogniser, AudioSource source) throws AudioException {
        List<Utterance> heard = new ArrayList<>();
        short[] buffer = new short[FRAMES_AT_A_TIME];
        for (int frames = source.read(buffer); frames >= 0; frames = source.read(buffer)) {
            recogniser.accept(buffer, frames).ifPresent(heard::add);
        }
        recogniser.finish().ifPresent(heard::add);
        return withoutBreath(heard);
    }

    static List<Utterance> hear(Recogniser recogniser, short[] sound) {
        List<Utterance> heard = new ArrayList<>();
        for (int from = 0; from < sound.length; from += FRAMES_AT_A_TIME) {
            short[] block = Arrays.copyOfRange(sound, from, Math.min(sound.length, from + FRAMES_AT_A_TIME));
            recogniser.accept(block, block.length).ifPresent(heard::add);
        }
        recogniser.finish().ifPresent(heard::add);
        return withoutBreath(heard);
    }

    /** What is left of whole sentences that the program would act on. */
    static List<Utterance> withoutBreath(List<Utterance> heard) {
        return heard.stream().filter(utterance -> !utterance.isBreath()).toList();
    }

    /** All frames of a short file. */
    static short[] samples(Path wav) throws AudioException {
        try (WavSource source = WavSource.open(wav)) {
            int frames = (int) (source.length().orElseThrow().toNanos() * source.sampleRate() / 1_000_000_000L) + 1;
            short[] samples = new short[frames];
            return Arrays.copyOf(samples, source.read(samples));
        }
    }
}
