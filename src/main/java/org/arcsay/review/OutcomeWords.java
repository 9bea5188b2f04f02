package org.arcsay.review;

import java.util.List;
import java.util.stream.Collectors;
import org.arcsay.model.Entry;
import org.arcsay.model.Placement;
import org.arcsay.model.Slot;
import org.arcsay.session.Context;
import org.arcsay.session.Outcome;

/** What came of an utterance, as one line of text. */
public final class OutcomeWords {
    private OutcomeWords() {}

    public static String of(Outcome outcome) {
        if (outcome instanceof Outcome.Saved saved) {
            return "saved: " + words(saved.entries());
        }
        if (outcome instanceof Outcome.Corrected corrected) {
            return "corrected: " + corrected.now().reading().words() + " (was "
                    + corrected.before().reading().value().words() + ")";
        }
        if (outcome instanceof Outcome.Asked asked) {
            String stored = asked.stored().isEmpty() ? "" : "saved, to be looked at: " + words(asked.stored()) + ". ";
            return stored + asked.question().sentence();
        }
        if (outcome instanceof Outcome.Kept kept) {
            return "kept: " + kept.entry().reading().words();
        }
        if (outcome instanceof Outcome.Undone undone) {
            return "taken back: " + words(undone.entries())
                    + (undone.restored().isEmpty() ? "" : "; again in force: " + words(undone.restored()));
        }
        if (outcome instanceof Outcome.Remarked remarked) {
            return "noted: " + remarked.remark().words() + ", for "
                    + remarked.entry().reading().words();
        }
        if (outcome instanceof Outcome.Refused refused) {
            return "not saved: " + refused.sentence();
        }
        return state(outcome);
    }

    private static String state(Outcome outcome) {
        if (outcome instanceof Outcome.ContextSet set) {
            Context now = set.context();
            return "now: " + now.side().map(side -> side.word() + " hand").orElse("no hand named") + ", "
                    + now.mode().word()
                    + (now.placement() == Placement.UNSTATED
                            ? ""
                            : ", " + now.placement().word() + " placement");
        }
        if (outcome instanceof Outcome.ReadBack readBack) {
            return "so far: " + words(readBack.entries());
        }
        if (outcome instanceof Outcome.Missing missing) {
            return missing.slots().isEmpty()
                    ? "nothing is missing"
                    : "still missing: "
                            + missing.slots().stream().map(Slot::words).collect(Collectors.joining("; "));
        }
        if (outcome instanceof Outcome.Next next) {
            return next.slot().map(slot -> "next: " + slot.words()).orElse("nothing is missing");
        }
        if (outcome instanceof Outcome.Position position) {
            return position.side().map(side -> side.word() + " hand").orElse("no hand named") + ", "
                    + position.mode().word()
                    + position.last()
                            .map(last -> "; last " + last.reading().words())
                            .orElse("")
                    + position.next().map(slot -> "; next " + slot.words()).orElse("");
        }
        if (outcome instanceof Outcome.Paused) {
            return "paused; say go ahead";
        }
        if (outcome instanceof Outcome.Ended) {
            return "session ended";
        }
        return outcome instanceof Outcome.Listening ? "listening" : "";
    }

    private static String words(List<Entry> entries) {
        return entries.stream().map(entry -> entry.reading().words()).collect(Collectors.joining("; "));
    }
}
