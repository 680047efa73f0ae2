package org.gaugebench.sim.scenario;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Tells which mistakes one gauge cannot make together. */
public final class MistakeCheck {
    private MistakeCheck() {}

    /**
     * What is wrong with a set of mistakes.
     *
     * @param mistakes any set
     * @return sentences for people, each with what to do; empty where the set makes sense
     */
    public static List<String> problems(Set<Mistake> mistakes) {
        List<String> problems = new ArrayList<>();
        for (MistakeFamily family : MistakeFamily.values()) {
            List<Mistake> made = of(family, mistakes);
            if (family.isSingle() && made.size() > 1) {
                problems.add(contradiction(made.get(0), made.get(1)));
            }
        }
        contradict(problems, mistakes, Mistake.EFFICIENCY_PER_SAMPLE, Mistake.EFFICIENCY_ON_TOTALS);
        for (Mistake gap : of(MistakeFamily.GAP, mistakes)) {
            contradict(problems, mistakes, Mistake.ASSUMED_TICK, gap);
        }
        needs(problems, mistakes, MistakeFamily.AFTER_FULL, MistakeFamily.FULL);
        needs(problems, mistakes, MistakeFamily.HOURS_SEED, MistakeFamily.HOURS);
        needs(problems, mistakes, MistakeFamily.SHOWN_HOURS, MistakeFamily.HOURS);
        if (mistakes.contains(Mistake.FILTER_SEEDED_WITH_ZERO)
                && mistakes.contains(Mistake.HOURS_INSTANT)) {
            problems.add(
                    "'filter-seeded-with-zero' needs a filter with a memory, which"
                            + " 'hours-instant' is not; use 'hours-single-pole-3-min' instead");
        }
        return problems;
    }

    private static void contradict(
            List<String> problems, Set<Mistake> mistakes, Mistake one, Mistake other) {
        if (mistakes.contains(one) && mistakes.contains(other)) {
            problems.add(contradiction(one, other));
        }
    }

    private static String contradiction(Mistake one, Mistake other) {
        return "'"
                + one.key()
                + "' and '"
                + other.key()
                + "' contradict each other; keep one of them";
    }

    private static void needs(
            List<String> problems, Set<Mistake> mistakes, MistakeFamily user, MistakeFamily used) {
        List<Mistake> users = of(user, mistakes);
        if (!users.isEmpty() && of(used, mistakes).isEmpty()) {
            List<String> offered = new ArrayList<>();
            for (Mistake mistake : of(used, Set.of(Mistake.values()))) {
                offered.add("'" + mistake.key() + "'");
            }
            problems.add(
                    "'"
                            + users.get(0).key()
                            + "' does nothing alone; add one of "
                            + String.join(", ", offered));
        }
    }

    /** In the order of the enumeration, so that a message never depends on a set's order. */
    private static List<Mistake> of(MistakeFamily family, Set<Mistake> mistakes) {
        List<Mistake> found = new ArrayList<>();
        for (Mistake mistake : Mistake.values()) {
            if (mistake.family() == family && mistakes.contains(mistake)) {
                found.add(mistake);
            }
        }
        return found;
    }
}
