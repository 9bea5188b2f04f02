package org.arcsay.cli;

import java.io.PrintWriter;
import java.time.Duration;
import java.util.Locale;
import org.arcsay.app.CaptureListener;
import org.arcsay.model.Utterance;
import org.arcsay.parser.Command;
import org.arcsay.review.OutcomeWords;
import org.arcsay.session.Outcome;

/** Tells on standard error what is heard and done. Used by the thread that recognises. */
final class ConsoleListener implements CaptureListener {
    private static final Duration PROGRESS_EVERY = Duration.ofMinutes(1);

    private final PrintWriter err;
    private Duration reported = Duration.ZERO;
    private int understood;
    private int refused;
    private String last = "";

    ConsoleListener(PrintWriter err) {
        this.err = err;
    }

    @Override
    public void answered(Utterance utterance, Command command, Outcome outcome) {
        err.println(time(utterance.start()) + "  \"" + utterance.text() + "\"");
        boolean repeats = outcome instanceof Outcome.SayAgain;
        String answer = repeats ? again() : OutcomeWords.of(outcome);
        if (outcome instanceof Outcome.Refused) {
            refused++;
        } else if (!(outcome instanceof Outcome.Ignored)) {
            understood++;
            last = repeats ? last : answer;
        }
        if (!answer.isEmpty()) {
            err.println("        -> " + answer);
        }
    }

    @Override
    public void progress(Duration position) {
        if (position.compareTo(reported.plus(PROGRESS_EVERY)) >= 0) {
            reported = position;
            err.println(time(position) + "  … " + understood + " understood, " + refused + " refused so far");
        }
    }

    private String again() {
        return last.isEmpty() ? "" : "again: " + last;
    }

    private static String time(Duration at) {
        return String.format(Locale.ROOT, "%3d:%02d", at.toMinutes(), at.toSecondsPart());
    }
}
