package org.gaugebench.sim.report;

import org.gaugebench.core.port.Fault;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.sim.device.PipeCommand;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.judge.RuleCoverage;
import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;

/** One moment of a run with everything in it: truth, readings and the inside of each gauge. */
public final class MomentPage implements Observer {
    private static final int LABEL_WIDTH = 20;
    private static final long NANOCOULOMBS_PER_MICROAMP_HOUR = 3_600_000;

    private final long atMillis;
    private @Nullable String text;

    private MomentPage(long atMillis) {
        this.atMillis = atMillis;
    }

    /** Ends the run: what comes after the moment is not asked for. */
    private static final class Reached extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Reached() {
            super("reached", null, false, false);
        }
    }

    /**
     * Runs a scenario up to a moment and tells what is there. The moment is the first tick at or
     * after the time, and the run is the same to that point as without looking.
     *
     * @param scenario what to run
     * @param seed of every random stream
     * @param atMillis from the start, at most the scenario's duration
     * @return lines of at most {@value Page#WIDTH} columns
     */
    public static String of(Scenario scenario, long seed, long atMillis) {
        return of(scenario, seed, atMillis, null);
    }

    /** The same with a program in the place of the first gauge of kind core; null for none. */
    public static String of(
            Scenario scenario, long seed, long atMillis, @Nullable PipeCommand program) {
        MomentPage moment = new MomentPage(atMillis);
        Rig rig = new Rig(scenario, seed, moment, program);
        rig.stopAt(new long[] {atMillis});
        try {
            rig.run();
        } catch (Reached e) {
            // as meant
        } finally {
            rig.release();
        }
        String text = moment.text;
        if (text == null) {
            throw new IllegalArgumentException("the run ends before that moment");
        }
        return head(scenario, seed, rig) + text;
    }

    private static String head(Scenario scenario, long seed, Rig rig) {
        return new Page()
                .paragraph(0, "At " + Figures.moment(rig.timeMillis()) + " of " + scenario.title())
                .paragraph(0, scenario.name() + ", seed " + seed)
                .toString();
    }

    @Override
    public void onStart(Rig rig) {
        onMoment(rig);
    }

    @Override
    public void onMoment(Rig rig) {
        if (rig.timeMillis() < atMillis) {
            return;
        }
        Page page = new Page();
        page.gap().line("Truth");
        truth(page, rig.truth());
        for (Lane lane : rig.lanes()) {
            page.gap().line(Page.clean(lane.name()));
            if (lane.hasPower()) {
                readout(page, lane.read(), rig.truth());
                registers(page, lane.inspect());
            } else {
                row(page, "power", "none, so nothing is shown");
            }
        }
        text = page.toString();
        throw new Reached();
    }

    private static void truth(Page page, Truth truth) {
        row(page, "state of charge", Figures.percent(micro(truth.stateOfCharge())));
        row(page, "charge", Figures.decimal(micro(truth.chargeAmpHours()), 6, 3) + " Ah");
        row(page, "current", Figures.decimal(micro(truth.meanCurrentAmps()), 6, 3) + " A");
        row(page, "voltage", Figures.decimal(micro(truth.voltageVolts()), 6, 3) + " V");
        row(page, "temperature", Figures.decimal(micro(truth.temperatureCelsius()), 6, 1) + " °C");
    }

    private static long micro(double value) {
        return StrictMath.round(value * 1e6);
    }

    private static void row(Page page, String label, String words) {
        page.labelled(2, LABEL_WIDTH, label, words);
    }

    private static void readout(Page page, Readout it, Truth truth) {
        long shown = it.stateOfChargePartsPerMillion;
        String error = Figures.decimal(shown - micro(truth.stateOfCharge()), 4, 2);
        row(
                page,
                "state of charge",
                shown < 0 ? "not known" : Figures.percent(shown) + ", " + error + " off the truth");
        row(
                page,
                "band",
                it.bandUnknown
                        ? "unknown"
                        : Figures.edges(it.lowerEdgePartsPerMillion, it.upperEdgePartsPerMillion)
                                + " %");
        if (shown >= 0) {
            long microampHours = it.remainingNanocoulombs / NANOCOULOMBS_PER_MICROAMP_HOUR;
            row(page, "charge", Figures.decimal(microampHours, 6, 3) + " Ah");
        }
        row(page, "current", Figures.decimal(it.currentMicroamps, 6, 3) + " A");
        row(page, "voltage", Figures.decimal(it.voltageMicrovolts, 6, 3) + " V");
        row(
                page,
                "full-charge rule",
                RuleCoverage.words(it.ruleState) + " (" + it.ruleReason.sentence() + ")");
        row(page, "believed because", it.trustReason.sentence());
        StringBuilder faults = new StringBuilder();
        for (Fault fault : Fault.values()) {
            if ((it.faultBits & fault.bit()) != 0) {
                faults.append(faults.isEmpty() ? "" : "; ").append(fault.sentence());
            }
        }
        row(page, "faults", faults.isEmpty() ? "none" : faults.toString());
    }

    private static void registers(Page page, Registers registers) {
        page.line("  registers");
        for (Register register : Register.values()) {
            page.line(
                    "    %-36s %20d %s"
                            .formatted(register.name(), registers.get(register), register.unit()));
        }
    }
}
