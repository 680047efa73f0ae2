package org.gaugebench.sim.live;

import org.gaugebench.sim.report.Samples;
import org.gaugebench.sim.scenario.Scenario;

/** A small system with something of everything that can be moved. */
final class BenchSamples {
    private BenchSamples() {}

    static String text() {
        return String.join(
                "\n",
                "format: 1",
                "title: A bench for a class",
                "about: Something of everything.",
                "covers: [F1]",
                "duration: 3 d",
                "battery: {chemistry: lead-acid-agm, capacity: 20 Ah, start: 70 %}",
                "sensor: {shunt: 50 A / 75 mV, noise: 2 uV, offset: 1 uV}",
                "gauge: {start: 70 %, memory: {slots: 8}}",
                "beside:",
                "  - {name: plain, kind: plain-counter, start: 70 %}",
                "chargers:",
                "  panel: {current-limit: 3 A, sun: {peak: 3 A, clouds: 30 %}}",
                "  shore: {current-limit: 5 A, switched: off}",
                "loads:",
                "  lamp: {current: 1 A}",
                "  radio: {power: 12 W, on-for: 2 min, every: 30 min}",
                "  heater: {resistance: 8 Ohm, switched: off}",
                "timeline:",
                "  - {from: 18 h, to: 23 h, every: 1 d, set: {heater: on}}",
                "  - {at: 12 h, set: {gauge.hold: 30 min}}",
                "expect:",
                "  - {at: 3 d, reading: state-of-charge, within: 50 %, of: truth}",
                "");
    }

    static Scenario scenario() {
        return Samples.scenario("bench.yaml", text());
    }

    static Bench bench() {
        return new Bench(scenario(), 5);
    }
}
