package org.gaugebench.sim.device;

import java.util.function.Supplier;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.EventSink;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.core.port.Trust;
import org.gaugebench.core.port.TrustReason;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.device.PipeReply.Kind;
import org.gaugebench.sim.memory.PowerCut;

/**
 * One life of a program under test. {@code gauge-sim/docs/pipe-protocol.md} is the law.
 *
 * <p>Ticks are held back until a message is full or somebody wants to know something, so that a
 * fast program is asked once for many of them. While a message is under way, {@link #ticksBehind()}
 * tells of which of its ticks the program speaks.
 */
public final class PipeDevice implements GaugeDevice {
    private static final Setting[] SETTINGS = Setting.values();
    private static final CommandOutcome[] OUTCOMES = CommandOutcome.values();
    private static final Event[] EVENTS = Event.values();
    private static final byte[] NO_BYTES = {};
    private static final int MOST_FIGURES = Registers.COUNT + 1 + BusWords.COUNT;
    private static final int LARGEST_WORD = 0xFFFF;

    private final PipeProgram program;
    private final StateStore store;
    private final EventSink events;
    private final Supplier<String> ticksText = this::ticksText;
    private final long[] settings = new long[SETTINGS.length];
    private final long[] registers = new long[MOST_FIGURES];

    // Known when the program has said hello.
    private PipeHello hello;
    private PipeTicks ticks = new PipeTicks(1);
    private PipeReply reply = new PipeReply(MOST_FIGURES);

    // State.
    private long[] shown = {};
    private long[] atEvent = {};
    private boolean isAtEvent;
    private boolean isAsking;
    private boolean knowsRegisters;
    private int place;

    /**
     * Makes a gauge for the life to come; nothing is sent before power comes.
     *
     * @param program that is asked
     * @param settings that it will be told with power
     * @param store where its requests go
     * @param events is told what it announces
     */
    public PipeDevice(
            PipeProgram program, GaugeSettings settings, StateStore store, EventSink events) {
        this.program = program;
        this.store = store;
        this.events = events;
        hello = NOT_MET;
        keep(settings);
    }

    private static final PipeHello NOT_MET =
            new PipeHello(
                    "",
                    java.util.List.of(),
                    java.util.List.of(),
                    java.util.List.of(),
                    false,
                    1,
                    false,
                    false,
                    false,
                    false);

    private void keep(GaugeSettings told) {
        for (Setting setting : SETTINGS) {
            settings[setting.ordinal()] = told.get(setting);
        }
    }

    @Override
    public void powerUp(long offMillis, OffTime offTime) {
        hello = program.beginLife();
        ticks = new PipeTicks(hello.batch());
        shown = new long[hello.readout().size()];
        atEvent = new long[shown.length];
        PipeWire wire = program.wire();
        wire.set(hello.settings(), settings);
        wire.power(offTime, offMillis);
        ask(() -> "power " + PipeNames.of(offTime) + " " + offMillis, 1, false);
    }

    @Override
    public void tick(Sample sample) {
        ticks.add(sample);
        if (ticks.isFull()) {
            settle();
        }
    }

    @Override
    public void settle() {
        if (ticks.count == 0 || isAsking) {
            return;
        }
        program.countTicks(ticks.count);
        program.wire().ticks(ticks);
        ask(ticksText, hello.answerEach() ? ticks.count : 1, false);
        ticks.count = 0;
    }

    private String ticksText() {
        int last = ticks.count - 1;
        int temperature = ticks.temperatureMillicelsius[last];
        return (last == 0 ? "" : "%s ticks, the last of them ".formatted(ticks.count))
                + "tick %s %s %s %s"
                        .formatted(
                                ticks.shuntCounts[last],
                                ticks.voltageCounts[last],
                                temperature == Sample.TEMPERATURE_ABSENT ? "-" : temperature,
                                ticks.clockMillis[last] & 0xFFFFFFFFL);
    }

    @Override
    public CommandOutcome command(Command command, long argument) {
        settle();
        program.wire().command(command, argument);
        return ask(() -> "command " + PipeNames.of(command) + " " + argument, 1, true);
    }

    @Override
    public CommandOutcome changeSettings(GaugeSettings told) {
        settle();
        PipeWire wire = program.wire();
        java.util.List<Setting> changed =
                hello.settings().stream()
                        .filter(each -> told.get(each) != settings[each.ordinal()])
                        .toList();
        keep(told);
        wire.set(changed, settings);
        wire.change();
        return ask(() -> "change", 1, true);
    }

    /** Sends what was put together and works through the answer. */
    private CommandOutcome ask(Supplier<String> question, int readouts, boolean withOutcome) {
        knowsRegisters = false;
        place = 0;
        isAsking = true;
        try {
            program.ask(question);
            CommandOutcome outcome = CommandOutcome.DONE;
            boolean wantsOutcome = withOutcome;
            int left = readouts;
            while (left > 0) {
                program.next(reply);
                if (reply.kind == Kind.READOUT && !wantsOutcome) {
                    keepReadout();
                    left--;
                    // Of one readout for each tick, each belongs to the tick after the last one.
                    place = readouts > 1 ? readouts - left : place;
                } else if (reply.kind == Kind.OUTCOME && wantsOutcome) {
                    outcome = OUTCOMES[reply.number];
                    wantsOutcome = false;
                } else {
                    listen(wantsOutcome);
                }
            }
            return outcome;
        } finally {
            isAsking = false;
        }
    }

