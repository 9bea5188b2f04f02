package org.arcsay.feedback;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;

/**
 * Used by the capture thread alone. Keeps the program's own voice out of the recogniser, and notices when the user speaks over it.
 *
 * <p>While an answer sounds, and for a short tail after it, every sample is replaced by silence: their number stays the same, so
 * that times in the recording stay right. Speech counts as the user's when it is clearly louder, for a while, than the loudest
 * echo met so far; then the answer is broken off and the last moments are let through as they were. Speech that is no louder
 * than the echo, but is not it, breaks the answer off too; since its beginning cannot be told from our own voice, all of that
 * sentence is silenced, and {@link #takeLost} says so. The first answer only teaches the gate how the echo sounds; later the estimate
 * rises slowly, so that a voice that swells is not taken for echo.
 */
public final class EchoGate {
    private static final Duration BLOCK = Duration.ofMillis(20);
    private static final Duration TAIL = Duration.ofMillis(200);
    private static final int BLOCKS_KEPT = 16;
    private static final int BLOCKS_JUDGED = 8;
    private static final int BLOCKS_OF_SPEECH = 5;
    private static final int BLOCKS_SMOOTHED = 5;
    private static final double ABOVE_ECHO = 9;
    private static final double BLOCK_ABOVE_ECHO = 3;
    private static final double ABOVE_ROOM = 12;
    private static final double ECHO_DECAY = 0.02;
    private static final double ECHO_RISE = 0.1;
    private static final double ROOM_RISE = 0.05;
    private static final double QUIETEST = BandLevels.QUIETEST;

    /** A voice that is not ours may still turn out to be clearly louder. */
    private static final int BLOCKS_SUSPECTED = 6;

    private static final int BLOCKS_OF_PAUSE = 20;
    private static final int BLOCKS_OF_TALK = 300;

    private final Speaker speaker;
    private final int blockLength;
    private final int tailLength;
    private final Deque<short[]> held = new ArrayDeque<>();
    private short[] block;
    private int filled;
    private int tailLeft;
    private final boolean[] voiced = new boolean[BLOCKS_JUDGED];
    private int opened;
    private final double[] recent = new double[BLOCKS_JUDGED];
    private int judged;
    private boolean answered;
    private boolean learnt;
    private final EchoBands bands;
    private int suspected;
    private int talk;
    private int talked;
    private int pause;
    private boolean lost;
    private double echo = QUIETEST;
    private double room = QUIETEST / 2;

    /**
     * @param rate samples a second of what is passed
     */
    public EchoGate(Speaker speaker, int rate) {
        this.speaker = speaker;
        this.blockLength = (int) (BLOCK.toMillis() * rate / 1000);
        this.tailLength = (int) (TAIL.toMillis() * rate / 1000);
        this.block = new short[blockLength];
        this.bands = new EchoBands(rate);
        forget();
    }

    private void forget() {
        Arrays.fill(recent, QUIETEST);
    }

    /**
     * Takes samples as they were captured and gives those the recogniser may hear: as many in the long run, some of them later
     * and silenced.
     */
    public short[] pass(short[] samples) {
        Collected out = new Collected(samples.length + (BLOCKS_KEPT + 1) * blockLength);
        for (short sample : samples) {
            block[filled++] = sample;
            if (filled == blockLength) {
                judge(block, out);
                block = new short[blockLength];
                filled = 0;
            }
        }
        return out.samples();
    }

    /** Whether samples are being silenced. */
    public boolean closed() {
        return tailLeft > 0 || talk > 0;
    }

    /** Whether the user said something that was silenced since this was last asked. */
    public boolean takeLost() {
        boolean was = lost;
        lost = false;
        return was;
    }

    /** Whether somebody is speaking while nothing is silenced. */
    public boolean hearsSpeech() {
        int count = 0;
        for (boolean one : voiced) {
            count += one ? 1 : 0;
        }
        return !closed() && count >= BLOCKS_OF_SPEECH;
    }

