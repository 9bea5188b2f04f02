package org.arcsay.app;

import java.time.Duration;
import java.util.Arrays;
import org.arcsay.audio.AudioException;
import org.arcsay.audio.AudioSource;
import org.arcsay.feedback.EchoGate;

/** Sound from which our own voice is taken out; used by the thread that reads it. */
final class GatedSource implements AudioSource {
    private final AudioSource source;
    private final EchoGate gate;
    private short[] ready = new short[0];
    private int taken;

    GatedSource(AudioSource source, EchoGate gate) {
        this.source = source;
        this.gate = gate;
    }

    @Override
    public int sampleRate() {
        return source.sampleRate();
    }

    @Override
    public int read(short[] buffer) throws AudioException {
        if (taken == ready.length) {
            int length = source.read(buffer);
            if (length < 0) {
                return length;
            }
            ready = gate.pass(Arrays.copyOf(buffer, length));
            taken = 0;
        }
        int length = Math.min(buffer.length, ready.length - taken);
        System.arraycopy(ready, taken, buffer, 0, length);
        taken += length;
        return length;
    }

    /** Length of what was captured so far; what the gate still holds is part of it. */
    @Override
    public Duration position() {
        return source.position();
    }

    @Override
    public void close() {
        source.close();
    }
}
