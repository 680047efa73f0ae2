package org.gaugebench.sim.agree;

import org.gaugebench.core.settings.ChemistryPreset;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/** Settings by chance: a preset with some of them moved, their ends more often than the middle. */
final class SettingsDraw {
    private static final Setting[] ALL = Setting.values();
    private static final int[] NOMINAL_MILLIVOLTS = {12_000, 24_000, 36_000, 48_000};

    /** Those that no measurement depends on. */
    private static final Setting[] HARMLESS = {
        Setting.SELF_DISCHARGE,
        Setting.GAIN_BOUND,
        Setting.ASYMMETRY_BOUND,
        Setting.AVERAGING_TIME,
        Setting.KEPT_BACK,
        Setting.PEUKERT_EXPONENT,
        Setting.RATED_TIME,
        Setting.TAPER_TIME,
        Setting.LOW_CHARGE,
        Setting.LONGEST_TIME,
        Setting.SAVE_STEP
    };

    private final Dice dice;

    SettingsDraw(Dice dice) {
        this.dice = dice;
    }

    /** Settings that a gauge can be built from. */
    GaugeSettings first() {
        ChemistryPreset preset = dice.of(ChemistryPreset.values());
        GaugeSettings.Builder builder = preset.builder(dice.of(NOMINAL_MILLIVOLTS));
        // Fast rules, so that a sequence of hours sees what a week would show.
        move(builder, Setting.HOLD, dice.between(1, 20));
        move(builder, Setting.QUIET_TIME, dice.between(0, 10));
        move(builder, Setting.FLOAT_HOLD, dice.between(1, 60));
        move(builder, Setting.PLATEAU_HOLD, dice.between(0, 30));
        move(builder, Setting.REST_TIME, dice.between(0, 2));
        move(builder, Setting.CAPACITY, dice.of(100, 5_000, 60_000, 100_000, 280_000, 10_000_000));
        if (dice.once(16)) {
            move(builder, Setting.ABSORPTION, 0); // switches the full-charge rule off
        }
        int moved = dice.between(0, ALL.length / 4);
        for (int i = 0; i < moved; i++) {
            any(builder);
        }
        return builder.build();
    }

    /** Settings under which a gauge can measure capacity and efficiency, and some of the rest. */
    GaugeSettings measuring() {
        ChemistryPreset preset = dice.of(ChemistryPreset.values());
        GaugeSettings.Builder builder = preset.builder(dice.of(NOMINAL_MILLIVOLTS));
        move(builder, Setting.HOLD, dice.between(1, 20));
        move(builder, Setting.QUIET_TIME, dice.between(0, 10));
        move(builder, Setting.FLOAT_HOLD, dice.between(1, 60));
        move(builder, Setting.CAPACITY, dice.of(60_000, 100_000, 280_000));
        // C3: what may have passed unseen must be small against what is measured.
        move(builder, Setting.OFFSET_BOUND, dice.between(1, 1_000));
        move(builder, Setting.UNMEASURED_BOUND, 0);
        for (Setting each : HARMLESS) {
            if (dice.once(2)) {
                move(builder, each, dice.between(each.minimum(), each.maximum()));
            }
        }
        return builder.build();
    }

    /** The same settings with a few of them moved. */
    GaugeSettings changed(GaugeSettings settings) {
        GaugeSettings.Builder builder = settings.toBuilder();
        int moved = dice.between(1, 3);
        for (int i = 0; i < moved; i++) {
            any(builder);
        }
        return builder.build();
    }

    private void any(GaugeSettings.Builder builder) {
        Setting setting = dice.of(ALL);
        long low = setting.minimum();
        long high = setting.maximum();
        long value =
                switch (dice.between(0, 5)) {
                    case 0 -> low;
                    case 1 -> high;
                    case 2 -> low + dice.ofAnySize(high - low);
                    default -> dice.between(low, high);
                };
        move(builder, setting, value);
    }

    /** Moves a setting unless it then contradicts another one. */
    private static void move(GaugeSettings.Builder builder, Setting setting, long value) {
        GaugeSettings before = builder.build();
        builder.set(setting, value);
        if (!builder.problems().isEmpty()) {
            builder.set(setting, before.get(setting));
        }
    }
}
