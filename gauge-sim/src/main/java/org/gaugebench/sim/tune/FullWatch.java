package org.gaugebench.sim.tune;

import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.RuleState;
import org.gaugebench.sim.judge.FullCharge;
import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.ChargerSpec;
import org.gaugebench.sim.scenario.Scenario;

/** Holds a gauge's 100 % against the battery's through a run. */
final class FullWatch implements Observer {
    private static final double REFERENCE_CELSIUS = 25;

    private final FullDefinition definition;
    private final double heldVolts;
    private final double floatedVolts;
    private final double voltsPerKelvin;
    private Rig rig;
    private int fulls;
    private int falseFulls;
    private long lowestTrueParts = 1_000_000;
    private int heldFulls;
    private int missedFulls;
    private long minutes;
    private double errorSum;
    private long worstErrorParts;
    private long lastMinute = -1;
    private boolean inStay;
    private boolean isKnown;
    private long minutesHeld;
    private long minutesFloated;

    @SuppressWarnings("NullAway.Init") // the rig is there before the first event
    private FullWatch(Scenario scenario, FullDefinition definition) {
        this.definition = definition;
        double scale = scenario.battery().nominalVolts() / 12.0;
        double lowest = Double.MAX_VALUE;
        double floating = Double.MAX_VALUE;
        double perKelvin = 0;
        for (ChargerSpec each : scenario.chargers()) {
            lowest = Math.min(lowest, each.absorptionMicrovolts() / 1e6);
            if (each.floatMicrovolts() > 0) {
                floating = Math.min(floating, each.floatMicrovolts() / 1e6);
            }
            perKelvin = Math.min(perKelvin, each.microvoltsPerKelvin() / 1e6);
        }
        // 0.2 V of 12 V is what the usual margin allows for cable and meter.
        double aboveFloat = floating == Double.MAX_VALUE ? 0 : floating + 0.15 * scale;
        heldVolts = Math.max(lowest - 0.2 * scale, aboveFloat);
        // The same part as in the rule itself (F11).
        floatedVolts = floating * (1 - 1.0 / 120);
        voltsPerKelvin = perKelvin;
    }

    /** Runs a scenario and watches its only gauge. */
    static CaseScore of(Scenario scenario, long seed, FullDefinition definition) {
        FullWatch watch = new FullWatch(scenario, definition);
        watch.rig = new Rig(scenario, seed, watch);
        watch.rig.run();
        watch.endStay();
        return new CaseScore(
                watch.fulls,
                watch.falseFulls,
                watch.lowestTrueParts,
                watch.heldFulls,
                watch.missedFulls,
                watch.minutes == 0 ? 0 : watch.errorSum / watch.minutes,
                watch.worstErrorParts);
    }

    private static long parts(Truth truth) {
        return StrictMath.round(truth.stateOfCharge() * 1e6);
    }

    @Override
    public boolean wantsDigest() {
        return false;
    }

    @Override
    public void onEvent(Lane lane, Event event, long value) {
        if (event != Event.SET_TO_FULL) {
            return;
        }
        long truth = parts(rig.truth());
        fulls++;
        falseFulls += truth < definition.falseBelowParts() ? 1 : 0;
        lowestTrueParts = Math.min(lowestTrueParts, truth);
        isKnown = true;
    }

    @Override
    public void onStart(Rig started) {
        look(started);
    }

    @Override
    public void onMoment(Rig standing) {
        if (standing.timeMillis() / 60_000 != lastMinute) {
            look(standing);
        }
    }

    private void look(Rig standing) {
        lastMinute = standing.timeMillis() / 60_000;
        Truth truth = standing.truth();
        Readout shown = standing.lanes().get(0).read();
        long parts = parts(truth);
        if (shown.stateOfChargePartsPerMillion != Readout.NOT_KNOWN) {
            long error = Math.abs(shown.stateOfChargePartsPerMillion - parts);
            minutes++;
            errorSum += error;
            worstErrorParts = Math.max(worstErrorParts, error);
        }
        stay(standing, shown, parts);
    }

    /** A stay lasts from the moment at which a battery is full until it is in use again. */
    private void stay(Rig standing, Readout shown, long parts) {
        if (parts < FullCharge.IS_USED_PARTS) {
            endStay();
            return;
        }
        if (!inStay) {
            inStay = true;
            isKnown = false;
        }
        isKnown |= shown.ruleState == RuleState.NOT_ARMED;
        if (parts < FullCharge.IS_FULL_PARTS || !isCharged(standing)) {
            return;
        }
        Truth truth = standing.truth();
        double moved = voltsPerKelvin * (truth.temperatureCelsius() - REFERENCE_CELSIUS);
        double volts = truth.batteryVolts() - moved;
        minutesHeld += volts >= heldVolts ? 1 : 0;
        minutesFloated += volts >= floatedVolts ? 1 : 0;
    }

    /** A battery that rests may show a low charger's voltage, and no rule could tell. */
    private static boolean isCharged(Rig standing) {
        for (ChargerSpec each : standing.scenario().chargers()) {
            if (standing.plant().chargerAmps(each.name()) > 0) {
                return true;
            }
        }
        return false;
    }

    private void endStay() {
        boolean counts =
                minutesHeld >= definition.heldMinutes()
                        || minutesFloated >= definition.floatedMinutes();
        if (inStay && counts) {
            heldFulls++;
            missedFulls += isKnown ? 0 : 1;
        }
        inStay = false;
        minutesHeld = 0;
        minutesFloated = 0;
    }
}
