package org.gaugebench.sim.tune;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.core.settings.SettingsException;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.SeedRange;

/**
 * What is to be searched: settings of one kind of battery over scenarios.
 *
 * @param chemistry of every battery
 * @param nominalVolts of every battery
 * @param settings what is searched
 * @param cases each scenario with each seed of the search
 * @param others each scenario with each seed that the search never sees
 * @param skipped scenarios that were left out, with the reason
 * @param definition what is called false and missed
 * @param seed of the order of the search
 * @param seeds of the search
 * @param otherSeeds that it never sees
 */
public record TuneTask(
        Chemistry chemistry,
        int nominalVolts,
        List<TunedSetting> settings,
        List<TuneCase> cases,
        List<TuneCase> others,
        List<Skipped> skipped,
        FullDefinition definition,
        long seed,
        SeedRange seeds,
        SeedRange otherSeeds) {

    /** A scenario that was left out. */
    public record Skipped(String name, String reason) {}

    /**
     * Sets a task.
     *
     * @param scenarios whose main gauge may be anything; those that do not fit are left out
     * @throws IllegalArgumentException if none is left, with the first one's reason
     */
    public static TuneTask of(
            Chemistry chemistry,
            int nominalVolts,
            List<Scenario> scenarios,
            FullDefinition definition,
            long seed,
            SeedRange seeds,
            SeedRange otherSeeds) {
        List<TunedSetting> settings = SafeLimits.of(chemistry, nominalVolts);
        List<TuneCase> cases = new ArrayList<>();
        List<TuneCase> others = new ArrayList<>();
        List<Skipped> skipped = new ArrayList<>();
        for (Scenario scenario : scenarios) {
            String reason = reason(chemistry, nominalVolts, settings, scenario);
            if (!reason.isEmpty()) {
                skipped.add(new Skipped(scenario.name(), reason));
                continue;
            }
            add(cases, scenario, seeds);
            add(others, scenario, otherSeeds);
        }
        if (cases.isEmpty()) {
            Skipped first = skipped.get(0);
            throw new IllegalArgumentException(first.name() + ": " + first.reason());
        }
        return new TuneTask(
                chemistry,
                nominalVolts,
                settings,
                List.copyOf(cases),
                List.copyOf(others),
                List.copyOf(skipped),
                definition,
                seed,
                seeds,
                otherSeeds);
    }

    private static void add(List<TuneCase> cases, Scenario scenario, SeedRange seeds) {
        for (long seed = seeds.first(); seed <= seeds.last(); seed++) {
            cases.add(TuneCase.of(scenario, seed));
        }
    }

    private static String reason(
            Chemistry chemistry, int nominalVolts, List<TunedSetting> settings, Scenario scenario) {
        if (scenario.battery().chemistry() != chemistry
                || scenario.battery().nominalVolts() != nominalVolts) {
            return "its battery is another one: %s, %s V"
                    .formatted(
                            scenario.battery().chemistry().key(),
                            scenario.battery().nominalVolts());
        }
        GaugeSpec gauge = scenario.gauges().get(0);
        if (gauge.kind() != GaugeSpec.Kind.CORE) {
            return "its main gauge has no such settings: " + gauge.kind().key();
        }
        TuneCase tried = TuneCase.of(scenario, scenario.seed());
        try {
            tried.with(settings, loosest(settings));
            for (int i = 0; i < settings.size(); i++) {
                tried.with(settings, preset(settings).with(i, settings.get(i).lowest()));
                tried.with(settings, preset(settings).with(i, settings.get(i).highest()));
            }
        } catch (SettingsException e) {
            return "its other settings contradict those that are tried: " + e.getMessage();
        }
        return "";
    }

    /** The rule at its loosest; parts of it lie outside the safe range. */
    static Candidate loosest(List<TunedSetting> settings) {
        return new Candidate(settings.stream().map(TunedSetting::loosest).toList());
    }

    /** The preset of the chemistry. */
    static Candidate preset(List<TunedSetting> settings) {
        return new Candidate(settings.stream().map(TunedSetting::preset).toList());
    }

    /** The searched settings of a scenario's own that are not the preset's: it states them. */
    public List<Setting> stated(Scenario scenario) {
        List<Setting> stated = new ArrayList<>();
        for (TunedSetting each : settings) {
            if (scenario.gauges().get(0).settings().get(each.setting()) != each.preset()) {
                stated.add(each.setting());
            }
        }
        return stated;
    }

    /** Each scenario once, in order. */
    public List<Scenario> scenarios() {
        return cases.stream()
                .filter(it -> it.seed() == seeds.first())
                .map(TuneCase::whole)
                .toList();
    }
}
