package org.gaugebench.sim.scenario;

import java.util.List;

/**
 * Everything a timeline or an expectation can speak of.
 *
 * @param battery with its temperature at the start
 * @param sensor with its offset at the start
 * @param gauges in file order
 * @param chargers in file order
 * @param loads in file order
 * @param wiring at the start
 */
record Parts(
        BatterySpec battery,
        SensorSpec sensor,
        List<GaugeSpec> gauges,
        List<ChargerSpec> chargers,
        List<LoadSpec> loads,
        WiringSpec wiring) {}
