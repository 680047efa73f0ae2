package org.gaugebench.sim.device;

import java.util.List;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.device.PipeReply.Kind;
import org.gaugebench.sim.program.Exchange;
import org.gaugebench.sim.program.ProgramException;

/** Messages as little-endian frames. Allocates nothing for ticks and readouts. */
final class FrameWire implements PipeWire {
    private static final int HEAD = 8;
    private static final int FIRST_KIND = 65;
    private static final int SET = 1;
    private static final int POWER = 2;
    private static final int TICKS = 3;
    private static final int COMMAND = 4;
    private static final int CHANGE = 5;
    private static final int REGISTERS = 6;
    private static final String SWAPPED =
            "; the other way round it would be one: frames are little-endian";
    private static final int STORED = 7;
    private static final int CUT = 8;
    private static final int END = 9;
    private static final Kind[] KINDS = Kind.values();
    private static final int OUTCOMES = CommandOutcome.values().length;
    private static final int EVENTS = Event.values().length;

    private final Exchange bytes;
    private final int readoutFigures;
    private final int registerFigures;
    private int begin;
    private String head = "";

    FrameWire(Exchange bytes, PipeHello hello) {
        this.bytes = bytes;
        readoutFigures = hello.readout().size();
        registerFigures = hello.registerFigures();
    }

    private void open(int kind) {
        begin = bytes.length();
        u32(0);
        bytes.putLittleEndian(kind, Short.BYTES);
        bytes.putLittleEndian(0, Short.BYTES);
    }

    private void close() {
        bytes.patchLittleEndian(begin, bytes.length() - begin - HEAD, Integer.BYTES);
    }

    private void u32(int value) {
        bytes.putLittleEndian(value, Integer.BYTES);
    }

    private void i64(long value) {
        bytes.putLittleEndian(value, Long.BYTES);
    }

    private void pair(int number, long value) {
        u32(number);
        u32(0);
        i64(value);
    }

    private void empty(int kind) {
        open(kind);
        close();
    }

    @Override
    public void set(List<Setting> settings, long[] values) {
        if (settings.isEmpty()) {
            return;
        }
        open(SET);
        for (Setting setting : settings) {
            pair(setting.ordinal(), values[setting.ordinal()]);
        }
        close();
    }

    @Override
    public void power(OffTime known, long millis) {
        open(POWER);
        pair(known.ordinal(), millis);
        close();
    }

    @Override
    public void ticks(PipeTicks ticks) {
        open(TICKS);
        for (int i = 0; i < ticks.count; i++) {
            u32(ticks.shuntCounts[i]);
            u32(ticks.voltageCounts[i]);
            u32(ticks.temperatureMillicelsius[i]);
            u32(ticks.clockMillis[i]);
        }
        close();
    }

    @Override
    public void command(Command command, long argument) {
        open(COMMAND);
        pair(command.ordinal(), argument);
        close();
    }

    @Override
    public void change() {
        empty(CHANGE);
    }

    @Override
    public void registers() {
        empty(REGISTERS);
    }

    @Override
    public void stored(boolean isOk, byte[] stored) {
        open(STORED);
        u32(isOk ? 0 : -1);
        if (isOk) {
            for (byte each : stored) {
                bytes.put(each);
            }
        }
        close();
    }

    @Override
    public void cut() {
        empty(CUT);
    }

    @Override
    public void end() {
        empty(END);
    }

    @Override
    public void next(PipeReply reply) {
        bytes.bytes(HEAD);
        int from = bytes.start();
        long length = bytes.getLittleEndian(from, Integer.BYTES);
        int kind = (int) bytes.getLittleEndian(from + 4, Short.BYTES) - FIRST_KIND;
        reply.place = (int) bytes.getLittleEndian(from + 6, Short.BYTES);
        boolean isKnown = kind >= 0 && kind < KINDS.length;
        if (!isKnown || length > PipeLimits.MOST_FRAME_BYTES - HEAD) {
            head = shown(from, from + HEAD);
            throw new ProgramException(
                    "it answered a frame that begins with %s: ".formatted(head)
                            + (isKnown
                                    ? "a length of %s, more than %s"
                                            .formatted(length, PipeLimits.MOST_FRAME_BYTES - HEAD)
                                    : "a kind of %s, expected %s to %s"
                                                    .formatted(
                                                            kind + FIRST_KIND,
                                                            FIRST_KIND,
                                                            FIRST_KIND + KINDS.length - 1)
                                            + (isSwapped(kind) ? SWAPPED : "")));
        }
        reply.kind = KINDS[kind];
        head = reply.kind.word();
        bytes.bytes((int) length);
        body(reply, bytes.start(), (int) length);
    }

