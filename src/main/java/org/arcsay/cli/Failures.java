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
import picocli.CommandLine;
import picocli.CommandLine.ParseResult;

/** Turns every exception into a message on standard error and an exit code; no stack trace reaches the user. */
final class Failures implements CommandLine.IExecutionExceptionHandler {
    @Override
    public int handleExecutionException(Exception failure, CommandLine command, ParseResult arguments) {
        command.getErr().println("arcsay: " + message(failure));
        return exitCode(failure);
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
