package org.gaugebench.sim.rig;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Fault;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.RuleReason;
import org.gaugebench.sim.scenario.BatterySpec;
import org.gaugebench.sim.scenario.Scenario;

/** One case, run to its end: what each rule did and what was true then. */
final class FullChargeRun implements Observer {
    private static final String OURS = "gauge";

    private final FullChargeCase what;
    private final Map<String, BareRule.Fulls> fulls = new LinkedHashMap<>();
    private final List<BareRule> bare;
    private final Set<String> faults = new TreeSet<>();
    private final int tickMillis;
    private final Rig rig;
    private String proof = "";
    private double bandPercentAfterFull;
    private int minutesOutsideBand;
    private String firstOutside = "";

    private FullChargeRun(FullChargeCase what, Scenario scenario) {
        this.what = what;
        BatterySpec battery = scenario.battery();
        int volts = battery.nominalVolts();
        int ampHours = (int) (battery.capacityMicroampHours() / 1_000_000);
        bare =
                List.of(
                        BareRule.of(13.2, 4, 3, volts, ampHours),
                        BareRule.of(13.8, 4, 2, volts, ampHours),
                        BareRule.of(14.2, 2, 1, volts, ampHours));
        scenario.gauges().forEach(it -> fulls.put(it.name(), new BareRule.Fulls()));
        bare.forEach(it -> fulls.put(it.name(), it.fulls()));
        tickMillis = (int) scenario.tickMillis();
        rig = new Rig(scenario, scenario.seed(), this);
    }

    static FullChargeRun of(FullChargeCase what, Scenario scenario) {
        FullChargeRun run = new FullChargeRun(what, scenario);
        run.rig.run();
        return run;
    }

    private double truePercent() {
        return 100 * rig.truth().stateOfCharge();
    }

    @Override
    public void onEvent(Lane lane, Event event, long value) {
        boolean ours = lane.name().equals(OURS);
        if (ours && event == Event.FAULT_RAISED) {
            faults.add(key(Fault.values()[(int) value]));
        }
        if (event != Event.SET_TO_FULL) {
            return;
        }
        fulls.get(lane.name()).add(truePercent(), rig.timeMillis());
        if (ours && proof.isEmpty()) {
            RuleReason[] reasons = RuleReason.values();
            proof = reasons[(int) lane.inspect().get(Register.RULE_REASON)].name();
        }
    }

    static String key(Enum<?> code) {
        return code.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    @Override
    public Observer forTicks() {
        return this;
    }

    @Override
    public void onTick(Rig ticking) {
        Readout readout = ticking.lanes().get(0).read();
        for (BareRule rule : bare) {
            rule.look(
                    readout.voltageMicrovolts,
                    readout.currentMicroamps,
                    tickMillis,
                    truePercent(),
                    ticking.timeMillis());
        }
    }

    @Override
    public void onMoment(Rig standing) {
        Readout readout = standing.lanes().get(0).read();
        double lower = readout.lowerEdgePartsPerMillion / 1e4;
        double upper = readout.upperEdgePartsPerMillion / 1e4;
        if (ours().times == 1 && bandPercentAfterFull == 0) {
            bandPercentAfterFull = upper - lower;
        }
        // 1 ppm: the edges are whole ppm
        boolean inside = truePercent() >= lower - 1e-4 && truePercent() <= upper + 1e-4;
        if (readout.bandUnknown || !inside) {
            if (minutesOutsideBand++ == 0) {
                firstOutside =
                        String.format(
                                Locale.ROOT,
                                " at %.2f h: true %.2f, band %.2f to %.2f",
                                standing.timeMillis() / 3.6e6,
                                truePercent(),
                                lower,
                                upper);
            }
        }
    }

    FullChargeCase what() {
        return what;
    }

    BareRule.Fulls ours() {
        return of(OURS);
    }

    BareRule.Fulls of(String rule) {
        BareRule.Fulls its = fulls.get(rule);
        if (its == null) {
            throw new IllegalArgumentException(rule + " is none of " + fulls.keySet());
        }
        return its;
    }

    Set<String> rules() {
        return fulls.keySet();
    }

    String proof() {
        return proof;
    }

    Set<String> faults() {
        return faults;
    }

    double bandPercentAfterFull() {
        return bandPercentAfterFull;
    }

    int minutesOutsideBand() {
        return minutesOutsideBand;
    }

    String firstOutside() {
        return firstOutside;
    }

    double endTruePercent() {
        return truePercent();
    }
}
