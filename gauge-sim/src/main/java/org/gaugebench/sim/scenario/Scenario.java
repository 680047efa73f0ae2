package org.gaugebench.sim.scenario;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.core.settings.GaugeSettings;

/**
 * A whole scenario, checked and with every default filled in.
 *
 * @param file as the user named it
 * @param variant what is special about this run where the file makes several, such as
 *     "battery.start=50 %, seed=7"; empty where it makes one
 * @param title one line
 * @param about what it shows and what to look at, for people; may be empty
 * @param marks what it is filed under
 * @param seed of every random stream
 * @param durationMillis simulated time, a whole number of ticks
 * @param tickMillis length of a tick, 1 to 60,000
 * @param battery the truth's battery
 * @param sensor the real shunt and converters
 * @param gauges at least one; the first is the one under test
 * @param chargers in file order
 * @param loads in file order
 * @param wiring between battery, shunt, gauge and bus
 * @param changes in order of time, file order within one moment
 * @param expectations in file order; may be empty ("no verdict")
 */
public record Scenario(
        String file,
        String variant,
        String title,
        String about,
        Marks marks,
        long seed,
        long durationMillis,
        long tickMillis,
        BatterySpec battery,
        SensorSpec sensor,
        List<GaugeSpec> gauges,
        List<ChargerSpec> chargers,
        List<LoadSpec> loads,
        WiringSpec wiring,
        List<Change> changes,
        List<Expectation> expectations) {
    /** The file and, where it makes several runs, which of them. */
    public String name() {
        return variant.isEmpty() ? file : file + " [" + variant + "]";
    }

    /**
     * The same scenario with other settings of its main gauge: what an audit compares with.
     *
     * @param settings of the first gauge
     */
    public Scenario withSettings(GaugeSettings settings) {
        GaugeSpec told = gauges.get(0);
        List<GaugeSpec> others = new ArrayList<>(gauges);
        others.set(
                0,
                new GaugeSpec(
                        told.name(),
                        told.kind(),
                        settings,
                        told.declaredPartsPerMillion(),
                        told.power(),
                        told.clock(),
                        told.mistakes()));
        return new Scenario(
                file,
                variant,
                title,
                about,
                marks,
                seed,
                durationMillis,
                tickMillis,
                battery,
                sensor,
                List.copyOf(others),
                chargers,
                loads,
                wiring,
                changes,
                expectations);
    }

    /**
     * The same truth with the main gauge alone, and nothing expected of it: what a search runs
     * hundreds of times. A gauge knows nothing of the others, so it does what it did beside them.
     */
    public Scenario withMainGaugeAlone() {
        GaugeSpec main = gauges.get(0);
        return new Scenario(
                file,
                variant,
                title,
                about,
                marks,
                seed,
                durationMillis,
                tickMillis,
                battery,
                sensor,
                List.of(main),
                chargers,
                loads,
                wiring,
                changes.stream().filter(it -> !it.isOfOtherGauge(main.name())).toList(),
                List.of());
    }

    /** The same scenario as one run of several. */
    Scenario asVariant(String name, long chosenSeed) {
        return new Scenario(
                file,
                name,
                title,
                about,
                marks,
                chosenSeed,
                durationMillis,
                tickMillis,
                battery,
                sensor,
                gauges,
                chargers,
                loads,
                wiring,
                changes,
                expectations);
    }
}
