#include "gauge/fault_log.h"

#include <stdbool.h>

void fault_log_restart(struct fault_log *log)
{
    for (int i = 0; i < FAULT_COUNT; i++) {
        log->records[i] = (struct fault_record){0, 0, 0};
    }
    log->momentary_bits = 0;
    log->previous_bits = 0;
    log->standing_bits = 0;
    log->fault_ticks = 0;
}

static void note(struct fault_log *log, const struct event_sink *events, int index,
                 int64_t uptime_millis, bool news)
{
    struct fault_record *record = &log->records[index];
    if (record->count == 0) {
        record->first_uptime_millis = uptime_millis;
    }
    record->last_uptime_millis = uptime_millis;
    if (record->count < INT32_MAX) {
        record->count++;
    }
    if (news) {
        announce(events, EVENT_FAULT_RAISED, uptime_millis, index);
    }
}

void fault_log_raise(struct fault_log *log, const struct event_sink *events, enum fault fault,
                     int64_t uptime_millis)
{
    if (log->momentary_bits == 0 && log->fault_ticks < INT32_MAX) {
        log->fault_ticks++;
    }
    log->momentary_bits |= FAULT_BIT(fault);
    note(log, events, (int)fault, uptime_millis, (log->previous_bits & FAULT_BIT(fault)) == 0);
}

void fault_log_stand(struct fault_log *log, const struct event_sink *events, uint32_t mask,
                     uint32_t bits, int64_t uptime_millis)
{
    uint32_t appeared = bits & ~log->standing_bits;
    log->standing_bits = (log->standing_bits & ~mask) | bits;
    if (appeared == 0) {
        return;
    }
    for (int i = 0; i < FAULT_COUNT; i++) {
        if ((appeared & FAULT_BIT(i)) != 0) {
            note(log, events, i, uptime_millis, true);
        }
    }
}
