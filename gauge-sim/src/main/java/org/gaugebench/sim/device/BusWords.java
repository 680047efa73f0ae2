package org.gaugebench.sim.device;

import org.gaugebench.core.port.SmartBatteryWord;

/**
 * The words of the bus view that a program may tell behind its registers: every function code that
 * the core answers, {@code 0x01} to {@code 0x13} and {@code 0x16} to {@code 0x1a}, in this order.
 */
public final class BusWords {
    private static final int FIRST_GAP_CODE = 0x14;
    private static final int LAST_GAP_CODE = 0x15;

    /** How many there are. */
    public static final int COUNT =
            SmartBatteryWord.SPECIFICATION_INFO_CODE - (LAST_GAP_CODE - FIRST_GAP_CODE + 1);

    private BusWords() {}

    /** The function code of a word, by its place from 0. */
    public static int code(int place) {
        int code = place + SmartBatteryWord.REMAINING_CAPACITY_ALARM_CODE;
        return code < FIRST_GAP_CODE ? code : code + LAST_GAP_CODE - FIRST_GAP_CODE + 1;
    }

    /** What reports call it, such as {@code bus-word-0x0d}. */
    public static String name(int place) {
        return "bus-word-0x%02x".formatted(code(place));
    }
}
