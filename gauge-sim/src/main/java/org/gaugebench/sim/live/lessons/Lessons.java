package org.gaugebench.sim.live.lessons;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.page.PageAsset;

/** The lessons and the plans that lie in the program. */
public final class Lessons {
    private static final int COUNT = 14;
    private static final int PLANS = 3;
    private static final List<Lesson> ALL = readAll();
    private static final List<Plan> ALL_PLANS = readPlans();

    private Lessons() {}

    /** Every lesson, by number. */
    public static List<Lesson> all() {
        return ALL;
    }

    /**
     * One lesson.
     *
     * @param number from 1
     * @throws IllegalArgumentException if there is no such lesson
     */
    public static Lesson of(int number) {
        if (number < 1 || number > ALL.size()) {
            throw new IllegalArgumentException("there are lessons 1 to " + ALL.size());
        }
        return ALL.get(number - 1);
    }

    /** Every plan of a school lesson, by number. */
    public static List<Plan> plans() {
        return ALL_PLANS;
    }

    private static List<Lesson> readAll() {
        List<Lesson> all = new ArrayList<>();
        for (int i = 1; i <= COUNT; i++) {
            String file = "lesson-%02d.txt".formatted(i);
            try {
                all.add(LessonReader.read(file, PageAsset.text(Lessons.class, file)));
            } catch (TextException e) {
                throw new IllegalStateException(e.render(), e);
            }
        }
        return List.copyOf(all);
    }

    private static List<Plan> readPlans() {
        List<Plan> all = new ArrayList<>();
        for (int i = 1; i <= PLANS; i++) {
            String file = "plan-" + i + ".txt";
            try {
                all.add(Plan.read(file, PageAsset.text(Lessons.class, file)));
            } catch (TextException e) {
                throw new IllegalStateException(e.render(), e);
            }
        }
        return List.copyOf(all);
    }
}
