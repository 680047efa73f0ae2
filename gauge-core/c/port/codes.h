/*
 * Codes that pass between a gauge and the outside, by ordinal, in the order of the enums of the
 * Java package port. Each list is written once: the enum is made from it here, its names where a
 * hosted program prints them (hosted/names.c).
 */
#ifndef GAUGE_PORT_CODES_H
#define GAUGE_PORT_CODES_H

/* What may be asked of a running gauge, each with one integer argument. */
#define COMMAND_LIST(C) \
    C(COMMAND, DECLARE_STATE_OF_CHARGE) \
    C(COMMAND, ZERO_ADJUSTMENT) \
    C(COMMAND, SPAN_ADJUSTMENT) \
    C(COMMAND, NEW_BATTERY) \
    C(COMMAND, FORGET_MEASURED)

/* The one-word answer to a command. */
#define COMMAND_OUTCOME_LIST(C) \
    C(OUTCOME, DONE) \
    C(OUTCOME, REFUSED_OUT_OF_RANGE) \
    C(OUTCOME, REFUSED_NO_MINUTE) \
    C(OUTCOME, REFUSED_NOT_ZERO) \
    C(OUTCOME, REFUSED_UNSTABLE) \
    C(OUTCOME, FIRST_POINT_TAKEN) \
    C(OUTCOME, REFUSED_POINTS_TOO_CLOSE) \
    C(OUTCOME, REFUSED_TOO_LARGE) \
    C(OUTCOME, REFUSED_NOT_OFFERED)

/* How well the time without power is known at power-up. */
#define OFF_TIME_LIST(C) C(OFF_TIME, EXACT) C(OFF_TIME, AT_LEAST) C(OFF_TIME, UNKNOWN)

/* How far the state of charge may be believed; saved by ordinal, so the order is for ever. */
#define TRUST_LIST(C) C(TRUST, UNKNOWN) C(TRUST, DECLARED) C(TRUST, PROVEN)

/* The strongest reason to believe it, or not to. */
#define TRUST_REASON_LIST(C) \
    C(TRUST_REASON, NOTHING_KNOWN) \
    C(TRUST_REASON, SENSOR_SUSPECT) \
    C(TRUST_REASON, BAND_UNKNOWN) \
    C(TRUST_REASON, SCALE_SUSPECT) \
    C(TRUST_REASON, FULL_OVERDUE) \
    C(TRUST_REASON, DECLARED_ONLY) \
    C(TRUST_REASON, NO_OBJECTION)

/* What kind of answer the hours are. */
#define ESTIMATE_STATE_LIST(C) \
    C(ESTIMATE_STATE, NO_ESTIMATE) \
    C(ESTIMATE_STATE, ESTIMATE) \
    C(ESTIMATE_STATE, MORE_THAN) \
    C(ESTIMATE_STATE, CHARGING)

/* What kind of answer the time to full is. */
#define FULL_TIME_STATE_LIST(C) \
    C(FULL_TIME_STATE, NO_ESTIMATE) \
    C(FULL_TIME_STATE, NOT_CHARGING) \
    C(FULL_TIME_STATE, UNSTEADY) \
    C(FULL_TIME_STATE, NOT_BEFORE) \
    C(FULL_TIME_STATE, ESTIMATE)

/* Where the full-charge rule stands. */
#define RULE_STATE_LIST(C) \
    C(RULE_STATE, NOT_ARMED) \
    C(RULE_STATE, WAITING) \
    C(RULE_STATE, HOLDING) \
    C(RULE_STATE, PAUSED)

/* Why it stands there. */
#define RULE_REASON_LIST(C) \
    C(RULE_REASON, NO_MINUTE_YET) \
    C(RULE_REASON, QUIET_TIME) \
    C(RULE_REASON, VOLTAGE_UNDER_THRESHOLD) \
    C(RULE_REASON, CURRENT_ABOVE_TAPER) \
    C(RULE_REASON, CURRENT_BELOW_TAPER) \
    C(RULE_REASON, NO_FLOW) \
    C(RULE_REASON, FLOW_STOPPED) \
    C(RULE_REASON, VOLTAGE_NOT_FLAT) \
    C(RULE_REASON, HOLD_RUNNING) \
    C(RULE_REASON, LONGER_HOLD_RUNNING) \
    C(RULE_REASON, PLATEAU_RUNNING) \
    C(RULE_REASON, FLOAT_RUNNING) \
    C(RULE_REASON, PROVEN_BY_TAPER) \
    C(RULE_REASON, PROVEN_LATE) \
    C(RULE_REASON, PROVEN_BY_PLATEAU) \
    C(RULE_REASON, PROVEN_BY_FLOAT) \
    C(RULE_REASON, DECLARED_FULL) \
    C(RULE_REASON, DECLARED_NOT_FULL) \
    C(RULE_REASON, ARMED_BY_DISCHARGE) \
    C(RULE_REASON, SAMPLES_MISSING) \
    C(RULE_REASON, SWITCHED_OFF) \
    C(RULE_REASON, READING_DOUBTFUL)

