package org.gaugebench.sim.report;

import java.util.Arrays;
import java.util.Base64;

/**
 * A line as few bytes: for each point the ticks since the one before and the difference of the
 * value, both as whole numbers of seven bits a byte, the lowest first. The lowest bit of the first
 * number tells a gap, which has no value; the sign of a difference is its lowest bit.
 *
 * <p>Values are counted in steps of a power of ten of their unit: at least {@value #STEPS} steps
 * cover what the line spans, which is finer than any screen. Points between two of the same value
 * say nothing and are left out.
 */
final class ReportBytes {
    private static final int STEPS = 20_000;

    private byte[] bytes = new byte[1 << 10];
    private int size;
    private final long step;

    private long lastTick;
    private long lastValue;

    // The point that goes out only if the next one differs.
    private boolean any;
    private boolean waits;
    private long waitingTick;
    private int waitingValue;
    private int keptValue;

    private ReportBytes(long step) {
        this.step = step;
    }

    /**
     * A line.
     *
     * @param text its bytes in base 64
     * @param step how many of the channel's units one counted step is
     */
    record Line(String text, long step) {}

    /** The line of a column: its own points and those of the windows' rows, in order of time. */
    static Line of(ReportTrace trace, int column, int[] windowRows) {
        ReportChannel channel = trace.channel(column);
        ReportBytes out = new ReportBytes(stepOf(channel));
        ReportWindows windows = trace.windows();
        int point = 0;
        for (int row : windowRows) {
            long tick = windows.tick(row);
            int value = windows.value(row, column);
            if (value == ReportWindows.NOT_LOOKED) {
                continue;
            }
            while (point < channel.size() && channel.tick(point) < tick) {
                out.add(channel.tick(point), channel.value(point));
                point++;
            }
            if (point < channel.size() && channel.tick(point) == tick) {
                point++;
            }
            out.add(tick, value);
        }
        while (point < channel.size()) {
            out.add(channel.tick(point), channel.value(point));
            point++;
        }
        out.flush();
        return new Line(out.base64(), out.step);
    }

    /** The states of a rule, each with its change; steps of one. */
    static Line of(ReportStates states) {
        ReportBytes out = new ReportBytes(1);
        for (int i = 0; i < states.size(); i++) {
            int code = states.code(i);
            out.put(states.tick(i), code == ReportStates.NONE ? ReportChannel.GAP : code);
        }
        return new Line(out.base64(), 1);
    }

    private static long stepOf(ReportChannel channel) {
        long low = Long.MAX_VALUE;
        long high = Long.MIN_VALUE;
        for (int i = 0; i < channel.size(); i++) {
            if (channel.value(i) != ReportChannel.GAP) {
                low = Math.min(low, channel.value(i));
                high = Math.max(high, channel.value(i));
            }
        }
        long step = 1;
        while (low <= high && (high - low) / (10 * step) >= STEPS) {
            step *= 10;
        }
        return step;
    }

    private int counted(int value) {
        return value == ReportChannel.GAP ? value : (int) Math.floorDiv(value + step / 2, step);
    }

    private void add(long tick, int value) {
        int counted = counted(value);
        if (any && counted == keptValue) {
            waits = true;
            waitingTick = tick;
            waitingValue = counted;
            return;
        }
        flush();
        put(tick, counted);
        any = true;
        keptValue = counted;
    }

    private void flush() {
        if (waits) {
            put(waitingTick, waitingValue);
            waits = false;
        }
    }

    private void put(long tick, int value) {
        boolean gap = value == ReportChannel.GAP;
        number((tick - lastTick) * 2 + (gap ? 1 : 0));
        lastTick = tick;
        if (!gap) {
            long difference = value - lastValue;
            number((difference << 1) ^ (difference >> 63));
            lastValue = value;
        }
    }

    private void number(long value) {
        long left = value;
        do {
            if (size == bytes.length) {
                bytes = Arrays.copyOf(bytes, 2 * size);
            }
            bytes[size++] = (byte) ((left & 0x7F) | (left > 0x7F ? 0x80 : 0));
            left >>>= 7;
        } while (left != 0);
    }

    private String base64() {
        return Base64.getEncoder().encodeToString(Arrays.copyOf(bytes, size));
    }
}
