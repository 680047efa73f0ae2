package org.gaugebench.sim.advice;

import java.util.List;
import org.gaugebench.sim.logs.OwnersNote;
import org.gaugebench.sim.logs.OwnersNote.Word;

/**
 * What a gauge would have shown at each note, had it one cause of trouble of a given size.
 *
 * <p>Between two notes the loads draw what they draw in the mean of a day, more or less: no two
 * days are alike, and what they draw more or less stays in count and battery. So the walk from note
 * to note is a filter of one state (Kalman): each note corrects it, and what is left over is
 * weighed by what could be expected. What was charged is what the note says, or else what was
 * missing where the charger had finished. The battery is known where it is full and where it is
 * flat.
 */
final class NotesModel {
    /** How unlike the days are, in parts of a day's use, as a standard deviation; no source. */
    private static final double DAY_TO_DAY = 0.1;

    /** How well anybody knows where empty is: 3 points; common practice, no source. */
    static final double FLAT_VARIANCE = 9;

    /** What a charger's display is worth at the end of a charge, and what full is: 3 points. */
    private static final double SHORT_VARIANCE = 9;

    /** Lead takes a tenth of it and more while it gasses; no source. */
    private static final double LEAD_OVER_VARIANCE = 100;

    /** Gauges that wait for a proof stand a point below 100 %. */
    private static final double NEAR_FULL = 98;

    private static final double NEAR_FULL_VARIANCE = 1;

    /** Shown amp-hours against percent times what is printed: 1 % of it, both rounded. */
    static final double RATIO_VARIANCE = 1;

    /** Four standard deviations: something else happened that nobody wrote down. */
    private static final double NOT_EXPLAINED = 16;

    /** Lead takes its last charge badly: much of what goes in from there on is gas; no source. */
    private static final double GASSES_FROM = 85;

    private static final double GAS_PART = 0.5;
    private static final double MOST_GAS = 25;

    /** That a gauge wired the other way round sets itself is the exception. */
    private static final double SET_REVERSED = 1;

    /** So much shown when the charger has finished: its owner has just set it. */
    private static final double SET_PERCENT = 99;

    /**
     * A gauge that is never set comes to 100 by itself where a charger ends late, but not often.
     */
    private static final double NEVER_AT_100 = 3;

    /** A point or so: what a float lets go again, before anybody looks; no source. */
    private static final double AFTER_FULL_VARIANCE = 1;

    private static final double[] STEPS = {10, 5, 2, 1, 0.5, 0.2};

    private final List<OwnersNote> notes;
    private final OwnSystem system;
    private final OwnersGauge gauge;
    private final double efficiency;
    private final double loadsPerHour;
    private final double rounding;
    private final double shownVariance;
    private final double walkVariancePerHour;

    NotesModel(List<OwnersNote> notes, OwnSystem system, OwnersGauge gauge, double efficiency) {
        this.notes = notes;
        this.system = system;
        this.gauge = gauge;
        this.efficiency = efficiency;
        this.loadsPerHour = system.loads().stream().mapToDouble(OwnLoad::ampHoursPerDay).sum() / 24;
        double daily = loadsPerHour * 24 / system.ampHours() * 100 * DAY_TO_DAY;
        this.walkVariancePerHour = daily * daily / 24;
        this.rounding = step(notes);
        this.shownVariance = rounding * rounding / 12 + timeOfDay() + 0.05;
    }

    /** To what he rounds: the coarsest step that all percents are multiples of. */
    private static double step(List<OwnersNote> notes) {
        for (double step : STEPS) {
            if (notes.stream().allMatch(it -> isMultiple(it.percent(), step))) {
                return step;
            }
        }
        return 0.1;
    }

    private static boolean isMultiple(double percent, double step) {
        double parts = percent / step;
        return Math.abs(parts - StrictMath.rint(parts)) < 1e-6;
    }

    /**
     * A load of a few hours takes its charge at once, and nobody says when: a saw-tooth about the
     * mean of the day, whose variance is its height squared by 12, at both ends of a stretch.
     */
    private double timeOfDay() {
        double sum = 0;
        for (OwnLoad load : system.loads()) {
            double more = load.amps() - load.idleAmps();
            double hours = load.hoursPerDay();
            double height = more * hours * (1 - hours / 24) / system.ampHours() * 100;
            sum += 2 * height * height / 12;
        }
        return sum;
    }

    /** Variance of what is shown, from rounding and time of day. */
    double shownVariance() {
        return shownVariance;
    }

    /** Smallest size that is tried. */
    double least(TroubleCause cause) {
        return switch (cause) {
            case CAPACITY_LARGE, CAPACITY_SMALL -> 1.02;
            case SCALE -> 0.3;
            case REVERSED -> 1;
            case FULL_TOO_EARLY, FULL_NEVER -> 1;
            default -> 0;
        };
    }

