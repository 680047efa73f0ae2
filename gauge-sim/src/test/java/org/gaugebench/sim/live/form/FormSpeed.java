package org.gaugebench.sim.live.form;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * How long one question of "my system" takes: {@code FormSpeed QUESTION}, at the desk where the
 * page hands it in. Cold is the first question of a program that has just started, warm the median
 * of those after it. Processor time is that of the whole program, its compiler and its collector
 * with it.
 */
public final class FormSpeed {
    /** What somebody waits at most, whoever asks first too; on an idle machine. */
    private static final double MOST_SECONDS = 2;

    /** An odd number, so that the median is one of them. */
    private static final int WARM_ROUNDS = 9;

    private static final String FORM =
            """
            "my-system":1,"voltage":"12 V","chemistry":"lead-acid-agm","capacity":"180",
            "loads":[{"name":"recorder","unit":"amps","amount":"0.35","hours":"24"},
             {"name":"lamp","unit":"amps","amount":"1.2","hours":"4"},
             {"name":"pump","amount":"60","hours":"0.5","surge":"240"},
             {"name":"kettle","amount":"800","hours":"10 min","inverter":"yes"},
             {"name":"","unit":"phone","amount":"2"}],
            "chargers":[{"source":"sun","amps":"15","volts":"14.4"},
             {"source":"mains","amps":"20","volts":"14.4"}],
            "sets-full":"volts-and-current","own-current":"12","zero-error":"5","coldest":"2"
            """;

    private FormSpeed() {}

    /** What is added to the form for a question; its name is the question's up to a hyphen. */
    private static String more(String question) {
        return switch (question) {
            case "symptom-seen" -> ",\"seen\":\"below-100-when-charged\"";
            case "symptom-notes" -> ",\"notes\":" + notes();
            case "changed" -> ",\"changed\":\"winter\"";
            default -> "";
        };
    }

    /** As many as the form takes: two a day for two months, full every fifth. */
    private static String notes() {
        return IntStream.range(0, 120)
                .mapToObj(
                        it ->
                                "{\"time\":\"%d\",\"shown\":\"%d\",\"ah\":\"%d\",\"word\":\"%s\"}"
                                        .formatted(
                                                it * 12,
                                                100 - it % 5 * 7 - it % 3,
                                                180 - it % 5 * 12,
                                                it % 5 == 0 ? "charger-finished" : ""))
                .collect(Collectors.joining(",", "[", "]"));
    }

    private static String ask(SystemDesk desk, String question) throws FormRefusal {
        String system = "\"system\":{" + FORM.replace("\n", "") + more(question) + "}";
        if (question.equals("sheet")) {
            return desk.sheet(bytes("{" + system + "}"));
        }
        String key = question.replaceFirst("-.*", "");
        String answer = desk.answer(bytes("{\"question\":\"" + key + "\"," + system + "}"));
        if (!answer.startsWith("{\"answer\":")) {
            throw new IllegalStateException("no answer was timed, but " + answer);
        }
        return answer;
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /**
     * Prints a line: cold and warm, by the wall and in processor time.
     *
     * @param args the question: size, month, audit, symptom-seen, symptom-notes, changed or sheet
     * @throws FormRefusal if there is no such question
     */
    public static void main(String[] args) throws FormRefusal {
        OperatingSystemMXBean machine =
                (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
        SystemDesk desk = new SystemDesk();
        double[] wall = new double[1 + WARM_ROUNDS];
        double[] processor = new double[1 + WARM_ROUNDS];
        String first = "";
        for (int i = 0; i < wall.length; i++) {
            long start = System.nanoTime();
            long used = machine.getProcessCpuTime();
            String answer = ask(desk, args[0]);
            wall[i] = (System.nanoTime() - start) / 1e9;
            processor[i] = (machine.getProcessCpuTime() - used) / 1e9;
            first = i == 0 ? answer : first;
            if (!answer.equals(first)) {
                throw new IllegalStateException("the same question has two answers");
            }
        }
        System.out.printf(
                Locale.ROOT,
                "| %-13s | %10.2f | %15.2f | %10.2f | %15.2f |%n",
                args[0],
                wall[0],
                processor[0],
                median(wall),
                median(processor));
        if (wall[0] > MOST_SECONDS) {
            System.err.println(args[0] + " takes more than two seconds");
            System.exit(1);
        }
    }

    private static double median(double[] all) {
        double[] warm = Arrays.copyOfRange(all, 1, all.length);
        Arrays.sort(warm);
        return warm[warm.length / 2];
    }
}
