package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.gaugebench.sim.advice.OwnersGauge.AfterOff;
import org.gaugebench.sim.scenario.Mistake;
import org.jspecify.annotations.Nullable;

/**
 * A gauge that does what the owner says of his, put together from the plain counter and the
 * exhibits; as words for him and as lines of a scenario.
 *
 * <p>What is not known does nothing wrong here: it counts only and is set by hand. How much worse
 * it may be is asked of {@link #worst}.
 */
public final class ComposedGauge {
    /** Its rule looks for so long; what an owner sees jump has jumped within minutes. */
    static final int HOLD_MINUTES = 3;

    /** Where nothing is known, these are bad ones of those that are sold; no source. */
    private static final double BAD_OWN_AMPS = 0.02;

    private static final double BAD_SMALLEST_AMPS = 0.1;

    private final OwnersGauge told;
    private final Set<Mistake> mistakes = EnumSet.noneOf(Mistake.class);

    private ComposedGauge(OwnersGauge told, boolean isEfficiencyMoved) {
        this.told = told;
        switch (told.setsFull()) {
            case VOLTS -> mistakes.add(Mistake.FULL_BY_VOLTAGE_ONLY);
            case VOLTS_AND_CURRENT -> mistakes.add(Mistake.STRICT_FULL_RULE);
            default -> {}
        }
        switch (told.pastFull()) {
            case SHOWS_MORE -> mistakes.add(Mistake.NO_CLAMP);
            case HIDES_MORE -> mistakes.add(Mistake.DISPLAY_ONLY_CLAMP);
            default -> {}
        }
        switch (told.afterOff()) {
            case FULL -> mistakes.add(Mistake.START_AT_FULL);
            case GUESSES -> mistakes.add(Mistake.VOLTAGE_GUESS_AT_START);
            case NOTHING, ZERO -> mistakes.add(Mistake.SAVE_BY_OVERWRITE);
            default -> {}
        }
        Double smallest = told.smallestAmps();
        if (smallest != null && smallest > 0) {
            mistakes.add(Mistake.DEAD_BAND);
        }
        if (told.longestHours() != null) {
            mistakes.add(Mistake.HOURS_WINDOW_30_MIN);
        }
        Double efficiency = told.efficiencySet();
        if (efficiency != null && (isEfficiencyMoved || efficiency != 1)) {
            // A plain counter has none; in a charge that is steady it matters little whether
            // samples or minutes are weighed.
            mistakes.add(Mistake.EFFICIENCY_PER_SAMPLE);
        }
    }

    /** Puts one together. */
    public static ComposedGauge of(OwnersGauge told) {
        return new ComposedGauge(told, false);
    }

    /** One whose efficiency can be moved, where it has one, and whose wire stays on. */
    static ComposedGauge settable(OwnersGauge told) {
        return new ComposedGauge(told.after(AfterOff.KEEPS), true);
    }

    /**
     * The same gauge with a bad answer in each place where none is known.
     *
     * @return {@code told} itself where all that matters is known
     */
    static OwnersGauge worst(OwnersGauge told) {
        Double own = told.ownAmps();
        Double smallest = told.smallestAmps();
        return new OwnersGauge(
                told.setsFull() == OwnersGauge.SetsFull.NOT_KNOWN
                        ? OwnersGauge.SetsFull.VOLTS
                        : told.setsFull(),
                told.pastFull() == OwnersGauge.PastFull.NOT_KNOWN
                        ? OwnersGauge.PastFull.SHOWS_MORE
                        : told.pastFull(),
                told.afterOff(),
                smallest == null ? Double.valueOf(BAD_SMALLEST_AMPS) : smallest,
                told.smallestAmpHours(),
                told.longestHours(),
                own == null ? Double.valueOf(BAD_OWN_AMPS) : own,
                told.zeroAmps(),
                told.pastShuntAmps(),
                told.efficiencySet());
    }

    /** {@link #worst} of a gauge of which something is told; null where that changes nothing. */
    static @Nullable OwnersGauge worse(OwnersGauge told) {
        OwnersGauge worst = worst(told);
        return told.isTold() && !worst.equals(told) ? worst : null;
    }

    /** Whether it believes something by itself when it starts. */
    boolean believes() {
        return mistakes.contains(Mistake.START_AT_FULL)
                || mistakes.contains(Mistake.VOLTAGE_GUESS_AT_START);
    }

    /**
     * Lines of a scenario's {@code gauge} block, without the word itself.
     *
     * @param startPercent what it is told at the start
     */
    List<String> lines(double startPercent) {
        List<String> lines = behaviour(startPercent);
        if (mistakes.contains(Mistake.STRICT_FULL_RULE)) {
            lines.add(format("hold: %d min", HOLD_MINUTES));
        }
        Double efficiency = told.efficiencySet();
        if (mistakes.contains(Mistake.EFFICIENCY_PER_SAMPLE) && efficiency != null) {
            lines.add(
                    format("coulombic-efficiency: %s %%", SystemLines.number(efficiency * 100, 4)));
        }
        return lines;
    }

