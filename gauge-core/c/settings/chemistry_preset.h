/* Settings that follow from a chemistry and a nominal voltage; sources in docs/rules.md. */
#ifndef GAUGE_SETTINGS_CHEMISTRY_PRESET_H
#define GAUGE_SETTINGS_CHEMISTRY_PRESET_H

#include <stdbool.h>
#include <stdint.h>

#include "settings/gauge_settings.h"

/* Codes of the setting CHEMISTRY. */
enum chemistry {
    CHEMISTRY_LEAD_ACID_FLOODED = 1,
    CHEMISTRY_LEAD_ACID_AGM = 2,
    CHEMISTRY_LEAD_ACID_GEL = 3,
    CHEMISTRY_LIFEPO4 = 4,
    CHEMISTRY_NMC = 5
};

static inline bool chemistry_is_lithium(int64_t chemistry)
{
    return chemistry == CHEMISTRY_LIFEPO4 || chemistry == CHEMISTRY_NMC;
}

/* Starts from the defaults and sets all that follows from chemistry and nominal voltage. */
void chemistry_preset_init(struct gauge_settings *settings, enum chemistry chemistry,
                           int64_t nominal_millivolts);

#endif
