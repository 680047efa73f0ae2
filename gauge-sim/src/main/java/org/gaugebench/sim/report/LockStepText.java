package org.gaugebench.sim.report;

import java.util.Locale;
import org.gaugebench.sim.agree.LockStep;
import org.gaugebench.sim.agree.Step;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.scenario.Scenario;

/** Whether two gauges went in step through scenarios: a line for each, and a sum. */
public final class LockStepText {
    private LockStepText() {}

    /** File and run of a scenario. */
    public static String name(Scenario scenario) {
        return scenario.file()
                + (scenario.variant().isEmpty() ? "" : " (" + scenario.variant() + ")");
    }

    /** One scenario: a line where all is the same, else all that tells where they part. */
    public static String of(LockStep.Result result) {
        LockStep.Parting parting = result.parting();
        String name = Page.clean(name(result.scenario()));
        if (parting == null) {
            return String.format(
                    Locale.ROOT,
                    "SAME     %,13d ticks%s  %s%n",
                    result.ticks(),
                    result.isDigested() ? "" : " (registers)",
                    name);
        }
        Page page = new Page();
        page.line("DIFFER   " + name);
        page.paragraph(
                2,
                String.format(
                        Locale.ROOT,
                        "They part at %s, %s tick %,d%s: %s.",
                        Figures.moment(parting.atMillis()),
                        parting.isExact() ? "in" : "in the minute that ends with",
                        parting.tick(),
                        parting.isExact() ? "" : ", and not when they are asked after each tick",
                        parting.what()));
        DifferenceText.registers(page, parting.registers());
        if (!parting.inputs().isEmpty()) {
            page.gap()
                    .line("The last that went in: shunt counts, voltage counts, m°C, clock in ms");
        }
        for (Step each : parting.inputs()) {
            page.line("  " + DifferenceText.words(each));
        }
        return page.gap().toString();
    }

    /**
     * The sum over all.
     *
     * @param same scenarios without a difference
     * @param differ scenarios with one
     * @param broken scenarios in which a program broke off
     * @param leftOut scenarios without a gauge of kind core
     * @param ticks compared
     */
    public static String sum(int same, int differ, int broken, int leftOut, long ticks) {
        String sum =
                String.format(
                        Locale.ROOT,
                        "%s: %,d ticks of %,d scenarios; %d the same, %d differ, %d broke off",
                        differ + broken == 0 ? "AGREE" : "DIFFER",
                        ticks,
                        same + differ + broken,
                        same,
                        differ,
                        broken);
        String left = leftOut == 0 ? "" : "; " + leftOut + " left out: no gauge of kind core";
        return new Page().paragraph(0, sum + left + ".").toString();
    }
}
