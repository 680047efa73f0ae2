#include "hosted/pipe.h"

#include <setjmp.h>
#include <stdio.h>

#include "gauge/gauge.h"
#include "hosted/names.h"

static struct gauge tested;
static struct gauge_settings told;
/* The gauge keeps a pointer to one of these while the other is filled for a change. */
static struct gauge_settings kept[2];
static int in_use;
static uint64_t digest = REGISTERS_DIGEST_START;
static struct state_store store;
static struct event_sink sink;
/* Where a power cut in the middle of a request leads: the logic knows nothing of it. */
static jmp_buf power_is_gone;

static void fill_readout(int64_t values[LINK_READOUT_FIELDS])
{
    struct readout r;
    gauge_read(&tested, &r);
    int64_t all[LINK_READOUT_FIELDS] = {
        r.state_of_charge_ppm,
        r.lower_edge_ppm,
        r.upper_edge_ppm,
        r.band_unknown ? 1 : 0,
        r.remaining_nanocoulombs,
        r.full_charge_nanocoulombs,
        r.measured_capacity_milliamp_hours,
        r.measured_efficiency_ppm,
        r.current_microamps,
        r.average_current_microamps,
        r.voltage_microvolts,
        r.temperature_millicelsius,
        r.time_to_empty_state,
        r.time_to_empty_minutes,
        r.time_to_empty_low_minutes,
        r.time_to_empty_high_minutes,
        r.time_at_this_load_state,
        r.time_at_this_load_minutes,
        r.time_at_usual_use_state,
        r.time_at_usual_use_minutes,
        r.time_to_full_state,
        r.time_to_full_minutes,
        r.shown_percent,
        r.shown_milliamps,
        r.shown_time_to_empty_minutes,
        r.low_charge ? 1 : 0,
        r.rule_state,
        r.rule_reason,
        r.trust,
        r.trust_reason,
        r.fault_bits,
    };
    for (int i = 0; i < LINK_READOUT_FIELDS; i++) {
        values[i] = all[i];
    }
}

static void answer_readout(void)
{
    int64_t values[LINK_READOUT_FIELDS];
    fill_readout(values);
    link_send_readout(values);
    link_flush();
}

/* With what the gauge shows at this very moment. */
static void tell_event(void *context, enum event event, int64_t uptime_millis, int64_t value)
{
    int64_t values[LINK_READOUT_FIELDS];
    (void)context;
    fill_readout(values);
    link_send_event((int)event, uptime_millis, value, values);
}

static int code_of(enum link_answer answer)
{
    if (answer == LINK_POWER_CUT) {
        longjmp(power_is_gone, 1);
    }
    return answer == LINK_OK ? STORE_OK : STORE_FAILED;
}

static int store_read(void *context, int32_t slot, uint8_t *destination, size_t count)
{
    (void)context;
    return code_of(link_read(slot, destination, count));
}

static int store_erase(void *context, int32_t slot)
{
    (void)context;
    return code_of(link_erase(slot));
}

static int store_program(void *context, int32_t slot, const uint8_t *source, size_t count)
{
    (void)context;
    return code_of(link_program(slot, source, count));
}

/* A checked copy of the settings told so far, beside the one that the gauge holds. */
static const struct gauge_settings *checked_settings(void)
{
    enum setting culprit = SETTING_CHEMISTRY;
    if (gauge_settings_check(&told, &culprit) != SETTINGS_GOOD) {
        (void)fprintf(stderr, "gauge-twin: no gauge can be built from the setting %s\n",
                      SETTING_KEYS.names[culprit]);
        link_break("the settings break a rule of docs/rules.md");
    }
    in_use = 1 - in_use;
    kept[in_use] = told;
    return &kept[in_use];
}

/* Every call that was worked through leaves its mark, over all lives. */
static void fold(void)
{
    static struct registers registers;
    if (link_wants_digest()) {
        gauge_inspect(&tested, &registers);
        digest = registers_fold(&registers, digest);
    }
}

static void answer_registers(void)
{
    static struct registers registers;
    int64_t words[WORD_COUNT];
    gauge_inspect(&tested, &registers);
    for (int i = 0; i < WORD_COUNT; i++) {
        words[i] = gauge_read_bus(&tested, smart_battery_word_at(i));
    }
    link_send_registers(registers.values, digest, words);
    link_flush();
}

/* Works a message through; a cut leaves it by way of power_is_gone. */
static void work(const struct link_message *message)
{
    switch (message->kind) {
    case LINK_SET:
        for (int i = 0; i < message->count; i++) {
            told.values[message->setting_numbers[i]] = message->setting_values[i];
        }
        break;
    case LINK_POWER:
        gauge_init(&tested, checked_settings(), &store, &sink);
        gauge_power_up(&tested, message->argument, (enum off_time)message->number);
        fold();
        answer_readout();
        break;
    case LINK_TICKS:
        for (int i = 0; i < message->count; i++) {
            link_at_place(i);
            gauge_tick(&tested, &message->samples[i]);
            fold();
        }
        answer_readout();
        break;
    case LINK_COMMAND:
        link_send_outcome(
            (int)gauge_command(&tested, (enum command)message->number, message->argument));
        fold();
        answer_readout();
        break;
    case LINK_CHANGE:
        gauge_change_settings(&tested, checked_settings());
        fold();
        link_send_outcome(OUTCOME_DONE);
        answer_readout();
        break;
    case LINK_ASK_REGISTERS:
        answer_registers();
        break;
    default:
        link_break("a message came that is no question");
    }
}

int pipe_run(const struct link_wishes *wishes)
{
    static struct link_message message;
    gauge_settings_init(&told);
    store = (struct state_store){0, 0, store_read, store_erase, store_program, NULL};
    sink = (struct event_sink){tell_event, NULL};
    link_open(wishes, &store.slots, &store.slot_bytes);
    for (;;) {
        link_receive(&message);
        if (message.kind == LINK_END) {
            return 0;
        }
        /* After a cut nothing of this life happens any more: the next set or power follows. */
        if (setjmp(power_is_gone) == 0) {
            work(&message);
        }
    }
}
