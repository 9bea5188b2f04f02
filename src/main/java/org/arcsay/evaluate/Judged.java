package org.arcsay.evaluate;

import java.util.List;
import java.util.Map;

/**
 * One recording with what came of it.
 *
 * @param file name of the recording
 * @param said the words spoken
 * @param heard the words recognised, over all utterances of the recording
 * @param expected the expected value, "-" for none
 * @param understood the value that was accepted, "-" for none
 * @param wordErrors least number of insertions, deletions and substitutions
 * @param groups voice, noise, distance, as far as listed
 */
public record Judged(
        String file,
        Verdict verdict,
        String said,
        String heard,
        String expected,
        String understood,
        int wordErrors,
        boolean holdsReading,
        Map<String, String> groups) {
    int words() {
        return List.of(said.split(" ")).size();
    }
}
