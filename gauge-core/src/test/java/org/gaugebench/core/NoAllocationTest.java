package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.EventSink;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/**
 * A tick, a readout, an inspection and a command allocate nothing. The least of five rounds counts:
 * what the virtual machine itself allocates while it compiles falls into some round, what the code
 * allocates falls into every one.
 */
class NoAllocationTest {
    private static final int ROUNDS = 5;
    private static final int TICKS = 100_000;

    private final Sample sample = new Sample();
    private final Readout readout = new Readout();
    private final Registers registers = new Registers();
    private final EventTally tally = new EventTally();
    private final Gauge gauge =
            new Gauge(
                    GaugeFixture.roundNumbers()
                            .set(Setting.CAPACITY, 1_000)
                            .set(Setting.HOLD, 1)
                            .set(Setting.TAPER, 200_000)
                            .set(Setting.REARM_DISCHARGE, 1_000)
                            .build(),
                    StateStore.NONE,
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
        for (Event event : Event.values()) {
            assertTrue(tally.times[event.ordinal()] > 0, event + " never came");
        }
        assertTrue(registers.get(Register.FULL_COUNT) > 0);
        assertTrue(digest != Registers.DIGEST_START);
    }

    /** Charging, tapering, discharging to empty, gaps, clips, garbage and declarations. */
    private long live(int i, long digest) {
        int phase = i / 500 % 4;
        sample.shuntCounts = phase == 0 ? 40_000 : phase == 1 ? 1_000 : -40_000;
        sample.voltageCounts = phase <= 1 ? 14_400 : 12_000;
        sample.temperatureMillicelsius = i % 7 == 0 ? Sample.TEMPERATURE_ABSENT : 20_000;
        sample.clockMillis += i % 1_999 == 0 ? 70_000 : i % 2_999 == 0 ? -5 : 1_000;
        if (i % 997 == 0) {
            sample.shuntCounts = i % 2 == 0 ? Integer.MAX_VALUE : 8_388_607;
        }
        gauge.tick(sample);
        if (i % 5_003 == 0) {
            gauge.command(Command.DECLARE_STATE_OF_CHARGE, 300_000);
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
