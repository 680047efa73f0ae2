package org.gaugebench.sim.device;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.sim.program.ChildProgram;
import org.gaugebench.sim.program.Exchange;
import org.gaugebench.sim.program.ProgramException;
import org.jspecify.annotations.Nullable;

/**
 * The program of one gauge of one run: started with its first life, once or again for each one, and
 * gone with the run. Every trouble comes out as a {@link PipeFailure}, with the program killed.
 */
public final class PipeProgram implements AutoCloseable {
    private static final int MOST_ERROR_LINES = 20;
    private static final int MOST_LINE_LENGTH = 200;
    private static final String NOTHING = "nothing";

    private final PipeCommand command;
    private final int slots;
    private final int slotBytes;
    private final boolean wantsDigest;
    private @Nullable ChildProgram child;
    private @Nullable Exchange exchange;
    private @Nullable PipeWire wire;
    private @Nullable PipeHello hello;
    private boolean hasLived;

    // What a message tells of the moment.
    private Supplier<String> question = () -> "";
    private long messages;
    private long ticks;

    /** Names a program and the memory that it will have; starts nothing. */
    public PipeProgram(PipeCommand command, StateStore store) {
        this(command, store, false);
    }

    /** The same, asked for a digest of its ticks and for its bus words if it can give them. */
    public PipeProgram(PipeCommand command, StateStore store, boolean wantsDigest) {
        this.command = command;
        this.wantsDigest = wantsDigest;
        slots = store.slots();
        slotBytes = store.slotBytes();
    }

    /**
     * Starts a program, hears its hello and ends it: what a run would meet first.
     *
     * @return the hello
     * @throws ProgramException when the system cannot start it
     * @throws PipeFailure when it does not say hello
     */
    public static PipeHello tryOut(PipeCommand command) {
        return tryOut(command, false);
    }

    /** The same, asked for a digest of its ticks if it can give one. */
    public static PipeHello tryOut(PipeCommand command, boolean wantsDigest) {
        try (PipeProgram program = new PipeProgram(command, StateStore.NONE, wantsDigest)) {
            ChildProgram started = ChildProgram.start(command.words());
            PipeHello hello = program.meet(started);
            program.end();
            return hello;
        }
    }

    /** A new life begins: the program is started, or started again, where it has to be. */
    PipeHello beginLife() {
        PipeHello known = hello;
        if (child != null && hasLived && known != null && !known.restartByMessage()) {
            kill();
        }
        hasLived = true;
        if (child != null && known != null) {
            return known;
        }
        PipeHello met;
        try {
            met = meet(ChildProgram.start(command.words()));
        } catch (ProgramException e) {
            throw failure(e);
        }
        if (known != null && !known.equals(met)) {
            throw failure(new ProgramException("its hello differs from that of its start before"));
        }
        return met;
    }

    private PipeHello meet(ChildProgram started) {
        child = started;
        Exchange talk = new Exchange(started, command.answerMillis(), PipeLimits.MOST_LINE_BYTES);
        messages = 0;
        question = () -> "hello %s".formatted(PipeHello.VERSION);
        try {
            talk.put(
                    "hello %s\nstore %s %s\n%sready\n"
                            .formatted(
                                    PipeHello.VERSION,
                                    slots,
                                    slotBytes,
                                    wantsDigest ? "digest\nbus\n" : ""));
            talk.reply(); // a program may say hello before it is asked
            PipeHello met = hear(talk);
            hello = met;
            if (met.frames()) {
                talk = talk.with(PipeLimits.MOST_FRAME_BYTES);
            }
            exchange = talk;
            wire = met.frames() ? new FrameWire(talk, met) : new TextWire(talk, met);
            return met;
        } catch (ProgramException e) {
            throw failure(e);
        }
    }

    private PipeHello hear(Exchange talk) {
        PipeHello.Reader reader = new PipeHello.Reader();
        for (int i = 0; i < PipeHello.MOST_LINES; i++) {
            talk.line();
            messages++;
            String line = talk.text(talk.start(), Math.min(talk.end(), talk.start() + 4_096));
            try {
                if (reader.take(line)) {
                    return reader.hello();
                }
            } catch (IllegalArgumentException e) {
                throw new ProgramException(
                        "it said '%s': %s".formatted(shortened(line), e.getMessage()));
            }
        }
        throw new ProgramException(
                "its hello has more than %s lines; expected 'ready' before"
                        .formatted(PipeHello.MOST_LINES));
    }

