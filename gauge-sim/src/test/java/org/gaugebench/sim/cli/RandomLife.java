package org.gaugebench.sim.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HexFormat;
import org.gaugebench.core.Gauge;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.EventSink;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.core.settings.ChemistryPreset;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.random.SplitMix64;

/**
 * Vectors of a life that no scenario tells: drawn settings up to their ends, charges, rests and
 * ends of a battery, temperatures at the limits of rules, gaps and clocks that run backwards,
 * commands, changes of settings, restarts, and a memory that fails. What the shelf does not reach
 * is reached here.
 */
final class RandomLife {
    private static final int SLOTS = 3;
    private static final int SLOT_BYTES = 256;
    private static final int MINUTE_MILLIS = 60_000;

    private final SplitMix64 random;
    private final Registers now = new Registers();
    private final Registers before = new Registers();
    private final Sample sample = new Sample();
    private final byte[][] slots = new byte[SLOTS][SLOT_BYTES];
    private final StringBuilder calls = new StringBuilder();
    private GaugeSettings settings;
    private Gauge gauge;
    private PrintWriter rows;
    private long row;
    private int microvolts = 12_600_000;
    private int microamps;
    private int tickMillis = 20_000;
    private int patience = 40;

    private RandomLife(long seed) {
        random = new SplitMix64(seed);
        for (byte[] slot : slots) {
            Arrays.fill(slot, (byte) 0xFF);
        }
    }

    /** Writes the three files of vectors: a life of so many rows. */
    static void write(Path folder, long seed, int rowCount) throws IOException {
        new RandomLife(seed).live(folder, rowCount);
    }

    private void live(Path folder, int rowCount) throws IOException {
        settings = drawn();
        try (PrintWriter file = open(folder, "settings.csv")) {
            file.print("setting,value,unit\n");
            for (Setting setting : Setting.values()) {
                file.print(setting.key() + "," + settings.get(setting) + ",\n");
            }
        }
        try (PrintWriter vectors = open(folder, "vectors.csv")) {
            rows = vectors;
            rows.print("row,kind,word,argument,clock_ms,shunt_counts,voltage_counts,");
            rows.print("temperature_millicelsius");
            for (Register register : Register.values()) {
                rows.print("," + register.name());
            }
            rows.print("\n");
            powerUp();
            while (row < rowCount) {
                next();
            }
        }
        try (PrintWriter file = open(folder, "store.csv")) {
            file.print("row,operation,slot,answer,bytes\n" + calls);
        }
    }

    private static PrintWriter open(Path folder, String name) throws IOException {
        return new PrintWriter(
                Files.newBufferedWriter(folder.resolve(name), StandardCharsets.US_ASCII));
    }

    private int below(int bound) {
        return (int) ((random.nextLong() >>> 1) % bound);
    }

    /** Often an end of the range, else anywhere in it. */
    private long between(long low, long high) {
        return switch (below(4)) {
            case 0 -> low;
            case 1 -> high;
            default -> low + (long) (random.nextDouble() * (high - low));
        };
    }

    /** A preset, with some settings drawn anew where the whole stays valid. */
    private GaugeSettings drawn() {
        ChemistryPreset[] presets = ChemistryPreset.values();
        ChemistryPreset preset = presets[below(presets.length)];
        GaugeSettings.Builder builder = preset.builder(below(3) == 0 ? 24_000 : 12_000);
        builder.set(Setting.QUIET_TIME, below(4)).set(Setting.HOLD, 1 + below(20));
        builder.set(Setting.FLOAT_HOLD, 20 + below(200)).set(Setting.PLATEAU_HOLD, below(30));
        builder.set(Setting.REST_TIME, below(4)).set(Setting.CAPACITY, 20_000 + below(100_000));
        if (below(4) == 0) {
            // The largest of all: products of volts, amps and time come near their ends.
            builder.set(Setting.SHUNT_RATED_CURRENT, 2_000_000)
                    .set(Setting.SHUNT_RATED_DROP, 90_000);
            builder.set(Setting.VOLTAGE_FULL_SCALE, 100_000);
        }
        return disturbed(builder.build(), below(8));
    }

