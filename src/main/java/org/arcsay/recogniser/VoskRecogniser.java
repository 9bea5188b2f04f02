package org.arcsay.recogniser;

import com.sun.jna.Pointer;
import java.time.Duration;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.Supplier;
import org.arcsay.model.Utterance;
import org.jspecify.annotations.Nullable;

/**
 * The native recogniser; owned by the thread that made it, and calls from another fail.
 *
 * <p>The native library throws away and rebuilds its pipeline at the first pause after ten minutes, together with up to a
 * second of sound that it has taken in but not looked at. To lose nothing, a new native recogniser is made before that
 * time, in a pause, and hears again what came after the last word. This also bounds the native memory of a long visit.
 */
public final class VoskRecogniser implements Recogniser {
    /** Half the time after which the native library would do it. */
    static final Duration RENEWAL = Duration.ofMinutes(5);

    private static final Duration REPLAY = Duration.ofMillis(1500);

    /** A word sounds on after its marked end, up to 0.25 s in our recordings; a pause lasts at least 0.5 s. */
    private static final Duration FADING = Duration.ofMillis(300);

    /**
     * Silence before the first sound and after the last one, longer than the network looks back and ahead (0.34 s) and
     * hears at a time. The native library repeats the first and the last frame instead, which can sound like a word.
     */
    static final Duration MARGIN = Duration.ofMillis(800);

    /** More than the lattice of a reading usually holds; its width is in the model's conf. */
    private static final int ALTERNATIVES = 30;

    private static final int FAILED = -1;
    private static final int END_OF_UTTERANCE = 1;

    private final Thread owner = Thread.currentThread();
    private final VoskLibrary library;
    private final Supplier<Pointer> maker;
    private final int sampleRate;
    private final Duration renewal;
    private final RecentSound recent;
    private final RecentLevels levels;
    private final NoiseFloor floor = new NoiseFloor();
    private final FollowingNoise noise;
    private final SecondHearing secondHearing;
    private @Nullable Pointer handle;

    /** Position of the whole stream at which the native recogniser's own time began. */
    private long origin;

    /** Everything before this position is settled. */
    private long settled;

    private boolean renewalDue;

    /**
     * Makes a recogniser owned by the calling thread.
     *
     * @param maker makes the native one, on every renewal anew
     * @param renewal after which time the next pause is used to renew it
     */
    VoskRecogniser(VoskLibrary library, Supplier<@Nullable Pointer> maker, int sampleRate, Duration renewal) {
        this.library = library;
        this.maker = () -> made(maker.get());
        this.sampleRate = sampleRate;
        this.renewal = renewal;
        recent = new RecentSound((int) frames(SecondHearing.LONGEST));
        levels = new RecentLevels(sampleRate);
        noise = new FollowingNoise(sampleRate);
        secondHearing = new SecondHearing(library, this.maker, (int) frames(MARGIN));
        begin(0);
    }

    /** A fresh native recogniser, whose time begins, after a margin, some frames before the end of what was heard so far. */
    private Pointer begin(int replayed) {
        Pointer fresh = maker.get();
        free();
        handle = fresh;
        origin = recent.total() - replayed;
        renewalDue = false;
        heardAfterMargin(fresh);
        return fresh;
    }

    /** What the native recogniser has heard so far, with a margin of silence after it. */
    private Optional<Utterance> heardAfterMargin(Pointer open) {
        int silence = (int) frames(MARGIN);
        endsUtterance(open, noise.atOnce(floor.under(new short[silence], silence)), silence);
        Optional<Utterance> utterance = utterance(library.vosk_recognizer_result(open));
        origin -= silence;
        return utterance;
    }

    private Pointer made(@Nullable Pointer made) {
        if (made == null) {
            throw new RecogniserException("The speech model does not work with sound at " + sampleRate
                    + " Hz, or is damaged. Use 16000 Hz, or unpack the model again.");
        }
        library.vosk_recognizer_set_words(made, 1);
        library.vosk_recognizer_set_max_alternatives(made, ALTERNATIVES);
        return made;
    }