    /** Whether the two bytes of a kind would be one the other way round. */
    private static boolean isSwapped(int kind) {
        int swapped = Short.toUnsignedInt(Short.reverseBytes((short) (kind + FIRST_KIND)));
        return swapped >= FIRST_KIND && swapped < FIRST_KIND + KINDS.length;
    }

    private void body(PipeReply reply, int from, int length) {
        switch (reply.kind) {
            case READOUT -> figures(reply, from, length, readoutFigures);
            case REGISTERS -> figures(reply, from, length, registerFigures);
            case OUTCOME -> {
                expect(length, 8);
                reply.number = number(from, OUTCOMES);
            }
            case EVENT -> {
                boolean isBare = length == 24;
                expect(length, isBare ? 24 : 24 + Long.BYTES * readoutFigures);
                reply.number = number(from, EVENTS);
                reply.uptimeMillis = bytes.getLittleEndian(from + 8, Long.BYTES);
                reply.value = bytes.getLittleEndian(from + 16, Long.BYTES);
                figures(reply, from + 24, length - 24, isBare ? 0 : readoutFigures);
            }
            case READ -> {
                expect(length, 8);
                reply.slot = slot(from);
                long count = bytes.getLittleEndian(from + 4, Integer.BYTES);
                if (count < 1 || count > PipeLimits.MOST_SLOT_BYTES) {
                    throw wrong("%s bytes to be read".formatted(count));
                }
                reply.byteCount = (int) count;
            }
            case ERASE -> {
                expect(length, 4);
                reply.slot = slot(from);
            }
            case PROGRAM -> {
                if (length < 5 || length > 4 + PipeLimits.MOST_SLOT_BYTES) {
                    throw wrong("a length of %s, expected a slot and its bytes".formatted(length));
                }
                reply.slot = slot(from);
                reply.bytes = new byte[length - 4];
                for (int i = 0; i < length - 4; i++) {
                    reply.bytes[i] = (byte) bytes.get(from + 4 + i);
                }
            }
        }
    }

    private int slot(int from) {
        int slot = (int) bytes.getLittleEndian(from, Integer.BYTES);
        if (slot < 0) {
            throw wrong("no memory has a slot " + Integer.toUnsignedString(slot));
        }
        return slot;
    }

    private int number(int from, int count) {
        long number = bytes.getLittleEndian(from, Integer.BYTES);
        if (number >= count) {
            throw wrong("number %s, expected 0 to %s".formatted(number, count - 1));
        }
        return (int) number;
    }

    private void figures(PipeReply reply, int from, int length, int count) {
        expect(length, Long.BYTES * count);
        reply.figureCount = count;
        for (int i = 0; i < count; i++) {
            reply.figures[i] = bytes.getLittleEndian(from + Long.BYTES * i, Long.BYTES);
        }
    }

    private void expect(int length, int expected) {
        if (length != expected) {
            throw wrong("a length of %s bytes, expected %s".formatted(length, expected));
        }
    }

    private ProgramException wrong(String what) {
        return new ProgramException("it answered a frame '%s': %s".formatted(head, what));
    }

    private String shown(int from, int to) {
        StringBuilder text = new StringBuilder();
        for (int i = from; i < to; i++) {
            text.append(text.isEmpty() ? "" : " ").append("%02x".formatted(bytes.get(i)));
        }
        return text.toString();
    }

    @Override
    public String unfinished() {
        int count = bytes.unfinished().length();
        return count == 0 ? "" : count + " bytes of an unfinished frame";
    }
}