    private GaugeSettings disturbed(GaugeSettings from, int count) {
        GaugeSettings found = from;
        for (int i = 0; i < count; i++) {
            Setting setting = Setting.values()[2 + below(Setting.values().length - 2)];
            long value = between(setting.minimum(), setting.maximum());
            GaugeSettings.Builder builder = found.toBuilder().set(setting, value);
            found = builder.problems().isEmpty() ? builder.build() : found;
        }
        return found;
    }

    private void powerUp() {
        row++;
        gauge = new Gauge(settings, new Recorded(), EventSink.NONE);
        OffTime offTime = OffTime.values()[below(4) == 0 ? 1 + below(2) : 0];
        long offMillis = between(0, 200_000_000_000L);
        gauge.powerUp(offMillis, offTime);
        end("power-up," + offTime + "," + offMillis + ",,,,");
    }

    private void next() {
        if (below(patience) == 0) {
            anotherPhase();
        }
        switch (below(2_000)) {
            case 0 -> powerUp();
            case 1, 2, 3, 4 -> command();
            case 5 -> change();
            default -> tick();
        }
    }

    /** Charge, taper, float, load, end of the battery, rest, or anything. */
    private void anotherPhase() {
        long capacity = settings.get(Setting.CAPACITY);
        long absorption = settings.get(Setting.ABSORPTION) * 1_000;
        long floating = settings.get(Setting.FLOAT_VOLTAGE) * 1_000;
        long taper = capacity * settings.get(Setting.TAPER) / 1_000;
        int phase = below(8);
        long volts =
                switch (phase) {
                    case 0, 1, 2 -> absorption - below(300_000);
                    case 3 -> floating - below(150_000);
                    case 4 -> settings.get(Setting.EMPTY_VOLTAGE) * 1_000 - below(100_000);
                    case 5 ->
                            between(
                                    settings.get(Setting.REST_VOLTAGE_0) * 1_000,
                                    settings.get(Setting.REST_VOLTAGE_100) * 1_000);
                    default -> between(0, 100_000_000);
                };
        long amps =
                switch (phase) {
                    case 0 -> capacity * 300;
                    case 1 -> taper - below(200_000);
                    case 2 -> taper * 3 / 2;
                    case 3, 5 -> below(3) * 100 - 100;
                    case 4 ->
                            -capacity * settings.get(Setting.EMPTY_CURRENT) / 1_000 + below(9_999);
                    case 6 -> -capacity * 200;
                    default -> between(-2_000_000_000, 2_000_000_000);
                };
        microvolts = (int) Math.max(0, Math.min(volts, 100_000_000));
        microamps = (int) Math.max(-2_100_000_000L, Math.min(amps, 2_100_000_000L));
        int[] lengths = {1_000, 5_000, 20_000, MINUTE_MILLIS, 65_535};
        tickMillis = lengths[below(lengths.length)];
        // A rest takes half a day, and has to be long enough for the rest rule.
        boolean resting = phase == 5;
        patience = resting ? 1_200 : 40;
        tickMillis = resting ? MINUTE_MILLIS : tickMillis;
        int[] celsius = {-20_000, 0, 4_999, 5_000, 5_001, 14_999, 15_000, 25_000, 35_000, 85_000};
        sample.temperatureMillicelsius =
                below(4) == 0
                        ? Sample.TEMPERATURE_ABSENT
                        : celsius[resting ? 2 + below(3) : below(celsius.length)];
    }

