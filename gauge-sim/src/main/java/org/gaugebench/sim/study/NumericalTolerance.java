package org.gaugebench.sim.study;

/** How exactly a figure is meant that is given to some digits (JCGM 101, 7.9.2). */
public final class NumericalTolerance {
    private NumericalTolerance() {}

    /**
     * Half a unit of the last of some meaningful digits.
     *
     * @param value above zero; for zero and below the tolerance is 0
     * @param digits 1 or 2
     * @return 0.05 for 1.3 and two digits
     */
    public static double of(double value, int digits) {
        if (!(value > 0)) {
            return 0;
        }
        double top = digits == 1 ? 9.5 : 99.5;
        double unit = 1;
        while (value / unit >= top) {
            unit *= 10;
        }
        while (value / unit < top / 10) {
            unit /= 10;
        }
        return unit / 2;
    }
}
