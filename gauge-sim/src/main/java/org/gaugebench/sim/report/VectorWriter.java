package org.gaugebench.sim.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.function.Supplier;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.agree.Script;
import org.gaugebench.sim.agree.ScriptReplay;
import org.gaugebench.sim.device.GaugeDevice;
import org.gaugebench.sim.memory.PowerCut;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.jspecify.annotations.Nullable;

/**
 * Writes everything that goes into one gauge, as integers, and every register after it: what a port
 * in another language needs to be tested bit by bit.
 *
 * <p>Three files: the settings at the start, a row for each call of the gauge, and what its memory
 * was asked and answered. A register's cell is empty where the register is as in the row above.
 * Where power goes in the middle of a call, the vectors end before that call: a port cannot be made
 * to stop there by its inputs.
 */
public final class VectorWriter implements Observer, AutoCloseable {
    private static final Register[] REGISTERS = Register.values();

    private final String gauge;
    private final long untilMillis;
    private final FreshFile settingsFile;
    private final FreshFile vectorFile;
    private final FreshFile storeFile;
    private final Registers now = new Registers();
    private final Registers before = new Registers();
    private final StringBuilder line = new StringBuilder(1_024);
    private final StringBuilder memoryLines = new StringBuilder();
    private @Nullable GaugeSettings told;
    private long row;

    /**
     * Opens the files.
     *
     * @param folder an existing one
     * @param gauge the name of the gauge, of the core's kind
     * @param untilMillis the run ends there
     * @throws IOException if one cannot be written
     */
    public VectorWriter(Path folder, String gauge, long untilMillis) throws IOException {
        this.gauge = gauge;
        this.untilMillis = untilMillis;
        settingsFile = new FreshFile(folder.resolve(VectorFormat.SETTINGS));
        vectorFile = new FreshFile(folder.resolve(VectorFormat.VECTORS));
        storeFile = new FreshFile(folder.resolve(VectorFormat.STORE));
        write(settingsFile, VectorFormat.SETTINGS_HEADER);
        write(vectorFile, String.join(",", VectorFormat.columns()));
        write(storeFile, VectorFormat.STORE_HEADER);
    }

