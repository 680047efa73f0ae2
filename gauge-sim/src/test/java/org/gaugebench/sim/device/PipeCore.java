package org.gaugebench.sim.device;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import org.gaugebench.core.Gauge;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * The core of this project behind the pipe, as a program of its own: what it answers must be what
 * the core answers in the bench's own process. Written from the page, with none of the bench's
 * classes for the pipe except its tables of names and fields.
 *
 * <p>Arguments: further lines of the hello, such as "form frames".
 */
public class PipeCore {
    private final InputStream in = new BufferedInputStream(System.in, 1 << 16);
    private final OutputStream out = new BufferedOutputStream(System.out, 1 << 16);
    private final boolean frames;
    private final boolean each;
    private final Readout readout = new Readout();
    private final Readout atEvent = new Readout();
    private final Registers registers = new Registers();
    private final Store store = new Store();
    private final long[] told = new long[Setting.values().length];
    private Gauge gauge;
    private int slots;
    private int slotBytes;
    private int place;
    private boolean digests;
    private boolean buses;
    private long digest = Registers.DIGEST_START;

    PipeCore(List<String> hello) {
        frames = hello.contains("form frames");
        each = hello.contains("answer each");
    }

    public static void main(String[] args) throws IOException {
        new PipeCore(Arrays.asList(args)).run(args);
    }

    /** Says hello with these lines, and lives until it is told to end. */
    void run(String... args) throws IOException {
        hello(args);
        live();
    }

    /** A sample is about to be taken; a core with a planted fault changes it. */
    void meet(Sample sample) {}

    /** Folds the registers if a digest was asked for. */
    private void fold() {
        if (digests) {
            gauge.inspect(registers);
            digest = digested(registers.fold(digest));
        }
    }

    private void hello(String[] args) throws IOException {
        for (String line = line(); !line.equals("ready"); line = line()) {
            String[] words = line.split(" ", -1);
            if (words[0].equals("store")) {
                slots = Integer.parseInt(words[1]);
                slotBytes = Integer.parseInt(words[2]);
            }
            digests |= words[0].equals("digest");
            buses |= words[0].equals("bus");
        }
        print(PipeCoreWords.hello(digests, buses, args));
        out.flush();
    }

    private void live() throws IOException {
        boolean goesOn = true;
        while (goesOn) {
            try {
                goesOn = frames ? answerFrame() : answerLine();
            } catch (PipeCoreWords.Cut cut) {
                gauge = null;
            }
        }
    }

    private boolean answerLine() throws IOException {
        String[] words = line().split(" ", -1);
        switch (words[0]) {
            case "set" -> {
                for (Setting setting : Setting.values()) {
                    if (setting.key().equals(words[1])) {
                        told[setting.ordinal()] = Long.parseLong(words[2]);
                    }
                }
                return true;
            }
            case "power" ->
                    power(
                            PipeCoreWords.constant(OffTime.values(), words[1]),
                            Long.parseLong(words[2]));
            case "tick" -> ticks(List.of(PipeCoreWords.sample(words)));
            case "ticks" -> {
                List<Sample> batch = new ArrayList<>();
                for (int i = Integer.parseInt(words[1]); i > 0; i--) {
                    batch.add(PipeCoreWords.sample(line().split(" ", -1)));
                }
                ticks(batch);
            }
            case "command" ->
                    outcome(
                            gauge.command(
                                    PipeCoreWords.constant(Command.values(), words[1]),
                                    Long.parseLong(words[2])));
            case "change" -> change();
            case "registers" -> registers();
            case "end" -> {
                return false;
            }
            default -> throw new IllegalStateException("asked " + words[0]);
        }
        out.flush();
        return true;
    }

    private boolean answerFrame() throws IOException {
        int length = (int) number(4);
        int kind = (int) number(2);
        number(2);
        switch (kind) {
            case 1 -> {
                for (int i = 0; i < length / 16; i++) {
                    int setting = (int) number(8);
                    told[setting] = number(8);
                }
                return true;
            }
            case 2 -> {
                OffTime known = OffTime.values()[(int) number(8)];
                power(known, number(8));
            }
            case 3 -> {
                List<Sample> batch = new ArrayList<>();
                for (int i = 0; i < length / 16; i++) {
                    Sample sample = new Sample();
                    sample.shuntCounts = (int) number(4);
                    sample.voltageCounts = (int) number(4);
                    sample.temperatureMillicelsius = (int) number(4);
                    sample.clockMillis = (int) number(4);
                    batch.add(sample);
                }
                ticks(batch);
            }
            case 4 -> {
                Command command = Command.values()[(int) number(8)];
                outcome(gauge.command(command, number(8)));
            }
            case 5 -> change();
            case 6 -> registers();
            case 9 -> {
                return false;
            }
            default -> throw new IllegalStateException("asked a frame of kind " + kind);
        }
        out.flush();
        return true;
    }

    private void power(OffTime known, long millis) throws IOException {
        place = 0;
        gauge = new Gauge(settings(), store, this::announce);
        gauge.powerUp(millis, known);
        fold();
        readout();
    }

    private GaugeSettings settings() {
        GaugeSettings.Builder builder = GaugeSettings.builder();
        for (Setting setting : Setting.values()) {
            builder.set(setting, told[setting.ordinal()]);
        }
        return builder.build();
    }

