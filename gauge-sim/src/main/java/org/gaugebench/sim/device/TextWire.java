package org.gaugebench.sim.device;

import java.util.List;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.device.PipeReply.Kind;
import org.gaugebench.sim.program.Exchange;
import org.gaugebench.sim.program.ProgramException;

/** Messages as text lines. Allocates nothing for ticks and readouts. */
final class TextWire implements PipeWire {
    private static final String[] COMMANDS = PipeNames.all(Command.values());
    private static final String[] OUTCOMES = PipeNames.all(CommandOutcome.values());
    private static final String[] EVENTS = PipeNames.all(Event.values());
    private static final String[] OFF_TIMES = PipeNames.all(OffTime.values());
    private static final Kind[] KINDS = Kind.values();
    private static final String HEX = "0123456789abcdef";
    private static final int LONGEST_NUMBER = 20;
    private static final int MOST_SHOWN = 200;

    private final Exchange line;
    private final int readoutFigures;
    private final int registerFigures;
    private final byte[] digits = new byte[LONGEST_NUMBER];
    private int at;

    TextWire(Exchange line, PipeHello hello) {
        this.line = line;
        readoutFigures = hello.readout().size();
        registerFigures = hello.registerFigures();
    }

    @Override
    public void set(List<Setting> settings, long[] values) {
        for (Setting setting : settings) {
            line.put("set ");
            line.put(setting.key());
            number(values[setting.ordinal()]);
            line.put(' ');
            line.put(setting.unit());
            line.put('\n');
        }
    }

    @Override
    public void power(OffTime known, long millis) {
        line.put("power ");
        line.put(OFF_TIMES[known.ordinal()]);
        number(millis);
        line.put('\n');
    }

    @Override
    public void ticks(PipeTicks ticks) {
        if (ticks.count > 1) {
            line.put("ticks");
            number(ticks.count);
            line.put('\n');
        }
        for (int i = 0; i < ticks.count; i++) {
            line.put("tick");
            number(ticks.shuntCounts[i]);
            number(ticks.voltageCounts[i]);
            if (ticks.temperatureMillicelsius[i] == Sample.TEMPERATURE_ABSENT) {
                line.put(" -");
            } else {
                number(ticks.temperatureMillicelsius[i]);
            }
            number(ticks.clockMillis[i] & 0xFFFFFFFFL);
            line.put('\n');
        }
    }

    @Override
    public void command(Command command, long argument) {
        line.put("command ");
        line.put(COMMANDS[command.ordinal()]);
        number(argument);
        line.put('\n');
    }

    @Override
    public void change() {
        line.put("change\n");
    }

    @Override
    public void registers() {
        line.put("registers\n");
    }

    @Override
    public void stored(boolean isOk, byte[] bytes) {
        line.put(isOk ? "ok" : "failed");
        if (isOk && bytes.length > 0) {
            line.put(' ');
            for (byte each : bytes) {
                line.put(HEX.charAt((each >> 4) & 0xF));
                line.put(HEX.charAt(each & 0xF));
            }
        }
        line.put('\n');
    }

    @Override
    public void cut() {
        line.put("cut\n");
    }

    @Override
    public void end() {
        line.put("end\n");
    }

    /** A space and a number. */
    private void number(long value) {
        line.put(' ');
        if (value < 0) {
            line.put('-');
        }
        // Negative figures reach further than positive ones.
        long rest = value < 0 ? value : -value;
        int count = 0;
        do {
            digits[count++] = (byte) ('0' - rest % 10);
            rest /= 10;
        } while (rest != 0);
        while (count > 0) {
            line.put(digits[--count]);
        }
    }

    @Override
    public void next(PipeReply reply) {
        line.line();
        at = line.start();
        reply.place = 0;
        if (at < line.end() && line.get(at) == '@') {
            at++;
            reply.place = (int) figure(0, PipeHello.MOST_BATCH - 1, "the place of a tick");
            space();
        }
        int word = at;
        skipWord();
        Kind kind = null;
        for (Kind each : KINDS) {
            if (is(word, at, each.word())) {
                kind = each;
            }
        }
        if (kind == null) {
            throw wrong(
                    "expected a message, such as 'readout 800000 0' or 'erase 2'; text for people"
                            + " goes to standard error");
        }
        reply.kind = kind;
        body(reply);
        if (at != line.end()) {
            throw wrong("there is more behind the " + kind.word() + " than belongs to it");
        }
    }

