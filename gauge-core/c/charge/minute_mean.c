#include "charge/minute_mean.h"

void minute_mean_init(struct minute_mean *m)
{
    *m = (struct minute_mean){0};
    minute_mean_abandon(m);
}

void minute_mean_close(struct minute_mean *m)
{
    m->last.nanocoulombs = m->nanocoulombs;
    m->last.mean_microamps =
        clamp_to_int32(divide_half_away_from_zero(m->nanocoulombs, MINUTE_MILLIS));
    m->last.mean_microvolts = (int32_t)(m->microvolt_millis / MINUTE_MILLIS);
    m->last.lowest_microvolts = m->lowest_microvolts;
    m->last.highest_microvolts = m->highest_microvolts;
    m->last.lowest_microamps = m->lowest_microamps;
    m->last.highest_microamps = m->highest_microamps;
    m->last.doubtful = m->doubtful;
    m->any_whole = true;
    minute_mean_abandon(m);
}

void minute_mean_abandon(struct minute_mean *m)
{
    m->millis = 0;
    m->nanocoulombs = 0;
    m->microvolt_millis = 0;
    m->lowest_microvolts = INT32_MAX;
    m->highest_microvolts = INT32_MIN;
    m->lowest_microamps = INT32_MAX;
    m->highest_microamps = INT32_MIN;
    m->doubtful = false;
}