    private void ticks(List<Sample> batch) throws IOException {
        for (place = 0; place < batch.size(); place++) {
            meet(batch.get(place));
            gauge.tick(batch.get(place));
            fold();
            if (each) {
                readout();
            }
        }
        place = 0;
        if (!each) {
            readout();
        }
    }

    private void change() throws IOException {
        gauge.changeSettings(settings());
        outcome(CommandOutcome.DONE);
    }

    private void outcome(CommandOutcome outcome) throws IOException {
        fold();
        if (frames) {
            head(8, 66);
            put(outcome.ordinal(), 8);
        } else {
            print("outcome " + PipeNames.of(outcome) + "\n");
        }
        readout();
    }

    private void readout() throws IOException {
        gauge.read(readout);
        if (frames) {
            head(8 * ReadoutField.values().length, 65);
            values(readout);
        } else {
            print("readout" + PipeCoreWords.words(readout) + "\n");
        }
    }

    private void values(Readout of) throws IOException {
        for (ReadoutField field : ReadoutField.values()) {
            put(field.get(of), 8);
        }
    }

    private void registers() throws IOException {
        gauge.inspect(registers);
        long[] all = PipeCoreWords.figures(registers, digests, digest, buses, this::busWord);
        if (!frames) {
            print(PipeCoreWords.words("registers", all));
            return;
        }
        head(8 * all.length, 68);
        for (long figure : all) {
            put(figure, 8);
        }
    }

    /** The digest after a call; a planted fault changes it. */
    long digested(long folded) {
        return folded;
    }

    /** A word of the bus view; a core with a planted fault changes one. */
    int busWord(int code) {
        return gauge.readBus(code);
    }

    private void announce(Event event, long uptimeMillis, long value) {
        gauge.read(atEvent);
        try {
            if (frames) {
                head(24 + 8 * ReadoutField.values().length, 67);
                put(event.ordinal(), 8);
                put(uptimeMillis, 8);
                put(value, 8);
                values(atEvent);
            } else {
                print(mark() + "event " + PipeNames.of(event) + " " + uptimeMillis + " " + value);
                print(PipeCoreWords.words(atEvent) + "\n");
            }
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private String mark() {
        return place == 0 || each ? "" : "@" + place + " ";
    }

    private final class Store implements StateStore {
        @Override
        public int slots() {
            return slots;
        }

        @Override
        public int slotBytes() {
            return slotBytes;
        }

        @Override
        public int read(int slot, byte[] destination) {
            return request("read", 69, slot, destination, true);
        }

        @Override
        public int erase(int slot) {
            return request("erase", 70, slot, new byte[0], false);
        }

        @Override
        public int program(int slot, byte[] source) {
            return request("program", 71, slot, source, false);
        }
    }

    private int request(String word, int kind, int slot, byte[] bytes, boolean reads) {
        try {
            if (frames) {
                head(kind == 69 ? 8 : 4 + bytes.length, kind);
                put(slot, 4);
                if (reads) {
                    put(bytes.length, 4);
                } else {
                    out.write(bytes);
                }
                out.flush();
                return stored(bytes, reads);
            }
            String more = reads ? " " + bytes.length : " " + HexFormat.of().formatHex(bytes);
            print(mark() + word + " " + slot + (word.equals("erase") ? "" : more) + "\n");
            out.flush();
            String[] words = line().split(" ", -1);
            if (words[0].equals("cut")) {
                throw new PipeCoreWords.Cut();
            }
            if (words[0].equals("ok") && reads) {
                byte[] read = HexFormat.of().parseHex(words[1]);
                System.arraycopy(read, 0, bytes, 0, bytes.length);
            }
            return words[0].equals("ok") ? StateStore.OK : StateStore.FAILED;
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private int stored(byte[] bytes, boolean reads) throws IOException {
        int length = (int) number(4);
        int kind = (int) number(2);
        number(2);
        if (kind == 8) {
            throw new PipeCoreWords.Cut();
        }
        int code = (int) number(4);
        if (reads && length > 4) {
            in.readNBytes(bytes, 0, bytes.length);
        }
        return code;
    }

    private void head(int length, int kind) throws IOException {
        put(length, 4);
        put(kind, 2);
        put(kind == 67 || kind >= 69 ? place : 0, 2);
    }

    private void put(long value, int bytes) throws IOException {
        for (int i = 0; i < bytes; i++) {
            out.write((int) (value >> (8 * i)));
        }
    }

    private long number(int bytes) throws IOException {
        long value = 0;
        for (int i = 0; i < bytes; i++) {
            int next = in.read();
            if (next < 0) {
                throw new IllegalStateException("the bench is gone");
            }
            value |= (long) next << (8 * i);
        }
        return value;
    }

    private String line() throws IOException {
        StringBuilder text = new StringBuilder();
        for (int next = in.read(); next != '\n'; next = in.read()) {
            if (next < 0) {
                throw new IllegalStateException("the bench is gone");
            }
            text.append((char) next);
        }
        return text.toString();
    }

    private void print(String text) throws IOException {
        out.write(text.getBytes(StandardCharsets.US_ASCII));
    }
}