    private void body(PipeReply reply) {
        switch (reply.kind) {
            case READOUT -> figures(reply, readoutFigures);
            case REGISTERS -> {
                if (registerFigures == 0) {
                    throw wrong("its hello promised no registers");
                }
                figures(reply, registerFigures);
            }
            case OUTCOME -> reply.number = name(OUTCOMES, "an outcome");
            case EVENT -> {
                reply.number = name(EVENTS, "an event");
                space();
                reply.uptimeMillis = figure(Long.MIN_VALUE, Long.MAX_VALUE, "its uptime");
                space();
                reply.value = figure(Long.MIN_VALUE, Long.MAX_VALUE, "its figure");
                reply.figureCount = 0;
                if (at < line.end()) {
                    figures(reply, readoutFigures);
                }
            }
            case READ -> {
                slot(reply);
                space();
                reply.byteCount = (int) figure(1, PipeLimits.MOST_SLOT_BYTES, "a number of bytes");
            }
            case ERASE -> slot(reply);
            case PROGRAM -> {
                slot(reply);
                space();
                bytes(reply);
            }
        }
    }

    private void slot(PipeReply reply) {
        space();
        reply.slot = (int) figure(0, Integer.MAX_VALUE, "a slot");
    }

    private void figures(PipeReply reply, int count) {
        reply.figureCount = count;
        for (int i = 0; i < count; i++) {
            if (at == line.end()) {
                throw wrong("expected %s figures, found %s".formatted(count, i));
            }
            space();
            reply.figures[i] = figure(Long.MIN_VALUE, Long.MAX_VALUE, "a whole number");
        }
    }

    private int name(String[] names, String what) {
        space();
        int from = at;
        skipWord();
        for (int i = 0; i < names.length; i++) {
            if (is(from, at, names[i])) {
                return i;
            }
        }
        throw wrong("expected " + what + ", such as '" + names[0] + "'");
    }

    private void bytes(PipeReply reply) {
        int from = at;
        skipWord();
        int count = (at - from) / 2;
        if (count == 0 || 2 * count != at - from || count > PipeLimits.MOST_SLOT_BYTES) {
            throw wrong("expected bytes, two hexadecimal digits each");
        }
        reply.bytes = new byte[count];
        for (int i = 0; i < count; i++) {
            int high = Character.digit(line.get(from + 2 * i), 16);
            int low = Character.digit(line.get(from + 2 * i + 1), 16);
            if (high < 0 || low < 0) {
                throw wrong("expected bytes, two hexadecimal digits each");
            }
            reply.bytes[i] = (byte) (high << 4 | low);
        }
    }

    private void space() {
        if (at >= line.end() || line.get(at) != ' ') {
            throw wrong("it ends too early, or a space is missing at column " + column());
        }
        at++;
    }

    private int column() {
        return at - line.start() + 1;
    }

    private void skipWord() {
        while (at < line.end() && line.get(at) != ' ') {
            at++;
        }
    }

    private boolean is(int from, int to, String word) {
        if (to - from != word.length()) {
            return false;
        }
        for (int i = 0; i < word.length(); i++) {
            if (line.get(from + i) != word.charAt(i)) {
                return false;
            }
        }
        return true;
    }

    private long figure(long least, long most, String what) {
        int from = at;
        boolean isNegative = at < line.end() && line.get(at) == '-';
        if (isNegative) {
            at++;
        }
        int firstDigit = at;
        long negated = 0;
        boolean fits = true;
        while (at < line.end() && line.get(at) >= '0' && line.get(at) <= '9') {
            int digit = line.get(at) - '0';
            fits &= negated >= (Long.MIN_VALUE + digit) / 10;
            negated = 10 * negated - digit;
            at++;
        }
        long value = isNegative ? negated : -negated;
        fits &= isNegative || negated != Long.MIN_VALUE;
        if (at == firstDigit || !fits || value < least || value > most) {
            int column = from - line.start() + 1;
            throw wrong("expected %s at column %s".formatted(what, column));
        }
        return value;
    }

    private ProgramException wrong(String what) {
        int to = Math.min(line.end(), line.start() + MOST_SHOWN);
        String shown = line.text(line.start(), to) + (to < line.end() ? "..." : "");
        return new ProgramException("it answered '%s': %s".formatted(shown, what));
    }

    @Override
    public String unfinished() {
        String text = line.unfinished();
        return text.length() <= MOST_SHOWN ? text : text.substring(0, MOST_SHOWN) + "...";
    }
}
