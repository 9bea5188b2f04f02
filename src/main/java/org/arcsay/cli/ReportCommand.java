package org.arcsay.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.arcsay.app.Settings;
import org.arcsay.model.EntryStatus;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Visit;
import org.arcsay.report.Format;
import org.arcsay.report.StoredVisits;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.VisitRecord;
import org.arcsay.store.StoreException;
import org.arcsay.store.VisitStore;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes the report of a visit. */
@Command(
        name = "report",
        mixinStandardHelpOptions = true,
        description = "Writes the report of a visit, beside the other hand, earlier visits and norms.",
        footer = {
            "",
            "text goes to standard output unless a file is named. csv holds every visit up",
            "to this one and can be read back with 'arcsay import'. fhir is an HL7 FHIR R4",
            "bundle of observations.",
        })
final class ReportCommand implements Callable<Integer> {
    @Mixin
    private Place place;

    @Mixin
    private ReportOptions options;

    @ArgGroup(multiplicity = "1")
    private Chosen chosen;

    @Option(
            names = "--format",
            paramLabel = "FORMAT",
            description = "pdf, text, csv, json or fhir (default: what the name of the file ends in, else pdf).")
    private @Nullable Format format;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE",
            description =
                    "File to write, or - for standard output (default: standard output for text, else a file here).")
    private @Nullable Path output;

    @Option(names = "--replace", description = "Replace the file if it is there.")
    private boolean replace;

    /** Which visit; one of the two. */
    static final class Chosen {
        @Parameters(paramLabel = "VISIT", description = "Number of the visit, from 'arcsay list'.")
        private @Nullable Long visit;

        @Option(names = "--patient", paramLabel = "CODE", description = "The latest visit of this patient.")
        private @Nullable String patient;
    }

    @Override
    public Integer call() throws Exception {
        Format wanted = wanted();
        Report report = report();
        if (toStandardOutput(wanted)) {
            print(report, wanted);
        } else {
            write(report, wanted, file(report, wanted));
        }
        warn(report.current().visit());
        return ExitCode.OK;
    }

    private Format wanted() {
        if (format != null) {
            return format;
        }
        return output == null ? Format.PDF : Format.ofFile(output).orElse(Format.PDF);
    }

    private boolean toStandardOutput(Format wanted) {
        return output == null ? wanted == Format.TEXT : output.toString().equals("-");
    }

    private Path file(Report report, Format wanted) {
        return output == null ? Path.of(report.fileName(wanted.extension())) : output;
    }

    private Report report() throws Exception {
        try (VisitStore store = place.storeToRead()) {
            Settings settings = place.settings();
            List<VisitRecord> visits = visits(store);
            return Report.of(options.source(visits, settings.clinic(), options.customs(settings)));
        }
    }

    private List<VisitRecord> visits(VisitStore store) throws StoreException, CliException {
        if (chosen.visit != null) {
            return StoredVisits.upTo(store, Place.visit(store, chosen.visit));
        }
        PatientCode code = Place.patientCode(String.valueOf(chosen.patient));
        List<VisitRecord> visits = StoredVisits.of(store, code);
        if (visits.isEmpty()) {
            throw Place.unknownPatient(store, code, "");
        }
        return visits;
    }

    /** PDF is bytes and the rest is UTF-8 text, so everything but PDF goes through the writer of the command line. */
    private void print(Report report, Format wanted) throws IOException, CliException {
        if (wanted == Format.PDF) {
            throw new CliException(ExitCode.USAGE, "A PDF is not text; name a file with -o.");
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        options.writers().write(report, wanted, bytes);
        place.out().print(bytes.toString(StandardCharsets.UTF_8));
        place.out().flush();
    }

    private void write(Report report, Format wanted, Path file) throws StoreException, CliException {
        if (Files.isDirectory(file)) {
            throw new CliException(ExitCode.USAGE, file + " is a folder. Name a file in it.");
        }
        if (Files.exists(file) && !replace) {
            throw new CliException(
                    ExitCode.USAGE,
                    "There is a file " + file
                            + " already. It was left as it is. Choose another name, or add --replace.");
        }
        options.writers().write(report, wanted, file);
        if (place.json()) {
            place.out().println(Json.text(Written.of(report, wanted, file)));
        } else {
            place.out().println(file);
        }
        place.err().println("The file holds health data; keep it where your record rules allow.");
    }

    private void warn(Visit visit) {
        long open = visit.counting().stream()
                .filter(entry -> entry.status() != EntryStatus.CONFIRMED)
                .count();
        if (open > 0) {
            place.err()
                    .println(open + " of " + visit.counting().size()
                            + " readings are not confirmed, and the report marks them preliminary. Confirm them with: arcsay review "
                            + visit.id());
        }
    }

    /** What was written, for other programs. */
    record Written(String format, long visit, String patient, String standing, String file, String form) {
        static Written of(Report report, Format wanted, Path file) {
            Visit visit = report.current().visit();
            return new Written(
                    "arcsay.report-written/1",
                    visit.id(),
                    visit.patient().text(),
                    report.standing().code(),
                    file.toString(),
                    wanted.code());
        }
    }
}
