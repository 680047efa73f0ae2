package org.gaugebench.sim.rig;

import org.jspecify.annotations.Nullable;

/** The moment that a gauge speaks of while it tells of a tick that the rig has left behind. */
final class LookBack {
    private @Nullable PastTruth moment;

    @Nullable PastTruth moment() {
        return moment;
    }

    void begin(PastTruth past) {
        moment = past;
    }

    void end() {
        moment = null;
    }
}
