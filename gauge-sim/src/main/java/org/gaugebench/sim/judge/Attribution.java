package org.gaugebench.sim.judge;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.gaugebench.sim.rig.Cause;

/**
 * The error of one of a scenario's gauges, shown minus true charge, split by cause at some moments.
 *
 * @param gauge its name
 * @param splits in order of time
 */
public record Attribution(String gauge, List<Split> splits) {
    /** The five causes that people ask for first; the others are "everything else". */
    public static final List<Cause> PLAIN =
            List.of(Cause.OFFSET, Cause.PAST_SHUNT, Cause.LOSSES, Cause.START, Cause.CAPACITY);

    /**
     * Only the splits of some moments.
     *
     * @param moments that were asked for, each met by the first tick at or after it
     */
    public Attribution at(long... moments) {
        return new Attribution(
                gauge,
                Arrays.stream(moments)
                        .mapToObj(this::first)
                        .flatMap(Optional::stream)
                        .distinct()
                        .toList());
    }

    private Optional<Split> first(long moment) {
        return splits.stream().filter(split -> split.atMillis() >= moment).findFirst();
    }

    /**
     * The split at one moment.
     *
     * @param atMillis from the start
     * @param known whether the gauge shows a charge; else there is nothing to split, and the parts
     *     are empty
     * @param shownNanocoulombs charge that it shows
     * @param trueNanocoulombs true charge
     * @param assumedNanocoulombs capacity by which it makes percents
     * @param capacityNanocoulombs true capacity
     * @param parts of shown minus true, in nanocoulombs; they add up to it exactly
     */
    public record Split(
            long atMillis,
            boolean known,
            long shownNanocoulombs,
            long trueNanocoulombs,
            long assumedNanocoulombs,
            long capacityNanocoulombs,
            Map<Cause, Long> parts) {

        /** Shown minus true, in nanocoulombs. */
        public long errorNanocoulombs() {
            return shownNanocoulombs - trueNanocoulombs;
        }

        /** The part of one cause, in nanocoulombs. */
        public long nanocoulombs(Cause cause) {
            Long part = parts.get(cause);
            return part == null ? 0 : part;
        }

        /** What all causes but the plain ones make, in nanocoulombs. */
        public long elseNanocoulombs() {
            Set<Cause> plain = Set.copyOf(PLAIN);
            return parts.entrySet().stream()
                    .filter(part -> !plain.contains(part.getKey()))
                    .mapToLong(Map.Entry::getValue)
                    .sum();
        }

        /**
         * The part of one cause in the state of charge, in parts per million, rounded. A charge
         * counts as a part of the true capacity; that the gauge takes its own instead is the
         * capacity's part, the judge's own step.
         */
        public long partsPerMillion(Cause cause) {
            double part = ofCapacity(nanocoulombs(cause));
            if (cause == Cause.CAPACITY) {
                double shown = shownNanocoulombs;
                part += shown / assumedNanocoulombs - shown / capacityNanocoulombs;
            }
            return StrictMath.round(part * 1e6);
        }

        /** The same for all causes but the plain ones. */
        public long elsePartsPerMillion() {
            return StrictMath.round(ofCapacity(elseNanocoulombs()) * 1e6);
        }

        /** The whole error of the state of charge, in parts per million, rounded. */
        public long errorPartsPerMillion() {
            double shown = (double) shownNanocoulombs / assumedNanocoulombs;
            return StrictMath.round((shown - ofCapacity(trueNanocoulombs)) * 1e6);
        }

        private double ofCapacity(long nanocoulombs) {
            return (double) nanocoulombs / capacityNanocoulombs;
        }
    }
}
