package org.gaugebench.house;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.gaugebench.house.fixture.PlantedAllocations;
import org.gaugebench.house.fixture.PlantedChance;
import org.gaugebench.house.fixture.PlantedFloats;
import org.gaugebench.house.fixture.PlantedUnits;
import org.gaugebench.house.fixture.early.LooksAheadByName;
import org.gaugebench.house.fixture.late.Later;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Each house rule finds the fault that was planted for it, and leaves what is allowed alone. */
class PlantedFaultsTest {
    private static final String FIXTURES = "org/gaugebench/house/fixture/";

    /** The members that were blamed. */
    private static Set<String> blamed(List<Finding> findings, Class<?> type) {
        String prefix = type.getName().replace('.', '/') + ".";
        return findings.stream()
                .map(f -> f.place().replace(prefix, "").replaceAll(":.*", ""))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void floatingPointIsFoundInEveryPlace() {
        List<Finding> findings = FloatRule.check(ClassFiles.of(PlantedFloats.class));
        assertEquals(
                Set.of("field", "conversion", "parameter", "result", "array", "boxed", "local"),
                blamed(findings, PlantedFloats.class));
    }

    @Test
    void aFloatingPointFindingNamesTheLineAndTheInstruction() {
        String text = FloatRule.check(ClassFiles.of(PlantedFloats.class)).toString();
        assertTrue(text.contains("PlantedFloats.conversion:8: floating-point instruction DMUL"));
        assertTrue(text.contains("PlantedFloats.conversion:8: floating-point constant 0.5"));
        assertTrue(text.contains("floating-point local unused"));
    }

    @Test
    void allocationIsFoundInEveryForm() {
        List<Finding> findings =
                AllocationRule.check(ClassFiles.of(PlantedAllocations.class), p -> true, Map.of());
        assertEquals(
                Set.of(
                        "object", "array", "objects", "table", "box", "lambda", "join", "number",
                        "copy"),
                blamed(findings, PlantedAllocations.class));
    }

    @Test
    void allocationIsNotJudgedInColdPackages() {
        assertEquals(
                List.of(),
                AllocationRule.check(
                        ClassFiles.of(PlantedAllocations.class), p -> false, Map.of()));
    }

    @Test
    void anAllowedAllocationIsSilentAndAStaleEntryIsFound() {
        List<Finding> findings =
                AllocationRule.check(
                        ClassFiles.of(PlantedAllocations.class),
                        p -> true,
                        Map.of(
                                FIXTURES + "PlantedAllocations.copy", "for this test",
                                FIXTURES + "PlantedAllocations.clean", "stale on purpose"));
        Set<String> blamed = blamed(findings, PlantedAllocations.class);
        assertTrue(blamed.contains("clean"));
        assertTrue(!blamed.contains("copy"));
    }

    @Test
    void fieldsWithoutAUnitAreFound() {
        List<Finding> findings =
                UnitSuffixRule.check(ClassFiles.of(PlantedUnits.class), p -> true, Map.of());
        assertEquals(Set.of("current", "chargeMinute"), blamed(findings, PlantedUnits.class));
    }

    @Test
    void aStaleUnitExceptionIsFound() {
        List<Finding> findings =
                UnitSuffixRule.check(
                        ClassFiles.of(PlantedUnits.class),
                        p -> true,
                        Map.of(
                                FIXTURES + "PlantedUnits.current", "for this test",
                                FIXTURES + "PlantedUnits.gainQ16", "stale on purpose"));
        assertEquals(Set.of("chargeMinute", "gainQ16"), blamed(findings, PlantedUnits.class));
    }

    @Test
    void whatDiffersBetweenMachinesIsFound() {
        List<Finding> findings =
                SameEverywhereRule.check(ClassFiles.of(PlantedChance.class), p -> true);
        assertEquals(
                Set.of("power", "reference", "clock", "date", "chance"),
                blamed(findings, PlantedChance.class));
    }

    private static ImportOrderRule order(String... packages) {
        return new ImportOrderRule("org.gaugebench.house.fixture", List.of(packages), Map.of());
    }

    @Test
    void aUseOfALaterPackageIsFoundInTheClassFile() {
        List<Finding> findings =
                order("early", "late")
                        .judgeClasses(ClassFiles.of(LooksAheadByName.class, Later.class))
                        .findings();
        assertEquals(1, findings.size(), findings::toString);
        assertTrue(findings.get(0).toString().contains("listed after it"));
    }

    @Test
    void aFoldedConstantOfALaterPackageIsFoundInTheSource() {
        Path tests = TopLevelRule.projectRoot().resolve("gauge-core/src/test/java");
        List<Finding> findings = order("", "early", "late").judgeSources(tests).findings();
        assertEquals(1, findings.size(), findings::toString);
        assertTrue(findings.get(0).place().endsWith("LooksAhead.java"));
    }

    @Test
    void theSameUseIsAllowedInTheOtherOrder() {
        assertEquals(
                List.of(),
                order("late", "early")
                        .judgeClasses(ClassFiles.of(LooksAheadByName.class, Later.class))
                        .findings());
    }

    @Test
    void aBarredUseIsFoundWhateverTheOrder() {
        ImportOrderRule rule =
                new ImportOrderRule(
                        "org.gaugebench.house.fixture",
                        List.of("late", "early"),
                        Map.of("early", Set.of("late")));
        List<Finding> findings =
                rule.judgeClasses(ClassFiles.of(LooksAheadByName.class)).findings();
        assertEquals(1, findings.size(), findings::toString);
        assertTrue(findings.get(0).toString().contains("never uses"));
    }

    @Test
    void aPackageThatTheHouseDoesNotKnowIsFound() {
        assertTrue(
                order("early")
                        .judgeClasses(ClassFiles.of(Later.class))
                        .findings()
                        .toString()
                        .contains("'late' is not in the house's list"));
    }

    @Test
    void longFilesLongLinesTabsAndNamelessPackagesAreFound(@TempDir Path root) throws IOException {
        Path folder = Files.createDirectories(root.resolve("some"));
        Files.writeString(folder.resolve("Long.java"), "// line\n".repeat(401));
        Files.writeString(folder.resolve("Fits.java"), ("x".repeat(100) + "\n").repeat(400));
        Files.writeString(folder.resolve("Wide.java"), "x".repeat(101) + "\n\ty\n");
        String text = SourceRule.check(root, true).toString();
        assertEquals(
                "[some/Long.java: 401 lines, at most 400 allowed,"
                        + " some/Wide.java:1: 101 columns, at most 100 allowed,"
                        + " some/Wide.java:2: a tab, some: no package-info.java]",
                text);
    }

    @Test
    void anExtraAndAMissingEntryOfTheTopLevelAreFound(@TempDir Path root) throws IOException {
        for (String name : List.of("LICENSE", "notes.txt", ".hidden", "target")) {
            Files.writeString(root.resolve(name), "");
        }
        assertEquals(
                "[notes.txt: has no room on the top level, pom.xml: is missing on the top level]",
                TopLevelRule.check(root, Set.of("LICENSE", "pom.xml")).toString());
    }
}
