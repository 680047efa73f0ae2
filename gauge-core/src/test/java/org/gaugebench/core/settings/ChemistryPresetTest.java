package org.gaugebench.core.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Each preset is a whole set of settings at every system voltage. */
class ChemistryPresetTest {
    private static final Setting[] VOLTAGES = {
        Setting.ABSORPTION,
        Setting.ABSORPTION_MARGIN,
        Setting.TEMPERATURE_COEFFICIENT,
        Setting.COMPENSATION_LIMIT,
        Setting.FLATNESS,
        Setting.FLOAT_VOLTAGE,
        Setting.EMPTY_VOLTAGE,
        Setting.REST_VOLTAGE_BOUND,
        Setting.REST_VOLTAGE_0,
        Setting.REST_VOLTAGE_10,
        Setting.REST_VOLTAGE_25,
        Setting.REST_VOLTAGE_50,
        Setting.REST_VOLTAGE_75,
        Setting.REST_VOLTAGE_90,
        Setting.REST_VOLTAGE_100
    };

    @ParameterizedTest
    @EnumSource(ChemistryPreset.class)
    void everyPresetIsValidFrom12To48Volts(ChemistryPreset preset) {
        for (int times = 1; times <= 4; times++) {
            GaugeSettings.Builder builder = preset.builder(12_000L * times);
            assertEquals(List.of(), builder.problems(), preset.key() + " x " + times);
            GaugeSettings settings = builder.build();
            assertEquals(preset.code(), settings.get(Setting.CHEMISTRY));
            assertEquals(12_000L * times, settings.get(Setting.NOMINAL_VOLTAGE));
        }
    }

    @ParameterizedTest
    @EnumSource(ChemistryPreset.class)
    void everyVoltageScalesAndNothingElseDoes(ChemistryPreset preset) {
        Set<Setting> scaled = new HashSet<>(List.of(VOLTAGES));
        scaled.add(Setting.NOMINAL_VOLTAGE);
        GaugeSettings once = preset.builder(12_000).build();
        GaugeSettings four = preset.builder(48_000).build();
        for (Setting setting : Setting.values()) {
            long factor = scaled.contains(setting) ? 4 : 1;
            assertEquals(factor * once.get(setting), four.get(setting), setting.key());
        }
    }

    @Test
    void codesAndKeysTellThemApart() {
        Set<String> keys = new HashSet<>();
        Set<Integer> codes = new HashSet<>();
        for (ChemistryPreset preset : ChemistryPreset.values()) {
            assertTrue(keys.add(preset.key()) && codes.add(preset.code()), preset.key());
            assertTrue(preset.key().matches("[a-z0-9]+(-[a-z]+)*"), preset.key());
            assertTrue(preset.code() >= Setting.CHEMISTRY.minimum());
            assertTrue(preset.code() <= Setting.CHEMISTRY.maximum());
        }
    }

    @Test
    void thePresetOfTheDefaultCodeIsTheDefaults() {
        GaugeSettings defaults = GaugeSettings.builder().build();
        assertEquals(ChemistryPreset.LEAD_ACID_AGM.code(), defaults.get(Setting.CHEMISTRY));
        assertEquals(defaults, ChemistryPreset.LEAD_ACID_AGM.builder(12_000).build());
    }

    /** Only lead-acid moves with temperature, and only lead-acid ends on a plateau. */
    @Test
    void lithiumHasNeitherCompensationNorPlateau() {
        for (ChemistryPreset preset : ChemistryPreset.values()) {
            GaugeSettings settings = preset.builder(12_000).build();
            boolean moves = settings.get(Setting.TEMPERATURE_COEFFICIENT) != 0;
            boolean plateau = settings.get(Setting.PLATEAU_HOLD) != 0;
            assertEquals(preset.isLithium(), !moves, preset.key());
            assertEquals(preset.isLithium(), !plateau, preset.key());
        }
    }

    /**
     * docs/rules.md, Settings: three cells of 4.20 V end their charge, a float proves nothing, and
     * full by taper may be 3 % short; four cells of iron phosphate float, and are 1 % short.
     */
    @Test
    void nickelManganeseCobaltEndsItsChargeInItsOwnWay() {
        GaugeSettings nmc = ChemistryPreset.NMC.builder(12_000).build();
        assertEquals(3 * 4_200, nmc.get(Setting.ABSORPTION));
        assertEquals(0, nmc.get(Setting.FLOAT_VOLTAGE));
        assertEquals(30_000, nmc.get(Setting.FULL_RESIDUAL));
        GaugeSettings ironPhosphate = ChemistryPreset.LIFEPO4.builder(12_000).build();
        assertEquals(14_200, ironPhosphate.get(Setting.ABSORPTION));
        assertEquals(13_500, ironPhosphate.get(Setting.FLOAT_VOLTAGE));
        assertEquals(10_000, ironPhosphate.get(Setting.FULL_RESIDUAL));
        assertEquals(60_000, ironPhosphate.get(Setting.LATE_RESIDUAL));
    }
}
