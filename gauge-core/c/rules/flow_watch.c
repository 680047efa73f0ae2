#include "rules/flow_watch.h"

#include "rules/rule_parts.h"

#define STRONG_FLOW_TAPER_TIMES 2

/* Without a charger's voltage for so long, one charge has ended. */
#define FORGET_MINUTES HOLD_RESET_MINUTES

static void add_idle_minute(struct flow_watch *flow)
{
    flow->idle_minutes++;
    if (flow->idle_minutes >= FORGET_MINUTES) {
        flow->idle_minutes = FORGET_MINUTES;
        flow->stopped = false;
        flow_watch_forget(flow);
    }
}

static bool strong_recently(const struct flow_watch *flow, const struct full_charge_limits *limits)
{
    for (int i = 0; i < FLOW_MEMORY_MINUTES; i++) {
        if (flow->recent_microamps[i] > STRONG_FLOW_TAPER_TIMES * limits->taper_microamps) {
            return true;
        }
    }
    return false;
}

void flow_watch_add_minute(struct flow_watch *flow, const struct full_charge_limits *limits,
                           int32_t mean_microamps, bool voltage_up)
{
    bool some = mean_microamps > limits->some_flow_microamps;
    if (some) {
        flow->flow_seen = true;
        flow->stopped = false;
    } else if (mean_microamps < limits->no_flow_microamps && strong_recently(flow, limits)) {
        flow->flow_seen = false;
        flow->stopped = true;
    }
    flow->recent_microamps[flow->next_index] = mean_microamps;
    flow->next_index = flow->next_index + 1 == FLOW_MEMORY_MINUTES ? 0 : flow->next_index + 1;
    if (voltage_up || some) {
        flow->idle_minutes = 0;
    } else {
        add_idle_minute(flow);
    }
}

void flow_watch_add_doubtful_minute(struct flow_watch *flow)
{
    add_idle_minute(flow);
}

void flow_watch_forget(struct flow_watch *flow)
{
    flow->flow_seen = false;
    for (int i = 0; i < FLOW_MEMORY_MINUTES; i++) {
        flow->recent_microamps[i] = 0;
    }
}
