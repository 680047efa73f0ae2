package org.gaugebench.sim.plant;

import org.gaugebench.sim.random.GaussianNoise;
import org.gaugebench.sim.scenario.ChargerTraits.WindSpec;

/**
 * A wind charger's current in gusts. The speed of the wind is a first-order process about its mean,
 * the same for a second; the current goes with the cube of the speed, up to its peak.
 *
 * <p>The gusts follow from the seed alone, whatever the tick.
 */
final class Wind implements UnsteadySupply {
    private static final long CELL_MILLIS = 1_000;

    // Parameters.
    private final double peakAmps;
    private final double limitAmps;
    private final double meanSpeed;
    private final double gustiness;
    private final double keptPart;
    private final double freshPart;

    // State.
    private GaussianNoise noise;
    private long cell;
    private double deviate;
    private double amps;
    private double meanAmps;

    Wind(WindSpec spec, double limitAmps, long seed) {
        this.limitAmps = limitAmps;
        peakAmps = spec.peakMicroamps() / 1e6;
        meanSpeed = spec.meanPartsPerMillion() / 1e6;
        gustiness = spec.gustinessPartsPerMillion() / 1e6;
        keptPart = StrictMath.exp(-(double) CELL_MILLIS / spec.gustMillis());
        freshPart = Math.sqrt(1 - keptPart * keptPart);
        noise = new GaussianNoise(seed);
        deviate = noise.next();
        amps = ampsOfDeviate();
    }

    @Override
    public void adopt(UnsteadySupply other) {
        if (other instanceof Wind it) {
            noise = it.noise.copy();
            cell = it.cell;
            deviate = it.deviate;
            amps = it.amps;
            meanAmps = it.meanAmps;
        }
    }

    private double ampsOfDeviate() {
        double speed = Math.max(0, Math.min(meanSpeed * (1 + gustiness * deviate), 1));
        return Math.min(limitAmps, peakAmps * speed * speed * speed);
    }

    private void goTo(long wanted) {
        while (cell < wanted) {
            cell++;
            deviate = keptPart * deviate + freshPart * noise.next();
            amps = ampsOfDeviate();
        }
    }

    @Override
    public double meanAmps(long fromMillis, long toMillis) {
        double sum = 0;
        long at = fromMillis;
        while (at < toMillis) {
            goTo(at / CELL_MILLIS);
            long end = Math.min(toMillis, (cell + 1) * CELL_MILLIS);
            sum += amps * (end - at);
            at = end;
        }
        meanAmps = sum / (toMillis - fromMillis);
        return meanAmps;
    }

    /** Where the voltage is held, a gust is not let through. */
    @Override
    public double ampsAt(long millis, double outputAmps) {
        return outputAmps < meanAmps ? Math.min(amps, outputAmps) : amps;
    }

    @Override
    public long nextChangeMillis(long atMillis) {
        return atMillis;
    }
}
