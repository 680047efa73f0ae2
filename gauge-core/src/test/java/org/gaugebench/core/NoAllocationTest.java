package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.List;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.EventSink;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.saved.StrictStore;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/**
 * A tick (one that saves too), a readout, an inspection and a command allocate nothing. The least
 * of five rounds counts: what the virtual machine itself allocates while it compiles falls into
 * some round, what the code allocates falls into every one.
 */
class NoAllocationTest {
    private static final int ROUNDS = 5;
    private static final int TICKS = 100_000;

    /** All that a tick or a hot command can announce in such a life; the rest is cold. */
    private static final List<Event> LED_THROUGH =
            List.of(
                    Event.DECLARED,
                    Event.NEW_BATTERY,
                    Event.SET_TO_FULL,
                    Event.FULL_RULE_ARMED,
                    Event.HELD_AT_LIMIT,
                    Event.HELD_AT_EMPTY,
                    Event.SET_TO_EMPTY,
                    Event.EARLY_EMPTY,
                    Event.FAULT_RAISED);

    private final Sample sample = new Sample();
    private final Readout readout = new Readout();
    private final Registers registers = new Registers();
    private final EventTally tally = new EventTally();
    private final StrictStore store = new StrictStore(4, 256);
    private final Gauge gauge =
            new Gauge(
                    GaugeFixture.roundNumbers()
                            .set(Setting.CAPACITY, 1_000)
                            .set(Setting.HOLD, 1)
                            .set(Setting.TAPER, 200_000)
                            .set(Setting.REARM_DISCHARGE, 1_000)
                            .set(Setting.QUIET_TIME, 0)
                            .set(Setting.EMPTY_CURRENT, 1_000_000)
                            .build(),
                    store,
                    tally);

    /** Counts events without keeping them. */
    private static final class EventTally implements EventSink {
        private final int[] times = new int[Event.values().length];

        @Override
        public void onEvent(Event event, long uptimeMillis, long value) {
            times[event.ordinal()]++;
        }
    }

    @Test
    void aTickAllocatesNothing() {
        assumeTrue(
                ManagementFactory.getThreadMXBean() instanceof ThreadMXBean,
                "this virtual machine does not count allocated bytes");
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        gauge.powerUp(0, OffTime.UNKNOWN);
        long digest = Registers.DIGEST_START;
        long least = Long.MAX_VALUE;
        for (int round = 0; round < ROUNDS; round++) {
            long before = threads.getCurrentThreadAllocatedBytes();
            for (int i = 0; i < TICKS; i++) {
                digest = live(i, digest);
            }
            least = Math.min(least, threads.getCurrentThreadAllocatedBytes() - before);
        }
        assertEquals(0, least, "bytes in " + TICKS + " ticks");
        // The rounds must have led through the rare paths, or the zero says nothing.
        for (Event event : LED_THROUGH) {
            assertTrue(tally.times[event.ordinal()] > 0, event + " never came");
        }
        assertTrue(registers.get(Register.SAVES) > 1_000, "saves are among the ticks");
        assertTrue(registers.get(Register.FULL_COUNT) > 0);
        assertTrue(digest != Registers.DIGEST_START);
    }

    /** Charging, tapering, discharging to empty, gaps, clips, garbage and declarations. */
    private long live(int i, long digest) {
        int phase = i / 500 % 4;
        sample.shuntCounts = phase == 0 ? 40_000 : phase == 1 ? 1_000 : phase == 2 ? -40_000 : -800;
        sample.voltageCounts = phase <= 1 ? 14_400 : phase == 2 ? 12_000 : 10_500;
        sample.temperatureMillicelsius = i % 7 == 0 ? Sample.TEMPERATURE_ABSENT : 20_000;
        sample.clockMillis += i % 1_999 == 0 ? 70_000 : i % 2_999 == 0 ? -5 : 1_000;
        if (i % 997 == 0) {
            sample.shuntCounts = i % 2 == 0 ? Integer.MAX_VALUE : 8_388_607;
        }
        gauge.tick(sample);
        if (i % 5_003 == 0) {
            gauge.command(Command.DECLARE_STATE_OF_CHARGE, i / 5_003 % 3 * 500_000L);
        }
        if (i % 7_919 == 0) {
            gauge.command(Command.FORGET_MEASURED, 0);
            gauge.command(Command.NEW_BATTERY, 0);
        }
        gauge.read(readout);
        gauge.inspect(registers);
        return registers.fold(digest);
    }

    /** The measurement itself sees an allocation when there is one. */
    @Test
    void theMeasurementSeesAnAllocation() {
        assumeTrue(ManagementFactory.getThreadMXBean() instanceof ThreadMXBean);
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadAllocatedBytes();
        Readout[] kept = new Readout[1_000];
        for (int i = 0; i < kept.length; i++) {
            kept[i] = new Readout();
        }
        long bytes = threads.getCurrentThreadAllocatedBytes() - before;
        assertTrue(bytes >= 16L * kept.length, bytes + " bytes for " + kept.length + " objects");
    }
}
