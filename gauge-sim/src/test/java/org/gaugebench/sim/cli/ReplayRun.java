package org.gaugebench.sim.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine;

/** One run of the command in this JVM, with what it printed. */
final class ReplayRun {
    final int exitCode;
    final String out;
    final String err;

    private ReplayRun(int exitCode, String out, String err) {
        this.exitCode = exitCode;
        this.out = out;
        this.err = err;
    }

    static ReplayRun of(List<String> args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int exitCode =
                new CommandLine(new ReplayCommand())
                        .setOut(new PrintWriter(out))
                        .setErr(new PrintWriter(err))
                        .execute(args.toArray(new String[0]));
        return new ReplayRun(exitCode, out.toString(), err.toString());
    }

    /** A complete command line for a log with a shunt that fits, plus whatever is asked for. */
    static List<String> args(String file, String time, String current, String... more) {
        List<String> args =
                new ArrayList<>(
                        List.of(
                                file,
                                "--time",
                                time,
                                "--current",
                                current,
                                "--shunt",
                                "20 A / 60 mV",
                                "--adc",
                                "20 bit, 100 mV",
                                "--capacity",
                                "60 Ah"));
        args.addAll(List.of(more));
        if (!args.contains("--positive")) {
            args.addAll(List.of("--positive", "charge"));
        }
        return args;
    }

    /** A figure of the JSON object. */
    double number(String name) {
        return Double.parseDouble(text(name));
    }

    /** A value of the JSON object without its quotes. */
    String text(String name) {
        Matcher m = Pattern.compile("\"" + name + "\":\"?([^\",}\n]*)\"?").matcher(out);
        if (!m.find()) {
            throw new AssertionError("no " + name + " in " + out + err);
        }
        return m.group(1);
    }
}
