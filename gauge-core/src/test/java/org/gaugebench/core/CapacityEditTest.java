package org.gaugebench.core;

import org.gaugebench.core.port.OffTime;
import org.junit.jupiter.api.Test;

/** A life that a property once found: the books of {@link GaugeLife} judge every step. */
class CapacityEditTest {
    /** The gap of a clipped sample is a smaller part of a larger capacity; the doubt is not. */
    @Test
    void aLargerCapacityAndAPowerCutNeverNarrowTheBand() {
        GaugeLife life = new GaugeLife();
        new LifeActions.ChargerOn(3).run(life);
        new LifeActions.Tick(-8_388_608, 11_000, 11_718).run(life);
        new LifeActions.EditCapacity(12_345).run(life);
        new LifeActions.PowerCut(0, OffTime.EXACT).run(life);
    }
}
