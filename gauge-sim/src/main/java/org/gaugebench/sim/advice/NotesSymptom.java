package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.gaugebench.sim.logs.OwnersNote;
import org.gaugebench.sim.logs.OwnersNote.Word;
import org.gaugebench.sim.units.ShuntRating;

/** What may be behind notes: each cause's best size by least squares, and which fit alike. */
public final class NotesSymptom {
    /** A ratio of likelihoods at three standard deviations: 3 squared. */
    private static final double TOLD_APART = 9;

    /** What one size more has to bring (the information criterion of Akaike, from memory). */
    private static final double PENALTY = 2;

    /** Twice the scatter that was reckoned with; beyond it no single cause explains the notes. */
    private static final double WORST_MEAN_SQUARE = 4;

    /** Dark at so much shown is wrong whatever explains it: three times what empty may be off. */
    private static final double DARK_PERCENT = 10;

    /** Which check comes first where several would do: what is done in a minute, then a night. */
    private static final List<TroubleCause> BY_EFFORT =
            List.of(
                    TroubleCause.REVERSED,
                    TroubleCause.SCALE,
                    TroubleCause.OWN_CURRENT,
                    TroubleCause.PAST_SHUNT,
                    TroubleCause.FULL_TOO_EARLY,
                    TroubleCause.FULL_NEVER,
                    TroubleCause.ZERO_UP,
                    TroubleCause.ZERO_DOWN,
                    TroubleCause.HEAT,
                    TroubleCause.CAPACITY_LARGE,
                    TroubleCause.CAPACITY_SMALL,
                    TroubleCause.SELF_DISCHARGE);

    private static final int GRID = 120;
    private static final int HALVINGS = 40;

    static final List<TroubleCause> TWELVE =
            List.of(
                    TroubleCause.ZERO_UP,
                    TroubleCause.ZERO_DOWN,
                    TroubleCause.OWN_CURRENT,
                    TroubleCause.PAST_SHUNT,
                    TroubleCause.HEAT,
                    TroubleCause.CAPACITY_LARGE,
                    TroubleCause.CAPACITY_SMALL,
                    TroubleCause.FULL_TOO_EARLY,
                    TroubleCause.FULL_NEVER,
                    TroubleCause.SELF_DISCHARGE,
                    TroubleCause.SCALE,
                    TroubleCause.REVERSED);

    private NotesSymptom() {}

    /**
     * A cause, its best size and what is then left over.
     *
     * @param cause what it is
     * @param size in the cause's own unit
     * @param misfit sum of squares over variances, with the penalty
     */
    record Fit(TroubleCause cause, double size, double misfit) {}

    /**
     * Answers.
     *
     * @param notes at least two, in order of time
     * @param system as it was told
     * @param gauge the owner's
     * @param shunt that is fitted
     */
    public static SymptomResult of(
            List<OwnersNote> notes, OwnSystem system, OwnersGauge gauge, ShuntRating shunt) {
        NotesModel model = model(notes, system, gauge, shunt);
        List<Fit> fits = fits(model, gauge);
        double nothing = model.misfitOfNothing();
        Fit best = fits.get(0);
        List<String> assumed = new ArrayList<>();
        assumed.add("between notes the loads draw what they draw in the mean of a day");
        assumed.add("one cause at a time; two at once may look like a third");
        assumed.add("volts are kept with the notes, and not used: under load they say little");
        List<String> next = new ArrayList<>();
        advise(notes, next);
        double flat = shownWhenFlat(notes);
        if (nothing <= best.misfit() + TOLD_APART - PENALTY && flat < DARK_PERCENT) {
            return new SymptomResult(
                    text(
                            "Nothing wrong can be told from these %d notes: a right gauge fits"
                                    + " them to %.1f points.",
                            notes.size(), scatter(nothing, notes, model)),
                    List.of(),
                    List.of(),
                    assumed,
                    next);
        }
        List<Fit> alike =
                fits.stream().filter(it -> it.misfit() <= best.misfit() + TOLD_APART).toList();
        List<SymptomResult.Ranked> ranked = new ArrayList<>();
        for (Fit each : fits.subList(0, Math.min(fits.size(), Math.max(3, alike.size())))) {
            // One that explains no more than nothing does is no cause to look for.
            if (!alike.contains(each) && each.misfit() >= nothing) {
                continue;
            }
            ranked.add(
                    new SymptomResult.Ranked(
                            each.cause(),
                            text(
                                    "%s; leaves %.1f points",
                                    size(each, system), scatter(each.misfit(), notes, model))));
        }
        return new SymptomResult(
                answer(best, alike, notes, system, model),
                ranked,
                alike.stream().map(Fit::cause).toList(),
                assumed,
                next);
    }

    /** The highest percent at which the lights went out; 0 if they never did. */
    private static double shownWhenFlat(List<OwnersNote> notes) {
        return notes.stream()
                .filter(it -> it.word() == Word.RAN_FLAT)
                .mapToDouble(OwnersNote::percent)
                .max()
                .orElse(0);
    }

