package org.gaugebench.sim.logs;

/**
 * Whether a log's current has the sign that its voltage speaks for.
 *
 * <p>A battery's voltage rises with the charge put in and with the current into it. So the voltage
 * is fitted, each row weighted by its time, as {@code a + k Q + R I} by least squares; {@code k}
 * and {@code R}, scaled by the spreads of Q, I and V, are the <em>score</em>: near +1 for a log
 * with the right sign, and its exact negative for the same log turned round. A second witness looks
 * only at sudden current steps: the share of steps at which the voltage moved the same way less the
 * share at which it moved the other way. Where the two contradict each other, or the fit says
 * little, the answer is that it cannot be told.
 */
public final class SignCheck {
    /** Under this the fit says nothing; every log this was tried on has at least 0.55. */
    private static final double SCORE_THAT_TELLS = 0.3;

    /** The fit must explain a quarter of the voltage's variance, else it is noise. */
    private static final double SHARE_EXPLAINED = 0.25;

    /** Three of four steps one way, one the other. */
    private static final double STEPS_THAT_TELL = 0.5;

    /** A step is a change by a twentieth of the largest current. */
    private static final double STEP_PART_OF_PEAK = 0.05;

    /** A single row must not outweigh the rest of the log because the logger slept. */
    private static final double LONGEST_WEIGHT_SECONDS = 900;

    /** A column whose spread is a millionth of its mean stands still; the rest is rounding. */
    private static final double STEADY_PART = 1e-6;

    /** What the voltage says of the sign. */
    public enum Answer {
        /** Voltage and current fit each other. */
        AGREES,
        /** The current's sign is the wrong way round. */
        CONTRADICTS,
        /** The voltage does not tell. */
        CANNOT_TELL,
        /** There is no voltage column. */
        NO_VOLTAGE
    }

    private final Answer answer;
    private double score;
    private double explained;
    private double steps;

    /** Judges a log under its hold. */
    public SignCheck(MeasuredLog log, LogProfile profile) {
        if (!log.hasVoltage()) {
            answer = Answer.NO_VOLTAGE;
            return;
        }
        fit(log, profile);
        countSteps(log);
        answer = decide();
    }

    /** The answer. */
    public Answer answer() {
        return answer;
    }

    /** Scaled slopes on charge and current, added; odd under a turned sign. */
    public double score() {
        return score;
    }

    /** Part of the voltage's variance that the fit explains, 0 to 1. */
    public double explained() {
        return explained;
    }

    /** Share of steps with the voltage less share against it, -1 to 1; odd as well. */
    public double steps() {
        return steps;
    }

    private Answer decide() {
        if (explained < SHARE_EXPLAINED || Math.abs(score) < SCORE_THAT_TELLS) {
            return Answer.CANNOT_TELL;
        }
        if (score > 0) {
            return steps <= -STEPS_THAT_TELL ? Answer.CANNOT_TELL : Answer.AGREES;
        }
        return steps >= STEPS_THAT_TELL ? Answer.CANNOT_TELL : Answer.CONTRADICTS;
    }

    private void fit(MeasuredLog log, LogProfile profile) {
        int rows = log.rows();
        double[] weight = new double[rows];
        double[][] x = new double[3][rows];
        for (int r = 0; r < rows; r++) {
            x[0][r] = r == 0 ? 0 : x[0][r - 1] + profile.intervalCoulombs(r);
            x[1][r] = log.currentAmps(r);
            x[2][r] = log.voltageVolts(r);
            if (r > 0) {
                double seconds = (log.timeNanos(r) - log.timeNanos(r - 1)) / 1e9;
                double part = Math.min(seconds, LONGEST_WEIGHT_SECONDS) / 2;
                weight[r - 1] += part;
                weight[r] += part;
            }
        }
        double[][] m = correlations(x, weight);
        double together = m[0][1];
        double apart = 1 - together * together;
        // A spread of zero makes its correlations zero; charge and current that move as one
        // cannot be told apart, and then the current alone carries the fit.
        double onCharge = apart < 1e-6 ? 0 : (m[0][2] - together * m[1][2]) / apart;
        double onCurrent = apart < 1e-6 ? m[1][2] : (m[1][2] - together * m[0][2]) / apart;
        score = onCharge + onCurrent;
        explained = onCharge * m[0][2] + onCurrent * m[1][2];
    }

    /** Weighted correlations of charge (0), current (1) and voltage (2). */
    private static double[][] correlations(double[][] x, double[] weight) {
        double total = 0;
        double[] mean = new double[3];
        for (int r = 0; r < weight.length; r++) {
            total += weight[r];
            for (int a = 0; a < 3; a++) {
                mean[a] += weight[r] * x[a][r];
            }
        }
        double[][] sum = new double[3][3];
        for (int r = 0; r < weight.length; r++) {
            for (int a = 0; a < 3; a++) {
                for (int b = 0; b < 3; b++) {
                    sum[a][b] +=
                            weight[r] * (x[a][r] - mean[a] / total) * (x[b][r] - mean[b] / total);
                }
            }
        }
        double[] spread = new double[3];
        for (int a = 0; a < 3; a++) {
            double steady = STEADY_PART * mean[a] / total;
            boolean moves = sum[a][a] / total > steady * steady;
            spread[a] = moves ? StrictMath.sqrt(sum[a][a]) : 0;
        }
        double[][] result = new double[3][3];
        for (int a = 0; a < 3; a++) {
            for (int b = 0; b < 3; b++) {
                double scale = spread[a] * spread[b];
                result[a][b] = scale > 0 ? sum[a][b] / scale : 0;
            }
        }
        return result;
    }

    private void countSteps(MeasuredLog log) {
        double least = STEP_PART_OF_PEAK * log.peakAmps();
        int found = 0;
        int balance = 0;
        for (int r = 1; r < log.rows(); r++) {
            double amps = log.currentAmps(r) - log.currentAmps(r - 1);
            if (Math.abs(amps) >= least && amps != 0) {
                found++;
                double volts = log.voltageVolts(r) - log.voltageVolts(r - 1);
                balance += (int) Math.signum(amps * volts);
            }
        }
        steps = found == 0 ? 0 : (double) balance / found;
    }
}
