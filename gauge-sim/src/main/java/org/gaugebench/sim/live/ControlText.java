package org.gaugebench.sim.live;

import java.math.BigDecimal;

/** What the page sends for a control, as scenario files write it. */
final class ControlText {
    private ControlText() {}

    /**
     * A figure with its unit.
     *
     * @param control not a switch
     * @param value in the change's own steps
     */
    static String of(Control control, long value) {
        return number(control, value) + " " + control.range().unit();
    }

    /** The figure alone, exact. */
    static String number(Control control, long value) {
        return BigDecimal.valueOf(value)
                .divide(BigDecimal.valueOf(control.range().perUnit()))
                .toPlainString();
    }
}