    private void keepReadout() {
        for (int i = 0; i < shown.length; i++) {
            shown[i] = checked(i);
        }
    }

    private long checked(int i) {
        long value = reply.figures[i];
        ReadoutField field = hello.readout().get(i);
        if (!field.accepts(value)) {
            throw program.outOfPlace(
                    "its readout has %s for %s; expected %s"
                            .formatted(value, PipeNames.of(field), field.range()));
        }
        return value;
    }

    private void listen(boolean wantsOutcome) {
        switch (reply.kind) {
            case EVENT -> {
                move();
                announce();
            }
            case READ, ERASE, PROGRAM -> {
                move();
                use();
            }
            case READOUT, OUTCOME, REGISTERS ->
                    throw program.outOfPlace(
                            "it answered with '%s'; expected %s"
                                    .formatted(
                                            reply.kind.word(),
                                            wantsOutcome
                                                    ? "'outcome', then 'readout'"
                                                    : "'readout', an event or a store request"));
        }
    }

    private void move() {
        int most = Math.max(ticks.count, 1) - 1;
        if ((reply.place < place && reply.place != 0) || reply.place > most) {
            throw program.outOfPlace(
                    "its '%s' is of tick %s of the message; expected %s to %s"
                            .formatted(reply.kind.word(), reply.place, place, most));
        }
        place = Math.max(place, reply.place);
    }

    private void announce() {
        Event event = EVENTS[reply.number];
        isAtEvent = reply.figureCount > 0;
        for (int i = 0; i < reply.figureCount; i++) {
            atEvent[i] = checked(i);
        }
        try {
            events.onEvent(event, reply.uptimeMillis, reply.value);
        } finally {
            isAtEvent = false;
        }
    }

    private void use() {
        boolean isOk;
        byte[] bytes = NO_BYTES;
        try {
            isOk =
                    switch (reply.kind) {
                        case READ -> {
                            bytes = new byte[reply.byteCount];
                            yield store.read(reply.slot, bytes) == StateStore.OK;
                        }
                        case ERASE -> store.erase(reply.slot) == StateStore.OK;
                        default -> store.program(reply.slot, reply.bytes) == StateStore.OK;
                    };
        } catch (PowerCut cut) {
            ticks.count = 0;
            if (hello.restartByMessage()) {
                program.wire().cut();
                program.reply();
            } else {
                program.kill();
            }
            throw cut;
        }
        program.wire().stored(isOk, bytes);
        program.reply();
    }

    @Override
    public int ticksBehind() {
        return isAsking ? Math.max(0, ticks.count - 1 - place) : 0;
    }

    @Override
    public boolean holdsTicks() {
        return ticks.count > 0;
    }

    @Override
    public void read(Readout readout) {
        settle();
        long[] values = isAtEvent ? atEvent : shown;
        for (int i = 0; i < values.length; i++) {
            hello.readout().get(i).set(readout, values[i]);
        }
        if (!hello.readout().contains(ReadoutField.TRUST)) {
            boolean isKnown = readout.stateOfChargePartsPerMillion >= 0;
            readout.trust = isKnown ? Trust.DECLARED : Trust.UNKNOWN;
            readout.trustReason = isKnown ? TrustReason.DECLARED_ONLY : TrustReason.NOTHING_KNOWN;
        }
    }

    @Override
    public void inspect(Registers into) {
        ask();
        for (int i = 0; i < hello.registers().size(); i++) {
            Register register = hello.registers().get(i);
            into.set(register, registers[i]);
        }
    }

    /**
     * Digest of all registers after each tick and each other call since the program was started; a
     * program that gives none says so in its hello.
     */
    public long tickDigest() {
        ask();
        return registers[hello.registers().size()];
    }

    @Override
    public boolean readBus(int[] words) {
        if (!hello.bus()) {
            return false;
        }
        ask();
        for (int i = 0; i < BusWords.COUNT; i++) {
            long word = registers[hello.registerFigures() - BusWords.COUNT + i];
            if (word < 0 || word > LARGEST_WORD) {
                throw program.outOfPlace(
                        "its %s is %s; expected 0 to %s"
                                .formatted(BusWords.name(i), word, LARGEST_WORD));
            }
            words[i] = (int) word;
        }
        return true;
    }

    /** Registers that the program gives; known from its first life on. */
    public java.util.List<Register> givenRegisters() {
        return hello.registers();
    }

    /** Whether the program is started anew for each life, and its digest begins anew with it. */
    public boolean startsAnew() {
        return !hello.restartByMessage();
    }

    /** Whether the program gives a digest; known from its first life on. */
    public boolean givesDigest() {
        return hello.digest();
    }

    private void ask() {
        settle();
        if (!knowsRegisters && !isAsking && hello.registerFigures() > 0) {
            program.wire().registers();
            isAsking = true;
            try {
                program.ask(() -> "registers");
                program.next(reply);
            } finally {
                isAsking = false;
            }
            if (reply.kind != Kind.REGISTERS) {
                throw program.outOfPlace(
                        "it answered with '%s'; expected 'registers'".formatted(reply.kind.word()));
            }
            System.arraycopy(reply.figures, 0, registers, 0, reply.figureCount);
            knowsRegisters = true;
        }
    }
}
