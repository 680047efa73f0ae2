package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.LongStream;
import org.gaugebench.sim.cli.ShelfRunner.Job;
import org.gaugebench.sim.cli.ShelfRunner.Simulation;
import org.gaugebench.sim.judge.RunRecorder;
import org.gaugebench.sim.judge.ShelfCase;
import org.gaugebench.sim.judge.ShelfCase.Ending;
import org.gaugebench.sim.report.Samples;
import org.gaugebench.sim.scenario.Scenario;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A list goes on whatever one of its runs does, and comes out in its own order. */
@Timeout(value = 60, unit = TimeUnit.SECONDS)
class ShelfRunnerTest {
    private static final Scenario HUT =
            Samples.read(Samples.expecting("at: 1 h, reading: voltage, at-least: 1 V"));

    private static List<ShelfCase> run(ShelfRunner runner, long... seeds) {
        List<ShelfCase> cases = new ArrayList<>();
        runner.run(LongStream.of(seeds).mapToObj(seed -> new Job(HUT, seed)).toList(), cases::add);
        return cases;
    }

    private static List<Ending> endings(List<ShelfCase> cases) {
        return cases.stream().map(ShelfCase::ending).toList();
    }

    @Test
    void casesComeInTheOrderOfTheListThoughTheFirstIsTheSlowest() {
        CountDownLatch othersDone = new CountDownLatch(3);
        Simulation firstWaits =
                (scenario, seed, guest) -> {
                    if (seed == 1) {
                        awaitQuietly(othersDone);
                    }
                    othersDone.countDown();
                    return RunRecorder.run(scenario, seed, guest);
                };
        List<ShelfCase> cases = run(new ShelfRunner(2, 0, false, firstWaits), 1, 2, 3, 4);
        assertEquals(List.of(1L, 2L, 3L, 4L), cases.stream().map(ShelfCase::seed).toList());
    }

    private static void awaitQuietly(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Test
    void aRunThatDiesIsOneCaseAndTheListGoesOn() {
        StackOverflowError planted = new StackOverflowError("planted");
        Simulation dying =
                (scenario, seed, guest) -> {
                    if (seed == 2) {
                        throw planted;
                    }
                    return RunRecorder.run(scenario, seed, guest);
                };
        for (long timeoutMillis : new long[] {0, 50_000}) {
            List<ShelfCase> cases = run(new ShelfRunner(2, timeoutMillis, false, dying), 1, 2, 3);
            assertEquals(List.of(Ending.FINISHED, Ending.CRASHED, Ending.FINISHED), endings(cases));
            assertSame(planted, cases.get(1).defect());
            assertTrue(cases.get(1).why().contains("planted"), cases.get(1).why());
        }
    }

    @Test
    void aRunThatTakesTooLongIsStoppedAtItsNextMinute() {
        Simulation slow =
                (scenario, seed, guest) ->
                        RunRecorder.run(scenario, seed, seed == 1 ? new SlowGuest(guest) : guest);
        List<ShelfCase> cases = run(new ShelfRunner(1, 1_500, false, slow), 1, 2);
        assertEquals(List.of(Ending.TIMED_OUT, Ending.FINISHED), endings(cases));
        assertEquals("it did not end within 1.5 s", cases.get(0).why());
    }

    /** Spends a twentieth of a second on each minute. */
    private record SlowGuest(org.gaugebench.sim.rig.Observer guest)
            implements org.gaugebench.sim.rig.Observer {
        @Override
        public void onMoment(org.gaugebench.sim.rig.Rig rig) {
            try {
                Thread.sleep(50);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
            guest.onMoment(rig);
        }
    }

    @Test
    void aRunThatDoesNotAnswerAtAllIsCalledAHangAndLeft() {
        CountDownLatch never = new CountDownLatch(1);
        Simulation hanging =
                (scenario, seed, guest) -> {
                    while (seed == 1 && never.getCount() > 0) {
                        Thread.onSpinWait();
                    }
                    return RunRecorder.run(scenario, seed, guest);
                };
        List<ShelfCase> cases = run(new ShelfRunner(1, 1_000, false, hanging), 1, 2);
        never.countDown();
        assertEquals(List.of(Ending.TIMED_OUT, Ending.FINISHED), endings(cases));
        assertTrue(cases.get(0).why().endsWith("it hangs"), cases.get(0).why());
    }

    @Test
    void failFastSkipsWhatComesAfterInOrderWhateverRanAlready() {
        Scenario bad = Samples.read(Samples.expecting("at: 1 h, reading: voltage, at-least: 90 V"));
        List<Job> jobs = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            jobs.add(new Job(i == 3 || i == 5 ? bad : HUT, i));
        }
        for (int threads : new int[] {1, 3}) {
            List<ShelfCase> cases = new ArrayList<>();
            new ShelfRunner(threads, 0, true, RunRecorder::run).run(jobs, cases::add);
            assertEquals(40, cases.size());
            for (int i = 0; i < 40; i++) {
                assertEquals(
                        i <= 3 ? Ending.FINISHED : Ending.SKIPPED, cases.get(i).ending(), "" + i);
            }
            assertTrue(cases.get(9).why().contains("--fail-fast"), cases.get(9).why());
        }
    }
}
