/*
 * Carries the state over when the settings change (the S rules). Java builds a second set of
 * stages; here what carries over is copied out, the stages are built anew in their place, and it
 * is put back: the memory of two sets is not needed.
 */
#ifndef GAUGE_GAUGE_SETTINGS_CHANGE_H
#define GAUGE_GAUGE_SETTINGS_CHANGE_H

#include <stdbool.h>
#include <stdint.h>

#include "gauge/stages.h"

/* Whether the new settings speak of another kind of battery (S3). */
bool settings_change_is_other_battery(const struct stages *s,
                                      const struct gauge_settings *settings);

/* Builds the stages anew with nothing but the adjustment carried over (S3, S4). */
void settings_change_to_other_battery(struct stages *s, const struct gauge_settings *settings);

/* Builds them anew and carries count, band and rules over; answers the step of the count. */
int64_t settings_change_carry_over(struct stages *s, const struct gauge_settings *settings);

#endif
