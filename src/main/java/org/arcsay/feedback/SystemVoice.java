package org.arcsay.feedback;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * Any thread may use it. Says the words with the voice of the operating system, and leaves the tones to another speaker.
 *
 * <p>The voice is a program that is started with a list of arguments and never through a shell; its text is made only of words
 * from the fixed word list. Where it cannot be started, the other speaker says the words too.
 */
public final class SystemVoice implements Speaker {
    private final Speaker tones;
    private final FeedbackLevel level;
    private final SpeechProgram program;
    private @Nullable Answer due;
    private @Nullable Process speech;

    /**
     * @param tones plays the tones, and the words too when the program fails
     */
    public SystemVoice(Speaker tones, FeedbackLevel level, SpeechProgram program) {
        this.tones = tones;
        this.level = level;
        this.program = program;
    }

    @Override
    public synchronized void answer(Answer answer) {
        Answer audible = answer.at(level);
        stop();
        tones.answer(new Answer(audible.earcon(), Sentence.nothing()));
        if (!audible.sentence().isEmpty()) {
            due = audible;
            long tone = audible.earcon()
                    .map(Earcon::sound)
                    .orElse(Sound.none())
                    .duration()
                    .toMillis();
            CompletableFuture.delayedExecutor(tone, TimeUnit.MILLISECONDS).execute(() -> speak(audible));
        }
    }

    /** Speaks unless another answer has taken the place of this very one since, be it an equal one. */
    @SuppressWarnings("ReferenceEquality")
    private synchronized void speak(Answer answer) {
        if (due != answer) {
            return;
        }
        due = null;
        try {
            speech = start(program.saying(answer.sentence().text()));
        } catch (IOException e) {
            tones.answer(Answer.words(answer.sentence()));
        }
    }

    private static Process start(List<String> command) throws IOException {
        return new ProcessBuilder(command)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
    }

    @Override
    public synchronized void stop() {
        due = null;
        tones.stop();
        if (speech != null && speech.isAlive()) {
            speech.destroy();
            cancel();
        }
        speech = null;
    }

    private void cancel() {
        if (program.cancel().isEmpty()) {
            return;
        }
        try {
            start(program.cancel());
        } catch (IOException e) {
            // The program itself has just been ended; there is nothing more to silence.
        }
    }

    @Override
    public synchronized boolean sounding() {
        return due != null || tones.sounding() || (speech != null && speech.isAlive());
    }

    @Override
    public void close() {
        stop();
        tones.close();
    }
}
