package org.gaugebench.sim.scenario;

import java.util.List;
import org.gaugebench.core.settings.ChemistryPreset;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.units.CapacityRating;
import org.gaugebench.sim.units.QuantityFormat;
import org.gaugebench.sim.units.RecordUnit;

/**
 * A setting of the core as scenario files write it: most are quantities, the chemistry is a word
 * and a switch is on or off.
 */
public final class SettingText {
    private static final String SWITCH_UNIT = "switch";

    private SettingText() {}

    /** Reads a setting from a block. */
    static long read(Block block, Setting setting, long usual) {
        return read(block, setting.key(), setting, usual);
    }

    /** Reads a setting from a block in which it has a key of its own. */
    static long read(Block block, String key, Setting setting, long usual) {
        if (setting == Setting.CHEMISTRY) {
            ChemistryPreset fallback = chemistry(usual);
            return block.choice(
                            key, List.of(ChemistryPreset.values()), ChemistryPreset::key, fallback)
                    .code();
        }
        if (isSwitch(setting)) {
            return block.either(key, "on", "off", usual == 1) ? 1 : 0;
        }
        RecordUnit unit = SettingUnits.of(setting);
        return setting == Setting.CAPACITY
                ? block.capacity(key, unit, setting.minimum(), setting.maximum(), usual)
                : block.quantity(key, unit, setting.minimum(), setting.maximum(), usual);
    }

    /**
     * Writes a setting's value; what it writes reads back to the same value.
     *
     * @param setting which
     * @param value in the setting's own unit
     */
    public static String of(Setting setting, long value) {
        if (setting == Setting.CHEMISTRY) {
            return chemistry(value).key();
        }
        if (isSwitch(setting)) {
            return value == 1 ? "on" : "off";
        }
        RecordUnit unit = SettingUnits.of(setting);
        return setting == Setting.CAPACITY
                ? CapacityRating.format(value, unit)
                : QuantityFormat.format(value, unit);
    }

    /** Smallest step of a setting, for messages. */
    static String step(Setting setting) {
        return SettingUnits.of(setting).step();
    }

    /** The preset of a code that a setting holds. */
    static ChemistryPreset chemistry(long code) {
        for (ChemistryPreset preset : ChemistryPreset.values()) {
            if (preset.code() == code) {
                return preset;
            }
        }
        throw new IllegalArgumentException("no chemistry has the code " + code);
    }

    private static boolean isSwitch(Setting setting) {
        return setting.unit().equals(SWITCH_UNIT);
    }
}
