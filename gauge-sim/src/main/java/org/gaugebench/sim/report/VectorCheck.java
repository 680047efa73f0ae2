package org.gaugebench.sim.report;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.gaugebench.core.Gauge;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.EventSink;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.core.settings.SettingsException;
import org.jspecify.annotations.Nullable;

/**
 * Reads test vectors and holds a fresh core against them, call by call: what a port's own test
 * does, and the proof that the files say all that goes into a gauge.
 */
public final class VectorCheck {
    /** The files that a folder of vectors holds. */
    public static final List<String> FILES =
            List.of(VectorFormat.SETTINGS, VectorFormat.STORE, VectorFormat.VECTORS);

    private static final Register[] REGISTERS = Register.values();

    private final Path folder;
    private final VectorStore store;
    private final Registers expected = new Registers();
    private final Registers found = new Registers();
    private final Sample sample = new Sample();
    private GaugeSettings settings;
    private @Nullable Gauge gauge;
    private long rows;

    private VectorCheck(Path folder) throws VectorException {
        this.folder = folder;
        this.settings = readSettings();
        this.store = VectorStore.read(folder.resolve(VectorFormat.STORE));
    }

    /**
     * Replays the vectors of a folder.
     *
     * @param folder that a {@link VectorWriter} wrote to
     * @return how many rows agree, which is all of them
     * @throws VectorException at the first row that does not agree or cannot be read
     */
    public static long replay(Path folder) throws VectorException {
        return new VectorCheck(folder).run();
    }

    static CsvReader<CsvRecord> open(Path file) throws IOException {
        return CsvReader.builder().ofCsvRecord(file);
    }

    private GaugeSettings readSettings() throws VectorException {
        Path file = folder.resolve(VectorFormat.SETTINGS);
        Map<String, Setting> known = new HashMap<>();
        for (Setting setting : Setting.values()) {
            known.put(setting.key(), setting);
        }
        GaugeSettings.Builder builder = GaugeSettings.builder();
        try (CsvReader<CsvRecord> csv = open(file)) {
            boolean first = true;
            for (CsvRecord line : csv) {
                if (!first) {
                    Setting setting = known.get(line.getField(0));
                    if (setting == null) {
                        throw at(file, line, "there is no setting '" + line.getField(0) + "'");
                    }
                    builder.set(setting, Long.parseLong(line.getField(1)));
                }
                first = false;
            }
            return builder.build();
        } catch (IOException
                | UncheckedIOException
                | CsvParseException
                | NumberFormatException
                | SettingsException e) {
            throw new VectorException(file + ": " + e.getMessage());
        }
    }

    private static VectorException at(Path file, CsvRecord line, String message) {
        return new VectorException(file + ":" + line.getStartingLineNumber() + ": " + message);
    }

    private long run() throws VectorException {
        Path file = folder.resolve(VectorFormat.VECTORS);
        try (CsvReader<CsvRecord> csv = open(file)) {
            boolean first = true;
            for (CsvRecord line : csv) {
                if (first) {
                    checkHeader(file, line);
                } else {
                    row(file, line);
                }
                first = false;
            }
        } catch (IOException | UncheckedIOException | CsvParseException e) {
            throw new VectorException(file + ": " + e.getMessage());
        }
        if (!store.isUsedUp()) {
            throw new VectorException(
                    "%s: the memory was asked less than the file says".formatted(folder));
        }
        return rows;
    }

    private static void checkHeader(Path file, CsvRecord line) throws VectorException {
        if (!line.getFields().equals(VectorFormat.columns())) {
            throw at(file, line, "the columns are not those of this version of the core");
        }
    }

    private void row(Path file, CsvRecord line) throws VectorException {
        rows++;
        try {
            String refused = feed(line);
            if (!refused.isEmpty()) {
                throw at(file, line, refused);
            }
            if (!store.trouble().isEmpty()) {
                throw at(file, line, store.trouble());
            }
            check(file, line);
        } catch (IllegalArgumentException e) {
            throw at(file, line, "cannot be read: " + e.getMessage());
        }
    }

    /** Feeds one row's input; answers what does not agree, or an empty text. */
    private String feed(CsvRecord line) {
        String word = line.getField(2);
        if (line.getField(1).equals(VectorFormat.POWER_UP)) {
            // Settings that changed while there was no power stand behind the first word.
            int space = word.indexOf(' ');
            if (space >= 0) {
                settings = VectorFormat.changed(word.substring(space + 1), settings);
                word = word.substring(0, space);
            }
            gauge = new Gauge(settings, store, EventSink.NONE);
            gauge.powerUp(Long.parseLong(line.getField(3)), OffTime.valueOf(word));
            return "";
        }
        Gauge running = gauge;
        if (running == null) {
            return "the first row has to be a " + VectorFormat.POWER_UP;
        }
        switch (line.getField(1)) {
            case VectorFormat.SAMPLE -> {
                sample.clockMillis = Integer.parseInt(line.getField(4));
                sample.shuntCounts = Integer.parseInt(line.getField(5));
                sample.voltageCounts = Integer.parseInt(line.getField(6));
                String warmth = line.getField(7);
                sample.temperatureMillicelsius =
                        warmth.isEmpty() ? Sample.TEMPERATURE_ABSENT : Integer.parseInt(warmth);
                running.tick(sample);
            }
            case VectorFormat.COMMAND -> {
                int cut = word.indexOf('>');
                Command command = Command.valueOf(word.substring(0, Math.max(cut, 0)));
                String answer = running.command(command, Long.parseLong(line.getField(3))).name();
                if (!answer.equals(word.substring(cut + 1))) {
                    return "the gauge answers " + answer;
                }
            }
            case VectorFormat.SETTINGS_CHANGE -> {
                settings = VectorFormat.changed(word, settings);
                running.changeSettings(settings);
            }
            default -> {
                return "there is no kind of row '" + line.getField(1) + "'";
            }
        }
        return "";
    }

    private void check(Path file, CsvRecord line) throws VectorException {
        Gauge running = gauge;
        if (running == null) {
            return;
        }
        running.inspect(found);
        for (Register register : REGISTERS) {
            String cell = line.getField(VectorFormat.REGISTERS_FROM + register.ordinal());
            if (!cell.isEmpty()) {
                expected.set(register, Long.parseLong(cell));
            }
            if (found.get(register) != expected.get(register)) {
                throw at(
                        file,
                        line,
                        "%s is %s, expected %s"
                                .formatted(
                                        register.name(),
                                        found.get(register),
                                        expected.get(register)));
            }
        }
    }
}