    /** Largest size that is tried: far beyond what anybody would not see at once. */
    double most(TroubleCause cause) {
        double percentPerDay = system.ampHours() / 100 / 24;
        return switch (cause) {
            case ZERO_UP, ZERO_DOWN, OWN_CURRENT -> 30 * percentPerDay;
            case PAST_SHUNT -> 0.95;
            case HEAT -> Math.min(0.4, 1.3 - efficiency);
            case CAPACITY_LARGE, CAPACITY_SMALL, SCALE -> 3;
            case FULL_TOO_EARLY, FULL_NEVER -> 90;
            case SELF_DISCHARGE -> 3;
            default -> 1;
        };
    }

    /** Sum of squares of what is left over, each by its variance. */
    double misfit(TroubleCause cause, double size) {
        return new Walk(cause, size).sum();
    }

    /** The same where nothing is wrong. */
    double misfitOfNothing() {
        return new Walk(TroubleCause.ZERO_UP, 0).sum();
    }

    /** One cause of one size from the first note to the last. */
    private final class Walk {
        private final TroubleCause cause;
        private final double size;
        private final double typed;
        private double truth;
        private double shown;
        private double sum;
        // Of what the loads drew more or less, in points squared.
        private double variance;
        private double shownPerPoint = 1;
        private double filled;
        // Of the battery alone, in points squared: gas at the end of a charge of lead.
        private double doubt;

        Walk(TroubleCause cause, double size) {
            this.cause = cause;
            this.size = size;
            this.typed =
                    system.ampHours()
                            * switch (cause) {
                                case CAPACITY_LARGE -> size;
                                case CAPACITY_SMALL -> 1 / size;
                                default -> 1;
                            };
            shown = notes.get(0).percent();
            truth = cause == TroubleCause.FULL_NEVER ? Math.min(100, shown + size) : shown;
            anchor(notes.get(0));
        }

        private double of(TroubleCause which) {
            return cause == which ? size : 0;
        }

        double sum() {
            compare(notes.get(0));
            ratio(notes.get(0));
            for (int i = 1; i < notes.size(); i++) {
                OwnersNote note = notes.get(i);
                step(note, note.hours() - notes.get(i - 1).hours());
                if (note.word() == Word.RAN_FLAT) {
                    sum += truth * truth / (FLAT_VARIANCE + variance + doubt);
                }
                full(note);
                anchor(note);
                compare(note);
                ratio(note);
            }
            return sum;
        }

        /** What went in by the charger's own display fits what was missing. */
        private void full(OwnersNote note) {
            if (note.word() != Word.CHARGER_FINISHED || note.chargedAmpHours() == null) {
                return;
            }
            double over = filled - 100;
            double lead = system.chemistry().isLeadAcid() ? LEAD_OVER_VARIANCE : SHORT_VARIANCE;
            sum += over * over / ((over < 0 ? SHORT_VARIANCE : lead) + variance);
        }

        /** The note corrects the walk; what is left over counts by what could be expected. */
        private void compare(OwnersNote note) {
            double left = note.percent() - shown;
            double near = shown >= NEAR_FULL ? NEAR_FULL_VARIANCE : 0;
            // The loads' own noise counts alike for every cause, or a large factor would pay for
            // it.
            double expected = shownVariance + near + variance;
            double cost = left * left / expected;
            sum += StrictMath.log(expected / shownVariance);
            if (cost > NOT_EXPLAINED) {
                sum += NOT_EXPLAINED;
                shown = note.percent();
                return;
            }
            sum += cost;
            double gain = variance / expected;
            shown += gain * left;
            truth = Math.max(0, Math.min(100, truth + gain * left / shownPerPoint));
            variance *= 1 - gain;
        }

        /** Amp-hours and percent of one moment tell what is typed in. */
        private void ratio(OwnersNote note) {
            Double ampHours = note.shownAmpHours();
            if (ampHours != null) {
                double left = (ampHours - typed * note.percent() / 100) / system.ampHours() * 100;
                double rounded = typed / system.ampHours() * rounding;
                sum += left * left / (RATIO_VARIANCE + rounded * rounded / 12);
            }
        }

