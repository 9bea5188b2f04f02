package org.arcsay.feedback;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Used by the capture thread alone. Knows what is being said, learns how it arrives at the microphone, band by band and how
 * much later, and notices sound that is not it, even where that is no louder than the echo.
 *
 * <p>Two voices seldom have their strength in the same bands at the same moment. Whatever an answer taught is used from the
 * next answer on.
 */
final class EchoBands {
    /** Of 20 ms, like all that is counted in blocks. */
    private static final int LAGS = 20;

    private static final int EARLIER = 2;
    private static final int LATER = 5;
    private static final int ENOUGH = 30;
    private static final double ABOVE_ECHO = 4;
    private static final double ABOVE_ROOM = 12;
    private static final double ROOM_RISE = 0.05;
    private static final double REVERBERATION = 2;
    private static final double HEARD = 30;
    private static final double MOST_RISE = 3;
    private static final double MOST_FALL = 1;
    private static final int JUDGED = 8;

    /** Foreign bands of the judged blocks together. */
    private static final int OF_SPEECH = 10;

    /** As many of one block count, so that a knock is not enough. */
    private static final int MOST_BANDS = 3;

    private final BandLevels microphone;
    private final double[] room = filled(BandLevels.QUIETEST / 2);
    private final List<double[]> played = new ArrayList<>();
    private final List<double[]> captured = new ArrayList<>();
    private final int[] foreign = new int[JUDGED];
    private @Nullable Sound sound;
    private List<double[]> levels = List.of();
    private int at;
    private double @Nullable [] gain;
    private double[] expected = filled(BandLevels.QUIETEST);
    private int lag;

    /**
     * @param rate samples a second of the microphone
     */
    EchoBands(int rate) {
        this.microphone = new BandLevels(rate);
    }

    /** A block during which nothing of ours is heard. */
    void quiet(short[] block) {
        double[] now = microphone.next(block, 0, block.length);
        for (int i = 0; i < room.length; i++) {
            room[i] = Math.min(now[i], room[i] + ROOM_RISE);
        }
        learn();
    }

    /**
     * Whether another voice is heard beside our own.
     *
     * @param now what sounds, or null in the time after it
     */
    boolean spokenOver(short[] block, @Nullable Sound now) {
        double[] heard = microphone.next(block, 0, block.length);
        captured.add(heard);
        played.add(playing(now));
        foreign[captured.size() % JUDGED] = foreignBands(heard);
        return Arrays.stream(foreign).sum() >= OF_SPEECH;
    }

    /** The highest level that what sounds now is expected to have at the microphone, in dB of full scale. */
    double highest() {
        double[] learnt = gain;
        return learnt == null
                ? BandLevels.QUIETEST
                : levels.stream()
                        .mapToDouble(block -> total(sum(block, learnt)))
                        .max()
                        .orElse(BandLevels.QUIETEST);
    }

    /** What was heard since the last quiet is not our voice alone, and teaches nothing. */
    void forget() {
        captured.clear();
        played.clear();
        Arrays.fill(foreign, 0);
        expected = filled(BandLevels.QUIETEST);
    }

    private double[] playing(@Nullable Sound now) {
        if (now != sound) {
            sound = now;
            levels = now == null ? List.of() : levels(now);
            at = 0;
        }
        return at < levels.size() ? levels.get(at++) : filled(BandLevels.QUIETEST);
    }

    private static List<double[]> levels(Sound sound) {
        BandLevels bands = new BandLevels(Sound.RATE);
        short[] samples = sound.samples();
        int length = Sound.RATE / 50;
        List<double[]> levels = new ArrayList<>();
        for (int from = 0; from + length <= samples.length; from += length) {
            levels.add(bands.next(samples, from, from + length));
        }
        return levels;
    }

    private int foreignBands(double[] heard) {
        if (gain == null) {
            return 0;
        }
        double[] source = loudest(captured.size() - 1);
        int bands = 0;
        for (int i = 0; i < heard.length; i++) {
            expected[i] = Math.max(source[i] + gain[i], expected[i] - REVERBERATION);
            bands += heard[i] > Math.max(expected[i] + ABOVE_ECHO, room[i] + ABOVE_ROOM) ? 1 : 0;
        }
        return Math.min(bands, MOST_BANDS);
    }

    /** The loudest that was played about one lag before a block. */
    private double[] loudest(int block) {
        double[] most = filled(BandLevels.QUIETEST);
        for (int i = Math.max(0, block - lag - LATER); i <= Math.min(block, block - lag + EARLIER); i++) {
            for (int j = 0; j < most.length; j++) {
                most[j] = Math.max(most[j], played.get(i)[j]);
            }
        }
        return most;
    }

    private void learn() {
        if (captured.size() >= ENOUGH) {
            lag = likeliestLag();
            double[] found = gains();
            if (gain == null) {
                gain = found;
            } else {
                for (int i = 0; i < found.length; i++) {
                    gain[i] += Math.max(-MOST_FALL, Math.min(MOST_RISE, found[i] - gain[i]));
                }
            }
        }
        forget();
    }

    /** The highest of each band. */
    private double[] gains() {
        double[] most = filled(BandLevels.QUIETEST);
        double[] peak = filled(BandLevels.QUIETEST);
        for (double[] block : played) {
            for (int i = 0; i < peak.length; i++) {
                peak[i] = Math.max(peak[i], block[i]);
            }
        }
        for (int block = 0; block < captured.size(); block++) {
            double[] source = loudest(block);
            for (int i = 0; i < most.length; i++) {
                if (source[i] > peak[i] - HEARD) {
                    most[i] = Math.max(most[i], captured.get(block)[i] - source[i]);
                }
            }
        }
        return most;
    }

    private int likeliestLag() {
        double[] source = played.stream().mapToDouble(EchoBands::total).toArray();
        double[] heard = captured.stream().mapToDouble(EchoBands::total).toArray();
        int best = 0;
        double highest = -1;
        for (int tried = 0; tried < LAGS; tried++) {
            double correlation = correlation(source, heard, tried);
            if (correlation > highest) {
                highest = correlation;
                best = tried;
            }
        }
        return best;
    }

    private static double correlation(double[] source, double[] heard, int lag) {
        int count = source.length - LAGS;
        double x = 0;
        double y = 0;
        double xx = 0;
        double yy = 0;
        double xy = 0;
        for (int i = LAGS; i < source.length; i++) {
            double a = source[i - lag];
            double b = heard[i];
            x += a;
            y += b;
            xx += a * a;
            yy += b * b;
            xy += a * b;
        }
        double spread = (count * xx - x * x) * (count * yy - y * y);
        return spread <= 0 ? -1 : (count * xy - x * y) / Math.sqrt(spread);
    }

    private static double[] sum(double[] levels, double[] gain) {
        double[] sum = new double[levels.length];
        Arrays.setAll(sum, i -> levels[i] + gain[i]);
        return sum;
    }

    private static double total(double[] levels) {
        return BandLevels.decibels(
                Arrays.stream(levels).map(level -> Math.pow(10, level / 10)).sum());
    }

    private static double[] filled(double level) {
        double[] levels = new double[BandLevels.BANDS];
        Arrays.fill(levels, level);
        return levels;
    }
}
