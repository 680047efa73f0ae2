#include "estimate/time_to_empty.h"

#include "charge/state_of_charge.h"

#define MINUTES_PER_HOUR 60
#define MILLIS_PER_MINUTE 60000
#define LONGEST_MINUTES (1000 * MINUTES_PER_HOUR)

void time_to_empty_init(struct time_to_empty *t, const struct gauge_settings *settings)
{
    *t = (struct time_to_empty){0};
    int64_t capacity_nanocoulombs =
        setting_of(settings, SETTING_CAPACITY) * NANOCOULOMBS_PER_MILLIAMP_HOUR;
    t->offset_bound_microamps = max_int64(1, setting_of(settings, SETTING_OFFSET_BOUND));
    t->longest_minutes = (int32_t)clamp(
        setting_of(settings, SETTING_LONGEST_TIME) * MINUTES_PER_HOUR, 1, LONGEST_MINUTES);
    t->kept_back_nanocoulombs =
        max_int64(0, state_of_charge_nanocoulombs(setting_of(settings, SETTING_KEPT_BACK),
                                                  capacity_nanocoulombs));
}

/* A load, and what it leaves in the battery: the larger of kept back and behind. */
struct load {
    int64_t unusable_nanocoulombs;
    int32_t microamps;
};

static struct load load_of(const struct time_to_empty *t, const struct rate_model *model,
                           int32_t microamps, int32_t millicelsius)
{
    int64_t behind = rate_model_behind_nanocoulombs(model, microamps, millicelsius);
    return (struct load){max_int64(t->kept_back_nanocoulombs, behind), microamps};
}

/* nC / uA = ms, rounded down to whole minutes: a time to empty is a promise. */
static struct time_answer answer(const struct time_to_empty *t, bool known,
                                 int64_t charge_nanocoulombs, const struct load *load)
{
    if (!known || magnitude((int64_t)load->microamps) < t->offset_bound_microamps) {
        return (struct time_answer){ESTIMATE_STATE_NO_ESTIMATE, 0};
    }
    if (load->microamps > 0) {
        return (struct time_answer){ESTIMATE_STATE_CHARGING, 0};
    }
    int64_t usable = max_int64(0, charge_nanocoulombs - load->unusable_nanocoulombs);
    int64_t whole = usable / -(int64_t)load->microamps / MILLIS_PER_MINUTE;
    if (whole > t->longest_minutes) {
        return (struct time_answer){ESTIMATE_STATE_MORE_THAN, t->longest_minutes};
    }
    return (struct time_answer){ESTIMATE_STATE_ESTIMATE, (int32_t)whole};
}

void time_to_empty_update(struct time_to_empty *t, const struct estimate_input *input,
                          const struct load_filter *filter, const struct rate_model *model)
{
    int32_t celsius = input->temperature_millicelsius;
    bool filtered = input->known && filter->seeded;
    /* One load, three charges: what it leaves behind is the same. */
    struct load load = load_of(t, model, load_filter_microamps(filter), celsius);
    t->at_filtered_load = answer(t, filtered, input->charge_nanocoulombs, &load);
    t->low = answer(t, filtered, input->low_nanocoulombs, &load);
    t->high = answer(t, filtered, input->high_nanocoulombs, &load);
    load = load_of(t, model, input->present_microamps, celsius);
    t->at_this_load = answer(t, input->known, input->charge_nanocoulombs, &load);
    load = load_of(t, model, -load_filter_usual_microamps(filter), celsius);
    t->at_usual_use = answer(t, input->known && filter->usual.whole_hours > 0,
                             input->charge_nanocoulombs, &load);
}