/* What can be wrong; an ordinal is a bit number. The first six are of one tick, the rest stand. */
#define FAULT_LIST(C) \
    C(FAULT, SHUNT_CLIPPED) \
    C(FAULT, VOLTAGE_CLIPPED) \
    C(FAULT, COUNTS_IMPLAUSIBLE) \
    C(FAULT, SAMPLES_MISSING) \
    C(FAULT, CLOCK_BACKWARDS) \
    C(FAULT, SAMPLE_REPEATED) \
    C(FAULT, POLARITY_REVERSED) \
    C(FAULT, CURRENT_NOT_SEEN) \
    C(FAULT, RESISTANCE_RISEN) \
    C(FAULT, IN_OUT_RATIO_OFF) \
    C(FAULT, CHARGING_STOPPED_EARLY) \
    C(FAULT, CHARGING_BLOCKED) \
    C(FAULT, FULL_OVERDUE) \
    C(FAULT, SCALE_SUSPECT) \
    C(FAULT, EMPTY_EARLY) \
    C(FAULT, CAPACITY_WORN) \
    C(FAULT, MEMORY_FAILING) \
    C(FAULT, ADJUSTMENT_LOST)

/* Everything a gauge announces. */
#define EVENT_LIST(C) \
    C(EVENT, POWERED_UP) \
    C(EVENT, RESTORED) \
    C(EVENT, BATTERY_DOUBTFUL) \
    C(EVENT, DECLARED) \
    C(EVENT, SET_TO_FULL) \
    C(EVENT, FULL_RULE_ARMED) \
    C(EVENT, HELD_AT_LIMIT) \
    C(EVENT, HELD_AT_EMPTY) \
    C(EVENT, SET_TO_EMPTY) \
    C(EVENT, EARLY_EMPTY) \
    C(EVENT, CORRECTED_BY_REST) \
    C(EVENT, SETTINGS_CHANGED) \
    C(EVENT, ADJUSTED) \
    C(EVENT, NEW_BATTERY) \
    C(EVENT, CAPACITY_MEASURED) \
    C(EVENT, EFFICIENCY_MEASURED) \
    C(EVENT, FAULT_RAISED)

#define CODE_AS_ENUM(group, name) group##_##name,

enum command { COMMAND_LIST(CODE_AS_ENUM) COMMAND_COUNT };
enum command_outcome { COMMAND_OUTCOME_LIST(CODE_AS_ENUM) OUTCOME_COUNT };
enum off_time { OFF_TIME_LIST(CODE_AS_ENUM) OFF_TIME_COUNT };
enum trust { TRUST_LIST(CODE_AS_ENUM) TRUST_COUNT };
enum trust_reason { TRUST_REASON_LIST(CODE_AS_ENUM) TRUST_REASON_COUNT };
enum estimate_state { ESTIMATE_STATE_LIST(CODE_AS_ENUM) ESTIMATE_STATE_COUNT };
enum full_time_state { FULL_TIME_STATE_LIST(CODE_AS_ENUM) FULL_TIME_STATE_COUNT };
enum rule_state { RULE_STATE_LIST(CODE_AS_ENUM) RULE_STATE_COUNT };
enum rule_reason { RULE_REASON_LIST(CODE_AS_ENUM) RULE_REASON_COUNT };
enum fault { FAULT_LIST(CODE_AS_ENUM) FAULT_COUNT };
enum event { EVENT_LIST(CODE_AS_ENUM) EVENT_COUNT };

/* The bit of a fault in the register FAULT_BITS. */
#define FAULT_BIT(fault) (UINT32_C(1) << (unsigned)(fault))

#endif
