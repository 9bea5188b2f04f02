package org.arcsay.audio;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.stream.Stream;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.Line;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.TargetDataLine;
import org.jspecify.annotations.Nullable;

/** A recording device of the system; used as {@link CaptureDevice} says. */
final class LineDevice implements CaptureDevice {
    /** Mono before stereo, and the recogniser's own rate first: many devices refuse one or the other. */
    private static final List<PcmFormat> FORMATS = Stream.of(1, 2)
            .flatMap(channels -> Stream.of(16_000, 48_000, 44_100).map(rate -> new PcmFormat(rate, channels, 16)))
            .toList();

    private static final int LINE_BUFFER_SECONDS = 2;

    private final @Nullable String name;
    private @Nullable TargetDataLine line;

    LineDevice(@Nullable String name) {
        this.name = name;
    }

    static List<String> names() {
        return recorders().map(Mixer.Info::getName).toList();
    }

    private static Stream<Mixer.Info> recorders() {
        Line.Info recording = new Line.Info(TargetDataLine.class);
        return Arrays.stream(AudioSystem.getMixerInfo())
                .filter(info -> AudioSystem.getMixer(info).isLineSupported(recording));
    }

    @Override
    public PcmFormat start() throws AudioException {
        Mixer mixer = AudioSystem.getMixer(chosen());
        for (PcmFormat format : FORMATS) {
            TargetDataLine candidate = open(mixer, format);
            if (candidate != null) {
                candidate.start();
                line = candidate;
                return format;
            }
        }
        throw new AudioException("The microphone " + mixer.getMixerInfo().getName()
                + " cannot be opened: it is in use by another program, or offers neither 16, 48 nor 44.1 kHz."
                + " Close the other program or choose another microphone.");
    }

    private Mixer.Info chosen() throws AudioException {
        List<Mixer.Info> all = recorders().toList();
        if (all.isEmpty()) {
            throw new AudioException("No microphone was found. Plug one in and try again; entries can also be typed,"
                    + " and a recording can be read from a WAV file.");
        }
        if (name == null) {
            return all.get(0);
        }
        String wanted = name.toLowerCase(Locale.ROOT);
        Predicate<Mixer.Info> same = info -> info.getName().equals(name);
        Predicate<Mixer.Info> similar =
                info -> info.getName().toLowerCase(Locale.ROOT).contains(wanted);
        return Stream.of(same, similar)
                .flatMap(test -> all.stream().filter(test))
                .findFirst()
                .orElseThrow(() -> new AudioException("There is no microphone called \"" + name + "\". There are: "
                        + String.join("; ", names()) + "."));
    }

    private static @Nullable TargetDataLine open(Mixer mixer, PcmFormat format) {
        AudioFormat wanted = new AudioFormat(format.sampleRate(), format.bits(), format.channels(), true, false);
        DataLine.Info info = new DataLine.Info(TargetDataLine.class, wanted);
        if (!mixer.isLineSupported(info)) {
            return null;
        }
        try {
            TargetDataLine line = (TargetDataLine) mixer.getLine(info);
            line.open(wanted, format.sampleRate() * format.bytesPerFrame() * LINE_BUFFER_SECONDS);
            return line;
        } catch (LineUnavailableException | IllegalArgumentException | SecurityException e) {
            return null;
        }
    }

    @Override
    public int read(byte[] bytes) throws AudioException {
        TargetDataLine open = line;
        if (open == null || !open.isOpen()) {
            throw new AudioException(CaptureStatus.State.DEVICE_LOST.sentence());
        }
        if (open.available() < bytes.length) {
            return 0;
        }
        int length = open.read(bytes, 0, bytes.length);
        if (length <= 0) {
            throw new AudioException(CaptureStatus.State.DEVICE_LOST.sentence());
        }
        return length;
    }

    @Override
    public boolean waitsForReader() {
        return false;
    }

    @Override
    public void stop() {
        TargetDataLine open = line;
        line = null;
        if (open != null) {
            open.close();
        }
    }
}