        private void step(OwnersNote note, double hours) {
            double load = note.word() == Word.NOTHING ? 0 : loadsPerHour * hours;
            double own = of(TroubleCause.OWN_CURRENT) * hours;
            double leak = of(TroubleCause.SELF_DISCHARGE) * hours / 720 * system.ampHours();
            leak *= Math.max(0, truth) / 100;
            double in = 0;
            double out = load;
            double pastShunt = of(TroubleCause.PAST_SHUNT);
            // What a load past the shunt takes from the charger goes through the shunt all the
            // same.
            double seenIn = 0;
            Double charged = note.chargedAmpHours();
            if (charged != null) {
                double most = system.chargerAmps() == 0 ? charged : system.chargerAmps();
                double during = load * Math.min(1, charged / most / hours);
                in = Math.max(0, charged - during);
                out = load - Math.min(during, charged);
                seenIn = Math.min(during, charged) * pastShunt;
            } else if (note.word() == Word.CHARGER_FINISHED) {
                in = ((100 - truth) / 100 * system.ampHours() + load + own + leak) / efficiency;
            }
            double stored = in * efficiency - out - own - leak;
            filled = truth + stored / system.ampHours() * 100;
            truth = Math.min(100, filled);
            if (in > 0 && system.chemistry().isLeadAcid() && filled > GASSES_FROM) {
                double gas = GAS_PART * Math.min(filled - GASSES_FROM, MOST_GAS);
                doubt += gas * gas;
            }
            double inCounted = (in + seenIn) * countedPart();
            double outCounted = out * (1 - pastShunt);
            double scale = cause == TroubleCause.SCALE ? size : 1;
            shownPerPoint = (1 - pastShunt) * scale * system.ampHours() / typed;
            shownPerPoint *= cause == TroubleCause.REVERSED ? -1 : 1;
            variance += load == 0 ? 0 : walkVariancePerHour * hours;
            double zero = (of(TroubleCause.ZERO_UP) - of(TroubleCause.ZERO_DOWN)) * hours;
            double gained;
            double drawn;
            if (cause == TroubleCause.REVERSED) {
                // What goes out is taken for charge, and weighed as such.
                gained = -in;
                drawn = out * countedPart();
            } else {
                gained = inCounted * scale;
                drawn = zero - outCounted * scale;
            }
            // Nobody wrote when in a stretch it was charged; at an end of the scale that matters,
            // and the note says which.
            double chargedFirst = count(count(shown, gained), drawn);
            double chargedLast = count(count(shown, drawn), gained);
            double toFirst = Math.abs(note.percent() - chargedFirst);
            double toLast = Math.abs(note.percent() - chargedLast);
            shown = toFirst <= toLast ? chargedFirst : chargedLast;
            boolean isUnknown = note.word() == Word.CHARGER_FINISHED && charged == null;
            if (isUnknown && neverSets()) {
                // What went in at the end of a charge is not known, and nothing sets it right.
                shown = note.percent();
                sum += cause == TroubleCause.FULL_NEVER && shown >= SET_PERCENT ? NEVER_AT_100 : 0;
            } else if (cause == TroubleCause.REVERSED
                    && note.word() == Word.CHARGER_FINISHED
                    && note.percent() >= SET_PERCENT) {
                // High volts and a load that looks like a small charge may have set it after all.
                shown = note.percent();
                sum += SET_REVERSED;
            }
        }

        /** Told to be so; a gauge of which that is not known is taken to set itself. */
        private boolean isSetByOwner() {
            return gauge.setsFull() == OwnersGauge.SetsFull.NEVER
                    || gauge.setsFull() == OwnersGauge.SetsFull.BY_HAND;
        }

        private boolean neverSets() {
            return isSetByOwner()
                    || cause == TroubleCause.FULL_NEVER
                    || cause == TroubleCause.REVERSED;
        }

        private double count(double from, double ampHours) {
            double to = from + ampHours / typed * 100;
            boolean stops = gauge.pastFull() != OwnersGauge.PastFull.SHOWS_MORE;
            return Math.max(0, stops ? Math.min(100, to) : to);
        }

        private double countedPart() {
            Double set = gauge.efficiencySet();
            return (set == null ? efficiency : set) + of(TroubleCause.HEAT);
        }

        private void anchor(OwnersNote note) {
            Word word = note.word();
            if (word == Word.CHARGER_FINISHED) {
                truth = 100;
                doubt = 0;
                if (isSetByOwner() && note.percent() >= SET_PERCENT) {
                    shown = note.percent();
                    variance = AFTER_FULL_VARIANCE;
                } else if (!neverSets()) {
                    shown = 100;
                    variance = AFTER_FULL_VARIANCE;
                }
            } else if (word == Word.SET_TO_100) {
                truth = 100 - of(TroubleCause.FULL_TOO_EARLY);
                // It may have fallen since; the note says how far.
                shown = note.percent();
                variance = AFTER_FULL_VARIANCE;
                doubt = 0;
            } else if (word == Word.RAN_FLAT) {
                truth = 0;
            }
        }
    }
}
