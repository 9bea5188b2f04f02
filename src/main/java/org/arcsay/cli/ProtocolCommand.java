package org.arcsay.cli;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.arcsay.app.Settings;
import org.arcsay.app.Visits;
import org.arcsay.model.PatientCode;
import org.arcsay.model.ProtocolVersion;
import org.arcsay.store.VisitStore;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows and sets what a patient's treatment protocol allows. */
@Command(
        name = "protocol",
        mixinStandardHelpOptions = true,
        description =
                "Shows or sets what a patient's treatment protocol allows. What is measured against it is asked about, never"
                        + " refused.",
        footer = {
            "",
            "Statements, each in quotation marks or all in one, separated by semicolons:",
            "  involved right                        the hand under treatment",
            "  no passive, no resisted               for either hand",
            "  IP flexion at most 40                 active and passive, on the involved hand",
            "  passive IP flexion at most 30         passive only",
            "  IP extension lacks at least 20        not to be straightened further",
            "  MP extension not beyond neutral",
            "  MP extension hyperextends at most 10",
            "They replace what was set before and hold for visits begun from then on. Every change is kept.",
        })
final class ProtocolCommand implements Callable<Integer> {
    @Mixin
    private Place place;

    @Parameters(index = "0", paramLabel = "CODE", description = "Patient code.")
    private String patient;

    @Parameters(index = "1..*", paramLabel = "STATEMENT", description = "What the protocol says from now on.")
    private @Nullable List<String> statements;

    @Option(names = "--clear", description = "Nothing is limited from now on.")
    private boolean clear;

    @Option(names = "--new", description = "The code is new: the first visit is still to come.")
    private boolean isNew;

    @Option(names = "--by", paramLabel = "ROLE", defaultValue = "", description = "Role or initials of who sets it.")
    private String by;

    /** For other programs. */
    record ProtocolView(String format, String patient, List<Version> versions) {
        record Version(String at, String by, List<String> statements) {}

        static ProtocolView of(PatientCode code, List<ProtocolVersion> versions) {
            return new ProtocolView(
                    "arcsay.protocol/1",
                    code.text(),
                    versions.stream()
                            .map(version -> new Version(
                                    version.at().toString(),
                                    version.by(),
                                    version.protocol().statements()))
                            .toList());
        }
    }

    @Override
    public Integer call() throws Exception {
        PatientCode code = Place.patientCode(patient);
        if (statements == null && !clear) {
            try (VisitStore store = place.storeToRead()) {
                Place.requireKnown(store, code);
                show(code, store.protocols(code));
            }
            return ExitCode.OK;
        }
        if (statements != null && clear) {
            throw new CliException(ExitCode.USAGE, "Give statements or --clear, not both.");
        }
        Settings settings = place.settings();
        String grammar = place.grammar().version();
        try (VisitStore store = place.store()) {
            if (!isNew && !store.knows(code)) {
                throw Place.unknownPatient(store, code, " Before a first visit add --new.");
            }
            new Visits(store, settings.clinic(), settings.habits().customs(), grammar)
                    .setProtocol(code, statements == null ? "" : String.join("; ", statements), by);
            show(code, store.protocols(code));
            place.backUp(store);
        } catch (IllegalArgumentException e) {
            throw new CliException(ExitCode.USAGE, "The protocol was not changed: " + e.getMessage());
        }
        place.err().println("It holds for visits of " + code + " that begin from now on.");
        return ExitCode.OK;
    }

    /** The newest first. */
    private void show(PatientCode code, List<ProtocolVersion> versions) {
        String text = versions.isEmpty()
                ? "No protocol is set for " + code + ": nothing is limited."
                : reversed(versions).stream().map(ProtocolCommand::words).collect(Collectors.joining("\n"));
        place.print(ProtocolView.of(code, versions), text);
    }

    private static String words(ProtocolVersion version) {
        return version.at().withNano(0) + (version.by().isBlank() ? "" : " " + version.by()) + ": "
                + version.protocol().words();
    }

    private static List<ProtocolVersion> reversed(List<ProtocolVersion> versions) {
        List<ProtocolVersion> newestFirst = new ArrayList<>(versions);
        Collections.reverse(newestFirst);
        return newestFirst;
    }
}