    private void judge(short[] next, Collected out) {
        double level = level(next);
        boolean sounding = speaker.sounding();
        if (sounding) {
            tailLeft = tailLength;
            answered = true;
            Arrays.fill(voiced, false);
        } else if (tailLeft > 0) {
            tailLeft -= blockLength;
        }
        if (!closed()) {
            open(next, level, out);
        } else if (talk > 0) {
            talkOn(level, sounding);
            mute(next, out);
        } else {
            close(next, level, sounding, out);
        }
    }

    private void close(short[] next, double level, boolean sounding, Collected out) {
        boolean foreign = bands.spokenOver(next, speaker.sound().orElse(null));
        suspected = foreign ? suspected + 1 : 0;
        if (spokenOver(level, sounding)) {
            breakIn(next, out);
            return;
        }
        if (suspected > BLOCKS_SUSPECTED && sounding) {
            breakOff();
        }
        mute(next, out);
    }

    private void breakOff() {
        speaker.stop();
        bands.forget();
        suspected = 0;
        talk = 1;
        talked = 0;
        pause = 0;
    }

    /** What is said over an answer goes on until a pause. */
    private void talkOn(double level, boolean sounding) {
        if (sounding || tailLeft > 0) {
            return;
        }
        talk++;
        boolean voice = level > room + ABOVE_ROOM;
        talked += voice ? 1 : 0;
        pause = voice ? 0 : pause + 1;
        if (pause >= BLOCKS_OF_PAUSE || talk > BLOCKS_OF_TALK) {
            lost = talked >= BLOCKS_OF_SPEECH;
            talk = 0;
        }
    }

    private void open(short[] next, double level, Collected out) {
        learnt |= answered;
        forget();
        bands.quiet(next);
        release(out, true);
        room = Math.min(level, room + ROOM_RISE);
        voiced[opened++ % BLOCKS_JUDGED] = level > room + ABOVE_ROOM;
        out.add(next);
    }

    /** Loud on the whole, and not just for one knock. */
    private boolean spokenOver(double level, boolean sounding) {
        recent[judged++ % BLOCKS_JUDGED] = level;
        double smoothed = smoothed();
        double own = Math.max(echo, bands.highest());
        boolean loud = learnt && smoothed > Math.max(own + ABOVE_ECHO, room + ABOVE_ROOM);
        if (!loud && sounding) {
            double highest = learnt ? Math.min(smoothed, echo + ECHO_RISE) : smoothed;
            echo = Math.max(highest, echo - ECHO_DECAY);
        }
        return loud && blocksAbove(own + BLOCK_ABOVE_ECHO) >= BLOCKS_OF_SPEECH;
    }

    private double smoothed() {
        double power = 0;
        for (int i = 1; i <= BLOCKS_SMOOTHED; i++) {
            power += Math.pow(10, recent[Math.floorMod(judged - i, BLOCKS_JUDGED)] / 10);
        }
        return 10 * Math.log10(power / BLOCKS_SMOOTHED);
    }

    private int blocksAbove(double level) {
        int count = 0;
        for (double one : recent) {
            count += one > level ? 1 : 0;
        }
        return count;
    }

    private void breakIn(short[] next, Collected out) {
        speaker.stop();
        tailLeft = 0;
        forget();
        bands.forget();
        release(out, false);
        out.add(next);
    }

    private void mute(short[] next, Collected out) {
        held.add(next);
        if (held.size() > BLOCKS_KEPT) {
            held.remove();
            out.add(new short[blockLength]);
        }
    }

    private void release(Collected out, boolean silenced) {
        while (!held.isEmpty()) {
            short[] kept = held.remove();
            out.add(silenced ? new short[blockLength] : kept);
        }
    }

    private static double level(short[] samples) {
        double sum = 0;
        for (short sample : samples) {
            sum += (double) sample * sample;
        }
        return BandLevels.decibels(sum / samples.length / (32768.0 * 32768.0));
    }

    private static final class Collected {
        private final short[] buffer;
        private int count;

        Collected(int capacity) {
            buffer = new short[capacity];
        }

        void add(short[] more) {
            System.arraycopy(more, 0, buffer, count, more.length);
            count += more.length;
        }

        short[] samples() {
            return Arrays.copyOf(buffer, count);
        }
    }
}
