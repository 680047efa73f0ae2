/*
 * The messages of the pipe in both their forms, text lines and binary frames; the document is
 * gauge-sim/docs/pipe-protocol.md. Knows nothing of a gauge.
 */
#ifndef GAUGE_HOSTED_LINK_H
#define GAUGE_HOSTED_LINK_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "port/registers.h"
#include "port/sample.h"
#include "port/smart_battery_word.h"
#include "settings/gauge_settings.h"

#define LINK_MOST_TICKS 1024
#define LINK_READOUT_FIELDS 31

/* Kinds of messages, numbered as in frames. */
enum link_kind {
    LINK_SET = 1,
    LINK_POWER = 2,
    LINK_TICKS = 3,
    LINK_COMMAND = 4,
    LINK_CHANGE = 5,
    LINK_ASK_REGISTERS = 6,
    LINK_STORED = 7,
    LINK_CUT = 8,
    LINK_END = 9,
    LINK_READOUT = 65,
    LINK_OUTCOME = 66,
    LINK_EVENT = 67,
    LINK_REGISTERS = 68,
    LINK_READ = 69,
    LINK_ERASE = 70,
    LINK_PROGRAM = 71
};

/* What the program wants to say in its hello. */
struct link_wishes {
    const char *name;
    bool frames;
    int batch;
};

/* One message from the bench; what a field means depends on the kind. */
struct link_message {
    enum link_kind kind;
    /* Settings or ticks in the message. */
    int count;
    int setting_numbers[SETTING_COUNT];
    int64_t setting_values[SETTING_COUNT];
    struct sample samples[LINK_MOST_TICKS];
    /* How the time without power is known, or the number of a command. */
    int number;
    int64_t argument;
};

/* The answer to a request of the store. */
enum link_answer { LINK_OK, LINK_FAILED, LINK_POWER_CUT };

/* Exchanges hellos; the store that the bench offers. Ends the program on a broken pipe. */
void link_open(const struct link_wishes *wishes, int32_t *slots, int32_t *slot_bytes);

/* Whether the bench wants a digest of every tick; known when hellos were exchanged. */
bool link_wants_digest(void);

/* Waits for a message. Ends the program on one that the protocol does not know. */
void link_receive(struct link_message *message);

/* Place of the tick in its batch, for what is said while it is worked through. */
void link_at_place(int place);

void link_send_readout(const int64_t values[LINK_READOUT_FIELDS]);
void link_send_outcome(int outcome);
void link_send_event(int event, int64_t uptime_millis, int64_t value,
                     const int64_t values[LINK_READOUT_FIELDS]);
/* With the digest and the words of the bus view behind them where the bench wants them. */
void link_send_registers(const int64_t values[REGISTER_COUNT], uint64_t digest,
                         const int64_t words[WORD_COUNT]);

/* What was sent since the bench last spoke goes out. */
void link_flush(void);

enum link_answer link_read(int32_t slot, uint8_t *destination, size_t count);
enum link_answer link_erase(int32_t slot);
enum link_answer link_program(int32_t slot, const uint8_t *source, size_t count);

/* A message to standard error, and the end of the program. */
void link_break(const char *what);

#endif