    /**
     * Of these the lines that no setting of the owner's gauge stands behind.
     *
     * @param startPercent what it is told at the start
     */
    List<String> behaviour(double startPercent) {
        List<String> lines = new ArrayList<>();
        if (mistakes.isEmpty()) {
            lines.add("kind: plain-counter");
        } else {
            lines.add("kind: exhibit");
            lines.add(
                    mistakes.stream()
                            .map(Mistake::key)
                            .collect(Collectors.joining(", ", "mistakes: [", "]")));
        }
        if (!believes()) {
            lines.add(format("start: %s %%", SystemLines.number(startPercent, 3)));
        }
        // Beside it ours has a memory too, and one without faults.
        lines.add(
                mistakes.contains(Mistake.SAVE_BY_OVERWRITE)
                        ? "memory: {slots: 2, faults: [{kind: program-error, slot: all}]}"
                        : "memory: {slots: 2}");
        limits(lines);
        return lines;
    }

    private void limits(List<String> lines) {
        Double smallest = told.smallestAmps();
        if (mistakes.contains(Mistake.DEAD_BAND) && smallest != null) {
            // The file's step is a milliamp, and 10 A the most.
            double amps = Math.max(0.001, Math.min(10, smallest));
            lines.add(format("shown-as-zero-below: %s A", SystemLines.number(amps, 3)));
        }
        Double hours = told.longestHours();
        if (hours != null) {
            lines.add(format("longest-time: %.0f h", Math.max(1, Math.min(1_000, hours))));
        }
    }

    /**
     * What has to be told to it once it runs, so that it begins right all the same.
     *
     * @param percent what is true
     */
    List<String> startSteps(double percent) {
        if (!believes()) {
            return List.of();
        }
        String told = SystemLines.number(percent, 3);
        return List.of(format("{at: 1 min, set: {gauge.declare: %s %%}}", told));
    }

    /**
     * Its wire is off for a minute.
     *
     * @param minute of the run in which that begins
     */
    List<String> offSteps(long minute) {
        List<String> steps = new ArrayList<>();
        steps.add(
                format(
                        "{from: %d min, to: %d min, set: {gauge.power: off, better.power: off}}",
                        minute, minute + 1));
        if (told.afterOff() == AfterOff.ZERO) {
            // It kept nothing, and begins at 0.
            steps.add(format("{at: %d min, set: {gauge.declare: 0 %%}}", minute + 2));
        }
        return steps;
    }

    /** What the gauge that is run does, one sentence each. */
    public List<String> words() {
        return words(HOLD_MINUTES);
    }

    /**
     * The same of a gauge of which a hold was told.
     *
     * @param holdMinutes for which it looks before it sets itself to 100 %
     */
    List<String> words(long holdMinutes) {
        List<String> words = new ArrayList<>();
        words.add(
                switch (told.setsFull()) {
                    case VOLTS -> "sets itself to 100 % as soon as the volts are high";
                    case VOLTS_AND_CURRENT ->
                            format(
                                    "sets itself to 100 %% when the volts are high and the current"
                                            + " has been small for %d minutes",
                                    holdMinutes);
                    case NEVER -> "counts only, and nothing sets it to 100 %";
                    case BY_HAND -> "counts only, and is set to 100 % by hand";
                    case NOT_KNOWN ->
                            "counts only, and is set to 100 % by hand (not known whether it sets"
                                    + " itself)";
                });
        words.add(
                switch (told.pastFull()) {
                    case STOPS -> "stops counting at 100 %";
                    case SHOWS_MORE -> "counts on past 100 % and shows it";
                    case HIDES_MORE -> "counts on behind a 100 % that stands";
                    case NOT_KNOWN -> "stops counting at 100 % (not known)";
                });
        words.add(
                switch (told.afterOff()) {
                    case KEEPS -> "keeps its figure while its wire is off";
                    case FULL -> "shows 100 % after its wire was off";
                    case ZERO -> "shows 0 % after its wire was off";
                    case GUESSES -> "guesses from the volts after its wire was off";
                    case NOTHING -> "shows nothing after its wire was off, until it is set";
                    case NOT_KNOWN -> "keeps its figure while its wire is off (not known)";
                });
        Double smallest = told.smallestAmps();
        words.add(
                smallest == null
                        ? "counts every current (its smallest step is not known)"
                        : "counts no current below " + Sizing.amps(smallest));
        Double hours = told.longestHours();
        if (hours != null) {
            words.add(format("shows at most %.0f hours", hours));
        }
        return words;
    }

    private static String format(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
