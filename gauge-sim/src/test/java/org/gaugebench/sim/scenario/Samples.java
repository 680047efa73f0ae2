package org.gaugebench.sim.scenario;

import java.util.List;

/** Scenario texts that several tests use. */
final class Samples {
    private Samples() {}

    /** Nothing but what has to be there. */
    static final String SMALLEST =
            """
            format: 1
            title: Smallest
            duration: 1 d
            battery: {chemistry: lead-acid-agm, capacity: 60 Ah}
            sensor: {shunt: 100 A / 75 mV}
            """;

    /** Every key, none of them at its default. */
    static final String EVERYTHING =
            """
            format: 1
            title: "Everything: \\"all\\" keys"
            about: |
              Two lines
              for people.
            tags: [winter, full-charge]
            covers: [F4, FUL03, "req-12/b"]
            symptom: "The display: 99 % for days."
            seed: -7
            duration: 3 d
            tick: 500 ms
            battery:
              chemistry: lifepo4
              nominal-voltage: 24 V
              capacity: 100 Ah @ 20 h
              start: 61.5 %
              series-resistance: 11 mOhm
              polarization: {resistance: 9 mOhm, time-constant: 45 s}
              coulombic-efficiency: 99 %
              self-discharge: 3 %/month
              temperature: -5 °C
              acceptance-time: 30 min
              end-current: 0.1 %
              charge-stop: 29 V
              discharge-stop: none
              kinetic: {capacity-10-h: 93 Ah, capacity-1-h: 60 Ah}
              slow-polarization: {resistance: 4 mOhm, time-constant: 30 min}
              hysteresis: 8 mV
              capacity-by-temperature: on
              surroundings: {mean: 12 °C, swing: 8 K, warmest: 14 h, rise: 0.5 K/W,
                time-constant: 6 h}
              ageing: {capacity-loss: 20 %, resistance-growth: 50 %, acceptance-loss: 30 %}
              weak-cell: {capacity: 90 %, lag: 2 %}
            sensor:
              shunt: 200 A / 60 mV
              shunt-error: -0.1 %
              converter: 18 bit, 250 mV
              gain-error: 0.05 %
              offset: -3 uV
              noise: 0 V
              voltage-converter: 12 bit, 40 V
              voltage-noise: 2 mV
              sampling: instantaneous
              temperature-sensor: none
              offset-drift: 50 nV/K
              shunt-temperature-coefficient: -28 ppm/K
              shunt-heating: 4.5 K/W
              shunt-heating-time: 6 min
              thermal-emf: 15 uV
              thermal-emf-time: 2 h
              gain-asymmetry: 0.25 %
              nonlinearity-bow: 30 ppm
              nonlinearity-s: -20 ppm
              missing-codes: 16 counts
              dead-band: 2 uV
              range-limit: 5 mV
              range-hysteresis: 20 %
              range-offset: 3 uV
              voltage-gain-error: 1 %
              voltage-offset: -5 mV
              voltage-sense-resistance: 5 mOhm
              sampling-interval: 10 s
              awake-time: 1 s
              sampling-phase: 3 s
              conversion-time: 125 ms
              missing-sample-every: 2 h
              repeated-sample-every: 3 h
              bad-frame-every: 1 h
            gauge:
              kind: plain-counter
              start: 55 %
              shunt-rated-current: 100 A
              shunt-offset: -1.5 counts
              absorption: 28 V
              hold: 2 h
              chemistry: lead-acid-gel
              taper: 4 %
              measure-capacity: off
              full-overdue: 9 d
              memory:
                slots: 5
                slot-bytes: 300
                endurance: 1000
                faults:
                  - {kind: bit-rot, slot: 1, from: 3 h, byte: 12, bits: 129}
                  - {kind: erase-silent, slot: all, from: 1 h, to: 2 h}
                  - {kind: wear-out, slot: 4, after-erases: 77}
              clock: {error: -2 %, start: 4294957296 ms, jitter: 20 ms}
              off-time: at-least
              off-time-limit: 4 h
              cut-leaves: garbage
              cut-for: 3 s
            beside:
              - {name: core-gauge, kind: core, start: unknown, taper: 3 %, memory: none,
                 off-time: exact, off-time-limit: none}
              - {name: plain, kind: plain-counter}
              - {name: wrong, kind: exhibit, mistakes: [no-clamp, hours-instant, start-at-full]}
              - {name: totals, kind: exhibit, mistakes: [efficiency-on-totals, save-by-overwrite]}
            chargers:
              shore:
                switched: off
                absorption: 28.2 V
                float: 27.1 V
                current-limit: 15 A
                temperature-coefficient: -3 mV/K
                float-below: none
                absorption-limit: none
                sun: {peak: 9 A, sunrise: 5 h, sunset: 20 h 30 min, clouds: 30 %, cloud-depth: 70 %}
                cable-resistance: 8 mOhm
                meter-error: -0.4 %
                runs-for: 20 h
                pulse-frequency: 33.5 Hz
                equalizing: {voltage: 30 V, for: 90 min, every: 14 d}
              turbine:
                switched: off
                absorption: 28.2 V
                float: 27.1 V
                current-limit: 15 A
                temperature-coefficient: -3 mV/K
                float-below: none
                absorption-limit: none
                wind: {peak: 14 A, mean: 40 %, gustiness: 30 %, gust-time: 25 s}
            loads:
              lamp: {current: 1.2 A, switched: off}
              radio: {power: 30 W}
              heater: {resistance: 8 Ohm}
              pump: {current: 5 A, on-for: 10 min, every: 30 min, starts-after: 90 s,
                inrush: {peak: 500 %, time-constant: 150 ms}}
              hoist: {current: 5 A, on-for: 6 s, every: 1 min,
                returns: {current: 4 A, for: 3 s, after: 20 s, voltage-limit: 28 V}}
              dimmer: {current: 3 A, pulse-width: {frequency: 199.9 Hz, duty: 30 %, phase: 25 %}}
              inverter: {power: 40 W, ripple: {line-frequency: 60 Hz, depth: 80 %, phase: 5 %}}
            wiring:
              shunt: reversed
              sense-leads: swapped
              lug-resistance: 20 uOhm
              joint-resistance: 3 mOhm
              voltage-sense: battery
              own-supply: 12 mA
              parallel-path: 10 %
              past-shunt: {lamp: 100 %, shore: 25 %}
            timeline:
              - {at: 1 h, set: {wiring.sense-leads: open, wiring.past-shunt.radio: 50 %}}
              - {from: 3 h, to: 4 h, set: {wiring.shunt: right-way, wiring.own-supply: none}}
              - {at: 2 h, set: {lamp: on, isolator: open, protection: open}}
              - {at: 2 h, set: {lamp: off, lamp.current: 2 A, radio.power: 10 W}}
              - {from: 18 h, to: 23 h, every: 1 d, set: {lamp: on, battery.temperature: 3 °C}}
              - {at: 6 h, every: 12 h, until: 1 d, set: {sensor.offset: 3 uV, shore: on}}
              - {at: 1 h, set: {core-gauge.capacity: 90 Ah, core-gauge.full-overdue: 5 d}}
              - {from: 4 h, to: 5 h, set: {core-gauge.hold: 3 h, core-gauge.measure-capacity: on}}
              - {at: 1 h, command: new-battery, gauge: core-gauge}
              - {at: 2 h, command: zero-adjustment, gauge: core-gauge}
              - {at: 2 h, every: 1 d, command: span-adjustment, gauge: core-gauge, meter: -9.5 A}
              - {at: 3 h, command: forget-measured, gauge: core-gauge}
              - {from: 4 h, to: 5 h, set: {gauge.power: off, plain.off-time: unknown}}
              - {from: 7 h, to: 8 h, set: {sensor.thermal-emf: 0 V, sensor.missing-codes: 0 counts}}
              - {from: 8 h, to: 9 h, set: {sensor.samples: bad, gauge.clock: stopped}}
              - {from: 9 h, to: 9 h 5 min, set: {plain.clock-error: 1 %, plain.clock-jitter: 5 ms}}
              - {at: 10 h, set: {core-gauge.clock-jump: -1 h}}
              - {from: 10 h, to: 11 h, set: {wrong.capacity: 70 Ah, plain.capacity: 80 Ah}}
              - {at: 12 h, set: {totals.coulombic-efficiency: 97 %}}
              - {at: 6 h, set: {gauge.cut-at-write: 2}}
              - {at: 1 h, set: {gauge.declare: 80 %, plain.declare: 70 %, heater.resistance: 9 Ohm}}
            expect:
              - {at: 3 d, reading: state-of-charge, within: 2 %, of: truth, because: "a: b"}
              - {at: 3 d, reading: remaining-charge, gauge: plain, within: 1 Ah, of: 40 Ah}
              - {throughout: true, from: 1 d, to: 2 d, reading: voltage, at-least: 20 V,
                 at-most: 29 V}
              - {throughout: true, reading: current, at-most: 15 A}
              - {event: set-to-full, times: 1, from: 1 h, true-state-at-least: 97 %}
              - {event: powered-up, at-least: 1, at-most: 2}
              - {event: fault-raised, fault: samples-missing, times: 0}
              - {at: 2 d, reading: state-of-charge, gauge: core-gauge, within: band, of: truth}
              - {at: 2 d, reading: lower-edge, gauge: core-gauge, is: not-known}
              - {at: 2 d, reading: upper-edge, gauge: core-gauge, at-most: 99 %,
                 expected-to-fail: "x: y"}
              - {at: 1 d, reading: time-to-empty, is: more than 99 h}
              - {at: 1 d, reading: time-to-empty, is: not-known}
              - {by: 2 d, from: 1 h, reading: average-current, at-least: -2 A}
              - {never: true, from: 1 h, reading: temperature, is: not-known}
              - {once: true, to: 2 d, reading: full-charge-capacity, within: 1 Ah, of: truth}
              - {at: 1 d, register: full-count, is: 3}
              - {throughout: true, from: 1 h, register: saves, at-least: 1, at-most: 99}
              - {at: 1 d, register: charge-nanocoulombs, within: 5, of: 12}
              - {event: declared, from: 1 h, at-most: 3, first: {from: 1 h, to: 2 h}}
              - {event: declared, from: 2 h, last: {to: 2 d}}
              - {at: 9 d, reading: true-state-of-charge, is: 50 %}
              - {at: 1 d, reading: available-charge, at-least: 5 Ah}
              - {at: 1 d, reading: true-time-to-empty-load-held, within: 30 min, of: 26 h}
              - {at: 1 d, reading: true-time-to-empty-as-it-goes, is: never}
              - {at: 1 d, reading: time-to-empty, within: 2 h, of: truth}
            """;

