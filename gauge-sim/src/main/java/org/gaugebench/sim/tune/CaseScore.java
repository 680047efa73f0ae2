package org.gaugebench.sim.tune;

/**
 * How one gauge's 100 % went with the battery's in one run.
 *
 * @param fulls how often it set itself to full
 * @param falseFulls of them with the battery below the limit
 * @param lowestTrueParts true state of the lowest of all, in millionths; 1,000,000 for none
 * @param heldFulls how often the battery stood full at a charger for long enough to be seen
 * @param missedFulls of them without the gauge knowing it before the charge left again
 * @param meanErrorParts mean of the error's magnitude over whole minutes, in millionths
 * @param worstErrorParts its largest magnitude, in millionths
 */
public record CaseScore(
        int fulls,
        int falseFulls,
        long lowestTrueParts,
        int heldFulls,
        int missedFulls,
        double meanErrorParts,
        long worstErrorParts) {

    /** Whether no full was false and none was missed. */
    public boolean isMet() {
        return falseFulls == 0 && missedFulls == 0;
    }
}
