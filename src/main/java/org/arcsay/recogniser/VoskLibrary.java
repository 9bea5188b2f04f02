package org.arcsay.recogniser;

import com.sun.jna.Library;
import com.sun.jna.Pointer;
import org.jspecify.annotations.Nullable;

/**
 * The functions of libvosk 0.3.45 that are called here, under the names of its C header. Each is resolved on its first
 * call, so a platform whose library lacks another one still works. A recogniser belongs to one thread at a time.
 */
interface VoskLibrary extends Library {
    void vosk_set_log_level(int level);

    @Nullable
    Pointer vosk_model_new(String path);

    void vosk_model_free(Pointer model);

    @Nullable
    Pointer vosk_recognizer_new(Pointer model, float sampleRate);

    @Nullable
    Pointer vosk_recognizer_new_grm(Pointer model, float sampleRate, String phrases);

    void vosk_recognizer_set_words(Pointer recogniser, int words);

    /** From then on results list up to so many alternatives, each with a score instead of the confidence of words. */
    void vosk_recognizer_set_max_alternatives(Pointer recogniser, int alternatives);

    /** 1 at the end of an utterance, 0 inside one, -1 on failure. */
    int vosk_recognizer_accept_waveform_s(Pointer recogniser, short[] samples, int length);

    String vosk_recognizer_result(Pointer recogniser);

    String vosk_recognizer_partial_result(Pointer recogniser);

    void vosk_recognizer_free(Pointer recogniser);
}
