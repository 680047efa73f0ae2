#include "rules/efficiency_estimate.h"

#include "charge/state_of_charge.h"
#include "settings/chemistry_preset.h"

#define LONGEST_MINUTES (3 * 24 * 60)

/* At least 30 % of the capacity must have gone out. */
#define SHALLOWEST_PERCENT 30
#define UNSEEN_DIVISOR 4

void efficiency_estimate_init(struct efficiency_estimate *e, const struct gauge_settings *settings)
{
    *e = (struct efficiency_estimate){{0}, 0, 0, 0, 0, 0, false, false};
    e->switched_off = setting_of(settings, SETTING_MEASURE_EFFICIENCY) == 0;
    e->capacity_nanocoulombs =
        setting_of(settings, SETTING_CAPACITY) * NANOCOULOMBS_PER_MILLIAMP_HOUR;
    e->unseen_microamps = setting_of(settings, SETTING_OFFSET_BOUND) +
                          setting_of(settings, SETTING_UNMEASURED_BOUND);
    bool lithium = chemistry_is_lithium(setting_of(settings, SETTING_CHEMISTRY));
    e->ppm.declared = setting_of(settings, SETTING_COULOMBIC_EFFICIENCY);
    e->ppm.lowest = lithium ? 970000 : 800000;
    e->ppm.highest = lithium ? 1000000 : 980000;
    e->ppm.longest_step = 10000;
    e->ppm.agreement = 20000;
}

static void begin(struct efficiency_estimate *e)
{
    e->minutes = 0;
    e->in_nanocoulombs = 0;
    e->out_nanocoulombs = 0;
}

void efficiency_estimate_add_minute(struct efficiency_estimate *e,
                                    const struct minute_figures *minute, bool kept_full)
{
    if (!e->fit) {
        return;
    }
    int64_t net = minute->nanocoulombs;
    if (kept_full && net > 0) {
        begin(e);
        return;
    }
    e->minutes++;
    if (net > 0) {
        e->in_nanocoulombs += net;
    } else {
        e->out_nanocoulombs -= net;
    }
    if (e->minutes > LONGEST_MINUTES) {
        e->fit = false;
    }
}

static bool is_deep(const struct efficiency_estimate *e)
{
    return e->out_nanocoulombs >= e->capacity_nanocoulombs / 100 * SHALLOWEST_PERCENT &&
           e->in_nanocoulombs > 1000000;
}

static bool is_clear(const struct efficiency_estimate *e)
{
    int64_t unseen = e->unseen_microamps * e->minutes * MINUTE_MILLIS;
    return unseen < (e->in_nanocoulombs - e->out_nanocoulombs) / UNSEEN_DIVISOR;
}

bool efficiency_estimate_full(struct efficiency_estimate *e, bool evidence)
{
    bool moved = e->fit && evidence && is_deep(e) && is_clear(e) &&
                 measured_value_offer(&e->ppm,
                                      e->out_nanocoulombs / (e->in_nanocoulombs / FULL_PPM));
    e->fit = evidence && !e->switched_off;
    begin(e);
    return moved;
}

void efficiency_estimate_forget(struct efficiency_estimate *e)
{
    measured_value_forget(&e->ppm);
    e->fit = false;
}

void efficiency_estimate_resume(struct efficiency_estimate *e, int64_t measured, int64_t candidate)
{
    measured_value_resume(&e->ppm, measured, candidate);
    e->fit = false;
}
