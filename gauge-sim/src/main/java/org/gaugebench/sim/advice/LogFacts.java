package org.gaugebench.sim.advice;

import org.gaugebench.sim.logs.Hold;
import org.gaugebench.sim.logs.LogProfile;
import org.gaugebench.sim.logs.MeasuredLog;

/**
 * What an owner's log says of charging, minute by minute: currents and volts, and the charge that
 * they come to. Nothing of it says how much was in the battery.
 */
final class LogFacts {
    private static final long MINUTE_NANOS = 60_000_000_000L;
    private static final int LOOKS_A_MINUTE = 6;
    private static final double COULOMBS = 3_600;

    /** So long volts have to stand to be the charger's, and a current to be its end. */
    static final int STEADY_MINUTES = 10;

    /** Less than that taken out again does not end a charge. */
    private static final double CHARGE_OVER_PART = 0.02;

    private final double[] amps;
    private final double[] volts;
    private final double[] celsius;
    private final double[] net;
    private final double printedAmpHours;
    private double inAmpHours;
    private double outAmpHours;
    private double swingAmpHours;
    private double topVolts;
    private double topCelsius = 25;

    /**
     * Looks through a log.
     *
     * @param log with volts, at least a day long
     * @param printedAmpHours of the battery
     */
    LogFacts(MeasuredLog log, Hold hold, double printedAmpHours) {
        this.printedAmpHours = printedAmpHours;
        LogProfile profile = new LogProfile(log, hold);
        int minutes = (int) (log.durationNanos() / MINUTE_NANOS);
        amps = new double[minutes];
        volts = new double[minutes];
        celsius = new double[minutes];
        net = new double[minutes + 1];
        double lowest = 0;
        double highest = 0;
        for (int i = 0; i < minutes; i++) {
            long from = i * MINUTE_NANOS;
            amps[i] = profile.meanAmps(from, from + MINUTE_NANOS);
            volts[i] = Double.MAX_VALUE;
            for (int k = 0; k < LOOKS_A_MINUTE; k++) {
                long at = from + k * MINUTE_NANOS / LOOKS_A_MINUTE;
                volts[i] = Math.min(volts[i], profile.voltageVolts(at));
            }
            celsius[i] = log.hasTemperature() ? profile.temperatureCelsius(from) : 25;
            double ampHours = amps[i] * 60 / COULOMBS;
            net[i + 1] = net[i] + ampHours;
            inAmpHours += Math.max(0, ampHours);
            outAmpHours -= Math.min(0, ampHours);
            swingAmpHours =
                    Math.max(swingAmpHours, Math.max(net[i + 1] - lowest, highest - net[i + 1]));
            lowest = Math.min(lowest, net[i + 1]);
            highest = Math.max(highest, net[i + 1]);
        }
        findTop();
    }

    /** The highest volts that stood while nothing was drawn on balance. */
    private void findTop() {
        for (int i = 0; i + STEADY_MINUTES <= amps.length; i++) {
            double least = Double.MAX_VALUE;
            for (int k = i; k < i + STEADY_MINUTES; k++) {
                least = Math.min(least, amps[k] < 0 ? 0 : volts[k]);
            }
            if (least > topVolts) {
                topVolts = least;
                topCelsius = celsius[i];
            }
        }
    }

    double inAmpHours() {
        return inAmpHours;
    }

    double outAmpHours() {
        return outAmpHours;
    }

    /** Most that lay between any two moments. */
    double swingAmpHours() {
        return swingAmpHours;
    }

    double days() {
        return amps.length / 1_440.0;
    }

    /** Highest volts that stood for ten minutes with a current in; 0 for none. */
    double topVolts() {
        return topVolts;
    }

    /** How warm the battery was then; 25 where the log does not say. */
    double topCelsius() {
        return topCelsius;
    }

    /** Minutes for which the volts stood at least there in one go, with a current in. */
    int longestMinutes(double fromVolts, double mostAmps) {
        int longest = 0;
        int now = 0;
        for (int i = 0; i < amps.length; i++) {
            now = volts[i] >= fromVolts && amps[i] >= 0 && amps[i] <= mostAmps ? now + 1 : 0;
            longest = Math.max(longest, now);
        }
        return longest;
    }

    /** Lowest mean current of ten minutes into the battery with volts at least there. */
    double endAmps(double fromVolts) {
        double lowest = Double.NaN;
        for (int i = 0; i + STEADY_MINUTES <= amps.length; i++) {
            double sum = 0;
            boolean is = true;
            for (int k = i; k < i + STEADY_MINUTES; k++) {
                sum += amps[k];
                is &= amps[k] >= 0 && volts[k] >= fromVolts;
            }
            double mean = sum / STEADY_MINUTES;
            if (is && !(mean >= lowest)) {
                lowest = mean;
            }
        }
        return lowest;
    }

    /** Charge that went in after a minute, before as much as counts was taken out again. */
    double wentInAfter(int minute) {
        double most = net[minute];
        for (int i = minute; i < net.length && !isOver(i, most); i++) {
            most = Math.max(most, net[i]);
        }
        return most - net[minute];
    }

    /** Charge that went in between two minutes, on balance; 0 where the second is earlier. */
    double wentIn(int fromMinute, int toMinute) {
        return toMinute <= fromMinute ? 0 : net[toMinute] - net[fromMinute];
    }

    /** The minute at which the charge that runs at another one is over. */
    int overAfter(int minute) {
        double most = net[minute];
        int i = minute;
        while (i < net.length - 1 && !isOver(i, most)) {
            most = Math.max(most, net[i]);
            i++;
        }
        return i;
    }

    private boolean isOver(int minute, double most) {
        return net[minute] < most - CHARGE_OVER_PART * printedAmpHours;
    }
}
