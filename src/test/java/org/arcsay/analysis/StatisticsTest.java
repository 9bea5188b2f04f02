package org.arcsay.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.stat.descriptive.moment.StandardDeviation;
import org.apache.commons.math3.stat.descriptive.moment.Variance;
import org.apache.commons.math3.stat.inference.OneWayAnova;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;

/** The reliability figures against Apache Commons Math, on seeded random ratings. */
class StatisticsTest {
    private static final double TINY = 1e-9;

    private static double[][] ratings(long seed) {
        Random random = new Random(seed);
        int subjects = 3 + random.nextInt(10);
        int raters = 2 + random.nextInt(4);
        double[] bias = random.doubles(raters, -5, 5).toArray();
        return IntStream.range(0, subjects)
                .mapToObj(i -> {
                    double own = 40 + 15 * random.nextGaussian();
                    return IntStream.range(0, raters)
                            .mapToDouble(j -> own + bias[j] + 4 * random.nextGaussian())
                            .toArray();
                })
                .toArray(double[][]::new);
    }

    @RepeatedTest(20)
    void oneWayCoefficientFollowsFromTheAnovaOfTheLibrary(RepetitionInfo info) {
        double[][] ratings = ratings(info.getCurrentRepetition());
        double f = new OneWayAnova().anovaFValue(List.of(ratings));
        int k = ratings[0].length;
        assertEquals((f - 1) / (f + k - 1), Statistics.icc11(ratings), TINY);
    }

    @RepeatedTest(20)
    void twoWayCoefficientsFollowFromTheRegressionOfTheLibrary(RepetitionInfo info) {
        double[][] ratings = ratings(1000 + info.getCurrentRepetition());
        int n = ratings.length;
        int k = ratings[0].length;
        double residual = residualMeanSquare(ratings);
        double between = k * new Variance().evaluate(rowMeans(ratings));
        double raters = n * new Variance().evaluate(columnMeans(ratings));
        assertEquals((between - residual) / (between + (k - 1) * residual), Statistics.icc31(ratings), TINY);
        double denominator = between + (k - 1) * residual + k * (raters - residual) / n;
        assertEquals((between - residual) / denominator, Statistics.icc21(ratings), TINY);
    }

    @RepeatedTest(10)
    void errorFromPairsIsTheRootMeanVarianceOfTheLibrary(RepetitionInfo info) {
        Random random = new Random(info.getCurrentRepetition());
        List<Double> sds = new ArrayList<>();
        List<Double> differences = new ArrayList<>();
        double variances = 0;
        int people = 2 + random.nextInt(8);
        for (int i = 0; i < people; i++) {
            double[] pair = {50 + 10 * random.nextGaussian(), 50 + 10 * random.nextGaussian()};
            sds.add(new StandardDeviation().evaluate(pair));
            differences.add(pair[0] - pair[1]);
            variances += new Variance().evaluate(pair);
        }
        double expected = Math.sqrt(variances / people);
        assertEquals(expected, Statistics.semFromPersonSds(sds), TINY);
        assertEquals(expected, Statistics.semFromDifferences(differences), TINY);
    }

    @Test
    void factorsAreTheNormalQuantilesOfTheLibrary() {
        NormalDistribution normal = new NormalDistribution();
        double z95 = normal.inverseCumulativeProbability(0.975) * Math.sqrt(2);
        double z90 = normal.inverseCumulativeProbability(0.95) * Math.sqrt(2);
        assertEquals(z95, Statistics.mdc95(BigDecimal.ONE).doubleValue(), 0.0001);
        assertEquals(z90, Statistics.mdc90(BigDecimal.ONE).doubleValue(), 0.0003);
    }

    @Test
    void errorFromSpreadAndReliability() {
        assertEquals(5, Statistics.sem(5, 0), TINY);
        assertEquals(0, Statistics.sem(5, 1), TINY);
        assertEquals(0, Statistics.sem(0, 0.5), TINY);
        assertThrows(IllegalArgumentException.class, () -> Statistics.sem(-1, 0.5));
        assertThrows(IllegalArgumentException.class, () -> Statistics.sem(1, 1.01));
        assertThrows(IllegalArgumentException.class, () -> Statistics.sem(1, -0.01));
    }

    @Test
    void tooFewRatingsAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> Statistics.icc11(new double[][] {{1, 2}}));
        assertThrows(IllegalArgumentException.class, () -> Statistics.icc21(new double[][] {{1}, {2}}));
        assertThrows(IllegalArgumentException.class, () -> Statistics.icc31(new double[][] {{1, 2}, {3}}));
        assertThrows(IllegalArgumentException.class, () -> Statistics.semFromPersonSds(List.of()));
        assertThrows(IllegalArgumentException.class, () -> Statistics.semFromDifferences(List.of()));
    }

    /** Residual mean square of the model rating = subject + rater, by least squares on dummy variables. */
    private static double residualMeanSquare(double[][] ratings) {
        int n = ratings.length;
        int k = ratings[0].length;
        double[] y = new double[n * k];
        double[][] x = new double[n * k][n + k - 2];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < k; j++) {
                int row = i * k + j;
                y[row] = ratings[i][j];
                if (i > 0) {
                    x[row][i - 1] = 1;
                }
                if (j > 0) {
                    x[row][n - 1 + j - 1] = 1;
                }
            }
        }
        OLSMultipleLinearRegression regression = new OLSMultipleLinearRegression();
        regression.newSampleData(y, x);
        return regression.estimateErrorVariance();
    }

    private static double[] rowMeans(double[][] ratings) {
        return IntStream.range(0, ratings.length)
                .mapToDouble(i -> IntStream.range(0, ratings[i].length)
                        .mapToDouble(j -> ratings[i][j])
                        .average()
                        .orElseThrow())
                .toArray();
    }

    private static double[] columnMeans(double[][] ratings) {
        return IntStream.range(0, ratings[0].length)
                .mapToDouble(j -> IntStream.range(0, ratings.length)
                        .mapToDouble(i -> ratings[i][j])
                        .average()
                        .orElseThrow())
                .toArray();
    }
}