    private void tick() {
        row++;
        double countsPerAmp =
                (double) (1L << (settings.get(Setting.SHUNT_CONVERTER_BITS) - 1))
                        * settings.get(Setting.SHUNT_RATED_DROP)
                        / settings.get(Setting.SHUNT_FULL_SCALE)
                        / settings.get(Setting.SHUNT_RATED_CURRENT)
                        * 1_000;
        double countsPerVolt =
                (double) (1L << settings.get(Setting.VOLTAGE_CONVERTER_BITS))
                        / settings.get(Setting.VOLTAGE_FULL_SCALE)
                        * 1_000;
        int noise = below(40) == 0 ? below(2_000) : below(3);
        sample.shuntCounts = (int) (microamps / 1e6 * countsPerAmp) + noise;
        sample.voltageCounts = (int) (microvolts / 1e6 * countsPerVolt) + below(2);
        sample.clockMillis +=
                switch (below(1_000)) {
                    case 0 -> 0;
                    case 1 -> -below(100_000);
                    case 2 -> 65_535 + below(3);
                    case 3 -> (int) random.nextLong();
                    case 4 -> MINUTE_MILLIS;
                    default -> tickMillis;
                };
        if (below(3_000) == 0) {
            sample.shuntCounts = (int) random.nextLong();
        }
        gauge.tick(sample);
        String warmth =
                sample.temperatureMillicelsius == Sample.TEMPERATURE_ABSENT
                        ? ""
                        : String.valueOf(sample.temperatureMillicelsius);
        end(
                "sample,,,"
                        + sample.clockMillis
                        + ","
                        + sample.shuntCounts
                        + ","
                        + sample.voltageCounts
                        + ","
                        + warmth);
    }

    private void command() {
        row++;
        Command command = Command.values()[below(Command.values().length)];
        long argument =
                command == Command.SPAN_ADJUSTMENT
                        ? microamps + below(20_000_000) - 10_000_000L
                        : between(-1, 1_000_001);
        String outcome = gauge.command(command, argument).name();
        end("command," + command + ">" + outcome + "," + argument + ",,,,");
    }

    private void change() {
        row++;
        GaugeSettings changed = disturbed(settings, 1 + below(3));
        StringBuilder words = new StringBuilder();
        for (Setting setting : Setting.values()) {
            if (changed.get(setting) != settings.get(setting)) {
                words.append(words.isEmpty() ? "" : " ").append(setting.key());
                words.append('=').append(changed.get(setting));
            }
        }
        settings = changed;
        gauge.changeSettings(settings);
        end("settings," + words + ",,,,,");
    }

    private void end(String inputs) {
        gauge.inspect(now);
        rows.print(row + "," + inputs);
        for (Register register : Register.values()) {
            long value = now.get(register);
            rows.print(row == 1 || value != before.get(register) ? "," + value : ",");
            before.set(register, value);
        }
        rows.print("\n");
    }

    /** A memory that fails now and then, with a line for each call. */
    private final class Recorded implements StateStore {
        private int told(String operation, int slot, int answer, String bytes) {
            calls.append(row).append(',').append(operation).append(',').append(slot);
            calls.append(',').append(answer).append(',').append(bytes).append('\n');
            return answer;
        }

        private int answer() {
            return below(50) == 0 ? FAILED : OK;
        }

        @Override
        public int slots() {
            return told("slots", 0, SLOTS, "");
        }

        @Override
        public int slotBytes() {
            return told("slot-bytes", 0, SLOT_BYTES, "");
        }

        @Override
        public int read(int slot, byte[] destination) {
            System.arraycopy(slots[slot], 0, destination, 0, destination.length);
            if (below(60) == 0) {
                destination[below(destination.length)] ^= 1;
            }
            return told("read", slot, answer(), HexFormat.of().formatHex(destination));
        }

        @Override
        public int erase(int slot) {
            Arrays.fill(slots[slot], (byte) 0xFF);
            return told("erase", slot, answer(), "");
        }

        @Override
        public int program(int slot, byte[] source) {
            System.arraycopy(source, 0, slots[slot], 0, source.length);
            return told("program", slot, answer(), HexFormat.of().formatHex(source));
        }
    }
}
