package org.gaugebench.sim.frontend;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import org.gaugebench.core.port.Sample;
import org.gaugebench.sim.plant.Circuit;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.ScenarioReader;
import org.gaugebench.sim.scenario.SensorTrait;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A gauge can be shown the volts of a file; what is true stays true. */
class LoggedVoltageTest {
    @TempDir private Path folder;

    @Test
    void theConverterSeesTheFileAsFarAsItGoes() throws Exception {
        Files.writeString(folder.resolve("v.csv"), "t,volts\n2,14.000\n6,14.400\n");
        Path file = folder.resolve("hut.yaml");
        Files.writeString(
                file,
                """
                format: 1
                title: Volts of a file
                duration: 10 s
                battery: {chemistry: lead-acid-agm, capacity: 60 Ah}
                sensor:
                  shunt: 100 A / 75 mV
                  voltage-noise: 0 V
                  voltage-profile: {file: v.csv, time: t, voltage: volts, unit: V}
                """);
        Scenario scenario = ScenarioReader.read(file);
        Circuit circuit = new Circuit(scenario, new SeedTree(1));
        FrontEnd frontEnd = new FrontEnd(scenario.sensor(), new SeedTree(1), "gauge");
        Sample sample = new Sample();
        // 1 mV a count: full scale 65.536 V of 16 bit.
        int[] expected = {0, 14_000, 14_100, 14_200, 14_300, 14_400, 0};
        for (int second = 1; second <= 7; second++) {
            circuit.step(1_000);
            frontEnd.sample(circuit, sample);
            int counts = expected[second - 1];
            int truth = (int) Math.round(circuit.voltageVolts() * 1_000);
            assertEquals(counts == 0 ? truth : counts, sample.voltageCounts, "at " + second);
            assertEquals(12_630, truth, 50, "the truth does not follow the file");
        }
        frontEnd.set(SensorTrait.VOLTAGE_GAIN_ERROR, 10_000);
        circuit = new Circuit(scenario, new SeedTree(1));
        circuit.step(4_000);
        frontEnd.sample(circuit, sample);
        assertEquals(14_342, sample.voltageCounts, "the channel's error comes on top");
    }
}
