package org.gaugebench.sim.frontend;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.gaugebench.sim.scenario.SensorSpec;
import org.gaugebench.sim.scenario.SensorSpec.Sampling;
import org.gaugebench.sim.scenario.WiringSpec;
import org.gaugebench.sim.scenario.WiringSpec.Leads;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What arrives at the input when shunt and leads are not as they should be. */
class SenseLeadsTest {
    /** A bare shunt behind leads, as a front end composes them. */
    private static final class Sensed {
        private final ShuntModel shunt = new ShuntModel(SPEC);
        private final SenseLeads leads = new SenseLeads(SPEC);

        private Sensed(WiringSpec wiring) {
            leads.connect(wiring);
        }

        private double voltsAt(double amps) {
            return shunt.voltsAt(leads.ampsSeen(amps), new HandTruth()) + leads.volts();
        }
    }

    /** 500 A / 50 mV: 100 uOhm; offset 10 uV. */
    private static final SensorSpec SPEC =
            new SensorSpec(
                    500_000_000,
                    50_000,
                    0,
                    20,
                    100_000,
                    0,
                    10_000,
                    0,
                    16,
                    65_536_000,
                    0,
                    Sampling.INTEGRATED,
                    true);

    private static Sensed shunt(WiringSpec wiring) {
        return new Sensed(wiring);
    }

    private static WiringSpec with(String key, long value) {
        return WiringSpec.RIGHT.with(key, value);
    }

    @Test
    void reversedAndSwappedTurnTheSignAndTwoWrongsMakeARight() {
        assertEquals(0.00201, shunt(WiringSpec.RIGHT).voltsAt(20), 1e-15);
        assertEquals(-0.00199, shunt(with("shunt", 1)).voltsAt(20), 1e-15);
        WiringSpec swapped = with("sense-leads", Leads.SWAPPED.ordinal());
        assertEquals(-0.00199, shunt(swapped).voltsAt(20), 1e-15);
        assertEquals(0.00201, shunt(swapped.with("shunt", 1)).voltsAt(20), 1e-15);
    }

    /** 20 uOhm of lug on 100 uOhm: 20 % high, both ways. */
    @ParameterizedTest
    @CsvSource({"20, 24", "-50, -60"})
    void leadsOnTheLugsReadHigh(double amps, double shown) {
        double volts = shunt(with("lug-resistance", 20)).voltsAt(amps) - 10e-6;
        assertEquals(shown, volts / 100e-6, 1e-9);
    }

    @ParameterizedTest
    @CsvSource({"OPEN, 10e-6", "OPEN_HIGH, 0.20001", "OPEN_LOW, -0.19999"})
    void anOpenLeadShowsOffsetOrRailWhateverFlows(Leads leads, double volts) {
        Sensed shunt = shunt(with("sense-leads", leads.ordinal()));
        assertEquals(volts, shunt.voltsAt(20), 1e-15);
        assertEquals(volts, shunt.voltsAt(-300), 1e-15);
        shunt.leads.connect(WiringSpec.RIGHT);
        assertEquals(0.00201, shunt.voltsAt(20), 1e-15, "mended");
    }
}
