package org.arcsay.review;

import org.arcsay.model.JournalEvent;

/**
 * One thing the reviewer wants done.
 *
 * @param event what is to be stored
 * @param row the entry it is about, or {@link Draft#NEW}
 * @param done the sentence that tells that it was done
 * @param whenStored runs once it is stored
 */
record Change(JournalEvent event, int row, String done, Runnable whenStored) {}
