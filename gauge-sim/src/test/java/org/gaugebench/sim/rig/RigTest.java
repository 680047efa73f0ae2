package org.gaugebench.sim.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.core.port.Event;
import org.gaugebench.sim.report.Samples;
import org.gaugebench.sim.scenario.Scenario;
import org.junit.jupiter.api.Test;

/** When changes take effect, when the rig stands still, and that looking on changes nothing. */
class RigTest {
    /** Keeps every moment at which the rig stood still, and the current of every tick. */
    private static final class Watcher implements Observer {
        final List<Long> moments = new ArrayList<>();
        final List<Double> amps = new ArrayList<>();
        final List<Event> events = new ArrayList<>();

        @Override
        public void onMoment(Rig rig) {
            moments.add(rig.timeMillis());
        }

        @Override
        public Observer forTicks() {
            return this;
        }

        @Override
        public void onTick(Rig rig) {
            amps.add(rig.truth().meanCurrentAmps());
        }

        @Override
        public void onEvent(Lane lane, Event event, long value) {
            events.add(event);
        }
    }

    private static Rig rig(String text, Watcher watcher) {
        Scenario scenario = Samples.read(text);
        return new Rig(scenario, scenario.seed(), watcher);
    }

    private static String shortRun(String tick, String duration, String at, String set) {
        return Samples.hut()
                .replace("duration: 1 d", "duration: " + duration + "\ntick: " + tick)
                .replace("at: 12 h, set: {lamp: off}", "at: " + at + ", set: {" + set + "}");
    }

    @Test
    void aChangeTakesEffectInTheTickThatBeginsAtItsTime() {
        Watcher watcher = new Watcher();
        rig(shortRun("1 s", "10 s", "4 s", "lamp: off"), watcher).run();
        assertEquals(10, watcher.amps.size());
        assertEquals(-1.0, watcher.amps.get(3), 1e-9, "the tick from 3 s to 4 s");
        assertEquals(0.0, watcher.amps.get(4), 1e-9, "the tick from 4 s to 5 s");
    }

    @Test
    void aChangeBetweenTwoTickBoundariesWaitsForTheNext() {
        Watcher watcher = new Watcher();
        rig(shortRun("2 s", "10 s", "5 s", "lamp: off"), watcher).run();
        assertEquals(-1.0, watcher.amps.get(2), 1e-9, "the tick from 4 s to 6 s");
        assertEquals(0.0, watcher.amps.get(3), 1e-9, "the tick from 6 s to 8 s");
    }

    @Test
    void aChangeOfTime0ComesBeforeTheFirstTick() {
        Watcher watcher = new Watcher();
        rig(shortRun("1 s", "3 s", "0 s", "lamp: off"), watcher).run();
        assertEquals(List.of(0.0, 0.0, 0.0), watcher.amps);
    }

    @Test
    void whatIsDeclaredAtTime0ComesAfterPowerUpAndAfterTheStart() {
        Watcher watcher = new Watcher();
        Rig rig = rig(shortRun("1 s", "3 s", "0 s", "gauge.declare: 25 %"), watcher);
        rig.run();
        assertEquals(List.of(Event.POWERED_UP, Event.DECLARED, Event.DECLARED), watcher.events);
        assertEquals(250_000, rig.lanes().get(0).read().stateOfChargePartsPerMillion, 100);
    }

    @Test
    void standsStillAtWholeMinutesAtMomentsAskedForAndAtTheEnd() {
        Watcher watcher = new Watcher();
        Rig rig = rig(shortRun("1 s", "150 s", "100 s", "lamp: off"), watcher);
        rig.stopAt(new long[] {90_000, 30_000, 60_000, 90_000, 900_000});
        rig.run();
        assertEquals(List.of(30_000L, 60_000L, 90_000L, 120_000L, 150_000L), watcher.moments);
        assertEquals(150, rig.ticks());
    }

    @Test
    void aMinuteThatNoTickBoundaryMeetsIsMetByTheNext() {
        Watcher watcher = new Watcher();
        rig(shortRun("7 s", "140 s", "0 s", "lamp: off"), watcher).run();
        assertEquals(List.of(63_000L, 126_000L, 140_000L), watcher.moments);
    }

    @Test
    void lookingOnChangesNothing() {
        Rig watched = rig(Samples.hut(), new Watcher());
        watched.stopAt(new long[] {1_000, 2_000, 61_000});
        watched.run();
        Scenario scenario = Samples.read(Samples.hut());
        Rig alone = new Rig(scenario, scenario.seed(), Observer.NONE);
        alone.run();
        assertEquals(alone.digest(), watched.digest());
    }

    @Test
    void anotherGaugeBesideChangesNothingOfTheFirst() {
        Rig one = rig(Samples.hut(), new Watcher());
        one.run();
        Rig two =
                rig(
                        Samples.hut() + "beside:\n  - {name: plain, kind: plain-counter}\n",
                        new Watcher());
        two.run();
        assertEquals(one.lanes().get(0).digest(), two.lanes().get(0).digest());
        assertFalse(one.digest() == two.digest(), "the run's digest covers every gauge");
    }

    @Test
    void bothObserversSeeEverything() {
        Watcher first = new Watcher();
        Watcher second = new Watcher();
        Scenario scenario = Samples.read(shortRun("1 s", "120 s", "1 s", "lamp: off"));
        new Rig(scenario, 1, Observers.both(first, second)).run();
        assertEquals(first.moments, second.moments);
        assertEquals(120, second.amps.size());
        assertTrue(first.events.contains(Event.DECLARED));
        assertEquals(first.events, second.events);
    }

    /** Passing a tick on costs as much as looking, so those who look away are left out. */
    @Test
    void ticksGoToNobodyButThoseWhoWantThem() {
        Watcher wants = new Watcher();
        Observer away = new Observer() {};
        assertSame(Observer.NONE, Observers.both(away, away).forTicks());
        assertSame(wants, Observers.both(away, wants).forTicks());
        assertSame(wants, Observers.both(Observers.both(wants, away), away).forTicks());
        Scenario scenario = Samples.read(shortRun("1 s", "120 s", "1 s", "lamp: off"));
        new Rig(scenario, 1, Observers.both(wants, away)).run();
        assertEquals(120, wants.amps.size());
    }
}
