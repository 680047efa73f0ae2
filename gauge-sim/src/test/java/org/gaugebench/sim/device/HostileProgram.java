package org.gaugebench.sim.device;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** A program that does its part for a while, and then does the wrong its first argument names. */
public final class HostileProgram {
    private static final PrintStream OUT = System.out;
    private static final int GOOD_TICKS = 100;

    private HostileProgram() {}

    /** Says hello, answers some ticks, and goes wrong. */
    public static void main(String[] args) throws Exception {
        String wrong = args[0];
        BufferedReader in =
                new BufferedReader(new InputStreamReader(System.in, StandardCharsets.US_ASCII));
        if (wrong.equals("no-hello")) {
            Thread.sleep(600_000);
        }
        OUT.print("hello 1 hostile\nreadout state-of-charge current\n");
        boolean isFramed = wrong.equals("half-a-frame") || wrong.equals("swapped-frame");
        if (isFramed) {
            OUT.print("form frames\n");
        }
        OUT.print("ready\n");
        OUT.flush();
        if (isFramed) {
            while (!in.readLine().equals("ready")) {
                // the bench's hello
            }
            in.read(); // the first frame begins
            byte[] half = {16, 0, 0, 0, 65, 0, 0, 0, 1, 2, 3};
            byte[] swapped = {0, 0, 0, 8, 0, 65, 0, 0, 0, 7, (byte) 0xA1, 32, 0, 0, 0, 0};
            OUT.write(wrong.equals("half-a-frame") ? half : swapped);
            OUT.flush();
            Thread.sleep(600_000);
        }
        int ticks = 0;
        for (String line = in.readLine(); line != null; line = in.readLine()) {
            if (line.startsWith("tick ") && ++ticks == GOOD_TICKS) {
                System.err.println("last words of " + wrong);
                goWrong(wrong);
            } else if (line.startsWith("tick ") || line.startsWith("power ")) {
                OUT.print("readout 500000 0\n");
            } else if (line.startsWith("command ")) {
                OUT.print("outcome done\nreadout 500000 0\n");
            } else if (line.equals("end")) {
                end(wrong);
            }
            OUT.flush();
        }
        Thread.sleep(wrong.equals("does-not-end") ? 600_000 : 0);
    }

    private static void end(String wrong) {
        switch (wrong) {
            case "says-more-at-the-end" -> OUT.print("readout 1 1\n");
            case "ends-badly" -> System.exit(9);
            default -> {
                // as it should
            }
        }
    }

    private static void goWrong(String wrong) throws IOException, InterruptedException {
        switch (wrong) {
            case "silence" -> Thread.sleep(600_000);
            case "dies" -> System.exit(3);
            case "dies-half-way" -> {
                OUT.print("readout 5000");
                OUT.flush();
                System.exit(3);
            }
            case "garbage" -> OUT.print("\u0007\u00ff}{ what\n");
            case "short-line" -> OUT.print("readout 500000\n");
            case "long-line" -> OUT.print("readout 500000 0 0\n");
            case "no-number" -> OUT.print("readout 500000 12a\n");
            case "too-large" -> OUT.print("readout 500000 9223372036854775808\n");
            case "out-of-its-field" -> OUT.print("readout 500000 2147483648\n");
            case "wrong-word" -> OUT.print("registers 1 2\n");
            case "wrong-place" -> OUT.print("@3 event declared 0 0\nreadout 1 1\n");
            case "endless-line" -> flood("7".repeat(1_000));
            case "floods" -> flood("readout 500000 0\n".repeat(100));
            case "endless-events" -> flood("event declared 0 0\n".repeat(100));
            case "answers-early" -> {
                OUT.print("readout 500000 0\nreadout 500000 0\n");
                OUT.flush();
            }
            case "closes-its-output" -> {
                OUT.close();
                Thread.sleep(600_000);
            }
            case "closes-its-input" -> {
                System.in.close();
                OUT.print("readout 500000 0\n");
                OUT.flush();
                Thread.sleep(600_000);
            }
            default -> OUT.print("readout 500000 0\n");
        }
    }

    private static void flood(String text) {
        while (!OUT.checkError()) {
            OUT.print(text);
        }
    }
}
