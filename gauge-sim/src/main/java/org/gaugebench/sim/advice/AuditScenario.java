package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.scenario.SettingText;
import org.gaugebench.sim.units.ConverterRange;
import org.gaugebench.sim.units.QuantityFormat;
import org.gaugebench.sim.units.RecordUnit;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;

/**
 * The text of the days behind an audit of an owner's own system: the charger can fill the battery
 * every day. Where the owner told what his gauge does, that gauge is the main one and our core with
 * the same settings stands beside it; where he told nothing, the core stands in for it.
 */
final class AuditScenario {
    /** Three fillings even of a slow charger, and runs that take a tenth of a second. */
    static final int DAYS = 6;

    /** Until when the charger is on, and its owner looks. */
    static final int CHARGED_HOUR = 18;

    /** Name of our core beside the owner's gauge. */
    static final String BESIDE = "better";

    private static final double START_PERCENT = 60;

    private final OwnSystem system;
    private final AuditedGauge audited;
    private final OwnersGauge gauge;
    private final SettingsTold settings;
    private final ShuntRating shunt;
    private final StringBuilder text = new StringBuilder();
    private final List<String> assumed = new ArrayList<>();

    AuditScenario(
            OwnSystem system, AuditedGauge audited, SettingsTold settings, ShuntRating shunt) {
        this.system = system;
        this.audited = audited;
        this.gauge = audited.gauge();
        this.settings = settings;
        this.shunt = shunt;
    }

    /** What was taken where nothing was told. */
    List<String> assumed() {
        return assumed;
    }

    /**
     * Writes it.
     *
     * @param handDays days, from 0, at whose end its owner sets it to 100 %
     */
    String write(List<Integer> handDays) {
        line("format: 1");
        line("title: My system and the settings of its gauge");
        line("about: Days of use and of charging; look at when the gauge sets itself to 100 %%.");
        line("duration: %d d", DAYS);
        line("tick: 1 min");
        line("battery:");
        line("  chemistry: %s", system.chemistry().key());
        line("  nominal-voltage: %d V", system.nominalVolts());
        line("  capacity: %s", quantity(system.ampHours(), RecordUnit.MILLIAMP_HOURS, 1e3));
        line("  start: 60 %%");
        line("sensor:");
        line("  shunt: %s", shunt);
        ConverterRange converter = system.converter();
        if (converter != null) {
            line("  converter: %s", converter);
        }
        gauge();
        if (audited.isTold()) {
            beside();
        }
        Double own = gauge.ownAmps();
        if (own != null && own > 0) {
            line("wiring:");
            line("  own-supply: %s", quantity(own, RecordUnit.MICROAMPS, 1e6));
        }
        loads();
        charger();
        for (int day : handDays) {
            line("  - {at: %d d %d h, set: {gauge.declare: 100 %%}}", day, CHARGED_HOUR);
        }
        return text.toString();
    }

    private void gauge() {
        line("gauge:");
        if (audited.isTold()) {
            ComposedGauge.settable(gauge).behaviour(START_PERCENT).forEach(it -> line("  %s", it));
        } else {
            line("  kind: core");
        }
        Chemistry told = settings.chemistry();
        setting(
                "chemistry",
                told == null ? null : told.key(),
                "it is told the right kind of battery");
        Long ampHours = settings.milliampHours();
        setting(
                "capacity",
                ampHours == null ? null : format(ampHours, RecordUnit.MILLIAMP_HOURS),
                "it is told the amp-hours that are printed on the battery");
        ShuntRating rating = settings.shunt();
        setting(
                "shunt-rated-current",
                rating == null ? null : format(rating.microamps(), RecordUnit.MICROAMPS),
                "it is told the shunt that is fitted");
        if (rating != null) {
            line("  shunt-rated-drop: %s", format(rating.microvolts(), RecordUnit.MICROVOLTS));
        }
        Double efficiency = gauge.efficiencySet();
        if (efficiency != null || !audited.isTold()) {
            setting(
                    "coulombic-efficiency",
                    efficiency == null
                            ? null
                            : quantity(efficiency, RecordUnit.PARTS_PER_MILLION, 1e6),
                    "its charge efficiency is as usual for this kind of battery");
        }
        Long kept = settings.keptBackPartsPerMillion();
        setting(
                "kept-back-charge",
                kept == null ? null : format(kept, RecordUnit.PARTS_PER_MILLION),
                "no charge is kept back");
        full();
    }

