package org.gaugebench.sim.cli;

import java.util.List;
import org.gaugebench.sim.advice.OwnSystem;
import org.gaugebench.sim.advice.OwnersGauge;
import org.gaugebench.sim.units.ShuntRating;

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
        OwnersGauge known = ToldParts.keep(wrong, gauge::gauge);
        if (told.asks(terminal)) {
            told.wrongSoFar(wrong);
            // Nobody answers fifteen questions to hear that an option was misspelt.
            ToldParts.refuse(wrong);
            Questions questions = new Questions(terminal);
            told.ask(questions);
            gauge.ask(questions);
        }
        OwnersGauge own = known == null ? null : ToldParts.keep(wrong, gauge::gauge);
        OwnSystem system = ToldParts.keep(wrong, told::system);
        if (!wrong.isEmpty() || own == null || system == null) {
            throw new InputException(String.join(System.lineSeparator(), wrong));
        }
        return new OwnParts(system, own, ToldParts.shunt(system, own));
    }
}
