package org.arcsay.cli;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.arcsay.model.Visit;
import org.arcsay.report.csv.CsvImport;
import org.arcsay.report.csv.CsvReader;
import org.arcsay.report.csv.ImportProblem;
import org.arcsay.report.csv.ImportedVisit;
import org.arcsay.store.VisitStore;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Adds the visits of an exported file to the records. */
@Command(
        name = "import",
        mixinStandardHelpOptions = true,
        description = "Adds the visits of a file that 'arcsay report --format csv' wrote: all of them, or none.")
final class ImportCommand implements Callable<Integer> {
    @Mixin
    private Place place;

    @Parameters(paramLabel = "FILE", description = "CSV file, UTF-8.")
    private Path file;

    @Option(names = "--dry-run", description = "Only say whether the file could be read, and what is in it.")
    private boolean dryRun;

    @Override
    public Integer call() throws Exception {
        CsvImport read = read();
        if (read instanceof CsvImport.Refused refused) {
            return refuse(refused.problems());
        }
        List<ImportedVisit> visits = ((CsvImport.Ready) read).visits();
        if (dryRun) {
            print(visits, visits.stream().map(ImportedVisit::visit).toList());
            place.err().println("The file is sound. Nothing was stored.");
            return ExitCode.OK;
        }
        try (VisitStore store = place.store()) {
            print(
                    visits,
                    store.addAll(visits.stream().map(ImportedVisit::content).toList()));
        }
        return ExitCode.OK;
    }

    private CsvImport read() throws CliException {
        try (InputStream in = new BufferedInputStream(Files.newInputStream(file))) {
            return CsvReader.read(in);
        } catch (IOException e) {
            throw new CliException(
                    ExitCode.IMPORT,
                    "The file " + file + " cannot be read. Nothing was stored. Check its name and permissions.");
        }
    }

    private int refuse(List<ImportProblem> problems) {
        if (place.json()) {
            place.out().println(Json.text(new Refusal("arcsay.import-problems/1", problems)));
        }
        problems.forEach(problem -> place.err().println(file + ", " + problem.sentence()));
        place.err().println("arcsay: nothing was stored. Mend the file and import it again.");
        return ExitCode.IMPORT;
    }

    private void print(List<ImportedVisit> imported, List<Visit> stored) {
        if (place.json()) {
            List<Json.VisitView> views = stored.stream()
                    .map(visit -> Json.VisitView.of(visit, Optional.empty()))
                    .toList();
            place.out().println(Json.text(views));
            return;
        }
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < stored.size(); i++) {
            lines.add(VisitText.line(stored.get(i)) + ", was visit "
                    + imported.get(i).sourceId());
        }
        lines.forEach(place.out()::println);
    }

    /** Why a file was refused, for other programs. */
    record Refusal(String format, List<ImportProblem> problems) {}
}
