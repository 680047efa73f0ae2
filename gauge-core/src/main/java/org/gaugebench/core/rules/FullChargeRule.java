package org.gaugebench.core.rules;

import org.gaugebench.core.charge.MinuteMean;
import org.gaugebench.core.fixed.FixedMath;
import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.RuleState;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.GaugeSettings;

/**
 * Proves full (the F rules of {@code docs/rules.md}): the battery's voltage at the charger's
 * regulation level while the current has fallen into the taper range, for the hold time.
 *
 * <p>Judged once a minute on the whole minute's figures. The minute's <em>lowest</em> voltage must
 * reach the threshold, so a spike proves nothing; its <em>mean</em> current must lie in the taper
 * range, so a pump's short cycles do not hide a full battery.
 *
 * <p>Why each guard exists: a weak sun and a cloud give low current too, but at a voltage that
 * moves (threshold, flatness, hold); a protection circuit gives full voltage at no current, but in
 * a step (flow watch); a tired battery's current never reaches the taper (plateau); a float charger
 * never reaches the threshold (float path); a count that contradicts asks for four times the hold.
 */
public final class FullChargeRule {
    private static final int STRONG_FLOW_TAPER_TIMES = 2;
    private static final int LONGER_HOLD_TIMES = 4;

    /** A count whose upper edge reaches 95 % does not contradict full. */
    private static final int PLAUSIBLE_PARTS_PER_MILLION = 950_000;

    // Parameters.
    private final FullChargeLimits limits;

    // State.
    private final TaperPath taper;
    private final PlateauPath plateau;
    private final FloatPath floating;
    private final FlowWatch flow;
    private final RuleCoverage coverage = new RuleCoverage();
    private RuleState state = RuleState.WAITING;
    private RuleReason reason = RuleReason.NO_MINUTE_YET;
    private final QuietTime quietTime;
    private long dischargedNanocoulombs;
    private int fullCount;
    private long thresholdMicrovolts;
    private boolean atFloatVoltage;
    private boolean chargerStandsAlone;
    private int residualPartsPerMillion;

    /**
     * Derives the limits.
     *
     * @param settings checked settings
     */
    public FullChargeRule(GaugeSettings settings) {
        limits = new FullChargeLimits(settings);
        quietTime = new QuietTime(settings);
        taper = new TaperPath(limits);
        plateau = new PlateauPath(limits);
        floating = new FloatPath(limits);
        flow =
                new FlowWatch(
                        STRONG_FLOW_TAPER_TIMES * limits.taperMicroamps,
                        limits.noFlowMicroamps,
                        limits.someFlowMicroamps);
        thresholdMicrovolts = limits.thresholdMicrovolts(Sample.TEMPERATURE_ABSENT);
        if (limits.switchedOff) {
            reason = RuleReason.SWITCHED_OFF;
        }
    }

    /** Begins the quiet time: after a restart or a change of settings figures are settling. */
    public void beginQuietTime() {
        quietTime.begin();
    }

    /**
     * Judges one whole minute.
     *
     * <p><b>Range:</b> voltages to 1e8 uV, currents to 2^31 uA, all sums in 64 bits; minute
     * counters reset at each proof and gap. The discharge sum is clamped to 0 to the re-arm limit.
     *
     * @param minute the minute's figures
     * @param temperatureMillicelsius battery temperature, or absent: then 25 °C stands in
     * @param upperEdgePartsPerMillion highest state of charge that the error band allows; 1,000,000
     *     while nothing is known, so that a start without knowledge never locks the rule
     * @param atLimit whether the count stands at its upper limit
     * @return what the gauge shall do
     */
    public RuleOutcome judge(
            MinuteMean minute,
            int temperatureMillicelsius,
            int upperEdgePartsPerMillion,
            boolean atLimit) {
        if (limits.switchedOff) {
            return RuleOutcome.NONE;
        }
        atFloatVoltage =
                limits.floatMinutes > 0
                        && minute.lowestMicrovolts()
                                >= limits.floatThresholdMicrovolts(temperatureMillicelsius);
        thresholdMicrovolts = limits.thresholdMicrovolts(temperatureMillicelsius);
        watchFlow(minute, temperatureMillicelsius);
        boolean quiet = quietTime.passMinute();
        if (state == RuleState.NOT_ARMED) {
            return judgeRearm(minute, upperEdgePartsPerMillion);
        }
        if (quiet) {
            restart(RuleReason.QUIET_TIME);
            return RuleOutcome.NONE;
        }
        boolean plausible = upperEdgePartsPerMillion >= PLAUSIBLE_PARTS_PER_MILLION;
        RuleReason proof = judgePaths(minute, temperatureMillicelsius, plausible, atLimit);
        return proof == RuleReason.HOLD_RUNNING ? RuleOutcome.NONE : prove(proof);
    }

