package org.arcsay.feedback;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;

/**
 * Any thread may use it. A speaker without a device: keeps what would sound on the time line of a clock, so that a simulated
 * visit can be heard and measured afterwards.
 */
public final class RecordingSpeaker implements Speaker {
    private final ClipVoice voice = ClipVoice.builtIn();
    private final VoiceSettings settings;
    private final LongSupplier clock;
    private final List<Said> said = new ArrayList<>();

    /**
     * @param clock how many samples of {@link Sound#RATE} have passed, never going back
     */
    public RecordingSpeaker(VoiceSettings settings, LongSupplier clock) {
        this.settings = settings;
        this.clock = clock;
    }

    /**
     * An answer on the time line.
     *
     * @param answer what was said
     * @param start its first sample
     * @param sound what became audible of it
     */
    public record Said(Answer answer, long start, Sound sound) {
        public long end() {
            return start + sound.length();
        }
    }

    @Override
    public synchronized void answer(Answer answer) {
        Answer audible = answer.at(settings.level());
        stop();
        if (!audible.isSilent()) {
            said.add(new Said(audible, clock.getAsLong(), voice.say(audible, settings.rate())));
        }
    }

    @Override
    public synchronized void stop() {
        if (sounding()) {
            Said last = said.remove(said.size() - 1);
            int heard = (int) (clock.getAsLong() - last.start());
            said.add(new Said(last.answer(), last.start(), last.sound().slice(0, heard)));
        }
    }

    @Override
    public synchronized boolean sounding() {
        return !said.isEmpty() && clock.getAsLong() < said.get(said.size() - 1).end();
    }

    @Override
    public synchronized Optional<Sound> sound() {
        return sounding() ? Optional.of(said.get(said.size() - 1).sound()) : Optional.empty();
    }

    @Override
    public void close() {
        stop();
    }

    /** Everything said so far, in order. */
    public synchronized List<Said> said() {
        return List.copyOf(said);
    }

    /** The sample that sounds at a moment, 0 when nothing does. */
    public synchronized short sampleAt(long moment) {
        for (int i = said.size() - 1; i >= 0; i--) {
            Said part = said.get(i);
            if (part.start() <= moment) {
                return moment < part.end() ? part.sound().sample((int) (moment - part.start())) : 0;
            }
        }
        return 0;
    }

    /** All that sounded from the first sample of the clock until now, with the silence between. */
    public synchronized Sound track() {
        long end = Math.max(
                clock.getAsLong(),
                said.isEmpty() ? 0 : said.get(said.size() - 1).end());
        short[] track = new short[Math.toIntExact(end)];
        for (Said part : said) {
            System.arraycopy(
                    part.sound().samples(),
                    0,
                    track,
                    (int) part.start(),
                    part.sound().length());
        }
        return Sound.of(track);
    }
}
