package org.arcsay.review;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.arcsay.model.Entry;
import org.arcsay.model.Visit;

/** The half-typed forms of one visit. Used by one thread at a time. */
final class DraftBox {
    private final Drafts store;
    private final long visit;
    private final SortedMap<Integer, Draft> byEntry = new TreeMap<>();
    private String problem = "";

    DraftBox(Drafts store, Visit visit) {
        this.store = store;
        this.visit = visit.id();
        try {
            store.load(visit.id()).stream()
                    .filter(draft -> draft.isNew()
                            || visit.entry(draft.entry()).filter(Entry::counts).isPresent())
                    .forEach(draft -> byEntry.put(draft.entry(), draft));
        } catch (IOException unreadable) {
            problem = String.valueOf(unreadable.getMessage());
        }
    }

    Optional<Draft> of(int entry) {
        return Optional.ofNullable(byEntry.get(entry));
    }

    void put(Draft draft) {
        byEntry.put(draft.entry(), draft);
        keep();
    }

    void drop(int entry) {
        if (byEntry.remove(entry) != null) {
            keep();
        }
    }

    /** Why drafts are not being kept at the moment, or empty. */
    String problem() {
        return problem;
    }

    private void keep() {
        try {
            store.keep(visit, new ArrayList<>(byEntry.values()));
            problem = "";
        } catch (IOException failed) {
            problem = "What you are typing would be lost if this window closed, because it could not be kept on disk ("
                    + failed.getMessage() + "). Save the correction before closing.";
        }
    }
}
