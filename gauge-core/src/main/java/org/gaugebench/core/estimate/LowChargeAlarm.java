package org.gaugebench.core.estimate;

import org.gaugebench.core.port.Readout;

/**
 * Alarm at a low state of charge. It comes at one level and goes at a higher one, so that it does
 * not flutter while the charge stands at the level. Feed it the low end of the error band and it
 * speaks too early rather than too late.
 */
public final class LowChargeAlarm {
    // Parameters.
    private final int onPartsPerMillion;
    private final int offPartsPerMillion;

    // State.
    private boolean on;

    /**
     * Declares the two levels.
     *
     * @param onPartsPerMillion at and below it the alarm comes; 0 switches the alarm off
     * @param hysteresisPartsPerMillion how much higher the charge must be for the alarm to go
     */
    public LowChargeAlarm(int onPartsPerMillion, int hysteresisPartsPerMillion) {
        this.onPartsPerMillion = Math.max(0, onPartsPerMillion);
        this.offPartsPerMillion =
                (int)
                        Math.min(
                                (long) this.onPartsPerMillion
                                        + Math.max(1, hysteresisPartsPerMillion),
                                1_000_000);
    }

    /**
     * Takes a state of charge. While it is unknown the alarm stays as it is: a restart must not
     * silence it, and ignorance must not raise it.
     *
     * @param partsPerMillion state of charge, or {@link Readout#NOT_KNOWN}
     * @return whether the alarm changed
     */
    public boolean update(int partsPerMillion) {
        if (partsPerMillion == Readout.NOT_KNOWN || onPartsPerMillion == 0) {
            return false;
        }
        boolean before = on;
        if (partsPerMillion <= onPartsPerMillion) {
            on = true;
        } else if (partsPerMillion >= offPartsPerMillion) {
            on = false;
        }
        return on != before;
    }

    /**
     * Whether the alarm is on.
     *
     * @return since the charge fell to the level, until it rose enough
     */
    public boolean isOn() {
        return on;
    }
}
