package org.gaugebench.sim.cli;

import java.util.Locale;

/**
 * An invented log of the hut's gauge: a row a minute for two days. A logger and a pump all day, a
 * lamp in the evening, a panel by day. The unit was without rows from 26 h to 29 h, and without
 * power from 44 h until 44 h 20 min; from then on it showed 100 %.
 */
final class HutLog {
    static final int ROWS = 2_881 - 179 - 20;
    private static final int GAP_FROM = 26 * 60;
    private static final int GAP_TO = 29 * 60;
    private static final int OFF_FROM = 44 * 60;
    private static final int OFF_TO = 44 * 60 + 20;

    private HutLog() {}

    /** Microamps into the battery over the minute that ends at a row. */
    static long microamps(int minute) {
        int ofDay = minute % 1_440;
        long microamps = -120_000;
        microamps -= minute % 50 < 4 ? 3_900_000 : 0;
        microamps -= ofDay > 18 * 60 && ofDay <= 23 * 60 ? 1_400_000 : 0;
        boolean sun = ofDay > 7 * 60 && ofDay < 17 * 60;
        return microamps + (sun ? 2_300_000 - 4_000L * Math.abs(ofDay - 12 * 60) : 0);
    }

    static boolean hasRow(int minute) {
        boolean gap = minute > GAP_FROM && minute < GAP_TO;
        return !gap && !(minute > OFF_FROM && minute <= OFF_TO);
    }

    /** With all columns; {@code sign} -1 writes what flows out as positive. */
    static String csv(int sign) {
        StringBuilder text =
                new StringBuilder("time_s,current_A,voltage_V,count_Ah,shown_percent,uptime_s\n");
        double count = 0;
        for (int minute = 0; minute <= 2 * 1_440; minute++) {
            double amps = microamps(minute) / 1e6;
            count += minute == 0 ? 0 : amps / 60;
            if (!hasRow(minute)) {
                continue;
            }
            boolean restarted = minute > OFF_TO;
            text.append(
                    String.format(
                            Locale.ROOT,
                            "%d,%.6f,%.3f,%.6f,%s,%d\n",
                            minute * 60,
                            sign * amps,
                            12.5 + 0.05 * amps + 0.01 * count,
                            sign * count,
                            restarted ? "100" : minute % 5 == 2 ? "" : "70",
                            (restarted ? minute - OFF_TO : minute + 5_000) * 60));
        }
        return text.toString();
    }
}
