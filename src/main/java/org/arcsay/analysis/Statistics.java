package org.arcsay.analysis;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;

/**
 * Reliability figures.
 *
 * <p>SEM = SD x sqrt(1 - ICC); MDC95 = 1.96 x sqrt(2) x SEM; MDC90 = 1.645 x sqrt(2) x SEM. ICC after Shrout and Fleiss,
 * Psychol Bull 1979;86(2):420-428.
 */
public final class Statistics {
    private static final MathContext EXACT_ENOUGH = MathContext.DECIMAL64;
    private static final BigDecimal ROOT_TWO = BigDecimal.valueOf(2).sqrt(EXACT_ENOUGH);
    private static final BigDecimal Z95 = new BigDecimal("1.96");
    private static final BigDecimal Z90 = new BigDecimal("1.645");

    private Statistics() {}

    /** The minimal detectable change at 95 % confidence, in the unit of the SEM. */
    public static BigDecimal mdc95(BigDecimal sem) {
        return factor(Z95).multiply(sem, EXACT_ENOUGH);
    }

    /** The minimal detectable change at 90 % confidence, in the unit of the SEM. */
    public static BigDecimal mdc90(BigDecimal sem) {
        return factor(Z90).multiply(sem, EXACT_ENOUGH);
    }

    /** The SEM behind a minimal detectable change at 95 % or a repeatability coefficient. */
    public static BigDecimal semFromMdc95(BigDecimal mdc95) {
        return mdc95.divide(factor(Z95), EXACT_ENOUGH);
    }

    /**
     * The SEM from a spread and a reliability.
     *
     * @param sd standard deviation between subjects, 0 or more
     * @param icc 0 to 1
     */
    public static double sem(double sd, double icc) {
        require(sd >= 0, "a standard deviation is 0 or more, not " + sd);
        require(icc >= 0 && icc <= 1, "an ICC for this formula is 0 to 1, not " + icc);
        return sd * Math.sqrt(1 - icc);
    }

    /** The SEM from the standard deviations of the trials of each person: their root mean square. */
    public static double semFromPersonSds(List<Double> sds) {
        require(!sds.isEmpty(), "at least one standard deviation is needed");
        return Math.sqrt(sds.stream().mapToDouble(sd -> sd * sd).average().orElseThrow());
    }

    /** The SEM from the differences of two trials of each person: sqrt(sum of squares / 2n). */
    public static double semFromDifferences(List<Double> differences) {
        require(!differences.isEmpty(), "at least one difference is needed");
        double sum = differences.stream().mapToDouble(d -> d * d).sum();
        return Math.sqrt(sum / (2 * differences.size()));
    }

    /** ICC(1,1): one-way random effects, single rating, from one row for each subject. */
    public static double icc11(double[][] ratings) {
        Squares s = Squares.of(ratings);
        return (s.between - s.within) / (s.between + (s.raters - 1) * s.within);
    }

    /** ICC(2,1): two-way random effects, absolute agreement, single rating. */
    public static double icc21(double[][] ratings) {
        Squares s = Squares.of(ratings);
        double raterTerm = s.raters * (s.betweenRaters - s.residual) / s.subjects;
        return (s.between - s.residual) / (s.between + (s.raters - 1) * s.residual + raterTerm);
    }

    /** ICC(3,1): two-way mixed effects, consistency, single rating. */
    public static double icc31(double[][] ratings) {
        Squares s = Squares.of(ratings);
        return (s.between - s.residual) / (s.between + (s.raters - 1) * s.residual);
    }

    private static BigDecimal factor(BigDecimal z) {
        return z.multiply(ROOT_TWO, EXACT_ENOUGH);
    }

    private static void require(boolean condition, String message) {
        if (!condition) {
            throw new IllegalArgumentException(message);
        }
    }

    /** Mean squares of a table of ratings, one row for each subject and one column for each rater. */
    private record Squares(
            int subjects, int raters, double between, double within, double betweenRaters, double residual) {
        static Squares of(double[][] ratings) {
            int n = ratings.length;
            require(n > 1 && ratings[0].length > 1, "at least two subjects and two raters are needed");
            int k = ratings[0].length;
            double grand = 0;
            for (double[] row : ratings) {
                require(row.length == k, "every subject needs a rating by every rater");
                grand += sum(row) / (n * k);
            }
            double total = 0;
            double rows = 0;
            double[] columns = new double[k];
            for (double[] row : ratings) {
                rows += k * square(sum(row) / k - grand);
                for (int j = 0; j < k; j++) {
                    total += square(row[j] - grand);
                    columns[j] += row[j] / n;
                }
            }
            double cols = 0;
            for (double mean : columns) {
                cols += n * square(mean - grand);
            }
            double within = (total - rows) / (n * (k - 1));
            double residual = (total - rows - cols) / ((n - 1) * (k - 1));
            return new Squares(n, k, rows / (n - 1), within, cols / (k - 1), residual);
        }

        private static double sum(double[] numbers) {
            double sum = 0;
            for (double number : numbers) {
                sum += number;
            }
            return sum;
        }

        private static double square(double number) {
            return number * number;
        }
    }
}
