package org.gaugebench.sim.tune;

import java.util.List;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.SettingsException;
import org.gaugebench.sim.scenario.Scenario;

/**
 * A scenario in which settings are tried, with one seed.
 *
 * @param whole as its file has it
 * @param alone the same with the main gauge alone, and the seed in its name
 * @param seed of every random stream
 */
public record TuneCase(Scenario whole, Scenario alone, long seed) {
    /** Makes a case. */
    static TuneCase of(Scenario scenario, long seed) {
        return new TuneCase(scenario, scenario.withMainGaugeAlone(), seed);
    }

    /**
     * The scenario with other settings of the rule.
     *
     * @throws SettingsException if they contradict the scenario's own
     */
    Scenario with(List<TunedSetting> settings, Candidate candidate) throws SettingsException {
        GaugeSettings.Builder changed = alone.gauges().get(0).settings().toBuilder();
        for (int i = 0; i < settings.size(); i++) {
            changed.set(settings.get(i).setting(), candidate.value(i));
        }
        return alone.withSettings(changed.build());
    }
}
