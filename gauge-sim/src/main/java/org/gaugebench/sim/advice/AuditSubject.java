package org.gaugebench.sim.advice;

import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.gaugebench.core.settings.ChemistryPreset;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.scenario.BatterySpec;
import org.gaugebench.sim.scenario.ChargerSpec;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;

/** What is typed into a gauge beside what it is typed for. */
final class AuditSubject {
    private final Scenario scenario;
    private final GaugeSettings settings;
    private final GaugeSettings usual;
    private final Set<Setting> has;

    /**
     * Takes a scenario.
     *
     * @param has settings that its main gauge has
     */
    AuditSubject(Scenario scenario, Set<Setting> has) {
        this.has = has;
        this.scenario = scenario;
        this.settings = scenario.gauges().get(0).settings();
        this.usual =
                preset(scenario.battery().chemistry())
                        .builder(scenario.battery().nominalVolts() * 1_000L)
                        .build();
    }

    Scenario scenario() {
        return scenario;
    }

    BatterySpec battery() {
        return scenario.battery();
    }

    /** The same suspicion with what this gauge can be told; null where that is nothing. */
    @Nullable Suspect within(Suspect suspect) {
        Map<Setting, Long> remedy = new TreeMap<>(suspect.remedy());
        remedy.keySet().retainAll(has);
        return remedy.isEmpty() && !suspect.remedy().isEmpty()
                ? null
                : new Suspect(suspect.kind(), suspect.evidence(), remedy);
    }

    boolean hasSetting(Setting setting) {
        return has.contains(setting);
    }

    /** What is typed. */
    long typed(Setting setting) {
        return settings.get(setting);
    }

    /** What the battery's own preset would be. */
    long usual(Setting setting) {
        return usual.get(setting);
    }

    /** What an installer sets for a chemistry. */
    static ChemistryPreset preset(Chemistry chemistry) {
        String key = chemistry.key();
        for (ChemistryPreset each : ChemistryPreset.values()) {
            if (each.key().equals(key)) {
                return each;
            }
        }
        throw new IllegalStateException("no preset for " + key);
    }

    double nominalVolts() {
        return scenario.battery().nominalVolts();
    }

    /** Printed capacity in amp-hours. */
    double printedAmpHours() {
        return scenario.battery().capacityMicroampHours() / 1e6;
    }

    /** Typed capacity in amp-hours. */
    double typedAmpHours() {
        return typed(Setting.CAPACITY) / 1e3;
    }

    /** Volts at 25 °C from which full is looked for; 0 where the rule is off. */
    double thresholdVolts() {
        long absorption = typed(Setting.ABSORPTION);
        return absorption == 0 ? 0 : (absorption - typed(Setting.ABSORPTION_MARGIN)) / 1e3;
    }

    /** Amps at and under which full is possible. */
    double taperAmps() {
        return typed(Setting.TAPER) / 1e6 * typedAmpHours();
    }

    /** The charger with the highest absorption. */
    Optional<ChargerSpec> strongest() {
        return scenario.chargers().stream()
                .max(Comparator.comparingLong(ChargerSpec::absorptionMicrovolts));
    }

    double highestAbsorptionVolts() {
        return strongest().map(each -> each.absorptionMicrovolts() / 1e6).orElse(0.0);
    }

    double highestFloatVolts() {
        return scenario.chargers().stream()
                .mapToDouble(each -> each.floatMicrovolts() / 1e6)
                .max()
                .orElse(0);
    }
}
