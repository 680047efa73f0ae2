package org.gaugebench.sim.tune;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.gaugebench.core.settings.ChemistryPreset;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.scenario.Chemistry;

/**
 * What may be recommended for a chemistry, each end with its reason. The sheet of the battery's
 * maker goes before all of it. The charger's voltages are no part of the search: they are the
 * charger's, and a gauge that is told others looks for what never comes.
 */
public final class SafeLimits {
    private static final long TWELVE_VOLTS = 12_000;

    /** What a coarse meter and a cable take away; of 12 V. The audit looks for the same. */
    private static final long BELOW_ABSORPTION_MILLIVOLTS = 50;

    /** A threshold nearer to the float is met by a hot day; of 12 V. The audit looks for it too. */
    private static final long ABOVE_FLOAT_MILLIVOLTS = 150;

    private final ChemistryPreset preset;
    private final long nominalMillivolts;
    private final GaugeSettings usual;

    private SafeLimits(ChemistryPreset preset, long nominalMillivolts) {
        this.preset = preset;
        this.nominalMillivolts = nominalMillivolts;
        this.usual = preset.builder(nominalMillivolts).build();
    }

    /**
     * The settings that are searched for a battery.
     *
     * @param nominalVolts 12, 24, 36 or 48
     */
    public static List<TunedSetting> of(Chemistry chemistry, int nominalVolts) {
        for (ChemistryPreset each : ChemistryPreset.values()) {
            if (each.key().equals(chemistry.key())) {
                return new SafeLimits(each, nominalVolts * 1_000L).all();
            }
        }
        throw new IllegalStateException("no preset for " + chemistry);
    }

    private List<TunedSetting> all() {
        List<TunedSetting> all = new ArrayList<>();
        all.add(margin());
        all.add(taper());
        all.add(hold());
        all.add(
                setting(
                        Setting.FLATNESS,
                        0,
                        "a charger's ripple and a meter's last digits move it so far (common"
                                + " practice, no source)",
                        "twice the usual; a voltage that moves more still rises (ours)",
                        scaled(50, 75, 100, 150, 200)));
        if (usual.get(Setting.PLATEAU_HOLD) > 0) {
            all.add(
                    setting(
                            Setting.PLATEAU_HOLD,
                            1,
                            "half of a battery maker's rule, which is an hour",
                            "longer than most chargers absorb (common practice, no source)",
                            30,
                            60,
                            120,
                            240));
        }
        if (usual.get(Setting.FLOAT_VOLTAGE) > 0) {
            all.add(floatHold());
        }
        all.add(
                setting(
                        Setting.REARM_DISCHARGE,
                        1_000,
                        "under it the same charge is proven twice (ours)",
                        "above it a day of little use ends without a proof (ours)",
                        10_000,
                        20_000,
                        50_000,
                        100_000));
        return all;
    }

    private TunedSetting margin() {
        long absorption = usual.get(Setting.ABSORPTION);
        long floating = usual.get(Setting.FLOAT_VOLTAGE);
        long lowestThreshold =
                floating > 0
                        ? floating + scaled(ABOVE_FLOAT_MILLIVOLTS)
                        : usual.get(Setting.REST_VOLTAGE_90);
        long widest = absorption - lowestThreshold;
        TreeSet<Long> steps = new TreeSet<>();
        for (long each : scaled(50, 100, 150, 200, 300, 450, 600, 750)) {
            if (each <= widest) {
                steps.add(each);
            }
        }
        steps.add(usual.get(Setting.ABSORPTION_MARGIN));
        return new TunedSetting(
                Setting.ABSORPTION_MARGIN,
                usual.get(Setting.ABSORPTION_MARGIN),
                // What a rested battery of 50 % shows, or as far down as the setting goes.
                Math.min(
                        absorption - usual.get(Setting.REST_VOLTAGE_50),
                        Setting.ABSORPTION_MARGIN.maximum()),
                List.copyOf(steps),
                "a threshold above the charger's voltage less "
                        + scaled(BELOW_ABSORPTION_MILLIVOLTS)
                        + " mV is never met through a cable and a coarse meter, and the charger"
                        + " may not be turned up for it",
                floating > 0
                        ? "a threshold within "
                                + scaled(ABOVE_FLOAT_MILLIVOLTS)
                                + " mV of the float voltage is met by a battery at float"
                        : "a threshold at what a rested battery of 90 % shows proves nothing");
    }

    private TunedSetting taper() {
        return preset.isLithium()
                ? setting(
                        Setting.TAPER,
                        200_000,
                        "a load of a few watts beside the charger moves it so far (ours)",
                        "full at 0.03 to 0.05 of the capacity an hour, sellers' pages that agree",
                        10_000,
                        20_000,
                        30_000,
                        40_000,
                        50_000)
                : setting(
                        Setting.TAPER,
                        200_000,
                        "at 2.4 V a cell a flooded battery gasses with so much and never takes less"
                                + " (common practice, no source)",
                        "a data sheet says 2 % of the capacity an hour, a charger's manual 3 %,"
                                + " teaching texts up to 5 %",
                        10_000,
                        20_000,
                        30_000,
                        40_000,
                        50_000);
    }

    private TunedSetting hold() {
        return preset.isLithium()
                ? setting(
                        Setting.HOLD,
                        1,
                        "one minute of a load beside the charger looks the same (ours)",
                        "their chargers often end within half an hour (common practice, no source)",
                        2,
                        5,
                        10,
                        20,
                        30)
                : setting(
                        Setting.HOLD,
                        1,
                        "a quarter of a battery maker's hour; clouds pass in less (ours)",
                        "many chargers absorb for two hours only (common practice, no source)",
                        15,
                        30,
                        60,
                        120);
    }

    private TunedSetting floatHold() {
        return preset.isLithium()
                ? setting(
                        Setting.FLOAT_HOLD,
                        1,
                        "a cell that is left alone above 94 % stands at this voltage too, and"
                                + " longer (published fit)",
                        "a longer float says no more (ours)",
                        120,
                        240,
                        480,
                        1_440)
                : setting(
                        Setting.FLOAT_HOLD,
                        1,
                        "lead takes its last tenth at float in half a day or more (common"
                                + " practice, no source)",
                        "a longer float says no more (ours)",
                        720,
                        1_440,
                        2_880);
    }

    private TunedSetting setting(
            Setting setting, long loosest, String lower, String upper, long... steps) {
        TreeSet<Long> rising = new TreeSet<>();
        for (long step : steps) {
            rising.add(step);
        }
        rising.add(usual.get(setting));
        return new TunedSetting(
                setting, usual.get(setting), loosest, List.copyOf(rising), lower, upper);
    }

    private long scaled(long millivolts) {
        return millivolts * nominalMillivolts / TWELVE_VOLTS;
    }

    private long[] scaled(long... millivolts) {
        long[] scaled = new long[millivolts.length];
        for (int i = 0; i < scaled.length; i++) {
            scaled[i] = scaled(millivolts[i]);
        }
        return scaled;
    }
}
