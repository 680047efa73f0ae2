package org.gaugebench.sim.cli;

import java.util.List;
import org.gaugebench.sim.advice.OwnSystem;
import org.gaugebench.sim.advice.OwnersGauge;
import org.gaugebench.sim.advice.Sizing;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;

/**
 * What an owner told of system and gauge, with the shunt that goes with them.
 *
 * @param system battery, loads, chargers
 * @param gauge by what it does
 * @param shunt that is there, or the one that fits
 */
record OwnParts(OwnSystem system, OwnersGauge gauge, ShuntRating shunt) {
    /**
     * Reads both, and asks for what is missing where a person is there.
     *
     * @param wrong messages so far; all go into the exception
     * @throws InputException with every message, if something is wrong
     */
    static OwnParts read(
            Terminal terminal, SystemOptions told, GaugeOptions gauge, List<String> wrong)
            throws InputException {
        if (wrong.isEmpty() && told.asks(terminal)) {
            Questions questions = new Questions(terminal);
            told.ask(questions);
            gauge.ask(questions);
        }
        OwnersGauge own = keep(wrong, gauge::gauge);
        OwnSystem system = keep(wrong, told::system);
        if (!wrong.isEmpty() || own == null || system == null) {
            throw new InputException(String.join(System.lineSeparator(), wrong));
        }
        ShuntRating shunt = Sizing.of(system).chosen();
        if (shunt == null) {
            throw new InputException(
                    "no usual shunt carries these currents; expected the one that is there, such as"
                            + " --shunt \"500 A / 75 mV\"");
        }
        return new OwnParts(system, own, shunt);
    }

    /** One part of what was typed. */
    private interface Part<T> {
        /** Reads it. */
        T read() throws InputException;
    }

    private static <T> @Nullable T keep(List<String> wrong, Part<T> part) {
        try {
            return part.read();
        } catch (InputException e) {
            wrong.add(e.getMessage());
            return null;
        }
    }
}
