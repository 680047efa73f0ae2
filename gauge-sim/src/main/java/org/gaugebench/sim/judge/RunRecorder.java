package org.gaugebench.sim.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.Event;
import org.gaugebench.sim.device.PipeCommand;
import org.gaugebench.sim.device.PipeFailure;
import org.gaugebench.sim.device.PipeProgram;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Change;
import org.gaugebench.sim.scenario.Expectation;
import org.gaugebench.sim.scenario.Expectation.Kind;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;

/** Runs a scenario and judges it: the one observer that holds reading against truth. */
public final class RunRecorder implements Observer {
    /** Most events kept: a gauge that chatters must not fill the memory. */
    public static final int MOST_EVENTS = 10_000;

    private final Observer guest;
    private final List<RecordedEvent> events = new ArrayList<>();
    private final List<TruthComparison> comparisons = new ArrayList<>();
    private final List<ExpectationChecker> checkers = new ArrayList<>();
    private final List<Lane> checkedLanes = new ArrayList<>();
    private final List<EventChecker> eventCheckers;
    private final List<RefusedCommand> refused = new ArrayList<>();
    private final Track truePercent = new Track();
    private long eventsDropped;
    private @Nullable Rig rig;
    private long lastMinute = -1;

    private RunRecorder(Scenario scenario, Observer guest) {
        this.guest = guest;
        // Before the start: events come with the first sample.
        this.eventCheckers =
                scenario.expectations().stream()
                        .filter(e -> e.kind() == Kind.EVENTS)
                        .map(EventChecker::new)
                        .toList();
    }

    /**
     * Runs a scenario to its end.
     *
     * @param scenario a checked scenario
     * @param seed of every random stream
     * @param guest looks on too (a trace, a progress bar)
     * @return what came of it
     */
    public static RunResult run(Scenario scenario, long seed, Observer guest) {
        return run(scenario, seed, guest, null);
    }

    /**
     * The same with a program in the place of the first gauge of kind core. Nothing of it is left
     * running afterwards.
     *
     * @param program how it is started; null for none
     * @throws PipeFailure when the program does not keep to the protocol
     */
    public static RunResult run(
            Scenario scenario, long seed, Observer guest, @Nullable PipeCommand program) {
        RunRecorder recorder = new RunRecorder(scenario, guest);
        Rig rig = new Rig(scenario, seed, recorder, program);
        try {
            return recorder.run(rig, seed);
        } catch (PipeFailure e) {
            throw e.with("simulated time: " + Figures.moment(rig.timeMillis()));
        } finally {
            rig.release();
        }
    }

    private RunResult run(Rig running, long seed) {
        rig = running;
        Scenario scenario = running.scenario();
        running.stopAt(
                scenario.expectations().stream()
                        .filter(e -> e.kind() != Kind.THROUGHOUT)
                        .mapToLong(e -> e.kind() == Kind.AT ? e.fromMillis() : e.toMillis())
                        .toArray());
        running.run();
        RunResult result = result(running, seed);
        running.end();
        return result;
    }

    @Override
    public void onStart(Rig started) {
        for (Lane lane : started.lanes()) {
            comparisons.add(new TruthComparison(lane));
        }
        for (Expectation expectation : started.scenario().expectations()) {
            if (expectation.kind() != Kind.EVENTS) {
                checkers.add(new ExpectationChecker(expectation));
                checkedLanes.add(laneOf(started, expectation.gauge()));
            }
        }
        look(started);
        guest.onStart(started);
    }

    private static Lane laneOf(Rig rig, String name) {
        return rig.lanes().stream()
                .filter(lane -> lane.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("no gauge " + name));
    }

    @Override
    public void onMoment(Rig standing) {
        boolean failing = look(standing);
        guest.onMoment(standing);
        if (failing) {
            guest.onFailure(standing);
        }
    }

