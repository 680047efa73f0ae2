package org.gaugebench.sim.plant;

import org.gaugebench.sim.scenario.ProfileSpec;

/** A supply that has what a file says: the mean of its figures over a step. */
final class LoggedSupply implements UnsteadySupply {
    private final Follower follower;
    private final double limitAmps;

    LoggedSupply(ProfileSpec profile, double limitAmps) {
        this.follower = new Follower(profile);
        this.limitAmps = limitAmps;
    }

    @Override
    public double meanAmps(long fromMillis, long toMillis) {
        double mean = follower.integral(fromMillis, toMillis) / (toMillis - fromMillis);
        return Math.min(limitAmps, mean);
    }

    /** The file's figures are means themselves: what they hid at an instant nobody knows. */
    @Override
    public double ampsAt(long millis, double outputAmps) {
        return outputAmps;
    }

    @Override
    public long nextChangeMillis(long atMillis) {
        return follower.nextChange(atMillis);
    }

    /** A file is followed by the time alone. */
    @Override
    public void adopt(UnsteadySupply other) {}
}