    @Override
    public Optional<Utterance> accept(short[] samples, int length) {
        Pointer open = mine();
        short[] floored = floor.under(samples, length);
        levels.add(floored, length);
        short[] noisy = noise.under(floored, length);
        if (!renewalDue) {
            return feed(open, noisy, noisy);
        }
        short[] replay = recent.since(Math.max(settled, recent.total() - frames(REPLAY)));
        short[] all = Arrays.copyOf(replay, replay.length + noisy.length);
        System.arraycopy(noisy, 0, all, replay.length, noisy.length);
        return feed(begin(replay.length), all, noisy);
    }

    /** Hands sound to the native recogniser, of which the new part has not been accounted for yet. */
    private Optional<Utterance> feed(Pointer open, short[] sound, short[] added) {
        if (sound.length == 0) {
            return Optional.empty();
        }
        recent.add(added, added.length);
        return endsUtterance(open, sound, sound.length) ? endOfUtterance(open) : Optional.empty();
    }

    private boolean endsUtterance(Pointer open, short[] sound, int length) {
        int state = library.vosk_recognizer_accept_waveform_s(open, sound, length);
        if (state == FAILED) {
            throw failure();
        }
        return state == END_OF_UTTERANCE;
    }

    private Optional<Utterance> endOfUtterance(Pointer open) {
        Optional<Utterance> utterance = utterance(library.vosk_recognizer_result(open));
        utterance.ifPresent(heard -> settled = frames(heard.end().plus(FADING)));
        renewalDue = recent.total() - origin > frames(renewal);
        return utterance;
    }

    @Override
    public Optional<String> partial() {
        return VoskJson.partial(library.vosk_recognizer_partial_result(mine()));
    }

    @Override
    public Optional<Utterance> finish() {
        Pointer open = mine();
        short[] rest = noise.rest();
        Optional<Utterance> utterance = feed(open, rest, rest).or(() -> heardAfterMargin(open));
        settled = recent.total();
        return utterance;
    }

    private Optional<Utterance> utterance(String json) {
        return VoskJson.utterance(json, time(origin))
                .map(heard -> heard.above(levels.signalToNoise(frames(heard.start()), frames(heard.end()))))
                .map(this::heardAgain);
    }

    private Utterance heardAgain(Utterance first) {
        if (!SecondHearing.isNeeded(first)) {
            return first;
        }
        long from = Math.max(settled, frames(first.start().minus(SecondHearing.AROUND)));
        short[] sound = recent.since(from);
        int length = (int) Math.min(sound.length, frames(first.end().plus(SecondHearing.AROUND)) - from);
        boolean complete = sound.length == recent.total() - from && length > 0;
        return complete ? secondHearing.together(first, Arrays.copyOf(sound, length), time(from)) : first;
    }

    @Override
    public void reset() {
        mine();
        short[] rest = noise.rest();
        recent.add(rest, rest.length);
        begin(0);
        settled = recent.total();
    }

    @Override
    public void close() {
        if (handle != null) {
            mine();
            free();
        }
    }

    private void free() {
        if (handle != null) {
            library.vosk_recognizer_free(handle);
            handle = null;
        }
    }

    private Pointer mine() {
        if (Thread.currentThread() != owner) {
            throw new IllegalStateException("the recogniser belongs to thread " + owner.getName() + ", but thread "
                    + Thread.currentThread().getName() + " called it");
        }
        if (handle == null) {
            throw new IllegalStateException("the recogniser is closed");
        }
        return handle;
    }

    private static RecogniserException failure() {
        return new RecogniserException("The speech recogniser stopped working. What was saved is safe;"
                + " start listening again, and check the speech model if it happens twice.");
    }

    private long frames(Duration duration) {
        return Math.round(duration.toNanos() * (sampleRate / 1e9));
    }

    private Duration time(long frames) {
        return Duration.ofNanos(Math.round(frames * 1e9 / sampleRate));
    }
}
