package org.gaugebench.sim.advice;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.advice.Suspect.Kind;
import org.gaugebench.sim.scenario.SensorSpec;

/** Whether the gauge is told what it is fitted to. */
final class FittingChecks {
    /** Below that a day costs less than half a point of a small battery. */
    private static final long OWN_CURRENT_MICROAMPS = 1_000;

    /** Half a thousandth of the rating: beyond what an offset of a converter is. */
    private static final double ZERO_PART = 0.0005;

    private static final double SHUNT_PART = 0.02;

    private FittingChecks() {}

    static void check(AuditSubject it, List<Suspect> found) {
        boolean otherSystem = FullRuleChecks.isOfAnotherSystem(it);
        if (otherSystem && it.thresholdVolts() > 0) {
            found.add(
                    new Suspect(
                            Kind.SYSTEM_VOLTAGE,
                            String.format(
                                    Locale.ROOT,
                                    "a threshold of %.2f V for a battery of %.0f V",
                                    it.thresholdVolts(),
                                    it.nominalVolts()),
                            voltages(it)));
        }
        boolean other = it.typed(Setting.CHEMISTRY) != it.usual(Setting.CHEMISTRY);
        if (other) {
            found.add(
                    new Suspect(
                            Kind.CHEMISTRY,
                            "the gauge is told another kind than " + it.battery().chemistry().key(),
                            all(it)));
        }
        empty(it, otherSystem || other, found);
        own(it, found);
        shunt(it, found);
        zero(it, found);
    }

    private static Map<Setting, Long> voltages(AuditSubject it) {
        Map<Setting, Long> remedy = new TreeMap<>();
        for (Setting each :
                List.of(
                        Setting.NOMINAL_VOLTAGE,
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
                        Setting.REST_VOLTAGE_100)) {
            remedy.put(each, it.usual(each));
        }
        return remedy;
    }

    /** The whole preset, but what is fitted and printed. */
    private static Map<Setting, Long> all(AuditSubject it) {
        Map<Setting, Long> remedy = voltages(it);
        for (Setting each :
                List.of(
                        Setting.CHEMISTRY,
                        Setting.COULOMBIC_EFFICIENCY,
                        Setting.EFFICIENCY_BOUND,
                        Setting.TAPER,
                        Setting.HOLD,
                        Setting.PLATEAU_HOLD,
                        Setting.FLOAT_HOLD,
                        Setting.PEUKERT_EXPONENT)) {
            remedy.put(each, it.usual(each));
        }
        return remedy;
    }

    private static void empty(AuditSubject it, boolean explained, List<Suspect> found) {
        long typed = it.typed(Setting.EMPTY_VOLTAGE);
        long usual = it.usual(Setting.EMPTY_VOLTAGE);
        // A tenth of the voltage is more than any maker's figure strays from another's.
        if (!explained && typed > 0 && Math.abs(typed - usual) > usual / 10) {
            found.add(
                    new Suspect(
                            Kind.EMPTY_VOLTAGE,
                            String.format(
                                    Locale.ROOT,
                                    "%.2f V typed in, usual are %.2f V",
                                    typed / 1e3,
                                    usual / 1e3),
                            CapacityChecks.remedy(it, Setting.EMPTY_VOLTAGE)));
        }
    }

    private static void own(AuditSubject it, List<Suspect> found) {
        long draws = it.scenario().wiring().ownSupplyMicroamps();
        long told = it.typed(Setting.OWN_SUPPLY);
        if (Math.abs(draws - told) > OWN_CURRENT_MICROAMPS) {
            found.add(
                    new Suspect(
                            Kind.OWN_CURRENT,
                            "it draws %s past the shunt and is told %s"
                                    .formatted(Sizing.amps(draws / 1e6), Sizing.amps(told / 1e6)),
                            Map.of(Setting.OWN_SUPPLY, draws)));
        }
    }

    private static void shunt(AuditSubject it, List<Suspect> found) {
        SensorSpec sensor = it.scenario().sensor();
        double fitted = (double) sensor.shuntRatedMicrovolts() / sensor.shuntRatedMicroamps();
        double typed =
                (double) it.typed(Setting.SHUNT_RATED_DROP)
                        / (it.typed(Setting.SHUNT_RATED_CURRENT) * 1e3);
        if (Math.abs(typed / fitted - 1) > SHUNT_PART) {
            Map<Setting, Long> remedy = new TreeMap<>();
            remedy.put(Setting.SHUNT_RATED_CURRENT, sensor.shuntRatedMicroamps() / 1_000);
            remedy.put(Setting.SHUNT_RATED_DROP, sensor.shuntRatedMicrovolts());
            found.add(
                    new Suspect(
                            Kind.SHUNT,
                            String.format(
                                    Locale.ROOT,
                                    "%.3f mOhm typed in, %.3f mOhm fitted",
                                    typed * 1e3,
                                    fitted * 1e3),
                            remedy));
        }
    }

    private static void zero(AuditSubject it, List<Suspect> found) {
        SensorSpec sensor = it.scenario().sensor();
        double countVolts =
                sensor.fullScaleMicrovolts() / 1e6 / (1L << (sensor.converterBits() - 1));
        double takenVolts = it.typed(Setting.SHUNT_OFFSET) / 256.0 * countVolts;
        double realVolts = sensor.offsetNanovolts() / 1e9;
        double ohms = (double) sensor.shuntRatedMicrovolts() / sensor.shuntRatedMicroamps();
        double amps = Math.abs(takenVolts - realVolts) / ohms;
        if (it.typed(Setting.SHUNT_OFFSET) != 0
                && amps > ZERO_PART * sensor.shuntRatedMicroamps() / 1e6) {
            long right = Math.round(realVolts / countVolts * 256);
            found.add(
                    new Suspect(
                            Kind.ZERO,
                            String.format(
                                    Locale.ROOT,
                                    "%s are taken off every reading, %.1f Ah a day; nothing stands"
                                            + " at zero that could explain it",
                                    Sizing.amps(amps),
                                    amps * 24),
                            Map.of(Setting.SHUNT_OFFSET, right)));
        }
    }
}