    private void watchFlow(MinuteMean minute, int temperatureMillicelsius) {
        if (minute.isDoubtful()) {
            flow.addDoubtfulMinute();
            chargerStandsAlone = false;
            return;
        }
        boolean voltageUp =
                minute.lowestMicrovolts() >= limits.chargingMicrovolts(temperatureMillicelsius);
        flow.addMinute(minute.meanMicroamps(), voltageUp);
        chargerStandsAlone =
                voltageUp && Math.abs((long) minute.meanMicroamps()) < limits.noFlowMicroamps;
    }

    /** Answers HOLD_RUNNING while nothing is proven, else the proof. */
    private RuleReason judgePaths(
            MinuteMean minute, int temperatureMillicelsius, boolean plausible, boolean atLimit) {
        RuleReason obstacle = taper.judge(minute, thresholdMicrovolts, flow);
        boolean plateauRuns = plateau.judge(minute, obstacle, atLimit);
        boolean floatRuns = floating.judge(minute, temperatureMillicelsius, flow);
        int neededMinutes = plausible ? limits.holdMinutes : LONGER_HOLD_TIMES * limits.holdMinutes;
        if (obstacle == RuleReason.HOLD_RUNNING && taper.heldMinutes() >= neededMinutes) {
            return plausible ? RuleReason.PROVEN_BY_TAPER : RuleReason.PROVEN_LATE;
        }
        if (plateauRuns && plateau.isProven()) {
            return RuleReason.PROVEN_BY_PLATEAU;
        }
        // No current at float voltage is what an open isolator shows too: where the count
        // contradicts, it proves nothing however long.
        if (floatRuns && plausible && floating.isProven()) {
            return RuleReason.PROVEN_BY_FLOAT;
        }
        explain(obstacle, plateauRuns, floatRuns);
        return RuleReason.HOLD_RUNNING;
    }

    private void explain(RuleReason obstacle, boolean plateauRuns, boolean floatRuns) {
        if (obstacle == RuleReason.HOLD_RUNNING) {
            boolean longer = taper.heldMinutes() >= limits.holdMinutes;
            move(RuleState.HOLDING, longer ? RuleReason.LONGER_HOLD_RUNNING : obstacle);
        } else if (plateauRuns) {
            move(RuleState.HOLDING, RuleReason.PLATEAU_RUNNING);
        } else if (obstacle == RuleReason.VOLTAGE_NOT_FLAT) {
            move(RuleState.WAITING, obstacle);
        } else if (taper.heldMinutes() > 0) {
            move(RuleState.PAUSED, obstacle);
        } else if (floatRuns) {
            move(RuleState.HOLDING, RuleReason.FLOAT_RUNNING);
        } else {
            move(RuleState.WAITING, obstacle);
        }
    }

    private RuleOutcome prove(RuleReason proof) {
        fullCount += fullCount < Integer.MAX_VALUE ? 1 : 0;
        residualPartsPerMillion =
                proof == RuleReason.PROVEN_BY_TAPER
                        ? limits.taperResidualPartsPerMillion
                        : limits.otherResidualPartsPerMillion;
        disarm(proof);
        return RuleOutcome.SET_TO_FULL;
    }

    /**
     * Armed by what went out through the shunt, or by what was lost beside it: once the band itself
     * says that the battery cannot be full any more.
     */
    private RuleOutcome judgeRearm(MinuteMean minute, int upperEdgePartsPerMillion) {
        dischargedNanocoulombs =
                FixedMath.clamp(
                        dischargedNanocoulombs - minute.nanocoulombs(),
                        0,
                        limits.rearmNanocoulombs);
        boolean cannotBeFull = upperEdgePartsPerMillion <= limits.rearmEdgePartsPerMillion;
        if (dischargedNanocoulombs < limits.rearmNanocoulombs && !cannotBeFull) {
            move(state, reason);
            return RuleOutcome.NONE;
        }
        restart(RuleReason.ARMED_BY_DISCHARGE);
        return RuleOutcome.ARMED;
    }

    private void restart(RuleReason why) {
        letGo();
        move(RuleState.WAITING, why);
    }

    private void letGo() {
        taper.reset();
        plateau.reset();
        floating.reset();
    }

    private void disarm(RuleReason why) {
        letGo();
        move(RuleState.NOT_ARMED, why);
        dischargedNanocoulombs = 0;
    }

    private void move(RuleState to, RuleReason why) {
        coverage.visit(state, to, why);
        state = to;
        reason = why;
    }

