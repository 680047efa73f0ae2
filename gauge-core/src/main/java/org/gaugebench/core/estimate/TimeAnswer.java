package org.gaugebench.core.estimate;

import org.gaugebench.core.port.EstimateState;

/** One answer in time: its kind and its whole minutes. Owned and filled by an estimate. */
public final class TimeAnswer {
    // State.
    private EstimateState state = EstimateState.NO_ESTIMATE;
    private int minutes;

    TimeAnswer() {}

    /** There is nothing to say. */
    void none() {
        set(EstimateState.NO_ESTIMATE, 0);
    }

    void set(EstimateState newState, int newMinutes) {
        state = newState;
        minutes = newMinutes;
    }

    /**
     * What kind of answer it is.
     *
     * @return the state of the last update
     */
    public EstimateState state() {
        return state;
    }

    /**
     * The time, by {@link #state()}.
     *
     * @return whole minutes; 0 where there is none
     */
    public int minutes() {
        return minutes;
    }
}
