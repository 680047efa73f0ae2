package org.gaugebench.sim.judge;

import java.util.List;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;

/**
 * Everything that reports tell of a run. Equal for equal seed, scenario and version.
 *
 * @param scenario what ran
 * @param seed that was used
 * @param ticks taken
 * @param simulatedMillis simulated time
 * @param digest of all gauges' registers at every whole minute
 * @param verdict over all expectations
 * @param expectations in file order
 * @param events in order of time; at most {@value RunRecorder#MOST_EVENTS}
 * @param eventsDropped how many came after that
 * @param refused commands that a gauge did not carry out, in order of time
 * @param lanes in the scenario's order
 * @param finalTruePartsPerMillion true state of charge at the end
 * @param finalTrueMicroampHours true charge at the end
 * @param truePercent true state of charge, one value a minute
 * @param program that stood in the place of the first gauge of kind core; null for none
 */
public record RunResult(
        Scenario scenario,
        long seed,
        long ticks,
        long simulatedMillis,
        long digest,
        Verdict verdict,
        List<ExpectationResult> expectations,
        List<RecordedEvent> events,
        long eventsDropped,
        List<RefusedCommand> refused,
        List<LaneResult> lanes,
        long finalTruePartsPerMillion,
        long finalTrueMicroampHours,
        Track truePercent,
        @Nullable TestedProgram program) {

    /** What the full-charge rules of all gauges visited. */
    public RuleCoverage ruleCoverage() {
        RuleCoverage all = RuleCoverage.NONE;
        for (LaneResult lane : lanes) {
            all = all.plus(lane.rule());
        }
        return all;
    }

    /** The same without events and curves: what lists of thousands keep. */
    RunResult slim() {
        Track none = new Track(0);
        return new RunResult(
                scenario,
                seed,
                ticks,
                simulatedMillis,
                digest,
                verdict,
                expectations,
                List.of(),
                eventsDropped,
                refused,
                lanes.stream().map(lane -> lane.slim(none)).toList(),
                finalTruePartsPerMillion,
                finalTrueMicroampHours,
                none,
                program);
    }
}
