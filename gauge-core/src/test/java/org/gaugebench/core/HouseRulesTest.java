package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.gaugebench.house.AllocationRule;
import org.gaugebench.house.ClassFiles;
import org.gaugebench.house.FloatRule;
import org.gaugebench.house.ImportOrderRule;
import org.gaugebench.house.SourceRule;
import org.gaugebench.house.TopLevelRule;
import org.gaugebench.house.UnitSuffixRule;
import org.junit.jupiter.api.Test;
import org.objectweb.asm.ClassReader;

/**
 * The core keeps the house rules. The compiled classes are judged, so that a rule sees what the
 * compiler made of the source; {@code PlantedFaultsTest} proves that each rule can fail.
 */
class HouseRulesTest {
    private static final Path MODULE = TopLevelRule.projectRoot().resolve("gauge-core");
    private static final String BASE = "org/gaugebench/core";
    private static final List<ClassReader> CLASSES =
            ClassFiles.under(MODULE.resolve("target/classes"));

    /** The order in which a sample passes; the root wires all and nobody imports it. */
    private static final List<String> ORDER =
            List.of(
                    "fixed",
                    "port",
                    "settings",
                    "sense",
                    "charge",
                    "band",
                    "rules",
                    "estimate",
                    "readout",
                    "saved",
                    "");

    /** Methods off the tick's way that may allocate, each with the reason. */
    private static final Map<String, String> MAY_ALLOCATE =
            Map.of(
                    BASE + "/Gauge.powerUp", "once a power-up: everything starts anew",
                    BASE + "/Gauge.changeSettings", "an edit builds the stages anew",
                    BASE + "/GaugeMemory.scheduleOf", "an edit derives another save step",
                    BASE + "/GaugeMemory.mark", "an edit derives another mark",
                    BASE + "/Stages.adopt", "an accepted adjustment makes another conversion",
                    BASE + "/Stages.rateModel", "part of the constructor of the stages");

    /** Numbers that carry no unit, each with the reason. */
    private static final Map<String, String> NO_UNIT =
            Map.of(
                    BASE + "/port/Registers.DIGEST_START", "the published basis of a hash",
                    BASE + "/port/Registers.DIGEST_PRIME", "the published prime of a hash",
                    BASE + "/port/Sample.TEMPERATURE_ABSENT", "a mark, not a temperature",
                    BASE + "/port/Readout.NOT_KNOWN", "a mark, not a figure",
                    BASE + "/port/StateStore.OK", "an answer code",
                    BASE + "/port/StateStore.FAILED", "an answer code",
                    BASE + "/sense/ElapsedTime.BACKWARDS", "a mark, not a time",
                    BASE + "/saved/SavedStateLayout.MAGIC", "a mark, not a figure");

    /** Settings are cold: read by constructors, never by a tick. */
    private static boolean isHot(String packageName) {
        return !packageName.equals(BASE + "/settings");
    }

    /** Bare arithmetic knows no unit, and a setting's unit stands in its table. */
    private static boolean hasUnits(String packageName) {
        return isHot(packageName) && !packageName.equals(BASE + "/fixed");
    }

    @Test
    void theRulesLookAtTheWholeCore() {
        assertFalse(CLASSES.size() < 30, "classes found: " + CLASSES.size());
    }

    @Test
    void theCoreHoldsNoFloatingPoint() {
        assertEquals(List.of(), FloatRule.check(CLASSES));
    }

    @Test
    void nothingIsAllocatedWhereATickCanCome() {
        assertEquals(List.of(), AllocationRule.check(CLASSES, HouseRulesTest::isHot, MAY_ALLOCATE));
    }

    @Test
    void noPackageUsesOneThatIsListedAfterIt() {
        Map<String, Set<String>> never = new java.util.HashMap<>();
        ORDER.forEach(p -> never.put(p, Set.of("org.gaugebench.sim")));
        ImportOrderRule rule = new ImportOrderRule("org.gaugebench.core", ORDER, never);
        assertEquals(
                List.of(),
                rule.judgeClasses(CLASSES)
                        .judgeSources(MODULE.resolve("src/main/java"))
                        .findings());
    }

    @Test
    void everyNumberInTheHotPackagesSaysItsUnit() {
        assertEquals(List.of(), UnitSuffixRule.check(CLASSES, HouseRulesTest::hasUnits, NO_UNIT));
    }

    @Test
    void sourcesAreShortNarrowAndWithoutTabs() {
        assertEquals(List.of(), SourceRule.check(MODULE.resolve("src/main/java"), true));
        assertEquals(List.of(), SourceRule.check(MODULE.resolve("src/test/java"), false));
    }

    @Test
    void theTopLevelHoldsExactlyItsRooms() {
        Set<String> rooms =
                Set.of(
                        "README.md",
                        "DEVELOPERS.md",
                        "LICENSE",
                        "pom.xml",
                        "gauge-core",
                        "gauge-sim",
                        "scenarios");
        assertEquals(List.of(), TopLevelRule.check(TopLevelRule.projectRoot(), rooms));
    }
}