    /** The twelve, the one that fits best first; the order of the enum among equals. */
    static List<Fit> fits(NotesModel model, OwnersGauge gauge) {
        List<Fit> fits = new ArrayList<>();
        for (TroubleCause cause : TWELVE) {
            boolean never =
                    gauge.setsFull() == OwnersGauge.SetsFull.NEVER
                            || gauge.setsFull() == OwnersGauge.SetsFull.BY_HAND;
            // That it never does is told then, and not a trouble to be found.
            if (never && cause == TroubleCause.FULL_NEVER) {
                continue;
            }
            double size = best(model, cause);
            fits.add(new Fit(cause, size, model.misfit(cause, size) + PENALTY));
        }
        fits.sort(Comparator.comparingDouble(Fit::misfit));
        return fits;
    }

    static NotesModel model(
            List<OwnersNote> notes, OwnSystem system, OwnersGauge gauge, ShuntRating shunt) {
        double efficiency =
                MonthAhead.read(OwnScenario.of(system, gauge, shunt, 0, 0, OwnScenario.Plan.SHORT))
                                .battery()
                                .coulombicEfficiencyPartsPerMillion()
                        / 1e6;
        return new NotesModel(notes, system, gauge, efficiency);
    }

    /** A grid finds the valley, for clamps make more than one; thirds narrow it. */
    private static double best(NotesModel model, TroubleCause cause) {
        double least = model.least(cause);
        double step = (model.most(cause) - least) / GRID;
        int found = 0;
        double lowest = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= GRID; i++) {
            double misfit = model.misfit(cause, least + i * step);
            if (misfit < lowest) {
                lowest = misfit;
                found = i;
            }
        }
        double low = least + Math.max(0, found - 1) * step;
        double high = least + Math.min(GRID, found + 1) * step;
        for (int i = 0; i < HALVINGS; i++) {
            double third = (high - low) / 3;
            if (model.misfit(cause, low + third) <= model.misfit(cause, high - third)) {
                high -= third;
            } else {
                low += third;
            }
        }
        return (low + high) / 2;
    }

    private static double scatter(double misfit, List<OwnersNote> notes, NotesModel model) {
        return StrictMath.sqrt(Math.max(0, misfit) / notes.size() * model.shownVariance());
    }

    private static String answer(
            Fit best, List<Fit> alike, List<OwnersNote> notes, OwnSystem system, NotesModel model) {
        if (best.misfit() > WORST_MEAN_SQUARE * notes.size()) {
            return text(
                    "None of the twelve alone explains these %d notes: the nearest, %s, leaves %.1f"
                            + " points.",
                    notes.size(), best.cause().words(), scatter(best.misfit(), notes, model));
        }
        if (alike.size() == 1) {
            return text(
                    "These %d notes point to one cause: %s, %s.",
                    notes.size(), best.cause().words(), size(best, system));
        }
        List<String> words = alike.stream().map(it -> it.cause().words()).toList();
        return text(
                "These %d cannot be told apart by these %d notes: %s. What separates them: %s.",
                alike.size(), notes.size(), String.join("; ", words), separating(alike));
    }

    /** A check for each but the last, which is what is left when they all find nothing. */
    private static String separating(List<Fit> alike) {
        List<TroubleCause> order = new ArrayList<>(alike.stream().map(Fit::cause).toList());
        order.sort(Comparator.comparingInt(BY_EFFORT::indexOf));
        return order.subList(0, order.size() - 1).stream()
                .map(TroubleCause::check)
                .distinct()
                .collect(Collectors.joining("; then "));
    }

    private static void advise(List<OwnersNote> notes, List<String> next) {
        if (notes.stream().noneMatch(it -> it.word() == Word.NOTHING)) {
            next.add("note a day with nothing on: it tells a zero error from all else");
        }
        if (notes.stream().noneMatch(it -> it.word() == Word.RAN_FLAT)) {
            next.add("note when the lights go out, if they do: what is not counted shows there");
        }
        if (notes.stream().allMatch(it -> it.shownAmpHours() == null)) {
            next.add("note the amp-hours shown too: they tell capacity from shunt rating");
        }
        if (notes.stream().allMatch(it -> it.chargedAmpHours() == null)) {
            next.add("note the amp-hours that the charger says it put in");
        }
    }

    private static String size(Fit fit, OwnSystem system) {
        double size = fit.size();
        return switch (fit.cause()) {
            case ZERO_UP, ZERO_DOWN, OWN_CURRENT ->
                    text(
                            "%s, %.1f points a day",
                            Sizing.amps(size), size * 24 / system.ampHours() * 100);
            case PAST_SHUNT -> text("%.0f %% of what the loads draw", size * 100);
            case HEAT -> text("%.0f %% of what is put in counted too much", size * 100);
            case CAPACITY_LARGE -> text("typed in %.0f %% too large", (size - 1) * 100);
            case CAPACITY_SMALL -> text("typed in %.0f %% too small", (1 - 1 / size) * 100);
            case FULL_TOO_EARLY -> text("%.0f %% missing when it says 100 %%", size);
            case FULL_NEVER ->
                    // At the least size the notes say nothing of how much.
                    size <= 1
                            ? "it never jumps to 100 when the charger is done"
                            : text("%.1f points missing at first", size);
            case SELF_DISCHARGE -> text("%.0f %% of it a month", size * 100);
            case SCALE -> text("currents shown %.2f times as large", size);
            default -> "every current has the wrong sign";
        };
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