    /** The problems of a text as one string, or an empty one if it is right. */
    static String problemsOf(String text) {
        try {
            ScenarioReader.read("hut.yaml", text);
            return "";
        } catch (ScenarioException e) {
            return e.render();
        }
    }

    /** A scenario without what its place in a file adds: two layouts then compare equal. */
    static Scenario withoutMarks(Scenario it) {
        List<Expectation> unmarked =
                it.expectations().stream()
                        .map(
                                e ->
                                        new Expectation(
                                                e.text(),
                                                new SourceMark("", 1, 1),
                                                e.gauge(),
                                                e.kind(),
                                                e.fromMillis(),
                                                e.toMillis(),
                                                e.reading(),
                                                e.register(),
                                                e.event(),
                                                e.fault(),
                                                e.times(),
                                                e.comparison(),
                                                e.value(),
                                                e.tolerance(),
                                                e.trueStateAtLeastPartsPerMillion(),
                                                e.because(),
                                                e.expectedToFail()))
                        .toList();
        return new Scenario(
                "",
                it.variant(),
                it.title(),
                it.about(),
                it.marks(),
                it.seed(),
                it.durationMillis(),
                it.tickMillis(),
                it.battery(),
                it.sensor(),
                it.gauges(),
                it.chargers(),
                it.loads(),
                it.wiring(),
                it.changes(),
                unmarked);
    }
}
