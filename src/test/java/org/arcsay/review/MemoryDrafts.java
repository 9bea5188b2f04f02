package org.arcsay.review;

import java.util.List;

/** Keeps nothing beyond the test. Used by one thread. */
public final class MemoryDrafts implements Drafts {
    private List<Draft> kept = List.of();

    @Override
    public List<Draft> load(long visit) {
        return kept;
    }

    @Override
    public void keep(long visit, List<Draft> drafts) {
        kept = List.copyOf(drafts);
    }
}
