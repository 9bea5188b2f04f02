package org.arcsay.evaluate;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * The results of all recordings.
 *
 * @param recordings each recording with what came of it
 * @param audio length of all recordings together
 * @param elapsed time that the whole line took for them, the model being loaded already
 */
public record EvaluationResult(List<Judged> recordings, Duration audio, Duration elapsed) {
    public EvaluationResult {
        recordings = List.copyOf(recordings);
    }

    /**
     * Counts over some of the recordings.
     *
     * @param falseAccepts recordings without a reading of which one was accepted all the same; part of wrong
     */
    public record Counts(
            int recordings, int right, int wrong, int refused, int asked, int falseAccepts, int words, int wordErrors) {
        static Counts of(List<Judged> judged) {
            return new Counts(
                    judged.size(),
                    count(judged, Verdict.RIGHT),
                    count(judged, Verdict.WRONG),
                    count(judged, Verdict.REFUSED),
                    count(judged, Verdict.ASKED),
                    (int) judged.stream()
                            .filter(one -> !one.holdsReading() && one.verdict() == Verdict.WRONG)
                            .count(),
                    judged.stream().mapToInt(Judged::words).sum(),
                    judged.stream().mapToInt(Judged::wordErrors).sum());
        }

        private static int count(List<Judged> judged, Verdict verdict) {
            return (int) judged.stream().filter(one -> one.verdict() == verdict).count();
        }
    }

    public Counts total() {
        return Counts.of(recordings);
    }

    /** Counts for each value of a column: "voice", "noise" or "distance"; empty when the list has no such column. */
    public Map<String, Counts> by(String column) {
        return recordings.stream()
                .filter(one -> one.groups().containsKey(column))
                .collect(Collectors.groupingBy(
                        one -> one.groups().get(column),
                        LinkedHashMap::new,
                        Collectors.collectingAndThen(Collectors.toList(), Counts::of)));
    }

    /** How often each expected number was understood as another: "expected>understood" to count. */
    public Map<String, Integer> confusions() {
        Map<String, Integer> confusions = new TreeMap<>();
        for (Judged one : recordings) {
            if (one.holdsReading()
                    && !one.understood().equals("-")
                    && !one.understood().equals(one.expected())) {
                confusions.merge(one.expected() + ">" + one.understood(), 1, Integer::sum);
            }
        }
        return confusions;
    }

    /** Processing time divided by the length of the sound. */
    public double realTimeFactor() {
        return audio.isZero() ? 0 : (double) elapsed.toNanos() / audio.toNanos();
    }
}