    /** Somebody declared full: the rule waits for a discharge as after its own proof. */
    public void declareFull() {
        if (!limits.switchedOff) {
            disarm(RuleReason.DECLARED_FULL);
        }
    }

    /** Somebody declared another state of charge: the rule looks for full from now. */
    public void declareNotFull() {
        if (!limits.switchedOff) {
            restart(RuleReason.DECLARED_NOT_FULL);
        }
    }

    /** Samples were missing: what was held no longer counts. */
    public void samplesMissing() {
        flow.forget();
        if (!limits.switchedOff && state != RuleState.NOT_ARMED) {
            restart(RuleReason.SAMPLES_MISSING);
        }
    }

    /**
     * Takes over where a rule before this one stood: after a restart or a change of settings.
     *
     * @param armed whether it looked for full
     * @param discharged what had been discharged since full, nanocoulombs; clamped
     * @param fulls full anchors so far
     */
    public void resume(boolean armed, long discharged, int fulls) {
        fullCount = fulls;
        if (limits.switchedOff) {
            return;
        }
        beginQuietTime();
        if (armed) {
            restart(RuleReason.QUIET_TIME);
        } else {
            disarm(RuleReason.QUIET_TIME);
            dischargedNanocoulombs = FixedMath.clamp(discharged, 0, limits.rearmNanocoulombs);
        }
    }

    /**
     * Whether full was proven or declared and a charger keeps it so: the battery has not been
     * discharged since and stands at float voltage or above.
     *
     * @return of the last whole minute
     */
    public boolean isKeptFull() {
        return state == RuleState.NOT_ARMED && atFloatVoltage;
    }

    /** Where the rule stands: its state. */
    public RuleState state() {
        return state;
    }

    /** Why it stands there: the reason of the last judgement. */
    public RuleReason reason() {
        return reason;
    }

    /** How long voltage and current have spoken for full: whole minutes of the taper hold. */
    public int heldMinutes() {
        return taper.heldMinutes();
    }

    /** Discharged since full was proven: 0 to the re-arm limit, nanocoulombs. */
    public long dischargedNanocoulombs() {
        return dischargedNanocoulombs;
    }

    /**
     * Whether the rule looks for full.
     *
     * @return false from a proof until enough was discharged
     */
    public boolean isArmed() {
        return state != RuleState.NOT_ARMED;
    }

    /**
     * Full anchors since power-up.
     *
     * @return a count
     */
    public int fullCount() {
        return fullCount;
    }

    /**
     * The threshold at the last judged temperature.
     *
     * @return microvolts
     */
    public long thresholdMicrovolts() {
        return thresholdMicrovolts;
    }

    /**
     * How far from full the battery may still be at the last proof.
     *
     * @return parts per million of the capacity
     */
    public int residualPartsPerMillion() {
        return residualPartsPerMillion;
    }

    /**
     * Whether the last proof is fit for use as evidence of capacity or efficiency.
     *
     * @return true only for the plain taper proof that the count did not contradict
     */
    public boolean isEvidence() {
        return reason == RuleReason.PROVEN_BY_TAPER;
    }

    /**
     * Whether charging stopped in a step: something opened.
     *
     * @return true until charge flows again
     */
    public boolean flowStopped() {
        return flow.stopped();
    }

    /**
     * Whether a charger's voltage stands on the wires and nothing flows: a full battery, or one
     * that is cut off and has another voltage.
     *
     * @return what the last minute showed; false in a doubtful one and while the rule is off
     */
    public boolean chargerStandsAlone() {
        return chargerStandsAlone;
    }

    /**
     * Takes over where the rule of other settings stood, the flow that it saw included.
     *
     * @param before that rule
     */
    public void takeOver(FullChargeRule before) {
        flow.takeOver(before.flow);
        resume(before.isArmed(), before.dischargedNanocoulombs, before.fullCount);
    }

    /** Another battery: the flow that was seen went into the old one. */
    public void newBattery() {
        flow.forgetBattery();
        resume(true, 0, 0);
    }

    /** Whether charge has flowed in since the last stop: false until it does. */
    public boolean flowSeen() {
        return flow.flowSeen();
    }

    /** Whether the rule is on: false when its settings switch it off. */
    public boolean isOn() {
        return !limits.switchedOff;
    }

    /** States visited since power-up, a bit each, by ordinal. */
    public int statesSeen() {
        return coverage.statesSeen();
    }

    /** Transitions taken since power-up, bit from x 8 + to each. */
    public long transitionsSeen() {
        return coverage.transitionsSeen();
    }

    /** Reasons given since power-up, a bit each, by {@link RuleReason#bit()}. */
    public int reasonsSeen() {
        return coverage.reasonsSeen();
    }
}
