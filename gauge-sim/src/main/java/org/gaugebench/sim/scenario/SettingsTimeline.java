package org.gaugebench.sim.scenario;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.SettingsProblem;

/**
 * Follows the settings of each gauge through the timeline, so that settings which contradict each
 * other are refused before the run and not met in the middle of it.
 */
final class SettingsTimeline {
    private final Problems problems;
    private final Map<String, GaugeSettings.Builder> settings = new HashMap<>();
    private final Set<String> reported = new LinkedHashSet<>();

    SettingsTimeline(Problems problems, List<GaugeSpec> gauges) {
        this.problems = problems;
        for (GaugeSpec gauge : gauges) {
            settings.put(gauge.name(), gauge.settings().toBuilder());
        }
    }

    /** A change and the step it comes from. */
    record Marked(Change change, SourceMark mark) {}

    /**
     * Follows the changes.
     *
     * @param changes in order of time; settings that change together stand next to each other
     */
    void check(List<Marked> changes) {
        Set<String> touched = new LinkedHashSet<>();
        int size = changes.size();
        for (int i = 0; i < size; i++) {
            Change change = changes.get(i).change;
            if (change.target() != Change.Target.SETTING) {
                continue;
            }
            CommandReader.Address address = CommandReader.address(change);
            GaugeSettings.Builder builder = settings.get(address.gauge());
            if (builder != null) {
                builder.set(address.setting(), change.value());
                touched.add(address.gauge());
            }
            boolean more =
                    i + 1 < size
                            && changes.get(i + 1).change.target() == Change.Target.SETTING
                            && changes.get(i + 1).change.atMillis() == change.atMillis();
            if (!more) {
                judge(touched, changes.get(i));
                touched.clear();
            }
        }
    }

    private void judge(Set<String> touched, Marked last) {
        for (String gauge : touched) {
            GaugeSettings.Builder builder = settings.get(gauge);
            List<SettingsProblem> broken = builder == null ? List.of() : builder.problems();
            for (SettingsProblem problem : broken) {
                String text =
                        "from "
                                + ScenarioWriter.time(last.change.atMillis())
                                + " the settings of '"
                                + gauge
                                + "' contradict each other: '"
                                + problem.setting().key()
                                + "' "
                                + problem.rule()
                                + ", but is "
                                + SettingText.of(problem.setting(), problem.value())
                                + "; settings that change together stand in one 'set'";
                // A step that repeats says it once.
                if (reported.add(last.mark + problem.setting().key())) {
                    problems.add(last.mark, text);
                }
            }
        }
    }
}
