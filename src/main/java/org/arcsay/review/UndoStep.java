package org.arcsay.review;

import java.util.List;
import java.util.function.Supplier;

/**
 * How to take back one action of the reviewer.
 *
 * @param words what would be taken back, such as "the confirmation of right IP flexion, active"
 * @param events the changes that do so, made when it is asked for
 */
record UndoStep(String words, List<Supplier<Change>> events) {}
