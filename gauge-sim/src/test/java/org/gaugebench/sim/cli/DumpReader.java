package org.gaugebench.sim.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.math.BigInteger;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;

/**
 * A strict reader of value change dumps (IEEE 1364-2005, clause 18): anything that the standard
 * does not allow, and any change that changes nothing, is refused.
 */
final class DumpReader {
    /** Figures by name with dots between scopes, at the time last read; null is unknown. */
    final Map<String, Long> now = new TreeMap<>();

    /** Names of the entries of the header, in order of their first appearance. */
    final Set<String> header = new LinkedHashSet<>();

    private final Map<String, String> names = new HashMap<>();
    private final Map<String, Integer> widths = new LinkedHashMap<>();
    private final Set<String> set = new HashSet<>();
    private final BufferedReader lines;
    private String line;
    private long millis = -1;

    DumpReader(Path file) throws IOException {
        lines = Files.newBufferedReader(file);
        readHeader();
    }

    private void readHeader() throws IOException {
        ArrayDeque<String> scopes = new ArrayDeque<>();
        Set<String> paths = new HashSet<>();
        while (true) {
            line = lines.readLine();
            String[] words = line.split(" ", -1);
            check(words[words.length - 1].equals("$end"));
            header.add(words[0]);
            switch (words[0]) {
                case "$version", "$comment" -> check(line.indexOf("$end") == line.length() - 4);
                case "$timescale" -> check(line.equals("$timescale 1 ms $end"));
                case "$scope" -> {
                    check(words.length == 4 && words[1].equals("module"));
                    check(words[2].matches("[A-Za-z_][A-Za-z0-9_]*"));
                    scopes.addLast(words[2]);
                }
                case "$upscope" -> scopes.removeLast();
                case "$var" -> {
                    check(words.length == 6);
                    int width = Integer.parseInt(words[2]);
                    check(words[1].equals(width == 1 ? "wire" : "integer"));
                    check(words[3].matches("[!-~]{1,2}"));
                    check(words[4].matches("[A-Za-z_][A-Za-z0-9_]*"));
                    String path = String.join(".", scopes) + "." + words[4];
                    check(paths.add(path));
                    check(names.put(words[3], path) == null);
                    widths.put(words[3], width);
                }
                case "$enddefinitions" -> {
                    check(scopes.isEmpty());
                    line = lines.readLine();
                    check(line.equals("#0"));
                    return;
                }
                default -> check(false);
            }
        }
    }

    /** Reads the changes of one time; false at the end of the file. */
    boolean next() throws IOException {
        if (line == null) {
            return false;
        }
        check(line.matches("#[0-9]+"));
        long time = Long.parseLong(line.substring(1));
        check(time > millis);
        millis = time;
        boolean first = time == 0;
        if (first) {
            check(lines.readLine().equals("$dumpvars"));
        }
        set.clear();
        while ((line = lines.readLine()) != null && !line.startsWith("#")) {
            if (first && line.equals("$end")) {
                first = false;
                check(set.equals(names.keySet()));
                set.clear();
                continue;
            }
            change(first);
        }
        check(!first);
        return true;
    }

    private void change(boolean first) {
        boolean vector = line.charAt(0) == 'b';
        int space = line.indexOf(' ');
        check(vector == space > 0);
        String code = line.substring(vector ? space + 1 : 1);
        String bits = vector ? line.substring(1, space) : line.substring(0, 1);
        check(names.containsKey(code));
        int width = widths.get(code);
        check(vector == width > 1 && bits.length() <= width && bits.matches("[01]+|x"));
        check(set.add(code));
        Long value = null;
        if (!bits.equals("x")) {
            BigInteger figure = new BigInteger(bits, 2);
            boolean negative = width > 1 && bits.length() == width && bits.charAt(0) == '1';
            figure = negative ? figure.subtract(BigInteger.ONE.shiftLeft(width)) : figure;
            value = figure.longValueExact();
        }
        String name = names.get(code);
        check(first || !Objects.equals(now.get(name), value));
        now.put(name, value);
    }

    long millis() {
        return millis;
    }

    /** The time that comes next, or -1. */
    long ahead() {
        return line == null ? -1 : Long.parseLong(line.substring(1));
    }

    private void check(boolean good) {
        if (!good) {
            throw new IllegalStateException(
                    "not a value change dump, after " + millis + " ms: " + line);
        }
    }
}
