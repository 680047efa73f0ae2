package org.gaugebench.sim.agree;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.gaugebench.core.saved.SavedField;
import org.gaugebench.core.settings.ChemistryPreset;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * Makes a script that shows a difference as short and as plain as it can: steps after the first
 * difference go, then halves, quarters and so on down to single steps, then the faults of the
 * memory, then each setting that is not as usual, then each figure of a forged record.
 */
final class Shrinker {
    private final Predicate<Script> differs;
    private final long deadlineNanos;

    /**
     * Prepares to shrink.
     *
     * @param differs whether a script still shows a difference
     * @param mostMillis how long it may take
     */
    Shrinker(Predicate<Script> differs, long mostMillis) {
        this.differs = differs;
        this.deadlineNanos = System.nanoTime() + mostMillis * 1_000_000;
    }

    private boolean hasTime() {
        return System.nanoTime() < deadlineNanos;
    }

    /**
     * Shrinks.
     *
     * @param script that shows a difference
     * @param lastStep the first step after which it does
     */
    Script shrink(Script script, int lastStep) {
        Script now = script;
        Script head = script.with(script.steps().subList(0, lastStep + 1));
        if (differs.test(head)) {
            now = head;
        }
        now = steps(now);
        if (!now.faults().isEmpty() && differs.test(now.withSoundMemory())) {
            now = now.withSoundMemory();
        }
        now = settings(now);
        return figures(steps(now));
    }

    /** Each figure of a forged record that need not be as it is becomes a plain one. */
    private Script figures(Script script) {
        Script now = script;
        for (int i = 0; i < now.steps().size(); i++) {
            for (SavedField field : SavedField.values()) {
                if (now.steps().get(i) instanceof Step.Forge forge && hasTime()) {
                    List<Step> steps = new ArrayList<>(now.steps());
                    steps.set(i, forge.with(field, Math.max(0, field.lowest())));
                    Script tried = now.with(steps);
                    now = !steps.equals(now.steps()) && differs.test(tried) ? tried : now;
                }
            }
        }
        return now;
    }

    private Script steps(Script script) {
        Script now = script;
        int chunk = now.steps().size() / 2;
        while (chunk >= 1 && hasTime()) {
            boolean went = false;
            // From the end: what comes late is needed least. The first step is power.
            for (int end = now.steps().size(); end - chunk >= 1 && hasTime(); end -= chunk) {
                List<Step> fewer = new ArrayList<>(now.steps().subList(0, end - chunk));
                fewer.addAll(now.steps().subList(end, now.steps().size()));
                Script tried = now.with(fewer);
                if (differs.test(tried)) {
                    now = tried;
                    went = true;
                    end = Math.min(end, now.steps().size() + chunk);
                }
            }
            chunk = went && chunk > 1 ? Math.min(chunk, now.steps().size() / 2) : chunk / 2;
        }
        return now;
    }

    private Script settings(Script script) {
        GaugeSettings usual = usual(script.settings());
        Script now = script;
        for (Setting setting : Setting.values()) {
            long value = now.settings().get(setting);
            if (value == usual.get(setting) || !hasTime()) {
                continue;
            }
            GaugeSettings.Builder builder = now.settings().toBuilder();
            builder.set(setting, usual.get(setting));
            if (builder.problems().isEmpty()) {
                Script tried = now.with(builder.build());
                now = differs.test(tried) ? tried : now;
            }
        }
        return now;
    }

    /** The preset of the script's own chemistry and voltage. */
    static GaugeSettings usual(GaugeSettings settings) {
        for (ChemistryPreset each : ChemistryPreset.values()) {
            if (each.code() == settings.get(Setting.CHEMISTRY)) {
                return each.builder(settings.get(Setting.NOMINAL_VOLTAGE)).build();
            }
        }
        throw new IllegalStateException("no preset of that code");
    }
}
