package org.gaugebench.core.port;

/** What can be wrong with the inputs. A fault is a bit; its ordinal is its bit number. */
public enum Fault {
    /** The shunt converter stands at a rail or the current exceeds 32 bits of microamps. */
    SHUNT_CLIPPED("shunt reading clipped"),
    /** The voltage converter stands at its upper rail. */
    VOLTAGE_CLIPPED("voltage reading clipped"),
    /** Counts outside the converter's code range: no converter of that width can send them. */
    COUNTS_IMPLAUSIBLE("counts outside the converter's range"),
    /** More than 65,535 ms between two samples: the interval was not counted. */
    SAMPLES_MISSING("samples missing"),
    /** The clock went backwards, or jumped by more than half its range. */
    CLOCK_BACKWARDS("clock went backwards");

    private final String sentence;

    Fault(String sentence) {
        this.sentence = sentence;
    }

    /**
     * The fault's bit in {@link Register#FAULT_BITS}.
     *
     * @return a single bit
     */
    public int bit() {
        return 1 << ordinal();
    }

    /**
     * What is wrong, for people.
     *
     * @return a few words without a full stop
     */
    public String sentence() {
        return sentence;
    }
}
