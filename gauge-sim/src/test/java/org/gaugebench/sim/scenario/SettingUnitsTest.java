package org.gaugebench.sim.scenario;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;

import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/** Every setting of the core can be written in a scenario. */
class SettingUnitsTest {
    @Test
    void everySettingHasAUnitForPeople() {
        for (Setting setting : Setting.values()) {
            assertDoesNotThrow(() -> SettingUnits.of(setting), setting.key());
        }
    }
}
