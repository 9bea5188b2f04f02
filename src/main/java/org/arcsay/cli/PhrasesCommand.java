package org.arcsay.cli;

import java.util.concurrent.Callable;
import org.arcsay.grammar.HelpCard;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Shows what can be said. */
@Command(name = "phrases", mixinStandardHelpOptions = true, description = "Shows what can be said, from the grammar.")
final class PhrasesCommand implements Callable<Integer> {
    @Mixin
    private Place place;

    @Override
    public Integer call() throws Exception {
        HelpCard card = place.grammar().helpCard();
        if (place.json()) {
            place.out().println(Json.text(card));
            return ExitCode.OK;
        }
        for (HelpCard.Section section : card.sections()) {
            place.out().println(section.heading());
            section.examples().forEach(example -> place.out().println("    " + example));
        }
        return ExitCode.OK;
    }
}
