package org.gaugebench.sim.rig;

import java.util.List;
import org.gaugebench.sim.plant.Circuit;
import org.gaugebench.sim.plant.TrueTimeToEmpty;
import org.gaugebench.sim.scenario.Change;
import org.gaugebench.sim.scenario.Scenario;

/**
 * What is really left of a rig's battery as it stands. Every figure is worked out when it is asked
 * for, and asking changes nothing of the run.
 */
public final class Outlook {
    private static final long UNKNOWN = -1;

    private final Scenario scenario;
    private final Circuit circuit;
    private List<Change> ahead = List.of();

    /** The plant goes on to the same bits as its copy: the end that was found stays the end. */
    private long endMillis = UNKNOWN;

    Outlook(Scenario scenario, Circuit circuit) {
        this.scenario = scenario;
        this.circuit = circuit;
    }

    /** Tells which changes the plant has not seen yet. */
    void setAhead(List<Change> changes) {
        ahead = changes;
    }

    /** What is ahead is not what it was. */
    void forget() {
        endMillis = UNKNOWN;
    }

    /** Whether the loads asked for more than there was in the last step: the true end. */
    public boolean isStarved() {
        return circuit.isStarved();
    }

    /** Charge that can be drawn as things stand; see {@link Circuit#availableAmpHours()}. */
    public double availableAmpHours() {
        return circuit.availableAmpHours();
    }

    /**
     * Time to empty with the battery's mean current over the last step held, all chargers off.
     *
     * @return milliseconds, or {@link TrueTimeToEmpty#NEVER}: not discharging, or beyond 100 days
     */
    public long millisWithLoadHeld() {
        return TrueTimeToEmpty.withPresentLoadHeld(circuit);
    }

    /**
     * Time to empty as the scenario goes on, with its loads, chargers and timeline.
     *
     * @return milliseconds, or {@link TrueTimeToEmpty#NEVER}: the loads are met to the end
     */
    public long millisAsItGoes() {
        long now = circuit.timeMillis();
        if (endMillis < now) {
            long left =
                    TrueTimeToEmpty.asTheScenarioGoesOn(
                            circuit, ahead, scenario.durationMillis(), (int) scenario.tickMillis());
            endMillis = left == TrueTimeToEmpty.NEVER ? left : now + left;
        }
        return endMillis == TrueTimeToEmpty.NEVER ? endMillis : endMillis - now;
    }
}
