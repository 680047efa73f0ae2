package org.gaugebench.sim.live.lessons;

import java.util.Locale;
import org.gaugebench.sim.units.QuantityException;

/**
 * The empty axes into which a pupil draws the curve before it is shown.
 *
 * @param unit of the upright axis
 * @param lowest value at its foot, in the unit's smallest step
 * @param highest value at its top
 */
public record Sketch(FigureUnit unit, long lowest, long highest) {
    static final String EXAMPLE = "percent from 60 % to 100 %";

    static Sketch parse(String text) throws QuantityException {
        for (FigureUnit unit : FigureUnit.values()) {
            String name = unit.name().toLowerCase(Locale.ROOT).replace('_', '-');
            if (text.startsWith(name + " from ")) {
                String[] ends = text.substring(name.length() + 6).split(" to ", -1);
                if (ends.length == 2) {
                    long lowest = unit.parse(ends[0]);
                    long highest = unit.parse(ends[1]);
                    if (lowest < highest) {
                        return new Sketch(unit, lowest, highest);
                    }
                }
            }
        }
        throw new QuantityException("'" + text + "' is no axis; it says 'UNIT from A to B'");
    }
}
