package org.gaugebench.core.port;

/**
 * Function codes of the Smart Battery Data Specification 1.1 (1998) that the bus view answers, and
 * the masks of its status word.
 */
public final class SmartBatteryWord {
    /** Threshold of the capacity alarm, mAh. */
    public static final int REMAINING_CAPACITY_ALARM_CODE = 0x01;

    /** Threshold of the time alarm, minutes. */
    public static final int REMAINING_TIME_ALARM_CODE = 0x02;

    /** Mode; always zero here: milliamps and milliampere-hours. */
    public static final int BATTERY_MODE_CODE = 0x03;

    /** The rate that the host asks about, mA, positive for charge. */
    public static final int AT_RATE_CODE = 0x04;

    /** Minutes to full at that rate. */
    public static final int AT_RATE_TIME_TO_FULL_CODE = 0x05;

    /** Minutes to empty at that rate. */
    public static final int AT_RATE_TIME_TO_EMPTY_CODE = 0x06;

    /** Whether that rate can be had in addition for 10 s. */
    public static final int AT_RATE_OK_CODE = 0x07;

    /** Temperature, 0.1 K. */
    public static final int TEMPERATURE_CODE = 0x08;

    /** Voltage, mV. */
    public static final int VOLTAGE_CODE = 0x09;

    /** Current of the last sample, mA. */
    public static final int CURRENT_CODE = 0x0A;

    /** Mean current of one minute, mA. */
    public static final int AVERAGE_CURRENT_CODE = 0x0B;

    /** How much more than the reported charge there may be, percent. */
    public static final int MAX_ERROR_CODE = 0x0C;

    /** Charge in percent of the full-charge capacity, a lower bound. */
    public static final int RELATIVE_STATE_OF_CHARGE_CODE = 0x0D;

    /** Charge in percent of the design capacity, a lower bound. */
    public static final int ABSOLUTE_STATE_OF_CHARGE_CODE = 0x0E;

    /** Remaining charge, mAh, a lower bound. */
    public static final int REMAINING_CAPACITY_CODE = 0x0F;

    /** Full-charge capacity, mAh. */
    public static final int FULL_CHARGE_CAPACITY_CODE = 0x10;

    /** Minutes to empty at the current of the last sample. */
    public static final int RUN_TIME_TO_EMPTY_CODE = 0x11;

    /** Minutes to empty at the mean current of one minute. */
    public static final int AVERAGE_TIME_TO_EMPTY_CODE = 0x12;

    /** Minutes to full at the mean current of one minute. */
    public static final int AVERAGE_TIME_TO_FULL_CODE = 0x13;

    /** Status bits and error code. */
    public static final int BATTERY_STATUS_CODE = 0x16;

    /** Cycles. */
    public static final int CYCLE_COUNT_CODE = 0x17;

    /** Design capacity, mAh. */
    public static final int DESIGN_CAPACITY_CODE = 0x18;

    /** Design voltage, mV. */
    public static final int DESIGN_VOLTAGE_CODE = 0x19;

    /** Version and scale of the words. */
    public static final int SPECIFICATION_INFO_CODE = 0x1A;

    /** Status: nothing is left at this rate. */
    public static final int TERMINATE_DISCHARGE_MASK = 0x0800;

    /** Status: remaining charge is below the capacity alarm. */
    public static final int REMAINING_CAPACITY_MASK = 0x0200;

    /** Status: the average time to empty is below the time alarm. */
    public static final int REMAINING_TIME_MASK = 0x0100;

    /** Status: the charge is known. */
    public static final int INITIALIZED_MASK = 0x0080;

    /** Status: not being charged, also at rest. */
    public static final int DISCHARGING_MASK = 0x0040;

    /** Status: full is proven. */
    public static final int FULLY_CHARGED_MASK = 0x0020;

    /** Status: was empty and has not reached 20 % since. */
    public static final int FULLY_DISCHARGED_MASK = 0x0010;

    /** Error code: no such function here. */
    public static final int UNSUPPORTED_COMMAND_CODE = 3;

    /** Error code: the function cannot be written. */
    public static final int ACCESS_DENIED_CODE = 4;

    private SmartBatteryWord() {}
}
