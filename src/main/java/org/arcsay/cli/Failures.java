package org.arcsay.cli;

import org.arcsay.app.Settings.SettingsException;
import org.arcsay.audio.AudioException;
import org.arcsay.evaluate.EvaluationException;
import org.arcsay.grammar.GrammarException;
import org.arcsay.recogniser.ModelException;
import org.arcsay.recogniser.RecogniserException;
import org.arcsay.store.StoreException;
import org.arcsay.store.StoreException.Problem;
import org.arcsay.ui.NoScreenException;
import org.arcsay.ui.ProblemWindow;
import picocli.CommandLine;
import picocli.CommandLine.ParseResult;

/** Turns every exception into a message on standard error and an exit code; no stack trace reaches the user. */
final class Failures implements CommandLine.IExecutionExceptionHandler {
    @Override
    public int handleExecutionException(Exception failure, CommandLine command, ParseResult arguments) {
        command.getErr().println("arcsay: " + message(failure));
        if (command.getCommandSpec().userObject() instanceof MeasureCommand started && started.isFromMenu()) {
            show(failure);
        }
        return exitCode(failure);
    }

    private static void show(Exception failure) {
        try {
            ProblemWindow.run(message(failure) + whatNext(failure));
        } catch (NoScreenException | IllegalStateException told) {
            // There is no screen, or windows were open already; standard error has the message.
        }
    }

    private static String whatNext(Exception failure) {
        return failure instanceof SettingsException
                ? "\n\nMend that line with a text editor, or move the file away: without it the usual settings hold."
                        + " Then start Arcsay again."
                : "";
    }

    private static String message(Exception failure) {
        if (exitCode(failure) != ExitCode.FAILURE || failure instanceof NoScreenException) {
            return String.valueOf(failure.getMessage());
        }
        return "something went wrong that should not have (" + failure
                + "). What was stored before is safe. Run 'arcsay check', and report this message.";
    }

    private static int exitCode(Exception failure) {
        if (failure instanceof CliException cli) {
            return cli.exitCode();
        }
        if (failure instanceof StoreException records) {
            return records.problem() == Problem.WRONG_PASSWORD ? ExitCode.PASSWORD : ExitCode.RECORDS;
        }
        if (failure instanceof ModelException || failure instanceof RecogniserException) {
            return ExitCode.MODEL;
        }
        if (failure instanceof AudioException) {
            return ExitCode.AUDIO;
        }
        if (failure instanceof SettingsException
                || failure instanceof GrammarException
                || failure instanceof EvaluationException) {
            return ExitCode.SETTINGS;
        }
        return ExitCode.FAILURE;
    }
}
