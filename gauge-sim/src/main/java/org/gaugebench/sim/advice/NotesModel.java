package org.gaugebench.sim.advice;

import java.util.List;
import org.gaugebench.sim.logs.OwnersNote;
import org.gaugebench.sim.logs.OwnersNote.Word;

/**
 * What a gauge would have shown at each note, had it one cause of trouble of a given size.
 *
 * <p>Between two notes the loads draw what they draw in the mean of a day. What was charged is what
 * the note says, or else what was missing where the charger had finished. The battery and the count
 * go side by side; the battery is known where it is full and where it is flat.
 */
final class NotesModel {
    /** Whole percents, +-0.5 (variance 1/12), and loads that are not quite alike each day. */
    static final double SHOWN_VARIANCE = 1.0 / 12 + 0.25;

    /** How well anybody knows the load of a whole discharge: 3 points; common practice. */
    static final double FLAT_VARIANCE = 9;

    /** Shown amp-hours against percent times what is printed: 1 % of it, both rounded. */
    static final double RATIO_VARIANCE = 1;

    private final List<OwnersNote> notes;
    private final OwnSystem system;
    private final OwnersGauge gauge;
    private final double efficiency;
    private final double loadsPerHour;

    NotesModel(List<OwnersNote> notes, OwnSystem system, OwnersGauge gauge, double efficiency) {
        this.notes = notes;
        this.system = system;
        this.gauge = gauge;
        this.efficiency = efficiency;
        this.loadsPerHour = system.loads().stream().mapToDouble(OwnLoad::ampHoursPerDay).sum() / 24;
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
            ratio(notes.get(0));
            for (int i = 1; i < notes.size(); i++) {
                OwnersNote note = notes.get(i);
                step(note, note.hours() - notes.get(i - 1).hours());
                if (note.word() == Word.RAN_FLAT) {
                    sum += truth * truth / FLAT_VARIANCE;
                }
                anchor(note);
                double left = note.percent() - shown;
                sum += left * left / SHOWN_VARIANCE;
                ratio(note);
            }
            return sum;
        }

        /** Amp-hours and percent of one moment tell what is typed in. */
        private void ratio(OwnersNote note) {
            Double ampHours = note.shownAmpHours();
            if (ampHours != null) {
                double left = (ampHours - typed * note.percent() / 100) / system.ampHours() * 100;
                sum += left * left / RATIO_VARIANCE;
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
            truth = Math.min(100, truth + stored / system.ampHours() * 100);
            double inCounted = (in + seenIn) * countedPart();
            double outCounted = out * (1 - pastShunt);
            double scale = cause == TroubleCause.SCALE ? size : 1;
            double zero = (of(TroubleCause.ZERO_UP) - of(TroubleCause.ZERO_DOWN)) * hours;
            if (cause == TroubleCause.REVERSED) {
                // What goes out is taken for charge, and weighed as such.
                count(-in);
                count(out * countedPart());
            } else {
                // Charged first: what does not fit is lost before the loads draw.
                count(inCounted * scale);
                count(zero - outCounted * scale);
            }
            boolean isUnknown = note.word() == Word.CHARGER_FINISHED && charged == null;
            if (isUnknown && neverSets()) {
                // What went in at the end of a charge is not known, and nothing sets it right.
                shown = note.percent();
                sum += cause == TroubleCause.FULL_NEVER && shown >= 99 ? 9 : 0;
            }
        }

        private boolean neverSets() {
            return cause == TroubleCause.FULL_NEVER || cause == TroubleCause.REVERSED;
        }

        private void count(double ampHours) {
            shown += ampHours / typed * 100;
            if (gauge.pastFull() != OwnersGauge.PastFull.SHOWS_MORE) {
                shown = Math.min(100, shown);
            }
            shown = Math.max(0, shown);
        }

        private double countedPart() {
            Double set = gauge.efficiencySet();
            return (set == null ? efficiency : set) + of(TroubleCause.HEAT);
        }

        private void anchor(OwnersNote note) {
            Word word = note.word();
            if (word == Word.CHARGER_FINISHED) {
                truth = 100;
                boolean sets = gauge.setsFull() != OwnersGauge.SetsFull.NEVER;
                if (sets && !neverSets()) {
                    shown = 100;
                }
            } else if (word == Word.SET_TO_100) {
                truth = 100 - of(TroubleCause.FULL_TOO_EARLY);
                // It may have fallen since; the note says how far.
                shown = note.percent();
            } else if (word == Word.RAN_FLAT) {
                truth = 0;
            }
        }
    }
}
