package org.arcsay.app;

import java.io.IOException;
import java.nio.file.Path;
import java.util.function.Consumer;
import org.arcsay.audio.AudioSource;
import org.arcsay.audio.RecordedSource;
import org.arcsay.store.KeptSound;
import org.arcsay.store.StoreException;

/** Keeps the sound of a visit beside its readings; a visit is worth more than its sound, so it goes on without. */
public final class SoundKeeping {
    private SoundKeeping() {}

    /**
     * A source that is also written to a file.
     *
     * @param sound where
     * @param kept is told the file, once it is begun
     * @param lost is told in one sentence when it cannot be begun or breaks off; may be called by the thread that reads
     * @return the source itself when the file cannot be begun
     */
    public static AudioSource of(
            KeptSound sound, long visit, AudioSource source, Consumer<Path> kept, Consumer<String> lost) {
        try {
            Path file = sound.begin(visit);
            AudioSource recorded = RecordedSource.into(file, source, failure -> lost.accept(sentence(failure)));
            kept.accept(file);
            return recorded;
        } catch (IOException | StoreException e) {
            lost.accept(sentence(e));
            return source;
        }
    }

    private static String sentence(Exception failure) {
        return "The sound is not kept from here on (" + failure.getMessage() + "). Readings are stored as before.";
    }
}
