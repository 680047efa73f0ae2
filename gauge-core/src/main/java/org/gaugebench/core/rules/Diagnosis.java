package org.gaugebench.core.rules;

import org.gaugebench.core.charge.MinuteMean;
import org.gaugebench.core.port.Fault;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * The slow faults (the D rules of {@code docs/rules.md}): what no single sample shows but minutes,
 * days and cycles do. Answers with a bit for each fault that stands now; corrects nothing.
 */
public final class Diagnosis {
    private static final int DAY_MINUTES = 24 * 60;

    /** Full voltage without any flow for so long is no accident. */
    private static final int BLOCKED_MINUTES = 30;

    /** A battery is near its end at 80 % of its capacity (common practice, no source). */
    private static final int WORN_PERCENT = 80;

    // Parameters.
    private final long overdueMinutes;
    private final long declaredMilliampHours;
    private final StepWatch steps;
    private final ChargeBalance balance;

    // State.
    private long sinceFullMinutes;
    private int blockedMinutes;
    private boolean scaleSuspect;
    private boolean earlyEmpty;
    private int bits;

    /**
     * Derives the limits.
     *
     * @param settings checked settings
     */
    public Diagnosis(GaugeSettings settings) {
        overdueMinutes = settings.get(Setting.FULL_OVERDUE) * DAY_MINUTES;
        declaredMilliampHours = settings.get(Setting.CAPACITY);
        long offsetMicroamps = settings.get(Setting.OFFSET_BOUND);
        // derived: C/20, at least twenty offset bounds; a sixtieth and a thousandth of the nominal
        // voltage
        long stepMicroamps = Math.max(declaredMilliampHours * 50, 20 * offsetMicroamps);
        steps =
                new StepWatch(
                        stepMicroamps,
                        offsetMicroamps,
                        settings.get(Setting.NOMINAL_VOLTAGE) * 1_000 / 60,
                        settings.get(Setting.NOMINAL_VOLTAGE));
        // derived: a fifth of the capacity, and the capacity
        balance =
                new ChargeBalance(
                        declaredMilliampHours * 720_000_000L,
                        declaredMilliampHours * 3_600_000_000L);
    }

    /**
     * Judges one whole minute.
     *
     * <p><b>Range:</b> minutes since full saturate at 2^40; all else as in the parts.
     *
     * @param minute the minute's figures
     * @param full the full-charge rule after its own judgement
     * @param measuredMilliampHours measured capacity, or 0
     * @return a bit for each fault that stands, by {@link Fault#bit()}
     */
    public int judge(MinuteMean minute, FullChargeRule full, long measuredMilliampHours) {
        steps.addMinute(minute.meanMicroamps(), minute.meanMicrovolts(), full.chargerStandsAlone());
        // A charger keeps a full battery full: that is no missing full charge, and what it gives
        // goes into gas and self-discharge and never comes out again.
        boolean keptFull = full.isKeptFull();
        balance.addMinute(keptFull ? Math.min(minute.nanocoulombs(), 0) : minute.nanocoulombs());
        sinceFullMinutes = keptFull ? 0 : Math.min(sinceFullMinutes + 1, 1L << 40);
        boolean voltsFull = full.isOn() && minute.lowestMicrovolts() >= full.thresholdMicrovolts();
        boolean blocked = voltsFull && full.isArmed() && !full.flowSeen() && !full.flowStopped();
        // A doubtful minute hides whether anything flowed: it neither speaks for it nor against it.
        if (!minute.isDoubtful()) {
            blockedMinutes = blocked ? Math.min(blockedMinutes + 1, BLOCKED_MINUTES) : 0;
        }

        bits = 0;
        set(Fault.POLARITY_REVERSED, steps.isReversed());
        set(Fault.CURRENT_NOT_SEEN, steps.isSilent());
        set(Fault.RESISTANCE_RISEN, steps.isResistanceRisen());
        set(Fault.IN_OUT_RATIO_OFF, balance.isOff());
        set(Fault.CHARGING_STOPPED_EARLY, voltsFull && full.isArmed() && full.flowStopped());
        set(Fault.CHARGING_BLOCKED, blockedMinutes >= BLOCKED_MINUTES);
        set(Fault.FULL_OVERDUE, overdueMinutes > 0 && sinceFullMinutes >= overdueMinutes);
        set(Fault.SCALE_SUSPECT, scaleSuspect);
        set(Fault.EMPTY_EARLY, earlyEmpty);
        set(
                Fault.CAPACITY_WORN,
                measuredMilliampHours > 0
                        && measuredMilliampHours * 100 < declaredMilliampHours * WORN_PERCENT);
        return bits;
    }

    private void set(Fault fault, boolean stands) {
        if (stands) {
            bits |= fault.bit();
        }
    }

    /**
     * Full was proven or declared.
     *
     * @param againstCount whether the count contradicted: then scale, capacity or wiring is wrong
     */
    public void full(boolean againstCount) {
        sinceFullMinutes = 0;
        scaleSuspect = againstCount;
        earlyEmpty = false;
    }

    /** The battery ended though the count says otherwise. */
    public void earlyEmpty() {
        earlyEmpty = true;
    }

    /** Samples were missing: the next minute is no neighbour of the last. */
    public void samplesMissing() {
        steps.restart();
    }

    /** Another battery: what was found belongs to the old one. */
    public void newBattery() {
        sinceFullMinutes = 0;
        scaleSuspect = false;
        earlyEmpty = false;
        balance.forget();
        steps.forget();
    }

    /**
     * Takes over what only a full takes away: the time since full, and what the last one and the
     * ends after it said.
     *
     * @param before of other settings
     */
    public void takeOver(Diagnosis before) {
        sinceFullMinutes = before.sinceFullMinutes;
        scaleSuspect = before.scaleSuspect;
        earlyEmpty = before.earlyEmpty;
    }

    /**
     * Takes over the time since full.
     *
     * @param minutes whole minutes, 0 to 2^40
     */
    public void resume(long minutes) {
        sinceFullMinutes = minutes;
    }

    /**
     * Time passed without power: nobody charged the battery full and told the gauge.
     *
     * <p><b>Range:</b> saturates at 2^40 minutes, as each minute does.
     *
     * @param minutes whole minutes, 0 or more
     */
    public void addOffTime(long minutes) {
        sinceFullMinutes = Math.min(sinceFullMinutes + Math.min(minutes, 1L << 40), 1L << 40);
    }

    /**
     * Time since full was proven or declared, or a charger last kept it so, or since the start.
     *
     * @return whole minutes
     */
    public long minutesSinceFull() {
        return sinceFullMinutes;
    }

    /**
     * Series resistance seen at steps of the current.
     *
     * @return microohms; 0 before the first step
     */
    public long resistanceMicroohms() {
        return steps.resistanceMicroohms();
    }
}
