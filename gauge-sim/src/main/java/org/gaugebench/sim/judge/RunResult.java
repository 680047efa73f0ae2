package org.gaugebench.sim.judge;

import java.util.List;
import org.gaugebench.sim.scenario.Scenario;

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
        Track truePercent) {}
