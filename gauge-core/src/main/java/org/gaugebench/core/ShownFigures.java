package org.gaugebench.core;

import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.readout.ShownCurrent;
import org.gaugebench.core.readout.ShownHours;
import org.gaugebench.core.readout.ShownPercent;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * What a display shows of the figures (the V rules of {@code docs/rules.md}): follows whole minutes
 * and commands, however often anybody looks.
 */
final class ShownFigures {
    private static final int STEP_MILLIAMPS = 100;
    private static final int MINUTE_MILLIS = 60_000;

    private final ShownPercent percent = new ShownPercent();
    private final ShownHours hours = new ShownHours();
    private final ShownCurrent current;

    // State.
    private long minuteMillis;

    ShownFigures(GaugeSettings settings) {
        // derived: 1 mA = 1,000 uA
        current = new ShownCurrent(settings.get(Setting.SHOWN_AS_ZERO_BELOW) * 1_000);
    }

    /** A whole minute passed: one tick may hold several, so the uptime does not tell. */
    void addMinute() {
        minuteMillis += MINUTE_MILLIS;
    }

    /** Follows the estimates. */
    void update(Stages s, boolean known) {
        percent.update(
                known ? s.stateOfChargePartsPerMillion() : Readout.NOT_KNOWN,
                s.charge.isFullProven());
        if (s.timeToEmpty.state() == EstimateState.ESTIMATE) {
            hours.update(s.timeToEmpty.minutes(), minuteMillis);
        } else {
            hours.clear();
        }
    }

    private int milliamps(int microamps) {
        return current.tenthsOfAmp(microamps) * STEP_MILLIAMPS;
    }

    void read(int microamps, Readout readout) {
        readout.shownPercent = percent.percent();
        readout.shownMilliamps = milliamps(microamps);
        readout.shownTimeToEmptyMinutes = hours.minutes();
    }

    void inspect(int microamps, Registers r) {
        r.set(Register.SHOWN_PERCENT, percent.percent());
        r.set(Register.SHOWN_MILLIAMPS, milliamps(microamps));
        r.set(Register.SHOWN_TIME_TO_EMPTY_MINUTES, hours.minutes());
    }
}
