package org.arcsay.cli;

import java.io.BufferedOutputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.arcsay.app.Program;
import org.arcsay.model.HelpCard;
import org.arcsay.report.pdf.Paper;
import org.arcsay.report.pdf.PhraseCard;
import org.arcsay.store.DurableFiles;
import org.arcsay.store.StoreException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Shows what can be said. */
@Command(name = "phrases", mixinStandardHelpOptions = true, description = "Shows what can be said, from the grammar.")
final class PhrasesCommand implements Callable<Integer> {
    @Mixin
    private Place place;

    @Option(names = "--pdf", paramLabel = "FILE", description = "Writes a card to be printed instead.")
    private @Nullable Path pdf;

    @Option(
            names = "--paper",
            paramLabel = "SIZE",
            defaultValue = "A4",
            description = "Pages of the card: a4 or letter (default: a4).")
    private Paper paper;

    @Override
    public Integer call() throws Exception {
        HelpCard card = place.grammar().helpCard();
        if (pdf != null) {
            write(card, pdf);
            place.out().println(pdf);
        } else if (place.json()) {
            place.out().println(Json.text(card));
        } else {
            print(card);
        }
        return ExitCode.OK;
    }

    private void write(HelpCard card, Path file) throws StoreException {
        DurableFiles.replace(file.toAbsolutePath(), unfinished -> {
            try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(unfinished))) {
                new PhraseCard(paper, Program.NAME).write(card, out);
            }
        });
    }

    private void print(HelpCard card) {
        for (HelpCard.Section section : card.sections()) {
            place.out().println(section.heading());
            section.examples().forEach(example -> place.out().println("    " + example));
        }
    }
}