    private static String shortened(String line) {
        return line.length() <= MOST_LINE_LENGTH
                ? line
                : line.substring(0, MOST_LINE_LENGTH) + "...";
    }

    /** The encoder; only between {@link #beginLife()} and {@link #kill()}. */
    PipeWire wire() {
        PipeWire it = wire;
        if (it == null) {
            throw new IllegalStateException("the program has not said hello");
        }
        return it;
    }

    private Exchange exchange() {
        Exchange it = exchange;
        if (it == null) {
            throw new IllegalStateException("the program has not said hello");
        }
        return it;
    }

    /**
     * Sends what was put together as a question.
     *
     * @param asked tells the question, in case it goes wrong
     */
    void ask(Supplier<String> asked) {
        question = asked;
        messages = 0;
        try {
            exchange().ask();
        } catch (ProgramException e) {
            throw failure(e);
        }
    }

    /** Sends what was put together within the open question. */
    void reply() {
        try {
            exchange().reply();
        } catch (ProgramException e) {
            throw failure(e);
        }
    }

    /** Waits for the next message of the open question. */
    void next(PipeReply into) {
        try {
            wire().next(into);
            messages++;
            if (messages > PipeLimits.MOST_MESSAGES) {
                throw new ProgramException(
                        "it sent more than %s messages before its answer"
                                .formatted(PipeLimits.MOST_MESSAGES));
            }
        } catch (ProgramException e) {
            throw failure(e);
        }
    }

    /** A message that is well formed and out of place. */
    PipeFailure outOfPlace(String what) {
        return failure(new ProgramException(what));
    }

    void countTicks(int more) {
        ticks += more;
    }

    private PipeFailure failure(ProgramException problem) {
        PipeHello met = hello;
        ChildProgram stopped = child;
        List<String> details = new ArrayList<>();
        if (hasLived) {
            details.add("ticks that it was given: " + ticks);
        }
        String asked = question.get();
        if (!asked.isEmpty()) {
            details.add("asked: " + asked);
            String heard = answered();
            // What the first line quotes is an answer too.
            boolean isQuoted = String.valueOf(problem.getMessage()).startsWith("it answered");
            if (!isQuoted || !heard.equals(NOTHING)) {
                details.add("answered: " + heard);
            }
        }
        kill();
        if (stopped != null) {
            errors(stopped, details);
        }
        String name = met == null ? "" : " (" + met.name() + ")";
        return new PipeFailure(
                "the program '%s'%s: %s".formatted(command.text(), name, problem.getMessage()),
                details,
                command.text());
    }

    private String answered() {
        PipeWire it = wire;
        Exchange talk = exchange;
        String rest = it == null || talk == null ? "" : it.unfinished();
        String count = messages == 1 ? "1 message" : messages + " messages";
        if (messages == 0) {
            return rest.isEmpty() ? NOTHING : "'" + rest + "', unfinished";
        }
        return rest.isEmpty() ? count : count + ", then '" + rest + "', unfinished";
    }

    private static void errors(ChildProgram stopped, List<String> details) {
        String text = stopped.errorText();
        if (text == null) {
            details.add("its standard error is empty");
            return;
        }
        List<String> lines = Arrays.asList(text.stripTrailing().split("\n"));
        int from = Math.max(0, lines.size() - MOST_ERROR_LINES);
        details.add("the end of its standard error:");
        for (String line : lines.subList(from, lines.size())) {
            details.add("  " + shortened(line));
        }
    }

    /** How it was started, as the user wrote it. */
    public String commandText() {
        return command.text();
    }

    /** What it calls itself; empty before its first hello. */
    public String name() {
        PipeHello met = hello;
        return met == null ? "" : met.name();
    }

    /** Kills it and all that it started, as a cut of power does. */
    void kill() {
        ChildProgram it = child;
        child = null;
        exchange = null;
        wire = null;
        if (it != null) {
            it.close();
        }
    }

    /**
     * The run is over: the program is told, and has to end as it should.
     *
     * @throws PipeFailure when it does not
     */
    public void end() {
        ChildProgram it = child;
        if (it == null) {
            return;
        }
        try {
            wire().end();
            ask(() -> "end");
            it.finish(command.answerMillis());
        } catch (ProgramException e) {
            throw failure(e);
        }
        kill();
    }

    @Override
    public void close() {
        kill();
    }
}
