package org.gaugebench.sim.cli;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.advice.OwnSystem;
import org.gaugebench.sim.advice.OwnersGauge;
import org.gaugebench.sim.advice.Sizing;
import org.gaugebench.sim.advice.TrialLimits;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;

/** Reads what was typed part by part, so that everything wrong is told at once. */
final class ToldParts {
    /** What is told of an answer wanted in two forms. */
    static final String JSON_OR_SCENARIO =
            "expected either --json or --scenario; found both: the object of --json has the"
                    + " scenario in it";

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
     * The shunt that is there, or the proposed one, of a system that can be run.
     *
     * @throws InputException with every message, if no usual one fits or a limit is passed
     */
    static ShuntRating shunt(OwnSystem system, OwnersGauge gauge) throws InputException {
        ShuntRating shunt = Sizing.of(system).chosen();
        if (shunt == null) {
            throw new InputException(
                    "no usual shunt carries these currents; expected the one that is there, such as"
                            + " --shunt \"500 A / 75 mV\"");
        }
        List<String> wrong = new ArrayList<>();
        TrialLimits.check(system, gauge, shunt, new QuantityArguments(wrong));
        refuse(wrong);
        return shunt;
    }

    /** Tells all that is wrong, if anything is. */
    static void refuse(List<String> wrong) throws InputException {
        if (!wrong.isEmpty()) {
            throw new InputException(String.join(System.lineSeparator(), wrong));
        }
    }
}
