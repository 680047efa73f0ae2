package org.gaugebench.sim.judge;

import java.util.Arrays;
import java.util.List;
import org.gaugebench.core.port.Fault;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Trust;
import org.gaugebench.core.port.TrustReason;

/**
 * One gauge's run against the truth.
 *
 * @param gauge its name
 * @param finalPartsPerMillion state of charge shown at the end, or -1 when unknown
 * @param finalMicroampHours charge shown at the end; 0 when unknown
 * @param worstErrorPartsPerMillion shown minus true state of charge, the largest by magnitude of
 *     all whole minutes at which it was known
 * @param worstAtMillis when; -1 if it never was known
 * @param shownPercent state of charge shown, one value a minute
 * @param belief what it says of itself at the end
 * @param rule what its full-charge rule visited; nothing for a gauge without that rule
 */
public record LaneResult(
        String gauge,
        long finalPartsPerMillion,
        long finalMicroampHours,
        long worstErrorPartsPerMillion,
        long worstAtMillis,
        Track shownPercent,
        Belief belief,
        RuleCoverage rule) {

    LaneResult slim(Track none) {
        return new LaneResult(
                gauge,
                finalPartsPerMillion,
                finalMicroampHours,
                worstErrorPartsPerMillion,
                worstAtMillis,
                none,
                belief,
                rule);
    }

    /**
     * How far a gauge says that it may be believed.
     *
     * @param lowerPartsPerMillion lower edge of its error band, or -1 where it has none or does not
     *     know it
     * @param upperPartsPerMillion upper edge, or -1
     * @param trust by what it knows its state of charge
     * @param reason the strongest reason to believe it, or not to
     * @param faults standing and momentary ones, in the order of the table
     * @param hasPower whether it could say anything at all
     */
    public record Belief(
            long lowerPartsPerMillion,
            long upperPartsPerMillion,
            Trust trust,
            TrustReason reason,
            List<Fault> faults,
            boolean hasPower) {

        static Belief of(Readout readout, boolean hasPower) {
            return new Belief(
                    readout.bandUnknown ? Readout.NOT_KNOWN : readout.lowerEdgePartsPerMillion,
                    readout.bandUnknown ? Readout.NOT_KNOWN : readout.upperEdgePartsPerMillion,
                    readout.trust,
                    readout.trustReason,
                    Arrays.stream(Fault.values())
                            .filter(fault -> (readout.faultBits & fault.bit()) != 0)
                            .toList(),
                    hasPower);
        }
    }
}
