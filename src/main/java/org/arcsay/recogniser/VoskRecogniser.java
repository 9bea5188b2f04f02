package org.arcsay.recogniser;

import com.sun.jna.Pointer;
import java.time.Duration;
import java.util.Optional;
import java.util.function.Function;
import org.arcsay.model.Utterance;
import org.jspecify.annotations.Nullable;

/** The native recogniser; owned by the thread that made it, and calls from another fail. */
public final class VoskRecogniser implements Recogniser {
    private static final int FAILED = -1;
    private static final int END_OF_UTTERANCE = 1;

    private final Thread owner = Thread.currentThread();
    private final VoskLibrary library;
    private @Nullable Pointer handle;

    private VoskRecogniser(VoskLibrary library, Pointer handle) {
        this.library = library;
        this.handle = handle;
        library.vosk_recognizer_set_words(handle, 1);
    }

    static VoskRecogniser own(VoskLibrary library, @Nullable Pointer handle, int sampleRate) {
        if (handle == null) {
            throw new RecogniserException("The speech model does not work with sound at " + sampleRate
                    + " Hz, or is damaged. Use 16000 Hz, or unpack the model again.");
        }
        return new VoskRecogniser(library, handle);
    }

    @Override
    public Optional<Utterance> accept(short[] samples, int length) {
        Pointer open = mine();
        return switch (library.vosk_recognizer_accept_waveform_s(open, samples, length)) {
            case FAILED -> throw failure();
            case END_OF_UTTERANCE -> utterance(library::vosk_recognizer_result);
            default -> Optional.empty();
        };
    }

    @Override
    public Optional<String> partial() {
        return VoskJson.partial(library.vosk_recognizer_partial_result(mine()));
    }

    @Override
    public Optional<Utterance> finish() {
        return utterance(library::vosk_recognizer_final_result);
    }

    private Optional<Utterance> utterance(Function<Pointer, String> result) {
        return VoskJson.utterance(result.apply(mine()), Duration.ZERO);
    }

    @Override
    public void reset() {
        library.vosk_recognizer_reset(mine());
    }

    @Override
    public void close() {
        if (handle != null) {
            library.vosk_recognizer_free(mine());
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
}
