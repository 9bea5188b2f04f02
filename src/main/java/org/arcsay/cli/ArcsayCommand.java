package org.arcsay.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.arcsay.app.Program;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The program as a command line. */
@Command(
        name = "arcsay",
        version = Program.NAME,
        mixinStandardHelpOptions = true,
        synopsisSubcommandLabel = "COMMAND",
        description =
                "Writes down spoken goniometer readings, offline. Data goes to standard output, talk to standard error.",
        footerHeading = "%nExamples:%n",
        footer = {
            "  arcsay demo                                    a recorded visit, heard and stored",
            "  arcsay measure                                 the measuring screen: listen, see, look through",
            "  arcsay capture --patient T-104 --new --side right   listen to the microphone, without a window",
            "  arcsay capture --patient T-104 --wav visit.wav     listen to a recording",
            "  arcsay review 1                                look through visit 1 and confirm it",
            "  arcsay report 1 -o visit-1.pdf                 one page for each thumb",
            "",
            "Exit codes: 0 done, 1 failure, 2 wrong usage, 3 audio, 4 speech model, 5 records file, 6 unknown patient or",
            "visit, 7 settings or grammar, 8 self-check found something, 9 no reading understood, 10 wrong password,",
            "11 not confirmed, 12 file to import.",
            "",
            "Arcsay records what the professional says and confirms. It gives no diagnosis or treatment advice and is not",
            "a certified medical device. Local protocols, record rules and licensed practice come first.",
        },
        subcommands = {
            CaptureCommand.class,
            MeasureCommand.class,
            DemoCommand.class,
            ListCommand.class,
            ShowCommand.class,
            ReviewCommand.class,
            CompareCommand.class,
            ReportCommand.class,
            ImportCommand.class,
            ProtocolCommand.class,
            TablesCommand.class,
            PhrasesCommand.class,
            CheckCommand.class,
            EvaluateCommand.class,
            HistoryCommand.class,
            BackupCommand.class,
            RestoreCommand.class,
            CheckRecordsCommand.class,
            ExportPatientCommand.class,
            OpenExportCommand.class,
            ImportPatientCommand.class,
            ErasePatientCommand.class,
            PurgeSoundCommand.class,
            HelpCommand.class,
        })
public final class ArcsayCommand implements Runnable {
    /** Commands that write no data to standard output. */
    private static final List<String> WINDOWS = List.of("measure", "review", "compare");

    private final Keyboard keyboard;

    @Spec
    private CommandSpec spec;

    private ArcsayCommand(Keyboard keyboard) {
        this.keyboard = keyboard;
    }

    Keyboard keyboard() {
        return keyboard;
    }

    /** Runs one command line and returns the exit code. */
    public static int run(String... arguments) {
        PrintWriter out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
        PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
        return run(out, err, Keyboard.ofTerminal(), arguments);
    }

    static int run(PrintWriter out, PrintWriter err, Keyboard keyboard, String... arguments) {
        CommandLine line = new CommandLine(new ArcsayCommand(keyboard))
                .setOut(out)
                .setErr(err)
                .setExecutionExceptionHandler(new Failures())
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF));
        for (String window : WINDOWS) {
            CommandSpec command =
                    Objects.requireNonNull(line.getSubcommands().get(window)).getCommandSpec();
            command.remove(command.findOption("--json"));
        }
        int code = execute(line, arguments);
        out.flush();
        err.flush();
        return code;
    }

    private static int execute(CommandLine line, String... arguments) {
        try {
            return line.execute(arguments);
        } catch (VirtualMachineError | LinkageError | AssertionError e) {
            line.getErr()
                    .println(
                            "arcsay: the program could not go on ("
                                    + e.getClass().getSimpleName() + "). What was"
                                    + " announced is stored. Free some memory, or install a supported Java 17, and start again.");
            return ExitCode.FAILURE;
        }
    }

    @Override
    public void run() {
        spec.commandLine().usage(spec.commandLine().getOut());
    }
}
