package org.gaugebench.sim.device;

import java.util.Locale;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.EventSink;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * How many ticks a second go through the pipe, with nothing but the pipe around: {@code PipeSpeed
 * COMMAND}. The reading at the end is held against the sum, so that a figure is never that of ticks
 * which did not arrive.
 */
public final class PipeSpeed {
    private static final int COUNTS = -1_048;
    private static final int MOST_TICKS = 4_000_000;
    private static final double LEAST_SECONDS = 1.5;

    private PipeSpeed() {}

    /** Prints a line for each size of a batch. */
    public static void main(String[] args) {
        System.out.println("| ticks in a message | ticks a second | us a message |");
        System.out.println("|---|---|---|");
        for (int batch : new int[] {1, 60, 256, 1_024}) {
            measure(PipeCommand.of(args[0], PipeLimits.ANSWER_MILLIS), batch);
        }
    }

    private static void measure(PipeCommand command, int batch) {
        GaugeSettings settings = GaugeSettings.builder().set(Setting.CAPACITY, 10_000_000).build();
        try (PipeProgram program = new PipeProgram(command, StateStore.NONE)) {
            PipeDevice device = new PipeDevice(program, settings, StateStore.NONE, EventSink.NONE);
            device.powerUp(0, OffTime.EXACT);
            Sample sample = new Sample();
            sample.temperatureMillicelsius = 20_000;
            device.tick(sample);
            device.command(Command.DECLARE_STATE_OF_CHARGE, 1_000_000);
            feed(device, sample, batch, MOST_TICKS / 40); // the compiler warms up
            int ticks = MOST_TICKS / 40;
            long start = System.nanoTime();
            double seconds = 0;
            while (seconds < LEAST_SECONDS && ticks < MOST_TICKS) {
                feed(device, sample, batch, batch * 100);
                ticks += batch * 100;
                seconds = (System.nanoTime() - start) / 1e9;
            }
            check(device, settings, ticks);
            int measured = ticks - MOST_TICKS / 40;
            System.out.printf(
                    Locale.ROOT,
                    "| %d | %,.0f | %.1f |%n",
                    batch,
                    measured / seconds,
                    seconds * 1e6 * batch / measured);
            program.end();
        }
    }

    private static void feed(PipeDevice device, Sample sample, int batch, int ticks) {
        for (int i = 1; i <= ticks; i++) {
            sample.shuntCounts = COUNTS;
            sample.voltageCounts = 13_000;
            sample.clockMillis += 100;
            device.tick(sample);
            if (i % batch == 0) {
                device.settle();
            }
        }
        device.settle();
    }

    private static void check(PipeDevice device, GaugeSettings settings, int ticks) {
        Readout readout = new Readout();
        device.read(readout);
        // Counts of 190.7 nV on 0.75 mOhm, for 100 ms each.
        double perCount = 0.1 / (1 << 19) / 0.00075;
        double expected =
                settings.get(Setting.CAPACITY) * 3.6e9 + COUNTS * perCount * 0.1e9 * ticks;
        if (Math.abs(readout.remainingNanocoulombs - expected) > 1e-5 * Math.abs(expected)) {
            throw new IllegalStateException(
                    "shown " + readout.remainingNanocoulombs + ", expected " + expected);
        }
    }
}
