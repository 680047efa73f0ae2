package org.gaugebench.sim.cli;

import java.util.List;
import org.gaugebench.sim.advice.OwnSystem;
import org.gaugebench.sim.advice.Sizing;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;

/** Reads what was typed part by part, so that everything wrong is told at once. */
final class ToldParts {
    private ToldParts() {}

    /** One part of what was typed. */
    interface Part<T> {
        /** Reads it. */
        T read() throws InputException;
    }

    /** A part; null with its messages in the list. */
    static <T> @Nullable T keep(List<String> wrong, Part<T> part) {
        try {
            return part.read();
        } catch (InputException e) {
            wrong.add(String.valueOf(e.getMessage()));
            return null;
        }
    }

    /**
     * The shunt that is there, or the proposed one.
     *
     * @throws InputException if no usual one fits
     */
    static ShuntRating shunt(OwnSystem system) throws InputException {
        ShuntRating shunt = Sizing.of(system).chosen();
        if (shunt == null) {
            throw new InputException(
                    "no usual shunt carries these currents; expected the one that is there, such as"
                            + " --shunt \"500 A / 75 mV\"");
        }
        return shunt;
    }
}
