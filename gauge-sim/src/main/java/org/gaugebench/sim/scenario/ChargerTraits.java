package org.gaugebench.sim.scenario;

import org.jspecify.annotations.Nullable;

/**
 * What a scenario may ask of a charger beyond three phases at the bus. Everything is off in {@link
 * #NONE}, and off means: the same bits as without it.
 *
 * @param cableMicroohms resistance between the charger's own terminals, where it regulates, and the
 *     bus; 0 for none
 * @param meterErrorPartsPerMillion how far its voltmeter reads high; a charger whose meter reads
 *     high holds less
 * @param runsForMillis time after being switched on at which it stops by itself; 0 for never
 * @param equalizing a stage of higher voltage; null for none
 * @param profile file that its supply follows; null for none
 */
public record ChargerTraits(
        long cableMicroohms,
        long meterErrorPartsPerMillion,
        long runsForMillis,
        @Nullable Equalizing equalizing,
        @Nullable ProfileSpec profile) {

    /** A charger at the bus with a right meter, that runs until it is switched off. */
    public static final ChargerTraits NONE = new ChargerTraits(0, 0, 0, null);

    /** A charger that follows no file. */
    public ChargerTraits(
            long cableMicroohms,
            long meterErrorPartsPerMillion,
            long runsForMillis,
            @Nullable Equalizing equalizing) {
        this(cableMicroohms, meterErrorPartsPerMillion, runsForMillis, equalizing, null);
    }

    /**
     * An equalizing stage between absorption and float.
     *
     * @param microvolts set voltage at 25 °C
     * @param forMillis how long the stage lasts
     * @param everyMillis least time between the beginnings of two such stages; the first absorption
     *     of a run ends in one
     */
    public record Equalizing(long microvolts, long forMillis, long everyMillis) {}
}
