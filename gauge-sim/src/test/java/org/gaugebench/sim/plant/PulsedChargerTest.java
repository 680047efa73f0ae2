package org.gaugebench.sim.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.BatterySpec;
import org.gaugebench.sim.scenario.ChargerSpec;
import org.gaugebench.sim.scenario.ChargerTraits;
import org.gaugebench.sim.scenario.LoadSpec;
import org.gaugebench.sim.scenario.WiringSpec;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A controller that holds its voltage by pulses of all that it has. */
class PulsedChargerTest {
    /** Sums and differences of currents under 100 A. */
    private static final double ROUNDING = 1e-9;

    private static ChargerSpec panel(double volts, double amps, double hertz) {
        return new ChargerSpec(
                "panel",
                true,
                Math.round(volts * 1e6),
                Math.round(volts * 1e6),
                Math.round(amps * 1e6),
                0,
                0,
                0,
                null,
                new ChargerTraits(0, 0, 0, null, Math.round(hertz * 1e3), null, null));
    }

    private static Circuit plant(BatterySpec battery, ChargerSpec charger, LoadSpec... loads) {
        return new Circuit(battery, List.of(charger), List.of(loads), new SeedTree(1));
    }

    @ParameterizedTest
    @CsvSource({"100, 1000", "1, 1000", "7.3, 250", "100000, 60000"})
    void theMeanIsThatOfTheSameCurrentWithoutPulses(double hertz, int tickMillis) {
        Circuit pulsed =
                plant(Plants.leadAcid(70), panel(14.4, 30, hertz), Plants.cycling(4, 300, 700));
        Circuit even = plant(Plants.leadAcid(70), panel(14.4, 30, 0), Plants.cycling(4, 300, 700));
        for (int tick = 0; tick < 5_000; tick++) {
            pulsed.step(tickMillis);
            even.step(tickMillis);
            assertEquals(even.meanCurrentAmps(), pulsed.meanCurrentAmps());
            assertEquals(even.meanShuntAmps(), pulsed.meanShuntAmps());
            assertEquals(even.voltageVolts(), pulsed.voltageVolts());
        }
        assertEquals(even.chargeAmpHours(), pulsed.chargeAmpHours());
        assertEquals(even.voltageVolts(), even.instantVolts());
        assertEquals(14.4, even.voltageVolts(), "there are pulses to compare");
    }

    /** All or nothing, and the voltage as Ohm's law has it: 5 mOhm of battery, 60 of joint. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void anInstantSeesAllOrNothingAndTheVoltageOfIt(boolean voltageAtBattery) {
        Circuit plant = plant(Plants.leadAcid(80), panel(13.6, 20, 97.317), Plants.amps(2));
        plant.setWiring(
                WiringSpec.RIGHT
                        .with("joint-resistance", 60_000)
                        .with("voltage-sense", voltageAtBattery ? 1 : 0));
        double ohms = voltageAtBattery ? 0.005 : 0.065;
        double meanPart = 0;
        int on = 0;
        int ticks = 0;
        double highest = 0;
        for (int second = 0; second < 20_000; second++) {
            plant.step(1_000);
            double given = plant.chargerAmps("panel");
            if (given >= 20) {
                assertEquals(18, plant.currentAmps(), ROUNDING, "bulk has no pulses");
                assertEquals(plant.voltageVolts(), plant.instantVolts());
                continue;
            }
            boolean flows = plant.currentAmps() > 0;
            assertEquals(flows ? 18 : -2, plant.currentAmps(), ROUNDING);
            assertEquals(plant.currentAmps(), plant.shuntAmps());
            double rise = plant.currentAmps() - plant.meanCurrentAmps();
            assertEquals(plant.voltageVolts() + ohms * rise, plant.instantVolts(), ROUNDING);
            meanPart += given / 20;
            on += flows ? 1 : 0;
            ticks++;
            highest = Math.max(highest, plant.instantVolts());
        }
        assertTrue(ticks > 10_000, "it regulates");
        // 317/1000 of a period a second: the phases stand at thousandths, which favours on by half
        // one.
        assertEquals(meanPart / ticks, on / (double) ticks, 0.001);
        if (!voltageAtBattery) {
            assertEquals(13.6 + 0.065 * 18, highest, 0.13, "the last pulses, at some 2 A of mean");
        }
    }

    /** A second in step with the pulses finds the beginning of one every time. */
    @Test
    void aMeterInStepWithThePulsesSeesThePeaksAlone() {
        Circuit plant = plant(Plants.leadAcid(90), panel(14.4, 20, 50));
        Plants.run(plant, Plants.HOUR, 1_000);
        for (int second = 0; second < 3_600; second++) {
            plant.step(1_000);
            assertTrue(plant.meanCurrentAmps() < 10);
            assertEquals(20, plant.currentAmps(), ROUNDING);
        }
    }

    @Test
    void aPulsedControllerGivesACyclingLoadNothingBeyondItsPulses() {
        // The load is on at the beginning of each second, where the meter looks, as is a pulse.
        Circuit plant =
                plant(Plants.leadAcid(95), panel(14.0, 20, 50), Plants.cycling(6, 500, 1_000));
        Plants.run(plant, 6 * Plants.HOUR, 1_000);
        assertTrue(plant.chargerAmps("panel") < 10, "it has current to spare");
        assertEquals(20 - 6, plant.currentAmps(), ROUNDING);
    }

    @Test
    void whatGoesPastTheShuntGoesThereInPulses() {
        Circuit plant = plant(Plants.leadAcid(90), panel(14.4, 20, 97.317), Plants.amps(2));
        plant.setWiring(WiringSpec.RIGHT.with("past-shunt.panel", 250_000));
        Plants.run(plant, Plants.HOUR, 1_000);
        int on = 0;
        for (int second = 0; second < 1_000; second++) {
            plant.step(1_000);
            double given = plant.currentAmps() + 2;
            assertEquals(0.75 * given - 2, plant.shuntAmps(), ROUNDING);
            on += given > 1 ? 1 : 0;
        }
        assertTrue(on > 50 && on < 950, on + " of 1000");
    }

    @Test
    void aCopyGoesOnToTheSameInstants() {
        Circuit plant = plant(Plants.leadAcid(85), panel(14.4, 20, 97.317), Plants.amps(1));
        Plants.run(plant, Plants.HOUR, 1_000);
        Circuit copy = plant.copy();
        assertEquals(plant.currentAmps(), copy.currentAmps());
        assertEquals(plant.instantVolts(), copy.instantVolts());
        for (int second = 0; second < 10_000; second++) {
            plant.step(1_000);
            copy.step(1_000);
            assertEquals(plant.currentAmps(), copy.currentAmps());
            assertEquals(plant.instantVolts(), copy.instantVolts());
        }
    }
}
