package org.gaugebench.sim.explain;

import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;

/** A gauge's registers as they stood at some moment; they do not move with it. */
final class Seen {
    /** Before anything was seen. */
    static final Seen NOTHING = new Seen(new Registers());

    private final long[] values = new long[Registers.COUNT];

    Seen(Registers registers) {
        for (Register register : Register.values()) {
            values[register.ordinal()] = registers.get(register);
        }
    }

    long get(Register register) {
        return values[register.ordinal()];
    }
}
