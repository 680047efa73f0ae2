package org.gaugebench.house;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.objectweb.asm.ClassReader;

/**
 * Every int or long field says its unit: the last word of its name is a unit, a fixed-point format
 * (Q8, Q16) or one of the words for a bare number. A singular is a unit after "per" alone.
 */
public final class UnitSuffixRule extends CodeScan {
    private static final Set<String> UNITS =
            Set.of(
                    "counts",
                    "nanovolts",
                    "microvolts",
                    "millivolts",
                    "microamps",
                    "milliamps",
                    "nanocoulombs",
                    "picojoules",
                    "microjoules",
                    "millijoules",
                    "micros",
                    "millis",
                    "seconds",
                    "minutes",
                    "hours",
                    "days",
                    "millicelsius",
                    "millikelvin",
                    "percent",
                    "bytes",
                    "microohms",
                    "milliamphours");

    /** Numbers that have no unit: a number of things, or a code. */
    private static final Set<String> BARE =
            Set.of(
                    "count",
                    "ticks",
                    "times",
                    "bits",
                    "shift",
                    "divisor",
                    "sequence",
                    "version",
                    "slot",
                    "slots",
                    "index",
                    "word",
                    "code",
                    "offset",
                    "fingerprint",
                    "mask",
                    // A figure whose unit is the caller's.
                    "value");

    private static final Set<String> AFTER_PER =
            Set.of(
                    "million",
                    "millionth",
                    "mille",
                    "kelvin",
                    "celsius",
                    "count",
                    "minute",
                    "hour",
                    "second",
                    "milli",
                    "millivolt",
                    "microvolt",
                    "milliamp",
                    "microjoule",
                    "nanocoulomb",
                    "ampere");

    private final Map<String, String> allowed;
    private final Set<String> used = new LinkedHashSet<>();

    private UnitSuffixRule(Map<String, String> allowed) {
        this.allowed = allowed;
    }

    /**
     * Finds fields without a unit.
     *
     * @param classes the class files
     * @param packages says whether a package (with slashes) is judged
     * @param allowed class and field, such as {@code org/x/Gauge.mark}, to the reason why
     * @return a finding for each field, and for each entry of the list that is not needed
     */
    public static List<Finding> check(
            List<ClassReader> classes, Predicate<String> packages, Map<String, String> allowed) {
        UnitSuffixRule rule = new UnitSuffixRule(allowed);
        List<ClassReader> judged =
                classes.stream()
                        .filter(c -> packages.test(ClassFiles.packageOf(c.getClassName())))
                        .toList();
        List<Finding> findings = new ArrayList<>(rule.scan(judged));
        for (String entry : allowed.keySet()) {
            if (!rule.used.contains(entry)) {
                findings.add(new Finding(entry, "allowed without a unit, but not needed: drop it"));
            }
        }
        return findings;
    }

    @Override
    boolean enters(int classAccess, int access, String name, String descriptor) {
        return false;
    }

    @Override
    void field(String name, String descriptor, Object constant) {
        boolean number = descriptor.equals("I") || descriptor.equals("J");
        if (!number || saysUnit(name)) {
            return;
        }
        if (allowed.containsKey(place())) {
            used.add(place());
        } else {
            report("int or long without a unit at the end of its name");
        }
    }

    /** Whether a camel-case or upper-case name ends in a unit. */
    static boolean saysUnit(String name) {
        String[] words =
                name.replaceAll("([a-z0-9])([A-Z])", "$1_$2")
                        .toLowerCase(Locale.ROOT)
                        .split("_", -1);
        String last = words[words.length - 1];
        if (UNITS.contains(last) || BARE.contains(last) || last.matches("q[0-9]+")) {
            return true;
        }
        for (int i = 0; i < words.length - 1; i++) {
            if (words[i].equals("per")) {
                return AFTER_PER.contains(last);
            }
        }
        return false;
    }
}
