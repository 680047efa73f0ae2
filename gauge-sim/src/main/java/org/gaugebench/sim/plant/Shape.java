package org.gaugebench.sim.plant;

import org.gaugebench.sim.scenario.LoadShape;
import org.gaugebench.sim.scenario.ProfileSpec;
import org.jspecify.annotations.Nullable;

/**
 * How a draw moves within an on part, as a multiple of the load's size: what an instant sees and,
 * in closed form, what flows between two instants. Times count from the beginning of the on part.
 *
 * <p>Phases are whole millionths of a period, so that a pulse lies where it lies after a year too.
 */
abstract class Shape {
    /** Millionths of a period in a period; also the milliseconds after which phases repeat. */
    private static final long PERIOD = 1_000_000;

    /** Always the whole size. */
    static final Shape STEADY = new Steady();

    static Shape of(@Nullable LoadShape spec) {
        if (spec instanceof LoadShape.PulseWidth pulses) {
            return new PulseWidth(pulses);
        }
        if (spec instanceof LoadShape.Ripple ripple) {
            return new Ripple(ripple);
        }
        return spec instanceof LoadShape.Inrush inrush ? new Inrush(inrush) : STEADY;
    }

    /** A shape that follows a file, whose times are those of the run. */
    static Shape of(ProfileSpec spec) {
        return new Followed(new Follower(spec));
    }

    /** Part of the size at an instant. */
    abstract double at(long millis);

    /** Integral of the part over time, in milliseconds. */
    abstract double integral(long fromMillis, long toMillis);

    boolean isVarying() {
        return true;
    }

    /** Whether the part is one, to within rounding, from an instant to the end of the on part. */
    boolean isSteadyFrom(long millis) {
        return false;
    }

    /** First instant at or after the given one from which the mean over a step changes. */
    long nextChange(long millis) {
        return isSteadyFrom(millis) ? Long.MAX_VALUE : millis;
    }

    /** Millionths of a period since its begin. */
    static long phase(long millis, long millihertz, long startPhase) {
        return (millis % PERIOD * millihertz + startPhase) % PERIOD;
    }

    private static final class Followed extends Shape {
        private final Follower follower;

        Followed(Follower follower) {
            this.follower = follower;
        }

        @Override
        double at(long millis) {
            return follower.at(millis);
        }

        @Override
        double integral(long fromMillis, long toMillis) {
            return follower.integral(fromMillis, toMillis);
        }

        @Override
        long nextChange(long millis) {
            return follower.nextChange(millis);
        }
    }

    private static final class Steady extends Shape {
        @Override
        double at(long millis) {
            return 1;
        }

        @Override
        double integral(long fromMillis, long toMillis) {
            return toMillis - fromMillis;
        }

        @Override
        boolean isVarying() {
            return false;
        }

        @Override
        boolean isSteadyFrom(long millis) {
            return true;
        }
    }

    /** All or nothing. Counting whole and begun pulses makes the mean exact for any tick. */
    private static final class PulseWidth extends Shape {
        private final long millihertz;
        private final long duty;
        private final long startPhase;

        PulseWidth(LoadShape.PulseWidth spec) {
            millihertz = spec.millihertz();
            duty = spec.dutyPartsPerMillion();
            startPhase = spec.phasePartsPerMillion();
        }

        @Override
        double at(long millis) {
            return phase(millis, millihertz, startPhase) < duty ? 1 : 0;
        }

        @Override
        double integral(long fromMillis, long toMillis) {
            long first = phase(fromMillis, millihertz, startPhase);
            long last = first + (toMillis - fromMillis) * millihertz;
            return (onUntil(last) - onUntil(first)) / (double) millihertz;
        }

        private long onUntil(long phase) {
            return phase / PERIOD * duty + Math.min(phase % PERIOD, duty);
        }
    }

    /** 1 - depth cos(2 pi f t), f being twice the frequency of the line. */
    private static final class Ripple extends Shape {
        private final long millihertz;
        private final double depth;
        private final long startPhase;

        Ripple(LoadShape.Ripple spec) {
            millihertz = 2 * spec.lineMillihertz();
            depth = spec.depthPartsPerMillion() / 1e6;
            startPhase = spec.phasePartsPerMillion();
        }

        @Override
        double at(long millis) {
            return 1 - depth * StrictMath.cos(radians(millis));
        }

        @Override
        double integral(long fromMillis, long toMillis) {
            double radiansPerMilli = 2 * Math.PI * (millihertz / 1e6);
            double waves = StrictMath.sin(radians(toMillis)) - StrictMath.sin(radians(fromMillis));
            return toMillis - fromMillis - depth * waves / radiansPerMilli;
        }

        private double radians(long millis) {
            return phase(millis, millihertz, startPhase) * (2 * Math.PI / PERIOD);
        }
    }

    /** 1 + (peak - 1) exp(-t / tau). */
    private static final class Inrush extends Shape {
        /** exp(-40) is below the rounding of 1. */
        private static final long TIME_CONSTANTS = 40;

        private final double extra;
        private final long timeConstantMillis;

        Inrush(LoadShape.Inrush spec) {
            extra = spec.peakPartsPerMillion() / 1e6 - 1;
            timeConstantMillis = spec.timeConstantMillis();
        }

        @Override
        double at(long millis) {
            return 1 + extra * kept(millis);
        }

        @Override
        double integral(long fromMillis, long toMillis) {
            double decayed = kept(fromMillis) - kept(toMillis);
            return toMillis - fromMillis + extra * timeConstantMillis * decayed;
        }

        private double kept(long millis) {
            return StrictMath.exp(-(double) millis / timeConstantMillis);
        }

        @Override
        boolean isSteadyFrom(long millis) {
            return millis > TIME_CONSTANTS * timeConstantMillis;
        }
    }
}
