package org.gaugebench.sim.device.exhibits;

import java.util.Set;
import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.scenario.Mistake;
import org.gaugebench.sim.scenario.MistakeFamily;

/** Charge divided by current, as a figure of minutes. */
final class HoursFigure {
    /** 99:59, the most that four digits show. */
    static final int FOUR_DIGITS_MINUTES = 99 * 60 + 59;

    private static final double MILLIS_PER_MINUTE = 60_000;

    private final boolean offered;
    private final boolean sixteenBits;
    private final boolean limitAsMeasured;
    private final long longestMinutes;
    private EstimateState state = EstimateState.NO_ESTIMATE;
    private int minutes;

    /** There are no hours unless a mistake says how the current is filtered. */
    HoursFigure(Set<Mistake> mistakes, GaugeSettings settings) {
        offered = mistakes.stream().anyMatch(m -> m.family() == MistakeFamily.HOURS);
        sixteenBits = mistakes.contains(Mistake.MINUTES_16_BIT);
        limitAsMeasured = mistakes.contains(Mistake.HOURS_CLAMPED_AS_MEASURED);
        longestMinutes =
                limitAsMeasured ? FOUR_DIGITS_MINUTES : settings.get(Setting.LONGEST_TIME) * 60;
    }

    /** Works the figure out; a current that rounds to no microamp has no time to empty. */
    void update(boolean known, double nanocoulombs, double microamps) {
        minutes = 0;
        if (!offered || !known || StrictMath.rint(microamps) == 0) {
            state = EstimateState.NO_ESTIMATE;
        } else if (microamps > 0) {
            state = EstimateState.CHARGING;
        } else {
            // The cast saturates at the ends of 64 bits.
            narrow((long) (Math.max(0, nanocoulombs) / -microamps / MILLIS_PER_MINUTE));
        }
    }

    private void narrow(long whole) {
        long shown = sixteenBits ? whole & 0xFFFF : whole;
        boolean beyond = shown > longestMinutes;
        minutes = (int) Math.min(shown, longestMinutes);
        state = beyond && !limitAsMeasured ? EstimateState.MORE_THAN : EstimateState.ESTIMATE;
    }

    /** Whether there are any hours; without, none is ever shown. */
    boolean isOffered() {
        return offered;
    }

    EstimateState state() {
        return state;
    }

    int minutes() {
        return minutes;
    }
}
