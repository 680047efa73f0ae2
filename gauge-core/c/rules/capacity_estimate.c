#include "rules/capacity_estimate.h"

#include "charge/state_of_charge.h"
#include "port/sample.h"

#define LONGEST_MINUTES (3 * 24 * 60)
#define LOWEST_MILLICELSIUS 15000
#define HIGHEST_MILLICELSIUS 35000

/* 3 % at either end over half the capacity are 8.5 % already. */
#define LARGEST_RESIDUAL_PPM 30000
#define FASTEST_HOURS 5
#define MINUTES_PER_HOUR 60

void capacity_estimate_init(struct capacity_estimate *c, const struct gauge_settings *settings)
{
    *c = (struct capacity_estimate){{0}, 0, 0, 0, false, false};
    int64_t declared = setting_of(settings, SETTING_CAPACITY);
    c->switched_off = setting_of(settings, SETTING_MEASURE_CAPACITY) == 0 ||
                      setting_of(settings, SETTING_FULL_RESIDUAL) > LARGEST_RESIDUAL_PPM ||
                      setting_of(settings, SETTING_EMPTY_RESIDUAL) > LARGEST_RESIDUAL_PPM;
    c->empty_ppm = setting_of(settings, SETTING_EMPTY_STATE);
    c->milliamp_hours.declared = declared;
    c->milliamp_hours.lowest = declared / 2;
    c->milliamp_hours.highest = declared + declared / 10;
    c->milliamp_hours.longest_step = declared / 20;
    c->milliamp_hours.agreement = declared / 20;
}

void capacity_estimate_full(struct capacity_estimate *c, bool evidence)
{
    c->fit = evidence && !c->switched_off;
    c->minutes = 0;
    c->out_nanocoulombs = 0;
}

void capacity_estimate_add_minute(struct capacity_estimate *c, const struct minute_figures *minute,
                                  int32_t temperature_millicelsius)
{
    if (!c->fit) {
        return;
    }
    c->minutes++;
    c->out_nanocoulombs -= minute->nanocoulombs;
    bool mild = temperature_millicelsius == TEMPERATURE_ABSENT ||
                (temperature_millicelsius >= LOWEST_MILLICELSIUS &&
                 temperature_millicelsius <= HIGHEST_MILLICELSIUS);
    if (!mild || c->minutes > LONGEST_MINUTES) {
        c->fit = false;
    }
}

bool capacity_estimate_empty(struct capacity_estimate *c)
{
    bool usable = c->fit && c->minutes > 0;
    c->fit = false;
    if (!usable) {
        return false;
    }
    int64_t declared = c->milliamp_hours.declared;
    int64_t out_milliamp_hours = c->out_nanocoulombs / NANOCOULOMBS_PER_MILLIAMP_HOUR;
    bool deep = out_milliamp_hours >= declared / 2;
    bool slow = out_milliamp_hours * MINUTES_PER_HOUR * FASTEST_HOURS <= declared * c->minutes;
    if (!deep || !slow) {
        return false;
    }
    return measured_value_offer(&c->milliamp_hours,
                                out_milliamp_hours * FULL_PPM / (FULL_PPM - c->empty_ppm));
}

void capacity_estimate_forget(struct capacity_estimate *c)
{
    measured_value_forget(&c->milliamp_hours);
    c->fit = false;
}

void capacity_estimate_resume(struct capacity_estimate *c, int64_t measured, int64_t candidate)
{
    measured_value_resume(&c->milliamp_hours, measured, candidate);
    c->fit = false;
}
