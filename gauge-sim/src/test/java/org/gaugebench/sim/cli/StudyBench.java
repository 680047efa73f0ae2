package org.gaugebench.sim.cli;

import java.nio.file.Path;

/** A small scenario and a study of it in a folder of their own. */
final class StudyBench extends CommandFolder {
    static final String SCENARIO =
            """
            format: 1
            title: Some hours at the pier
            duration: 5 h
            tick: 1 min
            battery:
              chemistry: lifepo4
              capacity: 100 Ah
              start: 90 %
              self-discharge: 0 %/month
            sensor: {shunt: 100 A / 75 mV, noise: 0 uV}
            loads:
              logger: {current: 1 A}
            """;
    static final String STUDY =
            """
            format: 1
            title: What do some hours do?
            scenario: hours.yaml
            devices: 60
            every: 1 h
            tolerances:
              sensor.offset: {rectangular: [-75 uV, 75 uV]}
              sensor.shunt-error: {class: 0.5}
              battery.temperature: {normal: 20 °C, standard-uncertainty: 5 K}
            """;

    StudyBench(Path folder) {
        super(folder);
        write("hours.yaml", SCENARIO);
        write("hours.study", STUDY);
    }
}
