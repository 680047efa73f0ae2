package org.gaugebench.sim.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.gaugebench.sim.advice.WiringPlan.Kind;
import org.gaugebench.sim.advice.WiringPlan.Part;
import org.gaugebench.sim.advice.WiringPlan.Source;
import org.gaugebench.sim.advice.WiringPlan.Use;
import org.gaugebench.sim.advice.WiringPlan.Wire;
import org.gaugebench.sim.scenario.Chemistry;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WiringPlanTest {
    private static final List<List<Source>> SOURCES =
            List.of(
                    List.of(),
                    List.of(Source.SOLAR),
                    List.of(Source.MAINS),
                    List.of(Source.SOLAR, Source.MAINS, Source.OTHER, Source.SOLAR));

    private static OwnSystem system(int loads) {
        List<String> words = new ArrayList<>();
        for (int i = 0; i < loads; i++) {
            words.add("load " + i + ": 1 A, 1 h" + (i % 5 == 4 ? ", inverter" : ""));
        }
        return OwnSamples.hut(Chemistry.LIFEPO4, 5, words.toArray(new String[0]));
    }

    /** Ends of the wires at a part, seen from the wires alone. */
    private static Set<String> ends(WiringPlan plan, String id, Use use) {
        Set<String> ends = new TreeSet<>();
        for (Wire each : plan.wires()) {
            if (each.use() == use && each.from().equals(id)) {
                ends.add(each.to());
            } else if (each.use() == use && each.to().equals(id)) {
                ends.add(each.from());
            }
        }
        return ends;
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 5, 12})
    void oneCableOnlyLeavesTheBatterysNegative(int loads) {
        for (List<Source> sources : SOURCES) {
            for (boolean isEarthed : new boolean[] {true, false}) {
                WiringPlan plan = WiringPlan.of(system(loads), sources, isEarthed);
                assertEquals(Set.of("shunt-battery-side"), ends(plan, "negative-post", Use.CABLE));
                assertEquals(Set.of(), ends(plan, "negative-post", Use.SUPPLY));
                assertEquals(Set.of(), ends(plan, "negative-post", Use.SENSE));
                assertEquals(Set.of("negative-post"), ends(plan, "shunt-battery-side", Use.CABLE));
                assertEquals(Set.of("negative-rail"), ends(plan, "shunt-load-side", Use.CABLE));
                assertEquals(Set.of("gauge"), ends(plan, "shunt-load-side", Use.SUPPLY));
                assertEquals(List.of(), plan.faults());
            }
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 5, 12})
    void everyNegativeIsOnTheLoadSideAndEveryPositiveFused(int loads) {
        for (List<Source> sources : SOURCES) {
            WiringPlan plan = WiringPlan.of(system(loads), sources, true);
            int users = 0;
            for (Part each : plan.parts()) {
                if (each.isUser()) {
                    users++;
                    assertEquals(
                            Set.of("fuse-" + each.id(), "negative-rail"),
                            ends(plan, each.id(), Use.CABLE));
                    assertEquals(
                            Set.of("positive-rail", each.id()),
                            ends(plan, "fuse-" + each.id(), Use.CABLE));
                }
            }
            // What an inverter feeds hangs on the inverter.
            long plugged = system(loads).loads().stream().filter(OwnLoad::byInverter).count();
            assertEquals(loads - plugged + (plugged > 0 ? 1 : 0) + sources.size(), users);
            assertEquals(Set.of("negative-rail"), ends(plan, "earth", Use.CABLE));
            assertEquals(Set.of("main-fuse"), ends(plan, "positive-post", Use.CABLE));
            assertEquals(Set.of("gauge-fuse"), ends(plan, "positive-post", Use.SUPPLY));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"load-1", "load-3", "charger-1"})
    void aNegativeOnTheBatterysPostIsAFault(String wrong) {
        WiringPlan plan = WiringPlan.withMistake(system(4), List.of(Source.MAINS), true, wrong);
        String faults = String.join("; ", plan.faults());
        assertTrue(faults.contains("2 wires on the battery's negative post"), faults);
        assertTrue(faults.contains(plan.part(wrong).name() + ": its negative"), faults);
    }

    @ParameterizedTest
    @ValueSource(strings = {"earth", "fuse-load-1"})
    void whatIsMissingIsAFault(String gone) {
        WiringPlan right = WiringPlan.of(system(2), List.of(), true);
        WiringPlan plan =
                new WiringPlan(
                        right.parts(),
                        right.wires().stream()
                                .filter(it -> !it.from().equals(gone) && !it.to().equals(gone))
                                .toList());
        assertFalse(plan.faults().isEmpty());
    }

    @ParameterizedTest
    @ValueSource(strings = {"SUPPLY", "CABLE"})
    void aSecondWireOnTheBatterysSideIsAFault(String use) {
        WiringPlan right = WiringPlan.of(system(2), List.of(), true);
        List<Wire> wires = new ArrayList<>(right.wires());
        wires.add(new Wire("gauge", "shunt-battery-side", Use.valueOf(use)));
        assertEquals(
                List.of("more than one cable on the battery's side of the shunt"),
                new WiringPlan(right.parts(), wires).faults());
        assertEquals(1, right.at(Kind.NEGATIVE_POST, Use.CABLE).size());
    }
}
