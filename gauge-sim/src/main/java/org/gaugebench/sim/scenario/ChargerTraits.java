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
 * @param pulseMillihertz how often a second it connects all that it has, where it holds its voltage
 *     by pulses; 0 for a current that flows evenly
 * @param wind the gusty supply that limits it; null for none
 * @param profile file that its supply follows; null for none
 */
public record ChargerTraits(
        long cableMicroohms,
        long meterErrorPartsPerMillion,
        long runsForMillis,
        @Nullable Equalizing equalizing,
        long pulseMillihertz,
        @Nullable WindSpec wind,
        @Nullable ProfileSpec profile) {

    /** A charger whose current flows evenly, from no wind and no file. */
    public ChargerTraits(
            long cableMicroohms,
            long meterErrorPartsPerMillion,
            long runsForMillis,
            @Nullable Equalizing equalizing) {
        this(cableMicroohms, meterErrorPartsPerMillion, runsForMillis, equalizing, 0, null, null);
    }

    /**
     * Wind that comes in gusts. The current goes with the cube of its speed.
     *
     * @param peakMicroamps most current, at a speed that is called whole here
     * @param meanPartsPerMillion mean speed, in parts of that one
     * @param gustinessPartsPerMillion standard deviation of the speed over its mean
     * @param gustMillis time constant with which the speed forgets what it was
     */
    public record WindSpec(
            long peakMicroamps,
            long meanPartsPerMillion,
            long gustinessPartsPerMillion,
            long gustMillis) {}

    /** A charger at the bus with a right meter, that runs until it is switched off. */
    public static final ChargerTraits NONE = new ChargerTraits(0, 0, 0, null);

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
