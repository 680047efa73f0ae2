package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.gaugebench.core.settings.ChemistryPreset;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.scenario.SettingText;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;

/** What to type into a gauge for an owner's battery and charger. */
public final class OwnSettings {
    private static final double TABLE_CELSIUS = 25;

    private OwnSettings() {}

    /**
     * One line of the list.
     *
     * @param words in the owner's own words
     * @param key our word for it, as it stands in a scenario
     * @param value with its unit
     * @param why it is that
     */
    public record Line(String words, String key, String value, String why) {}

    /** What the battery's kind asks for, with the owner's charger in place of the usual volts. */
    static GaugeSettings of(OwnSystem system, @Nullable Double chargerVolts) {
        GaugeSettings.Builder builder =
                preset(system)
                        .builder(system.nominalVolts() * 1_000L)
                        .set(Setting.CAPACITY, Math.round(system.ampHours() * 1e3));
        if (chargerVolts != null) {
            builder.set(Setting.ABSORPTION, Math.round(chargerVolts * 1e3));
        }
        return builder.build();
    }

    private static ChemistryPreset preset(OwnSystem system) {
        for (ChemistryPreset each : ChemistryPreset.values()) {
            if (each.key().equals(system.chemistry().key())) {
                return each;
            }
        }
        throw new IllegalStateException("no preset for " + system.chemistry());
    }

    /** Volts at which a charger that follows the temperature ends. */
    static double absorptionAt(OwnSystem system, double celsius) {
        GaugeSettings settings = of(system, null);
        double limit = settings.get(Setting.COMPENSATION_LIMIT) / 1e3;
        double shift =
                settings.get(Setting.TEMPERATURE_COEFFICIENT) / 1e6 * (celsius - TABLE_CELSIUS);
        return settings.get(Setting.ABSORPTION) / 1e3 + Math.max(-limit, Math.min(limit, shift));
    }

    /**
     * The list, in the order of a sample's way through a gauge.
     *
     * @param system as it was told
     * @param gauge the owner's
     * @param shunt that is fitted
     * @param chargerVolts the charger's highest steady volts; null for the usual ones
     */
    public static List<Line> lines(
            OwnSystem system, OwnersGauge gauge, ShuntRating shunt, @Nullable Double chargerVolts) {
        GaugeSettings settings = of(system, chargerVolts);
        List<Line> lines = new ArrayList<>();
        lines.add(
                new Line(
                        "printed on the shunt",
                        Setting.SHUNT_RATED_CURRENT.key() + ", " + Setting.SHUNT_RATED_DROP.key(),
                        shunt.toString(),
                        system.shunt() == null ? "the smallest usual one that fits" : "yours"));
        lines.add(
                line(
                        settings,
                        Setting.CAPACITY,
                        "amp-hours printed on the battery",
                        "all that stand in parallel together; never the part that you use"));
        lines.add(
                line(
                        settings,
                        Setting.COULOMBIC_EFFICIENCY,
                        "charge efficiency",
                        "of this kind of battery"));
        Double own = gauge.ownAmps();
        lines.add(
                new Line(
                        "the gauge's own current",
                        Setting.OWN_SUPPLY.key(),
                        own == null ? "measure it" : Sizing.amps(own),
                        "0 once its negative ends on the load side of the shunt, as drawn here"));
        lines.add(
                line(
                        settings,
                        Setting.ABSORPTION,
                        "the charger's highest steady volts",
                        chargerVolts == null
                                ? "usual for this kind; read yours"
                                : "of your charger"));
        double from =
                (settings.get(Setting.ABSORPTION) - settings.get(Setting.ABSORPTION_MARGIN)) / 1e3;
        lines.add(
                new Line(
                        "looks for full from",
                        Setting.ABSORPTION_MARGIN.key(),
                        volts(from),
                        "above what it only floats at, below what it charges at"));
        lines.add(
                new Line(
                        "current has fallen to",
                        Setting.TAPER.key(),
                        Sizing.amps(taperAmps(settings, system)),
                        SettingText.of(Setting.TAPER, settings.get(Setting.TAPER))
                                + " of the amp-hours; above the current at which the charger"
                                + " ends"));
        lines.add(line(settings, Setting.HOLD, "for", "so long without a break"));
        lines.add(
                line(settings, Setting.EMPTY_VOLTAGE, "volts that mean empty", "at a small load"));
        if (system.chemistry().isLeadAcid()) {
            lines.add(
                    line(
                            settings,
                            Setting.TEMPERATURE_COEFFICIENT,
                            "change of the charger's volts for each degree",
                            "as the charger does it; 0 if it does not"));
            lines.add(
                    line(
                            settings,
                            Setting.PEUKERT_EXPONENT,
                            "how much faster it empties at large currents",
                            "for the hours only, never for the percent"));
        }
        return List.copyOf(lines);
    }

    static double taperAmps(GaugeSettings settings, OwnSystem system) {
        return settings.get(Setting.TAPER) / 1e6 * system.ampHours();
    }

    private static Line line(GaugeSettings settings, Setting setting, String words, String why) {
        return new Line(words, setting.key(), SettingText.of(setting, settings.get(setting)), why);
    }

    static String volts(double volts) {
        return String.format(Locale.ROOT, "%.2f V", volts);
    }
}
