package org.arcsay.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.stream.Collectors;
import org.arcsay.analysis.Customs;
import org.arcsay.analysis.NormSet;
import org.arcsay.analysis.Rater;
import org.arcsay.app.Program;
import org.arcsay.app.Settings;
import org.arcsay.model.ClinicSettings;
import org.arcsay.report.ReportWriters;
import org.arcsay.report.content.ReportSource;
import org.arcsay.report.content.VisitRecord;
import org.arcsay.report.fhir.FhirCodes;
import org.arcsay.report.pdf.Paper;
import org.arcsay.tables.TableException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** How reports are made. Used by the thread that runs the command. */
final class ReportOptions {
    @Option(
            names = "--paper",
            paramLabel = "SIZE",
            defaultValue = "A4",
            description = "PDF pages: a4 or letter (default: a4).")
    private Paper paper;

    @Option(
            names = "--norms",
            paramLabel = "SET",
            description = "Norm set to show and name (setting: norms; else barakat-2013).")
    private @Nullable String norms;

    @Option(
            names = "--same-rater",
            description = "Earlier visits were measured by the same person, so a smaller change counts.")
    private boolean sameRater;

    @Option(
            names = "--codes",
            paramLabel = "FILE",
            description = "The clinic's own codes for FHIR, in the form of docs/fhir-codes.tsv.")
    private @Nullable Path codes;

    ReportWriters writers() throws CliException {
        return new ReportWriters(paper, codes == null ? FhirCodes.none() : read(codes));
    }

    /** What reports of these visits are made from, as of now. */
    ReportSource source(List<VisitRecord> visits, ClinicSettings clinic, Customs customs) {
        return new ReportSource(visits, clinic, customs, OffsetDateTime.now().withNano(0), Program.NAME);
    }

    /** What the clinic has settled, unless this command says otherwise. */
    Customs customs(Settings settings) throws CliException {
        Customs usual = settings.habits().customs();
        Customs rated = sameRater ? usual.with(Rater.SAME) : usual;
        return norms == null ? rated : rated.with(named(norms, settings.habits().normSets()));
    }

    private static NormSet named(String id, List<NormSet> known) throws CliException {
        return known.stream()
                .filter(set -> set.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new CliException(
                        ExitCode.USAGE,
                        "There is no norm set '" + id + "'. Known are "
                                + known.stream().map(NormSet::id).collect(Collectors.joining(", "))
                                + "."));
    }

    private static FhirCodes read(Path file) throws CliException {
        try {
            return FhirCodes.read(file.toString(), Files.readString(file));
        } catch (IOException e) {
            throw new CliException(
                    ExitCode.SETTINGS, "The file of codes " + file + " cannot be read as UTF-8 text. Check its name.");
        } catch (TableException e) {
            throw new CliException(ExitCode.SETTINGS, String.valueOf(e.getMessage()));
        }
    }
}
