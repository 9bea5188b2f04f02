package org.arcsay.feedback;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.List;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.SourceDataLine;
import org.jspecify.annotations.Nullable;

/** Used by one thread, except for flushing. Plays on a sound device in the first format that the device takes. */
final class LineOutput implements PcmOutput {
    private static final int BUFFER_MILLIS = 80;
    private static final List<AudioFormat> FORMATS = List.of(
            format(Sound.RATE, 1), format(48_000, 1), format(48_000, 2), format(Sound.RATE, 2), format(32_000, 2));

    private final SourceDataLine line;
    private final int repeat;
    private short last;

    private LineOutput(SourceDataLine line) {
        this.line = line;
        this.repeat = (int) line.getFormat().getSampleRate() / Sound.RATE;
    }

    /**
     * Opens a device.
     *
     * @param device its name, or blank for the system's default
     * @throws SpeakerException when there is no such device or it takes no format
     */
    static LineOutput open(String device) throws SpeakerException {
        LineUnavailableException busy = null;
        for (AudioFormat format : FORMATS) {
            DataLine.Info info = new DataLine.Info(SourceDataLine.class, format);
            try {
                SourceDataLine line = find(device, info);
                if (line != null) {
                    line.open(format, format.getFrameSize() * (int) (format.getFrameRate() * BUFFER_MILLIS / 1000));
                    line.start();
                    return new LineOutput(line);
                }
            } catch (LineUnavailableException e) {
                busy = e;
            }
        }
        String name = device.isBlank() ? "the default sound output" : "the sound output '" + device + "'";
        throw new SpeakerException(
                busy == null
                        ? "There is no usable " + name.substring(4)
                                + ". Connect one, or set the answers to the screen only."
                        : "Another program holds " + name + ". Close it, or choose another output.",
                busy);
    }

    private static @Nullable SourceDataLine find(String device, DataLine.Info info) throws LineUnavailableException {
        if (device.isBlank()) {
            return AudioSystem.isLineSupported(info) ? (SourceDataLine) AudioSystem.getLine(info) : null;
        }
        for (Mixer.Info mixer : AudioSystem.getMixerInfo()) {
            if (mixer.getName().equals(device) && AudioSystem.getMixer(mixer).isLineSupported(info)) {
                return (SourceDataLine) AudioSystem.getMixer(mixer).getLine(info);
            }
        }
        return null;
    }

    /** Names of the devices that can play. */
    static List<String> devices() {
        DataLine.Info any = new DataLine.Info(SourceDataLine.class, null);
        return Arrays.stream(AudioSystem.getMixerInfo())
                .filter(mixer -> AudioSystem.getMixer(mixer).isLineSupported(any))
                .map(Mixer.Info::getName)
                .toList();
    }

    @Override
    public void write(Sound sound) {
        int channels = line.getFormat().getChannels();
        ByteBuffer bytes =
                ByteBuffer.allocate(sound.length() * repeat * channels * 2).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < sound.length(); i++) {
            short next = sound.sample(i);
            for (int step = 1; step <= repeat; step++) {
                short between = (short) (last + (next - last) * step / repeat);
                for (int channel = 0; channel < channels; channel++) {
                    bytes.putShort(between);
                }
            }
            last = next;
        }
        line.write(bytes.array(), 0, bytes.capacity());
    }

    @Override
    public void drain() {
        line.drain();
    }

    @Override
    public void flush() {
        line.flush();
    }

    @Override
    public void close() {
        line.close();
    }

    private static AudioFormat format(float rate, int channels) {
        return new AudioFormat(rate, 16, channels, true, false);
    }
}
