package org.gaugebench.sim.device.exhibits;

/** All charge ever put in and all ever taken out, with the present efficiency between them. */
final class TotalsAccumulator implements Accumulator {
    private double efficiency;
    private long beginCountMillis;
    private long inCountMillis;
    private long outCountMillis;

    TotalsAccumulator(long efficiencyPartsPerMillion) {
        efficiency = efficiencyPartsPerMillion / 1e6;
    }

    @Override
    public void add(long addend) {
        if (addend > 0) {
            inCountMillis += addend;
        } else {
            outCountMillis -= addend;
        }
    }

    /** The totals go on; only where they begin moves. */
    @Override
    public void set(long value) {
        beginCountMillis += value - countMillis();
    }

    @Override
    public long countMillis() {
        return beginCountMillis + StrictMath.round(efficiency * inCountMillis) - outCountMillis;
    }

    @Override
    public void changeEfficiency(long partsPerMillion) {
        efficiency = partsPerMillion / 1e6;
    }
}