    /** The core has further ways to find full; a gauge like the owner's is not known to have. */
    private void full() {
        line("  float-voltage: 0 V");
        line("  plateau-hold: 0 min");
        boolean onVolts = gauge.setsFull() == OwnersGauge.SetsFull.VOLTS;
        Long volts = settings.fullMillivolts();
        boolean isWithout = audited.isTold() && !gauge.setsItself();
        if (isWithout || (volts != null && volts == 0)) {
            line("  absorption: 0 V");
            return;
        }
        setting(
                "absorption",
                volts == null
                        ? null
                        : format(
                                volts + usual().get(Setting.ABSORPTION_MARGIN),
                                RecordUnit.MILLIVOLTS),
                "it looks for full from %s, as usual for this kind of battery"
                        .formatted(
                                format(
                                        usual().get(Setting.ABSORPTION)
                                                - usual().get(Setting.ABSORPTION_MARGIN),
                                        RecordUnit.MILLIVOLTS)));
        if (onVolts) {
            // It looks at neither current nor time, so nothing is written of them.
            assumed.add("it takes high volts for full, whatever the current");
            return;
        }
        Long part = settings.fullPartsPerMillion();
        setting(
                "taper",
                part == null ? null : format(part, RecordUnit.PARTS_PER_MILLION),
                "and once the current has fallen to %s of the amp-hours, as usual"
                        .formatted(
                                format(usual().get(Setting.TAPER), RecordUnit.PARTS_PER_MILLION)));
        Long minutes = settings.fullMinutes();
        if (minutes == null && audited.isTold()) {
            line("  hold: %d min", ComposedGauge.HOLD_MINUTES);
            assumed.add(
                    "for %d min, the most of which nobody tells"
                            .formatted(ComposedGauge.HOLD_MINUTES));
            return;
        }
        setting(
                "hold",
                minutes == null ? null : format(minutes, RecordUnit.MINUTES),
                "for %s, as usual"
                        .formatted(format(usual().get(Setting.HOLD), RecordUnit.MINUTES)));
    }

    /** Ours is told what can be known, and looks for full in all its ways. */
    private void beside() {
        Double own = gauge.ownAmps();
        Long volts = settings.fullMillivolts();
        Long minutes = settings.fullMinutes();
        GaugeSettings usual = usual();
        line("beside:");
        line("  - name: %s", BESIDE);
        line("    kind: core");
        line("    start: %s %%", SystemLines.number(START_PERCENT, 0));
        if (own != null && own > 0) {
            line("    own-supply-current: %s", quantity(own, RecordUnit.MICROAMPS, 1e6));
        }
        if (volts == null || volts == 0 || !gauge.setsItself()) {
            line(
                    "    absorption: %s",
                    format(usual.get(Setting.ABSORPTION), RecordUnit.MILLIVOLTS));
        }
        if (minutes == null) {
            line("    hold: %s", format(usual.get(Setting.HOLD), RecordUnit.MINUTES));
        }
        for (Setting each : List.of(Setting.FLOAT_VOLTAGE, Setting.PLATEAU_HOLD)) {
            line("    %s: %s", each.key(), SettingText.of(each, usual.get(each)));
        }
    }

    /** What the gauge's own preset would be for what it is told. */
    private GaugeSettings usual() {
        Chemistry told = settings.chemistry();
        return AuditSubject.preset(told == null ? system.chemistry() : told)
                .builder(system.nominalVolts() * 1_000L)
                .build();
    }

    private void setting(String key, @Nullable String told, String otherwise) {
        if (told == null) {
            assumed.add(otherwise);
        } else {
            line("  %s: %s", key, told);
        }
    }

    private void loads() {
        boolean first = true;
        int number = 0;
        for (OwnLoad load : system.loads()) {
            number++;
            long seconds = StrictMath.round(load.hoursPerDay() * 3_600);
            if (!SystemLines.flows(load.amps()) || seconds == 0) {
                continue;
            }
            if (first) {
                line("loads:");
                first = false;
            }
            String hours =
                    seconds >= 86_400
                            ? ""
                            : String.format(Locale.ROOT, ", on-for: %d s, every: 1 d", seconds);
            line(
                    "  load-%d: {current: %s%s}",
                    number, quantity(load.amps(), RecordUnit.MICROAMPS, 1e6), hours);
        }
    }

    private void charger() {
        double amps = system.chargerAmps();
        if (amps == 0) {
            assumed.add("no charger: whether it finds full cannot be judged");
            return;
        }
        line("chargers:");
        line("  charger:");
        line("    current-limit: %s", quantity(amps, RecordUnit.MICROAMPS, 1e6));
        line("    switched: off");
        Long volts = settings.chargerMicrovolts();
        if (volts == null) {
            assumed.add("the charger's highest steady volts are as usual for this battery");
        } else {
            line("    absorption: %s", format(volts, RecordUnit.MICROVOLTS));
            long floats = usual().get(Setting.FLOAT_VOLTAGE) * 1_000;
            line("    float: %s", format(Math.min(volts, floats), RecordUnit.MICROVOLTS));
        }
        line("timeline:");
        line("  - {from: 8 h, to: %d h, every: 1 d, set: {charger: on}}", CHARGED_HOUR);
        assumed.add("charging from 8 to 18 h each day, starting at 60 %");
    }

    private static String format(long steps, RecordUnit unit) {
        return QuantityFormat.format(steps, unit);
    }

    private static String quantity(double value, RecordUnit unit, double steps) {
        return format(StrictMath.round(value * steps), unit);
    }

    private void line(String format, Object... values) {
        text.append(String.format(Locale.ROOT, format, values)).append('\n');
    }
}
