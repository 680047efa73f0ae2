package org.gaugebench.sim.plant;

import org.gaugebench.sim.scenario.KineticWells;

/**
 * Available and bound charge: the kinetic battery model of Manwell and McGowan, Solar Energy 50
 * (1993) 399-405, in its closed form for a constant current over a step.
 *
 * <pre>
 * y1' = I + k (h2 - h1)     h1 = y1 / c           available well
 * y2' =   - k (h2 - h1)     h2 = y2 / (1 - c)     bound well      k = k' c (1 - c)
 * </pre>
 *
 * <p>The state is kept as the sum of the wells and the available one: the sum changes by current
 * times time and by nothing else, exactly. Charge is in any unit; time in the unit that makes
 * current times time a charge. Positive current flows in.
 *
 * <p>Use: {@link #prepare} once for each length of step, then {@link #advance} any number of times.
 */
final class KineticCell {
    private static final int MOST_HALVINGS = 200;

    private final double availablePart;
    private final double rate;
    private final double capacity;
    private final double heightPerCharge;

    // State.
    private double total;
    private double available;

    // Derived from the length of the step.
    private double stepTime;
    private double kept;
    private double drawnToSum;
    private double gain;
    private double currentPerCharge;

    // Derived at the start of each step.
    private double freeAvailable;

    /**
     * A full cell.
     *
     * @param availablePart c, above 0 and below 1
     * @param rate k', per unit of time
     * @param capacity of both wells
     */
    KineticCell(double availablePart, double rate, double capacity) {
        this.availablePart = availablePart;
        this.rate = rate;
        this.capacity = capacity;
        heightPerCharge = 1 / availablePart;
        rest(capacity);
    }

    /** A full cell in coulombs and seconds. */
    static KineticCell of(KineticWells wells) {
        return new KineticCell(
                wells.availablePart(), wells.perHour() / 3600, wells.greatestAmpHours() * 3600);
    }

    /** A cell in the same state. */
    KineticCell copy() {
        KineticCell twin = new KineticCell(availablePart, rate, capacity);
        twin.adopt(this);
        return twin;
    }

    /** Takes over the state of another cell. */
    void adopt(KineticCell other) {
        total = other.total;
        available = other.available;
        begin();
    }

    /** Puts a charge into both wells at equal heights. */
    void rest(double charge) {
        total = charge;
        available = availablePart * charge;
        begin();
    }

    /** Makes ready for steps of a length. */
    void prepare(double time) {
        stepTime = time;
        double spent = -StrictMath.expm1(-rate * time);
        kept = 1 - spent;
        drawnToSum = availablePart * spent;
        gain = (spent + availablePart * (rate * time - spent)) / rate;
        currentPerCharge = 1 / gain;
        begin();
    }

    /** Begins a step: what would be there at its end if no current flowed. */
    private void begin() {
        freeAvailable = available * kept + total * drawnToSum;
    }

    /** Moves through the step. More than {@link #greatestCurrentOut} drives it below empty. */
    void advance(double current) {
        available = freeAvailable + current * gain;
        total += current * stepTime;
        begin();
    }

    /** Keeps the available well from running over: what is too much goes into the bound well. */
    void level() {
        if (total > capacity) {
            total = capacity;
        }
        double brim = availablePart * capacity;
        if (available > brim) {
            available = brim;
        }
        begin();
    }

    /** Takes charge out of both wells so that both heights fall alike. */
    void lose(double charge) {
        total -= charge;
        available -= availablePart * charge;
        begin();
    }

    /** Height of the available well at the end of the step if no current flows. */
    double freeHeight() {
        return freeAvailable * heightPerCharge;
    }

    /** How much a current raises that height. */
    double heightPerCurrent() {
        return gain / availablePart;
    }

    /**
     * Largest constant current that can be drawn through the step.
     *
     * @param floorHeight height at which the available well counts as empty; 0 for the bottom
     */
    double greatestCurrentOut(double floorHeight) {
        return (freeAvailable - availablePart * floorHeight) * currentPerCharge;
    }

    /**
     * Time until the available well is empty.
     *
     * <p>The available charge under a constant draw is a falling line plus one exponential, convex
     * and falling or concave, so it passes the floor once; halving finds where.
     *
     * @param drawn constant current drawn, 0 or above
     * @param floorHeight height at which the well counts as empty
     * @return infinite without a draw, 0 if it is empty now
     */
    double timeToEmpty(double drawn, double floorHeight) {
        if (available <= availablePart * floorHeight) {
            return 0;
        }
        if (drawn <= 0) {
            return Double.POSITIVE_INFINITY;
        }
        double low = 0;
        double high = (total - floorHeight) / drawn;
        for (int i = 0; i < MOST_HALVINGS && low < high; i++) {
            double middle = (low + high) / 2;
            if (availableAfter(drawn, middle) > availablePart * floorHeight) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    private double availableAfter(double drawn, double time) {
        double spent = -StrictMath.expm1(-rate * time);
        return available * (1 - spent)
                + total * availablePart * spent
                - drawn * (spent + availablePart * (rate * time - spent)) / rate;
    }

    /** Charge of both wells. */
    double total() {
        return total;
    }

    /** Charge of the available well. */
    double available() {
        return available;
    }

    /** Height of the available well: its charge by its part. */
    double height() {
        return available * heightPerCharge;
    }

    /** Charge of the bound well. */
    double bound() {
        return total - available;
    }

    /** Charge of both wells when full. */
    double capacity() {
        return capacity;
    }
}
