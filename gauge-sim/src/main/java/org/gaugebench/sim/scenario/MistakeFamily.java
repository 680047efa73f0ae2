package org.gaugebench.sim.scenario;

/** The stage of a gauge in which a mistake is made, in the order in which a sample passes. */
public enum MistakeFamily {
    /** How time is told; one mistake at most. */
    CLOCK(true),
    /** What is counted for a stretch without samples; one mistake at most. */
    GAP(true),
    /** How a reading of the converter is made narrower; one mistake at most. */
    ROUNDING(true),
    /** What else is done to a reading. */
    READING(false),
    /** What part of a current is counted. */
    WEIGHT(false),
    /** In which form the count is held; one mistake at most. */
    ACCUMULATOR(true),
    /** Where the count ends; one mistake at most. */
    CLAMP(true),
    /** When the gauge believes that the battery is full; one mistake at most. */
    FULL(true),
    /** What happens after it believed so. */
    AFTER_FULL(false),
    /** When it believes that the battery is empty. */
    EMPTY(false),
    /** What it takes for the battery's capacity. */
    CAPACITY(false),
    /** What becomes of the count when another capacity is entered; one mistake at most. */
    CAPACITY_EDIT(true),
    /** What it believes at power-up; one mistake at most. */
    START(true),
    /** On which current the hours rest; one mistake at most. */
    HOURS(true),
    /** How that current begins. */
    HOURS_SEED(false),
    /** How the hours are shown; one mistake at most. */
    SHOWN_HOURS(true),
    /** How it saves what it knows. */
    SAVE(false);

    private final boolean single;

    MistakeFamily(boolean single) {
        this.single = single;
    }

    /**
     * Whether two mistakes of this family contradict each other.
     *
     * @return true where a gauge can make one of them at most
     */
    public boolean isSingle() {
        return single;
    }
}
