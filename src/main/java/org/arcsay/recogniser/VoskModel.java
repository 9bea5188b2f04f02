package org.arcsay.recogniser;

import com.sun.jna.Pointer;
import java.nio.file.Path;
import java.time.Duration;
import org.jspecify.annotations.Nullable;

/**
 * A speech model in native memory; any one thread at a time. Load it once: loading is slow and memory is not given back
 * to the system. Native recognisers hold on to it, so it may be closed before them.
 */
public final class VoskModel implements AutoCloseable {
    private final VoskLibrary library;
    private @Nullable Pointer handle;

    private VoskModel(VoskLibrary library, Pointer handle) {
        this.library = library;
        this.handle = handle;
    }

    /**
     * Loads a checked model folder.
     *
     * @throws ModelException when the native library refuses the folder
     */
    public static VoskModel load(Path folder) throws ModelException {
        VoskLibrary library = VoskNative.library();
        Pointer handle = library.vosk_model_new(folder.toString());
        if (handle == null) {
            throw new ModelException("The speech model in " + folder
                    + " cannot be loaded: its files are damaged or made for another version. Unpack it again.");
        }
        return new VoskModel(library, handle);
    }

    /**
     * A recogniser decided by the model's own graph, owned by the calling thread.
     *
     * @param sampleRate of the sound it will be given, in Hz
     */
    public Recogniser recogniser(int sampleRate) {
        return recogniser(sampleRate, VoskRecogniser.RENEWAL);
    }

    /** As {@link #recogniser(int)}, with another time between renewals; for tests. */
    Recogniser recogniser(int sampleRate, Duration renewal) {
        Pointer model = open();
        return new VoskRecogniser(library, () -> library.vosk_recognizer_new(model, sampleRate), sampleRate, renewal);
    }

    private synchronized Pointer open() {
        if (handle == null) {
            throw new IllegalStateException("the speech model is closed");
        }
        return handle;
    }

    @Override
    public synchronized void close() {
        if (handle != null) {
            library.vosk_model_free(handle);
            handle = null;
        }
    }
}
