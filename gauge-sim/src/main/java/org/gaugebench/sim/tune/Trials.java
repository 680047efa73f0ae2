package org.gaugebench.sim.tune;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import org.gaugebench.core.settings.SettingsException;
import org.gaugebench.sim.scenario.Scenario;

/** Tries candidates on cases; none is run twice. */
final class Trials {
    private final List<TunedSetting> settings;
    private final List<TuneCase> cases;
    private final FullDefinition definition;
    private final TunePool pool;
    private final Map<Candidate, TuneScore> done = new TreeMap<>();

    Trials(
            List<TunedSetting> settings,
            List<TuneCase> cases,
            FullDefinition definition,
            TunePool pool) {
        this.settings = settings;
        this.cases = cases;
        this.definition = definition;
        this.pool = pool;
    }

    /** All that was tried, in the order of their values. */
    Collection<TuneScore> all() {
        return done.values();
    }

    TuneScore of(Candidate candidate) {
        return of(List.of(candidate)).get(0);
    }

    /** Scores in the order of the list. */
    List<TuneScore> of(List<Candidate> candidates) {
        List<Candidate> left = new ArrayList<>();
        List<Callable<CaseScore>> jobs = new ArrayList<>();
        for (Candidate candidate : candidates) {
            if (!done.containsKey(candidate) && !left.contains(candidate)) {
                left.add(candidate);
                cases.forEach(each -> jobs.add(job(each, candidate)));
            }
        }
        List<CaseScore> scores = pool.run(jobs);
        for (int i = 0; i < left.size(); i++) {
            List<CaseScore> own = scores.subList(i * cases.size(), (i + 1) * cases.size());
            done.put(left.get(i), TuneScore.of(left.get(i), own));
        }
        List<TuneScore> answer = new ArrayList<>();
        for (Candidate candidate : candidates) {
            TuneScore score = done.get(candidate);
            if (score != null) {
                answer.add(score);
            }
        }
        return answer;
    }

    private Callable<CaseScore> job(TuneCase tried, Candidate candidate) {
        return () -> {
            try {
                Scenario scenario = tried.with(settings, candidate);
                return FullWatch.of(scenario, tried.seed(), definition);
            } catch (SettingsException e) {
                // Each case was tried with both ends of every setting before the search.
                throw new IllegalStateException(tried.whole().name(), e);
            }
        };
    }
}
