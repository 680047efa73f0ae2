package org.gaugebench.sim.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** How far a run is by a clock that the test turns. */
@Timeout(30)
class PlayerTest {
    private static final long SECOND = 1_000_000_000;

    private final AtomicLong nanos = new AtomicLong();
    private final Player player = new Player(BenchSamples.bench(), nanos::get);

    private long now() {
        return player.look(view -> view.bench().rig().timeMillis());
    }

    private boolean isRunning() {
        return player.look(Player.View::running);
    }

    private void pass(double seconds) {
        nanos.addAndGet((long) (seconds * SECOND));
        player.slice();
    }

    @Test
    void realTimeIsASecondASecondAndNeverAhead() {
        player.setSpeed(1);
        player.play();
        pass(0.9);
        assertEquals(0, now());
        pass(0.2);
        assertEquals(1_000, now());
        for (int i = 0; i < 100; i++) {
            pass(0.05);
        }
        assertEquals(6_000, now());
    }

    @Test
    void aDayASecondIsADayASecond() {
        player.setSpeed(86_400);
        player.play();
        for (int i = 0; i < 20; i++) {
            pass(0.05);
        }
        assertEquals(86_400_000, now());
        player.pause();
        pass(1);
        assertEquals(86_400_000, now());
        assertFalse(isRunning());
    }

    @Test
    void anotherSpeedGoesOnFromWhereItIs() {
        player.setSpeed(3_600);
        player.play();
        pass(1);
        player.setSpeed(60);
        pass(1);
        assertEquals(3_660_000, now());
    }

    @Test
    void itStandsAtTheMomentAskedForAndAtTheEnd() {
        player.runTo(7_200_500);
        while (isRunning()) {
            pass(0.01);
        }
        assertEquals(7_200_000, now(), "the last whole tick before it");
        player.runTo(Long.MAX_VALUE);
        while (isRunning()) {
            pass(0.01);
        }
        assertEquals(3 * 86_400_000, now());
        player.play();
        assertFalse(isRunning());
    }

    @Test
    void theNextEventIsMetWithinAMinute() {
        long before = player.look(view -> view.bench().events().count());
        player.toNextEvent();
        while (isRunning()) {
            pass(0.01);
        }
        LiveEvent event = player.look(view -> view.bench().events().events().get((int) before));
        assertTrue(event.millis() > 0, "those of the start are over");
        assertTrue(now() - event.millis() <= 60_000, now() + " after " + event);
    }

    /** Each window waits in a thread of its own, and one change is for all of them. */
    @Test
    void everyWindowThatWaitsHearsOfAChange() throws Exception {
        long seen = player.look(Player.View::version);
        AtomicLong woken = new AtomicLong();
        Thread[] windows = new Thread[3];
        for (int i = 0; i < windows.length; i++) {
            windows[i] =
                    new Thread(
                            () -> {
                                try {
                                    // Far longer than the test waits for them.
                                    woken.addAndGet(player.awaitNewer(seen, 60_000) ? 1 : 0);
                                } catch (InterruptedException e) {
                                    Thread.currentThread().interrupt();
                                }
                            });
            windows[i].setDaemon(true);
            windows[i].start();
        }
        for (Thread window : windows) {
            while (window.getState() != Thread.State.TIMED_WAITING) {
                Thread.onSpinWait();
            }
        }
        player.step();
        for (Thread window : windows) {
            window.join(5_000);
        }
        assertEquals(windows.length, woken.get());
    }

    @Test
    void aStepIsOneTick() {
        player.step();
        player.step();
        assertEquals(2_000, now());
    }
}