    /** Answers whether a claim failed just now. */
    private boolean look(Rig standing) {
        long minute = standing.timeMillis() / 60_000;
        boolean atWholeMinute = minute != lastMinute;
        if (atWholeMinute) {
            lastMinute = minute;
            truePercent.add(standing.truth().stateOfCharge() * 100);
            for (TruthComparison comparison : comparisons) {
                comparison.look(standing.truth(), standing.timeMillis());
            }
        }
        boolean failing = false;
        for (int i = 0; i < checkers.size(); i++) {
            failing |= checkers.get(i).look(standing, checkedLanes.get(i), atWholeMinute);
        }
        for (EventChecker checker : eventCheckers) {
            for (Lane lane : standing.lanes()) {
                checker.look(standing, lane);
            }
        }
        return failing;
    }

    @Override
    public Observer forTicks() {
        return guest.forTicks();
    }

    @Override
    public void onChange(Rig changing, Change change) {
        guest.onChange(changing, change);
    }

    @Override
    public void onEvent(Lane lane, Event event, long value) {
        Rig running = Objects.requireNonNull(rig);
        long truePartsPerMillion = StrictMath.round(running.truth().stateOfCharge() * 1e6);
        for (EventChecker checker : eventCheckers) {
            checker.look(running, lane, event, value, truePartsPerMillion);
        }
        int place = running.looksBack() ? placeInThePast(running, lane) : events.size();
        if (place < MOST_EVENTS) {
            events.add(
                    place,
                    new RecordedEvent(
                            lane.name(),
                            event,
                            running.timeMillis(),
                            value,
                            lane.read().stateOfChargePartsPerMillion,
                            truePartsPerMillion));
        }
        if (place >= MOST_EVENTS || events.size() > MOST_EVENTS) {
            eventsDropped++;
        }
        if (events.size() > MOST_EVENTS) {
            events.remove(MOST_EVENTS);
        }
        guest.onEvent(lane, event, value);
    }

    /** Where an event would stand if its gauge had told it at once, gauges in their order. */
    private int placeInThePast(Rig running, Lane lane) {
        List<String> names = running.lanes().stream().map(Lane::name).toList();
        int place = events.size();
        while (place > 0) {
            RecordedEvent before = events.get(place - 1);
            boolean isLater =
                    before.atMillis() > running.timeMillis()
                            || (before.atMillis() == running.timeMillis()
                                    && names.indexOf(before.gauge()) > names.indexOf(lane.name()));
            if (!isLater) {
                break;
            }
            place--;
        }
        return place;
    }

    @Override
    public void onAnswer(Lane lane, Command command, CommandOutcome outcome) {
        boolean done =
                outcome == CommandOutcome.DONE || outcome == CommandOutcome.FIRST_POINT_TAKEN;
        if (!done && refused.size() < MOST_EVENTS) {
            long now = Objects.requireNonNull(rig).timeMillis();
            refused.add(new RefusedCommand(lane.name(), now, command, outcome));
        }
        guest.onAnswer(lane, command, outcome);
    }

    private RunResult result(Rig ended, long seed) {
        List<ExpectationResult> results = new ArrayList<>();
        int next = 0;
        int nextEvents = 0;
        for (Expectation expectation : ended.scenario().expectations()) {
            ExpectationResult result =
                    expectation.kind() == Kind.EVENTS
                            ? eventCheckers.get(nextEvents++).result(ended.timeMillis())
                            : checkers.get(next++).result(ended.timeMillis());
            results.add(result.turned());
        }
        return new RunResult(
                ended.scenario(),
                seed,
                ended.ticks(),
                ended.timeMillis(),
                ended.digest(),
                verdict(results),
                List.copyOf(results),
                List.copyOf(events),
                eventsDropped,
                List.copyOf(refused),
                comparisons.stream().map(TruthComparison::result).toList(),
                StrictMath.round(ended.truth().stateOfCharge() * 1e6),
                StrictMath.round(ended.truth().chargeAmpHours() * 1e6),
                truePercent,
                tested(ended));
    }

    private static @Nullable TestedProgram tested(Rig ended) {
        for (Lane lane : ended.lanes()) {
            PipeProgram program = lane.program();
            if (program != null) {
                return new TestedProgram(lane.name(), program.name(), program.commandText());
            }
        }
        return null;
    }

    private static Verdict verdict(List<ExpectationResult> results) {
        if (results.isEmpty()) {
            return Verdict.NO_VERDICT;
        }
        return results.stream().allMatch(r -> r.outcome().isGood())
                ? Verdict.PASSED
                : Verdict.FAILED;
    }
}