    /** Ends the run. */
    private static final class Reached extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Reached() {
            super("reached", null, false, false);
        }
    }

    /**
     * Runs a rig that was built with this observer.
     *
     * @return how many rows were written
     */
    public long run(Rig rig) {
        rig.stopAt(new long[] {untilMillis});
        try {
            rig.run();
        } catch (Reached e) {
            // as meant
        }
        return row;
    }

    @Override
    public void onMoment(Rig rig) {
        if (rig.timeMillis() >= untilMillis) {
            throw new Reached();
        }
    }

    private static void write(FreshFile file, CharSequence text) {
        try {
            file.writer().append(text).append('\n');
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public GaugeDevice watch(Lane lane, GaugeDevice device) {
        return lane.name().equals(gauge) ? record(lane.settings(), device) : device;
    }

    @Override
    public StateStore watch(Lane lane, StateStore store) {
        return lane.name().equals(gauge) ? record(store) : store;
    }

    /** The gauge of a life, with a row for each call; its first settings are written too. */
    private GaugeDevice record(GaugeSettings settings, GaugeDevice device) {
        if (told == null) {
            told = settings;
            for (Setting setting : Setting.values()) {
                write(
                        settingsFile,
                        setting.key() + "," + settings.get(setting) + "," + setting.unit());
            }
        }
        return new Recorded(settings, device);
    }

    /** What settings differ from those that the rows above tell; they are told by this. */
    private String changesTo(GaugeSettings settings) {
        GaugeSettings before = told;
        told = settings;
        return before == null ? "" : VectorFormat.changes(before, settings);
    }

    private StateStore record(StateStore store) {
        return new RecordedStore(store);
    }

    /**
     * Plays a script to the core and writes what comes of it.
     *
     * @return how many rows were written
     */
    public long run(Script script) {
        try {
            ScriptReplay.play(script, this::record, this::record);
        } catch (Reached e) {
            // power went in the middle of a call
        }
        return row;
    }

    /** The gauge, with a row for each call that changes it. */
    private final class Recorded implements GaugeDevice {
        private final GaugeSettings settings;
        private final GaugeDevice device;

        Recorded(GaugeSettings settings, GaugeDevice device) {
            this.settings = settings;
            this.device = device;
        }

        /** Makes a call; where power goes in the middle of it, the vectors end before it. */
        private <T> T call(Supplier<T> made) {
            row++;
            try {
                return made.get();
            } catch (PowerCut cut) {
                row--;
                memoryLines.setLength(0);
                throw new Reached();
            }
        }

        private void call(Runnable made) {
            call(
                    () -> {
                        made.run();
                        return true;
                    });
        }

        @Override
        public void powerUp(long offMillis, OffTime offTime) {
            call(() -> device.powerUp(offMillis, offTime));
            String word = (offTime.name() + " " + changesTo(settings)).strip();
            begin(VectorFormat.POWER_UP, word, offMillis).append(",,,,");
            end();
        }

        @Override
        public void tick(Sample sample) {
            call(() -> device.tick(sample));
            begin(VectorFormat.SAMPLE).append(sample.clockMillis);
            line.append(',').append(sample.shuntCounts);
            line.append(',').append(sample.voltageCounts).append(',');
            if (sample.temperatureMillicelsius != Sample.TEMPERATURE_ABSENT) {
                line.append(sample.temperatureMillicelsius);
            }
            end();
        }

        @Override
        public CommandOutcome changeSettings(GaugeSettings changed) {
            CommandOutcome outcome = call(() -> device.changeSettings(changed));
            begin(VectorFormat.SETTINGS_CHANGE, changesTo(changed)).append(",,,,,");
            end();
            return outcome;
        }

        @Override
        public CommandOutcome command(Command command, long argument) {
            CommandOutcome outcome = call(() -> device.command(command, argument));
            begin(VectorFormat.COMMAND, command.name() + ">" + outcome.name(), argument)
                    .append(",,,,");
            end();
            return outcome;
        }

        @Override
        public void read(Readout readout) {
            device.read(readout);
        }

        @Override
        public void inspect(Registers registers) {
            device.inspect(registers);
        }

        private StringBuilder begin(String kind) {
            line.setLength(0);
            return line.append(row).append(',').append(kind).append(",,,");
        }

        private StringBuilder begin(String kind, String word) {
            line.setLength(0);
            return line.append(row).append(',').append(kind).append(',').append(word);
        }

        private StringBuilder begin(String kind, String word, long argument) {
            return begin(kind, word).append(',').append(argument);
        }

        private void end() {
            device.inspect(now);
            for (Register register : REGISTERS) {
                line.append(',');
                long value = now.get(register);
                if (row == 1 || value != before.get(register)) {
                    line.append(value);
                    before.set(register, value);
                }
            }
            write(vectorFile, line);
            if (!memoryLines.isEmpty()) {
                write(storeFile, memoryLines.deleteCharAt(memoryLines.length() - 1));
                memoryLines.setLength(0);
            }
        }
    }

    /** The memory, with a line for each call. */
    private final class RecordedStore implements StateStore {
        private final StateStore store;

        RecordedStore(StateStore store) {
            this.store = store;
        }

        @Override
        public int slots() {
            return told("slots", 0, store.slots(), "");
        }

        @Override
        public int slotBytes() {
            return told("slot-bytes", 0, store.slotBytes(), "");
        }

        @Override
        public int read(int slot, byte[] destination) {
            int answer = store.read(slot, destination);
            return told("read", slot, answer, HexFormat.of().formatHex(destination));
        }

        @Override
        public int erase(int slot) {
            return told("erase", slot, store.erase(slot), "");
        }

        @Override
        public int program(int slot, byte[] source) {
            String bytes = HexFormat.of().formatHex(source);
            return told("program", slot, store.program(slot, source), bytes);
        }

        private int told(String operation, int slot, int answer, String bytes) {
            memoryLines.append(row).append(',').append(operation).append(',').append(slot);
            memoryLines.append(',').append(answer).append(',').append(bytes).append('\n');
            return answer;
        }
    }

    /**
     * Moves the files into place.
     *
     * @throws IOException if the last bytes or a move fail
     */
    public void keep() throws IOException {
        settingsFile.keep();
        storeFile.keep();
        vectorFile.keep();
    }

    @Override
    public void close() throws IOException {
        try (settingsFile;
                storeFile;
                vectorFile) {
            // closed in any case; what was not kept leaves nothing behind
        }
    }
}
