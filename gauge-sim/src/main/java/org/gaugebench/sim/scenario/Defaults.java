package org.gaugebench.sim.scenario;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import org.gaugebench.core.settings.ChemistryPreset;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * What stands where a scenario says nothing. Reader and writer both ask here, so that a line marked
 * as default can be left out without changing anything.
 */
final class Defaults {
    static final long SEED = 1;
    static final long TICK_MILLIS = 1_000;
    static final int NOMINAL_VOLTS = 12;
    static final long AMP_HOUR = 1_000_000;
    static final long WHOLE = 1_000_000;

    /** A round size that holds the core's record with room to grow. */
    static final int SLOT_BYTES = 256;

    private static final long HOUR_MILLIS = 3_600_000;
    private static final int VOLTS_OF_FIGURES = 12;
    private static final long FLOAT_MICROVOLTS = 12_300_000;

    private Defaults() {}

    /** A battery of which only chemistry, nominal voltage and capacity are known. */
    static BatterySpec battery(Chemistry chemistry, int nominalVolts, long capacityMicroampHours) {
        ChemistryFigures figures = ChemistryFigures.of(chemistry);
        // 80 %: neither end of the scale hides an error of the count.
        long start = 800_000;
        long temperature = 20_000;
        return new BatterySpec(
                chemistry,
                nominalVolts,
                capacityMicroampHours,
                start,
                resistance(
                        figures.resistanceMicroohmAmpHours(), nominalVolts, capacityMicroampHours),
                resistance(
                        figures.polarizationMicroohmAmpHours(),
                        nominalVolts,
                        capacityMicroampHours),
                figures.polarizationMillis(),
                figures.efficiencyPartsPerMillion(),
                figures.selfDischargePartsPerMillion(),
                temperature,
                figures.acceptanceMillis(),
                figures.endCurrentPartsPerMillion(),
                scaled(figures.chargeStopMicrovolts(), nominalVolts),
                scaled(figures.dischargeStopMicrovolts(), nominalVolts));
    }

    private static long resistance(long microohmAmpHours, int volts, long microampHours) {
        long atTwelve = microohmAmpHours * AMP_HOUR / Math.max(1, microampHours);
        return Math.max(1, scaled(atTwelve, volts));
    }

    static long scaled(long atTwelveVolts, int nominalVolts) {
        return atTwelveVolts * nominalVolts / VOLTS_OF_FIGURES;
    }

    /** A sensor of which only the shunt is known: a good one, so that faults are stated ones. */
    static SensorSpec sensor(long shuntMicroamps, long shuntMicrovolts) {
        return new SensorSpec(
                shuntMicroamps,
                shuntMicrovolts,
                0,
                20,
                100_000,
                0,
                0,
                1_000,
                16,
                65_536_000,
                1_000,
                SensorSpec.Sampling.INTEGRATED,
                true);
    }

    /**
     * Settings of an installer who knows battery and sensor. A value between two steps of a setting
     * is cut; the reader refuses it where the file does not give the setting itself.
     */
    static Map<Setting, Long> settings(BatterySpec battery, SensorSpec sensor) {
        return settings(
                battery.chemistry().preset(), battery.nominalVolts() * 1_000L, battery, sensor);
    }

    /**
     * Settings of an installer who has chosen a chemistry and a nominal voltage.
     *
     * @param usual what stands where the choice is the same as there
     * @return empty where no setting can hold the voltages that go with the choice
     */
    static Map<Setting, Long> chosen(
            long chemistry,
            long nominalMillivolts,
            Map<Setting, Long> usual,
            BatterySpec battery,
            SensorSpec sensor) {
        boolean same =
                Objects.equals(usual.get(Setting.CHEMISTRY), chemistry)
                        && Objects.equals(usual.get(Setting.NOMINAL_VOLTAGE), nominalMillivolts);
        return same
                ? usual
                : settings(SettingText.chemistry(chemistry), nominalMillivolts, battery, sensor);
    }

    private static Map<Setting, Long> settings(
            ChemistryPreset preset,
            long nominalMillivolts,
            BatterySpec battery,
            SensorSpec sensor) {
        // The sensor's own range comes below; it must not speak against the preset here.
        GaugeSettings.Builder builder =
                preset.builder(nominalMillivolts)
                        .set(Setting.VOLTAGE_FULL_SCALE, Setting.VOLTAGE_FULL_SCALE.maximum());
        if (!builder.problems().isEmpty()) {
            return Map.of();
        }
        GaugeSettings usual = builder.build();
        Map<Setting, Long> values = new EnumMap<>(Setting.class);
        for (Setting setting : Setting.values()) {
            values.put(setting, usual.get(setting));
        }
        values.put(Setting.SHUNT_RATED_CURRENT, sensor.shuntRatedMicroamps() / 1_000);
        values.put(Setting.SHUNT_RATED_DROP, sensor.shuntRatedMicrovolts());
        values.put(Setting.SHUNT_CONVERTER_BITS, (long) sensor.converterBits());
        values.put(Setting.SHUNT_FULL_SCALE, sensor.fullScaleMicrovolts());
        values.put(Setting.VOLTAGE_CONVERTER_BITS, (long) sensor.voltageConverterBits());
        values.put(Setting.VOLTAGE_FULL_SCALE, sensor.voltageFullScaleMicrovolts() / 1_000);
        values.put(Setting.CAPACITY, battery.capacityMicroampHours() / 1_000);
        return values;
    }

    /**
     * A charger of which nothing is known but the battery it belongs to: set as the gauge's preset
     * supposes.
     */
    static ChargerSpec charger(String name, BatterySpec battery) {
        GaugeSettings usual =
                battery.chemistry().preset().builder(battery.nominalVolts() * 1_000L).build();
        long floatMicrovolts = usual.get(Setting.FLOAT_VOLTAGE) * 1_000;
        if (floatMicrovolts == 0) {
            // A float that proves nothing to a gauge: 4.1 V a cell of NMC, under full.
            floatMicrovolts = scaled(FLOAT_MICROVOLTS, battery.nominalVolts());
        }
        return new ChargerSpec(
                name,
                true,
                usual.get(Setting.ABSORPTION) * 1_000,
                floatMicrovolts,
                Math.max(1, battery.capacityMicroampHours() / 5),
                usual.get(Setting.TEMPERATURE_COEFFICIENT),
                battery.capacityMicroampHours() / 100,
                ChemistryFigures.of(battery.chemistry()).absorptionMillis(),
                null);
    }

    /** A sun that can just feed its charger at noon of an equinox day, without clouds. */
    static ChargerSpec.SunSpec sun(long currentLimitMicroamps) {
        return new ChargerSpec.SunSpec(
                currentLimitMicroamps, 6 * HOUR_MILLIS, 18 * HOUR_MILLIS, 0, 800_000);
    }
}
