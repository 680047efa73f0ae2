#include "rules/diagnosis.h"

#include "charge/state_of_charge.h"

#define DAY_MINUTES (24 * 60)
#define WEEK_MINUTES (7 * DAY_MINUTES)

/* Full voltage without any flow for so long is no accident (D6). */
#define BLOCKED_MINUTES 30

/* A battery is near its end at 80 % of its capacity (D10). */
#define WORN_PERCENT 80
#define BALANCE_LOWEST_PERCENT 85
#define BALANCE_HIGHEST_PERCENT 130
#define LONGEST_MINUTES (INT64_C(1) << 40)

void diagnosis_init(struct diagnosis *d, const struct gauge_settings *settings)
{
    *d = (struct diagnosis){{0}, {0}, 0, 0, 0, 0, false, false};
    d->overdue_minutes = setting_of(settings, SETTING_FULL_OVERDUE) * DAY_MINUTES;
    d->declared_milliamp_hours = setting_of(settings, SETTING_CAPACITY);
    int64_t offset_microamps = setting_of(settings, SETTING_OFFSET_BOUND);
    /* derived: C/20, at least twenty offset bounds; a sixtieth and a thousandth of the voltage */
    d->steps.step_microamps = max_int64(d->declared_milliamp_hours * 50, 20 * offset_microamps);
    d->steps.still_microamps = offset_microamps;
    d->steps.step_microvolts = setting_of(settings, SETTING_NOMINAL_VOLTAGE) * 1000 / 60;
    d->steps.telling_microvolts = setting_of(settings, SETTING_NOMINAL_VOLTAGE);
    /* derived: a fifth of the capacity, and the capacity */
    d->balance.stored_nanocoulombs = d->declared_milliamp_hours * NANOCOULOMBS_PER_MILLIAMP_HOUR;
    d->balance.least_nanocoulombs = d->balance.stored_nanocoulombs / 5;
}

static void balance_begin(struct charge_balance *b)
{
    b->minutes = 0;
    b->in_nanocoulombs = 0;
    b->out_nanocoulombs = 0;
}

/* One minute's net; judges at the end of each week. 2^47 nC a minute stay below 2^61. */
static void balance_add_minute(struct charge_balance *b, int64_t net_nanocoulombs)
{
    if (net_nanocoulombs > 0) {
        b->in_nanocoulombs += net_nanocoulombs;
    } else {
        b->out_nanocoulombs -= net_nanocoulombs;
    }
    b->minutes++;
    if (b->minutes < WEEK_MINUTES) {
        return;
    }
    if (b->out_nanocoulombs >= b->least_nanocoulombs ||
        b->in_nanocoulombs >= b->least_nanocoulombs) {
        int64_t percent = b->out_nanocoulombs / 100;
        b->off = b->in_nanocoulombs + b->stored_nanocoulombs < percent * BALANCE_LOWEST_PERCENT ||
                 b->in_nanocoulombs - b->stored_nanocoulombs > percent * BALANCE_HIGHEST_PERCENT;
    }
    balance_begin(b);
}

static uint32_t bit_if(enum fault fault, bool stands)
{
    return stands ? FAULT_BIT(fault) : 0;
}

uint32_t diagnosis_judge(struct diagnosis *d, const struct minute_figures *minute,
                         const struct full_charge_rule *full, int64_t measured_milliamp_hours)
{
    step_watch_add_minute(&d->steps, minute->mean_microamps, minute->mean_microvolts,
                          full->charger_stands_alone);
    /* A charger keeps a full battery full: what it gives goes into gas and self-discharge. */
    bool kept_full = full_charge_rule_is_kept_full(full);
    balance_add_minute(&d->balance,
                       kept_full ? min_int64(minute->nanocoulombs, 0) : minute->nanocoulombs);
    d->since_full_minutes =
        kept_full ? 0 : min_int64(d->since_full_minutes + 1, LONGEST_MINUTES);
    bool armed = full_charge_rule_is_armed(full);
    bool volts_full =
        !full->limits.switched_off && minute->lowest_microvolts >= full->threshold_microvolts;
    bool blocked = volts_full && armed && !full->flow.flow_seen && !full->flow.stopped;
    /* A doubtful minute hides whether anything flowed: it speaks neither for nor against it. */
    if (!minute->doubtful) {
        d->blocked_minutes = blocked ? min_int32(d->blocked_minutes + 1, BLOCKED_MINUTES) : 0;
    }
    bool worn = measured_milliamp_hours > 0 &&
                measured_milliamp_hours * 100 < d->declared_milliamp_hours * WORN_PERCENT;
    return bit_if(FAULT_POLARITY_REVERSED, step_watch_is_reversed(&d->steps)) |
           bit_if(FAULT_CURRENT_NOT_SEEN, step_watch_is_silent(&d->steps)) |
           bit_if(FAULT_RESISTANCE_RISEN, step_watch_is_resistance_risen(&d->steps)) |
           bit_if(FAULT_IN_OUT_RATIO_OFF, d->balance.off) |
           bit_if(FAULT_CHARGING_STOPPED_EARLY, volts_full && armed && full->flow.stopped) |
           bit_if(FAULT_CHARGING_BLOCKED, d->blocked_minutes >= BLOCKED_MINUTES) |
           bit_if(FAULT_FULL_OVERDUE,
                  d->overdue_minutes > 0 && d->since_full_minutes >= d->overdue_minutes) |
           bit_if(FAULT_SCALE_SUSPECT, d->scale_suspect) |
           bit_if(FAULT_EMPTY_EARLY, d->early_empty) | bit_if(FAULT_CAPACITY_WORN, worn);
}

void diagnosis_full(struct diagnosis *d, bool against_count)
{
    d->since_full_minutes = 0;
    d->scale_suspect = against_count;
    d->early_empty = false;
}

void diagnosis_new_battery(struct diagnosis *d)
{
    diagnosis_full(d, false);
    balance_begin(&d->balance);
    d->balance.off = false;
    step_watch_forget(&d->steps);
}

void diagnosis_add_off_time(struct diagnosis *d, int64_t minutes)
{
    d->since_full_minutes = min_int64(
        d->since_full_minutes + min_int64(minutes, LONGEST_MINUTES), LONGEST_MINUTES);
}
