package org.arcsay.recogniser;

import java.util.Optional;
import org.arcsay.model.Utterance;

/**
 * Words from a stream of sound. One thread owns a recogniser: the one that made it; calls from another fail with
 * {@link IllegalStateException}. Times in utterances count from the first frame accepted, over all utterances and resets.
 */
public interface Recogniser extends AutoCloseable {
    /**
     * Takes in the next frames.
     *
     * @param samples 16-bit mono frames at the rate the recogniser was made for; about 0.1 s at a time is best
     * @param length how many of them count
     * @return an utterance that these frames brought to its end, with at least one word; silence is none
     * @throws RecogniserException when the native recogniser fails; it cannot be used any further
     */
    Optional<Utterance> accept(short[] samples, int length);

    /** Words of the open utterance so far, which may still change; never to be acted on. */
    Optional<String> partial();

    /** Ends the open utterance as if silence had followed; the recogniser stays usable. */
    Optional<Utterance> finish();

    /** Forgets the open utterance. */
    void reset();

    /** Frees native memory; a second call does nothing. */
    @Override
    void close();
}
