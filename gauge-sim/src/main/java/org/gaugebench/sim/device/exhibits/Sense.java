package org.gaugebench.sim.device.exhibits;

import java.util.Set;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.scenario.Mistake;

/** What the gauge makes of a code of the shunt converter. */
interface Sense {
    /** A converter of more bits than this is read as one of so many. */
    int KEPT_BITS = 16;

    /** At least so many bits are dropped. */
    int LEAST_DROPPED_BITS = 4;

    /** The counts that go on. */
    int counts(int rawCounts);

    /** This step, then another. */
    default Sense then(Sense next) {
        return raw -> next.counts(counts(raw));
    }

    /** The steps of a set of mistakes: sign first, then the low bits, then the dead-band. */
    static Sense of(Set<Mistake> mistakes, GaugeSettings settings, CountScale scale) {
        int bits = (int) settings.get(Setting.SHUNT_CONVERTER_BITS);
        Sense sense = raw -> raw;
        if (mistakes.contains(Mistake.SIGN_EXTENSION)) {
            sense = sense.then(unsigned(bits));
        }
        int dropped = Math.max(LEAST_DROPPED_BITS, bits - KEPT_BITS);
        if (mistakes.contains(Mistake.FLOOR_NOT_ROUND)) {
            sense = sense.then(raw -> raw >> dropped << dropped);
        }
        if (mistakes.contains(Mistake.TRUNCATE_NOT_ROUND)) {
            int step = 1 << dropped;
            sense = sense.then(raw -> raw / step * step);
        }
        if (mistakes.contains(Mistake.DEAD_BAND)) {
            double bandMicroamps = settings.get(Setting.SHOWN_AS_ZERO_BELOW) * 1e3;
            sense = sense.then(raw -> Math.abs(scale.microamps(raw)) < bandMicroamps ? 0 : raw);
        }
        return sense;
    }

    private static Sense unsigned(int bits) {
        int codes = 1 << bits;
        return raw -> raw < 0 ? raw + codes : raw;
    }
}
