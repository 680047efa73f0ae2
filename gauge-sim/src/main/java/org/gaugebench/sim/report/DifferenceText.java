package org.gaugebench.sim.report;

import java.util.List;
import java.util.Locale;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.saved.SavedField;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.agree.Difference;
import org.gaugebench.sim.agree.Script;
import org.gaugebench.sim.agree.Step;

/** Where a program and the core part, with all that led there: a report of a defect as it is. */
public final class DifferenceText {
    private static final int INPUTS = 20;

    private DifferenceText() {}

    /**
     * Writes it.
     *
     * @param script that shows it
     * @param usual settings from which the script's own differ in what is printed
     * @param found where
     */
    public static String of(Script script, GaugeSettings usual, Difference found) {
        Page page = new Page();
        page.paragraph(
                0,
                "They part at step %d of %d, tick %d: %s."
                        .formatted(
                                found.step() + 1,
                                script.steps().size(),
                                found.tick(),
                                found.what()));
        for (String line : found.details()) {
            page.line("  " + Page.clean(line));
        }
        registers(page, found.registers());
        page.gap().line("Memory");
        page.paragraph(
                2,
                script.slots() == 0
                        ? "none"
                        : "%d slots of %d bytes, seed %d, faults: %s"
                                .formatted(
                                        script.slots(),
                                        script.slotBytes(),
                                        script.memorySeed(),
                                        script.faults().isEmpty() ? "none" : script.faults()));
        settings(page, script.settings(), usual);
        int from = Math.max(0, found.step() + 1 - INPUTS);
        page.gap()
                .line(
                        from == 0
                                ? "All that happened"
                                : "The last " + INPUTS + " things that happened");
        for (int i = from; i <= found.step() && i < script.steps().size(); i++) {
            page.line(String.format(Locale.ROOT, "%6d  %s", i + 1, words(script.steps().get(i))));
        }
        return page.toString();
    }

    /** The table of the registers of both sides, the first one as its heading calls it. */
    static void registers(Page page, List<Difference.Pair> pairs) {
        if (pairs.isEmpty()) {
            return;
        }
        page.gap()
                .line("Registers              (* differs)               core             program");
        for (Difference.Pair each : pairs) {
            page.line(
                    String.format(
                            Locale.ROOT,
                            "%s %-36s %20d %20d",
                            each.differs() ? "*" : " ",
                            each.name(),
                            each.core(),
                            each.program()));
        }
    }

    private static void settings(Page page, GaugeSettings settings, GaugeSettings usual) {
        page.gap().line("Settings, where they are not those of the preset");
        page.line("  chemistry " + settings.get(Setting.CHEMISTRY));
        page.line("  nominal-voltage " + settings.get(Setting.NOMINAL_VOLTAGE) + " mV");
        for (Setting setting : Setting.values()) {
            if (settings.get(setting) != usual.get(setting)) {
                page.line(
                        "  " + setting.key() + " " + settings.get(setting) + " " + setting.unit());
            }
        }
    }

    /** One step in the words of the pipe's document. */
    static String words(Step step) {
        if (step instanceof Step.Tick tick) {
            boolean absent = tick.temperatureMillicelsius() == Sample.TEMPERATURE_ABSENT;
            return "tick %d %d %s %d"
                    .formatted(
                            tick.shuntCounts(),
                            tick.voltageCounts(),
                            absent ? "-" : tick.temperatureMillicelsius(),
                            Integer.toUnsignedLong(tick.clockMillis()));
        }
        if (step instanceof Step.Power power) {
            return "power %s %d".formatted(lower(power.known()), power.offMillis());
        }
        if (step instanceof Step.Tell tell) {
            return "command %s %d".formatted(lower(tell.command()), tell.argument());
        }
        if (step instanceof Step.CutAt cut) {
            return "power will go at write %d from here; it leaves: %s"
                    .formatted(cut.writesFromNow(), lower(cut.manner()));
        }
        if (step instanceof Step.Forge forge) {
            StringBuilder words = new StringBuilder("a newest record is put into slot ");
            words.append(forge.slot()).append(forge.isForeign() ? ", of other settings" : "");
            for (SavedField field : SavedField.values()) {
                long figure = forge.figures().get(field.ordinal());
                if (figure != 0) {
                    words.append(' ').append(lower(field)).append(' ').append(figure);
                }
            }
            return words.toString();
        }
        return "change of settings";
    }

    private static String lower(Enum<?> word) {
        return word.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
