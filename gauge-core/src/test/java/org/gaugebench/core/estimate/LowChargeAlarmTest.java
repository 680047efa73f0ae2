package org.gaugebench.core.estimate;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.port.Readout;
import org.junit.jupiter.api.Test;

class LowChargeAlarmTest {
    private final LowChargeAlarm alarm = new LowChargeAlarm(200_000, 50_000);

    @Test
    void comesAtItsLevelAndGoesAboveIt() {
        assertFalse(alarm.update(200_001));
        assertTrue(alarm.update(200_000));
        assertTrue(alarm.isOn());
        assertFalse(alarm.update(249_999));
        assertTrue(alarm.isOn());
        assertTrue(alarm.update(250_000));
        assertFalse(alarm.isOn());
    }

    @Test
    void theUnknownNeitherRaisesNorSilencesIt() {
        assertFalse(alarm.update(Readout.NOT_KNOWN));
        assertFalse(alarm.isOn());
        alarm.update(0);
        assertFalse(alarm.update(Readout.NOT_KNOWN));
        assertTrue(alarm.isOn());
    }

    @Test
    void aLevelOfZeroSwitchesItOff() {
        LowChargeAlarm off = new LowChargeAlarm(0, 50_000);
        assertFalse(off.update(0));
        assertFalse(off.isOn());
    }

    @Test
    void aLevelNearFullStillGoesWhenFull() {
        LowChargeAlarm high = new LowChargeAlarm(980_000, 50_000);
        high.update(500_000);
        assertTrue(high.update(1_000_000));
        assertFalse(high.isOn());
    }
}
