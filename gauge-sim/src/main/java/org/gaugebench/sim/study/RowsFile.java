package org.gaugebench.sim.study;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.zip.CRC32;
import org.gaugebench.sim.scenario.StudySpec;
import org.gaugebench.sim.units.Texts;

/**
 * Rows of devices in a file, so that several machines can share a study. Text, a device a line, its
 * last line a count and a checksum: a file that was cut off or changed is refused.
 *
 * @param name of the file, for messages
 * @param version of the program that wrote it
 * @param digest of its study
 * @param rows for each case, in the order of the file
 */
public record RowsFile(String name, String version, String digest, List<List<DeviceRow>> rows) {
    private static final String HEAD = "gauge-sim study rows 1";
    private static final String END = "end ";
    private static final String NOTHING = "-";

    /** Figures of a row before its values: case, number, worst, when, minutes not known. */
    private static final int FIXED = 5;

    /**
     * Writes rows.
     *
     * @param rows for each case of the study
     */
    public static void write(Writer out, StudySpec spec, String version, List<List<DeviceRow>> rows)
            throws IOException {
        CRC32 sum = new CRC32();
        line(out, sum, HEAD);
        line(out, sum, "program " + version);
        line(out, sum, "study " + spec.digest());
        int count = 0;
        for (int i = 0; i < rows.size(); i++) {
            for (DeviceRow row : rows.get(i)) {
                line(out, sum, text(i, row));
                count++;
            }
        }
        out.write(end(count, sum) + "\n");
    }

    private static String end(int count, CRC32 sum) {
        return END + count + " " + Long.toHexString(sum.getValue());
    }

    private static void line(Writer out, CRC32 sum, String text) throws IOException {
        String whole = text + "\n";
        sum.update(whole.getBytes(StandardCharsets.UTF_8));
        out.write(whole);
    }

    private static String text(int caseIndex, DeviceRow row) {
        StringBuilder text = new StringBuilder();
        text.append(caseIndex).append(',').append(row.number());
        append(text, row.worst());
        append(text, row.worstAtMillis());
        append(text, row.unknownMinutes());
        for (long step : row.steps()) {
            append(text, step);
        }
        for (long error : row.errors()) {
            append(text, error);
        }
        return text.toString();
    }

    private static void append(StringBuilder text, long value) {
        text.append(',');
        if (value == DeviceRow.NONE) {
            text.append(NOTHING);
        } else {
            text.append(value);
        }
    }

    /**
     * Reads a file that belongs to a study.
     *
     * @throws StudyException if it cannot be read, is damaged, or belongs to another study
     */
    public static RowsFile read(Path file, StudySpec spec) throws StudyException {
        try (BufferedReader in = Files.newBufferedReader(file)) {
            return new Reading(file.toString(), spec).read(in);
        } catch (NoSuchFileException e) {
            throw new StudyException(file + ": there is no such file");
        } catch (IOException e) {
            throw new StudyException(
                    file + ": cannot be read; expected a file that 'study --shard' has written");
        }
    }

    /** One file as it is read. */
    private static final class Reading {
        private final String name;
        private final StudySpec spec;
        private final CRC32 sum = new CRC32();
        private int lineNumber;

        Reading(String name, StudySpec spec) {
            this.name = name;
            this.spec = spec;
        }

        private StudyException refusal(String why) {
            return new StudyException(name + ":" + Math.max(1, lineNumber) + ":1: " + why);
        }

        private String next(BufferedReader in) throws IOException, StudyException {
            String line = in.readLine();
            lineNumber++;
            if (line == null) {
                throw refusal("the file is cut off; expected a last line that begins with 'end'");
            }
            return line;
        }

        private String headed(BufferedReader in, String word) throws IOException, StudyException {
            String line = next(in);
            add(line);
            if (!line.startsWith(word)) {
                throw refusal(
                        "expected '%s', the head of a file that 'study --shard' has written, but"
                                        .formatted(word)
                                + " found '"
                                + Texts.shortened(line)
                                + "'");
            }
            return line.substring(word.length()).strip();
        }

        private void add(String line) {
            sum.update((line + "\n").getBytes(StandardCharsets.UTF_8));
        }

        RowsFile read(BufferedReader in) throws IOException, StudyException {
            headed(in, HEAD);
            String version = headed(in, "program ");
            String digest = headed(in, "study ");
            if (!digest.equals(spec.digest())) {
                throw refusal(
                        "these devices belong to another study: its digest is %s, that of %s is %s"
                                .formatted(Texts.shortened(digest), spec.file(), spec.digest()));
            }
            List<List<DeviceRow>> rows = new ArrayList<>();
            spec.cases().forEach(it -> rows.add(new ArrayList<>()));
            int count = 0;
            String line = next(in);
            while (!line.startsWith(END)) {
                add(line);
                String[] cells = line.split(",", -1);
                int place = place(cells);
                rows.get(place).add(row(cells, place));
                count++;
                line = next(in);
            }
            if (!line.equals(end(count, sum))) {
                throw refusal(
                        "count and checksum do not fit the lines before; the file was damaged or"
                                + " changed, run its shard again");
            }
            if (in.readLine() != null) {
                lineNumber++;
                throw refusal("there is something after the last line");
            }
            return new RowsFile(name, version, digest, rows);
        }

        private int place(String[] cells) throws StudyException {
            long place = number(cells, 0);
            if (place < 0 || place >= spec.cases().size()) {
                throw refusal("there is no case " + place + " in the study");
            }
            return (int) place;
        }

        private long number(String[] cells, int index) throws StudyException {
            String text = index < cells.length ? cells[index] : "";
            if (text.equals(NOTHING)) {
                return DeviceRow.NONE;
            }
            if (!text.matches("-?\\d{1,18}")) {
                throw refusal(
                        "expected a whole number such as -1250 in column %s, but found '%s'"
                                .formatted(index + 1, Texts.shortened(text)));
            }
            return Long.parseLong(text);
        }

        private DeviceRow row(String[] cells, int place) throws StudyException {
            int tolerances = spec.tolerances().size();
            long[] moments = DeviceRun.moments(spec, spec.cases().get(place).durationMillis());
            if (cells.length != FIXED + tolerances + moments.length) {
                throw refusal(
                        "expected %s columns, but found %s"
                                .formatted(FIXED + tolerances + moments.length, cells.length));
            }
            long[] figures = new long[cells.length];
            for (int i = 0; i < figures.length; i++) {
                figures[i] = number(cells, i);
            }
            int errorsAt = FIXED + tolerances;
            return new DeviceRow(
                    (int) figures[1],
                    Arrays.copyOfRange(figures, FIXED, errorsAt),
                    Arrays.copyOfRange(figures, errorsAt, figures.length),
                    figures[2],
                    figures[3],
                    figures[4]);
        }
    }
}
