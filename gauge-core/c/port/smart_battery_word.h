/*
 * Function codes of the Smart Battery Data Specification 1.1 (1998) that the bus view answers, and
 * the masks of its status word.
 */
#ifndef GAUGE_PORT_SMART_BATTERY_WORD_H
#define GAUGE_PORT_SMART_BATTERY_WORD_H

enum smart_battery_word {
    WORD_REMAINING_CAPACITY_ALARM = 0x01,
    WORD_REMAINING_TIME_ALARM = 0x02,
    WORD_BATTERY_MODE = 0x03,
    WORD_AT_RATE = 0x04,
    WORD_AT_RATE_TIME_TO_FULL = 0x05,
    WORD_AT_RATE_TIME_TO_EMPTY = 0x06,
    WORD_AT_RATE_OK = 0x07,
    WORD_TEMPERATURE = 0x08,
    WORD_VOLTAGE = 0x09,
    WORD_CURRENT = 0x0A,
    WORD_AVERAGE_CURRENT = 0x0B,
    WORD_MAX_ERROR = 0x0C,
    WORD_RELATIVE_STATE_OF_CHARGE = 0x0D,
    WORD_ABSOLUTE_STATE_OF_CHARGE = 0x0E,
    WORD_REMAINING_CAPACITY = 0x0F,
    WORD_FULL_CHARGE_CAPACITY = 0x10,
    WORD_RUN_TIME_TO_EMPTY = 0x11,
    WORD_AVERAGE_TIME_TO_EMPTY = 0x12,
    WORD_AVERAGE_TIME_TO_FULL = 0x13,
    WORD_BATTERY_STATUS = 0x16,
    WORD_CYCLE_COUNT = 0x17,
    WORD_DESIGN_CAPACITY = 0x18,
    WORD_DESIGN_VOLTAGE = 0x19,
    WORD_SPECIFICATION_INFO = 0x1A
};

/* All of them lie from the first to the last, but two codes whose answer is no number of ours. */
#define WORD_COUNT 24

static inline int smart_battery_word_at(int place)
{
    int code = place + WORD_REMAINING_CAPACITY_ALARM;
    return code <= WORD_AVERAGE_TIME_TO_FULL
               ? code
               : code + WORD_BATTERY_STATUS - WORD_AVERAGE_TIME_TO_FULL - 1;
}

#define STATUS_TERMINATE_DISCHARGE 0x0800
#define STATUS_REMAINING_CAPACITY 0x0200
#define STATUS_REMAINING_TIME 0x0100
#define STATUS_INITIALIZED 0x0080
#define STATUS_DISCHARGING 0x0040
#define STATUS_FULLY_CHARGED 0x0020
#define STATUS_FULLY_DISCHARGED 0x0010

/* Error codes in the lowest bits: no such function here; cannot be written. */
#define STATUS_UNSUPPORTED_COMMAND 3
#define STATUS_ACCESS_DENIED 4

#endif
