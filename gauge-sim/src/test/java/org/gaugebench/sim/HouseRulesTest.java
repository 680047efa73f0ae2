package org.gaugebench.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.gaugebench.house.ClassFiles;
import org.gaugebench.house.ImportOrderRule;
import org.gaugebench.house.SameEverywhereRule;
import org.gaugebench.house.SourceRule;
import org.gaugebench.house.TopLevelRule;
import org.junit.jupiter.api.Test;
import org.objectweb.asm.ClassReader;

/** The simulator keeps the house rules; the rules themselves live in gauge-core's test jar. */
class HouseRulesTest {
    private static final Path MODULE = TopLevelRule.projectRoot().resolve("gauge-sim");
    private static final String BASE = "org/gaugebench/sim/";
    private static final List<ClassReader> CLASSES =
            ClassFiles.under(MODULE.resolve("target/classes"));

    /**
     * From numbers to people. {@code random} is early because both the plant (clouds) and the front
     * end (noise) draw from it; {@code memory} because a scenario says what is wrong with one.
     */
    private static final List<String> ORDER =
            List.of(
                    "units",
                    "random",
                    "logs",
                    "memory",
                    "scenario",
                    "plant",
                    "frontend",
                    "program",
                    "device",
                    "device.exhibits",
                    "rig",
                    "judge",
                    "explain",
                    "adopt",
                    "study",
                    "advice",
                    "tune",
                    "agree",
                    "page",
                    "report",
                    "live.lessons",
                    "live.form",
                    "live",
                    "cli");

    /** Everything on the way from a seed to a verdict. */
    private static final Set<String> FEEDS_RESULTS =
            Set.of(
                    "units",
                    "random",
                    "logs",
                    "scenario",
                    "plant",
                    "frontend",
                    "memory",
                    "device",
                    "device/exhibits",
                    "rig",
                    "judge",
                    "explain",
                    "adopt",
                    "study",
                    "advice",
                    "tune");

    /** What no order expresses: a gauge never sees the truth, and the truth no gauge. */
    private static Map<String, Set<String>> never() {
        Map<String, Set<String>> never = new HashMap<>();
        for (String user : ORDER) {
            if (!user.equals("cli")) {
                never.put(user, new HashSet<>(Set.of("cli")));
            }
        }
        for (String device : List.of("program", "device", "device.exhibits")) {
            never.get(device).addAll(Set.of("plant", "frontend"));
        }
        never.get("plant").add("org.gaugebench.core");
        return never;
    }

    @Test
    void theRulesLookAtTheWholeSimulator() {
        assertFalse(CLASSES.size() < 10, "classes found: " + CLASSES.size());
    }

    @Test
    void noPackageUsesOneThatIsListedAfterIt() {
        ImportOrderRule rule = new ImportOrderRule("org.gaugebench.sim", ORDER, never());
        assertEquals(
                List.of(),
                rule.judgeClasses(CLASSES)
                        .judgeSources(MODULE.resolve("src/main/java"))
                        .findings());
    }

    @Test
    void resultsAreTheSameOnEveryMachine() {
        assertEquals(
                List.of(),
                SameEverywhereRule.check(
                        CLASSES,
                        p ->
                                p.startsWith(BASE)
                                        && FEEDS_RESULTS.contains(p.substring(BASE.length()))));
    }

    @Test
    void sourcesAreShortNarrowAndWithoutTabs() {
        assertEquals(List.of(), SourceRule.check(MODULE.resolve("src/main/java"), true));
        assertEquals(List.of(), SourceRule.check(MODULE.resolve("src/test/java"), false));
        assertEquals(List.of(), SourceRule.check(MODULE.resolve("src/jmh/java"), false));
    }
}
