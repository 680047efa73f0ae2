package org.gaugebench.sim.plant;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.ChargerSpec;
import org.gaugebench.sim.scenario.ChargerSpec.SunSpec;
import org.gaugebench.sim.scenario.ChargerTraits.Equalizing;
import org.gaugebench.sim.scenario.ChargerTraits.WindSpec;
import org.gaugebench.sim.scenario.LoadSpec;
import org.gaugebench.sim.scenario.LoadTraits.Returning;
import org.gaugebench.sim.scenario.ProfileSpec;
import org.jspecify.annotations.Nullable;

/**
 * A three-phase charger: current limit, set voltage, and the phases bulk, absorption, float.
 *
 * <ul>
 *   <li>Bulk becomes absorption when the bus reaches the set voltage.
 *   <li>Absorption becomes float when, at the set voltage, the output has been under {@code
 *       floatBelow} for a minute, or when the set voltage has been held for the longest absorption.
 *   <li>A charger with an equalizing stage goes there first, where it is due, and then to float.
 *   <li>Absorption, equalizing and float become bulk when the bus has stood more than 2.5 % under
 *       the float voltage for five minutes, and when the charger is switched on.
 * </ul>
 *
 * The minute, the five minutes and the 2.5 % are ours: long enough that a passing load or cloud
 * does not end a phase.
 */
final class Charger {
    /** Where the charger stands. */
    enum Phase {
        BULK,
        ABSORPTION,
        EQUALIZING,
        FLOAT
    }

    private static final long TAPER_HOLD_MILLIS = 60_000;
    private static final long LOW_HOLD_MILLIS = 300_000;
    private static final double LOW_PART = 0.975;
    private static final double REFERENCE_CELSIUS = 25;

    // Parameters.
    private final String name;
    private final double absorptionVolts;
    private final double floatVolts;
    private final double limitAmps;
    private final double voltsPerKelvin;
    private final double floatBelowAmps;
    private final long absorptionMillis;
    private final @Nullable Sun sun;
    private final @Nullable UnsteadySupply unsteady;
    private final @Nullable Equalizing equalizing;
    private final double cableOhms;
    private final double meterFactor;
    private final long runsForMillis;
    private final boolean watchesTime;
    private final long pulseMillihertz;

    // State.
    private boolean switchedOn;
    private Phase phase = Phase.BULK;
    private double supplyAmps;
    private double compensationVolts;
    private double setVolts;
    private long heldMillis;
    private long taperMillis;
    private long lowMillis;
    private double outputAmps;
    private double feedOhms;
    private double slackVolts;
    private long clockMillis;
    private long runMillis;
    private long dueMillis;
    private long stageMillis;

    Charger(ChargerSpec spec, SeedTree seeds) {
        this(spec, seeds, supply(spec, seeds));
    }

    /** What a load gives back, as a charger of the load's name. */
    Charger(LoadSpec load, Returning returning, SeedTree seeds) {
        this(Returned.asCharger(load, returning), seeds, new Returned(load, returning));
    }

    private Charger(ChargerSpec spec, SeedTree seeds, @Nullable UnsteadySupply unsteady) {
        this.unsteady = unsteady;
        name = spec.name();
        absorptionVolts = spec.absorptionMicrovolts() / 1e6;
        floatVolts = spec.floatMicrovolts() / 1e6;
        limitAmps = spec.currentLimitMicroamps() / 1e6;
        voltsPerKelvin = spec.microvoltsPerKelvin() / 1e6;
        floatBelowAmps = spec.floatBelowMicroamps() / 1e6;
        absorptionMillis = spec.absorptionMillis() > 0 ? spec.absorptionMillis() : Long.MAX_VALUE;
        SunSpec sunSpec = spec.sun();
        sun = sunSpec == null ? null : new Sun(sunSpec, seeds.seedOf("plant/" + name + "/clouds"));
        equalizing = spec.traits().equalizing();
        cableOhms = spec.traits().cableMicroohms() / 1e6;
        meterFactor = 1 / (1 + spec.traits().meterErrorPartsPerMillion() / 1e6);
        long limitMillis = spec.traits().runsForMillis();
        runsForMillis = limitMillis > 0 ? limitMillis : Long.MAX_VALUE;
        pulseMillihertz = spec.traits().pulseMillihertz();
        watchesTime = limitMillis > 0 || equalizing != null;
        supplyAmps = limitAmps;
        switchedOn = spec.switchedOn();
        enter(Phase.BULK);
    }

    private static @Nullable UnsteadySupply supply(ChargerSpec spec, SeedTree seeds) {
        double limit = spec.currentLimitMicroamps() / 1e6;
        ProfileSpec profile = spec.traits().profile();
        if (profile != null) {
            return new LoggedSupply(profile, limit);
        }
        WindSpec wind = spec.traits().wind();
        long seed = seeds.seedOf("plant/" + spec.name() + "/gusts");
        return wind == null ? null : new Wind(wind, limit, seed);
    }

    /** The chargers and what the loads give back. */
    static Charger[] all(List<ChargerSpec> specs, List<LoadSpec> loads, SeedTree seeds) {
        List<Charger> chargers = new ArrayList<>();
        for (ChargerSpec spec : specs) {
            chargers.add(new Charger(spec, seeds));
        }
        for (LoadSpec load : loads) {
            Returning returning = load.traits().returning();
            if (returning != null) {
                chargers.add(new Charger(load, returning, seeds));
            }
        }
        return chargers.toArray(new Charger[0]);
    }

    /** Takes over the state of another charger of the same spec. */
    void adopt(Charger other) {
        switchedOn = other.switchedOn;
        phase = other.phase;
        supplyAmps = other.supplyAmps;
        compensationVolts = other.compensationVolts;
        setVolts = other.setVolts;
        heldMillis = other.heldMillis;
        taperMillis = other.taperMillis;
        lowMillis = other.lowMillis;
        outputAmps = other.outputAmps;
        clockMillis = other.clockMillis;
        runMillis = other.runMillis;
        dueMillis = other.dueMillis;
        stageMillis = other.stageMillis;
        if (sun != null && other.sun != null) {
            sun.adopt(other.sun);
        }
        if (unsteady != null && other.unsteady != null) {
            unsteady.adopt(other.unsteady);
        }
    }

    String name() {
        return name;
    }

    Phase phase() {
        return phase;
    }

    /** Voltage that it holds in its present phase, compensated. */
    double setVolts() {
        return setVolts;
    }

    /** Most current that it gives now; 0 when switched off. */
    double availableAmps() {
        return switchedOn ? supplyAmps : 0;
    }

    double outputAmps() {
        return outputAmps;
    }

    void setOutputAmps(double amps) {
        outputAmps = amps;
    }

    /** Resistance of its cable to the bus; 0 for a charger at the bus. */
    double cableOhms() {
        return cableOhms;
    }

    /** Tells that its bus reckons with feeds of a slope, this one's included. */
    void setFeedOhms(double ohms, double slack) {
        feedOhms = ohms;
        slackVolts = slack;
    }

    /** Resistance between the voltage that it holds and the bus. */
    double feedOhms() {
        return feedOhms;
    }

    /** Whether its output comes as pulses of all that it has. */
    boolean isPulsed() {
        return pulseMillihertz > 0;
    }

    /** Whether what it gives at an instant may differ from its mean over a step. */
    boolean isUneven() {
        return isPulsed() || unsteady != null;
    }

    /**
     * What it gives at the end of a step beyond its mean. Of pulses that is all that it has in the
     * first part of each period, nothing in the rest, so that the mean is its output.
     */
    double excessAmpsAt(long millis) {
        if (unsteady != null && !isPulsed()) {
            return switchedOn ? unsteady.ampsAt(millis, outputAmps) - outputAmps : 0;
        }
        double available = availableAmps();
        if (pulseMillihertz == 0 || available <= 0) {
            return 0;
        }
        double phase = Shape.phase(millis, pulseMillihertz, 0) / 1e6;
        return (phase < outputAmps / available ? available : 0) - outputAmps;
    }

    boolean isSolar() {
        return sun != null;
    }

    void switchTo(boolean on, long nowMillis) {
        if (unsteady != null) {
            unsteady.switchTo(on, nowMillis);
        }
        switchTo(on);
    }

    private void switchTo(boolean on) {
        if (on && !switchedOn) {
            enter(Phase.BULK);
            runMillis = 0;
        }
        switchedOn = on;
        outputAmps = 0;
    }

    void setTemperature(double celsius) {
        compensationVolts = voltsPerKelvin * (celsius - REFERENCE_CELSIUS);
        renewSetVolts();
    }

    /**
     * Takes an unsteady supply's mean of a step.
     *
     * @return whether it is another one than before
     */
    boolean beginStep(long fromMillis, long toMillis) {
        if (unsteady == null) {
            return false;
        }
        double before = supplyAmps;
        supplyAmps = unsteady.meanAmps(fromMillis, toMillis);
        return supplyAmps != before;
    }

    /** First instant from which that mean changes. */
    long nextChangeMillis(long atMillis) {
        return unsteady == null ? Long.MAX_VALUE : unsteady.nextChangeMillis(atMillis);
    }

    /** Takes the sun's mean of a minute; nothing for a supply without limit. */
    void beginMinute(long minuteStartMillis) {
        if (sun != null) {
            supplyAmps = Math.min(limitAmps, sun.meanAmps(minuteStartMillis));
        }
    }

    /**
     * Moves the phases through a step.
     *
     * @return whether the set voltage changed
     */
    boolean advance(int millis, double busVolts) {
        if (watchesTime && timesOut(millis)) {
            return true;
        }
        if (!switchedOn) {
            return false;
        }
        double ownVolts = busVolts + outputAmps * feedOhms;
        boolean held = ownVolts >= setVolts - slackVolts;
        if (phase == Phase.BULK) {
            return held && enter(Phase.ABSORPTION);
        }
        lowMillis = ownVolts < (floatVolts + compensationVolts) * LOW_PART ? lowMillis + millis : 0;
        if (lowMillis >= LOW_HOLD_MILLIS) {
            return enter(Phase.BULK);
        }
        if (phase == Phase.FLOAT) {
            return false;
        }
        if (phase == Phase.EQUALIZING && equalizing != null) {
            stageMillis += millis;
            return stageMillis >= equalizing.forMillis() && enter(Phase.FLOAT);
        }
        heldMillis += held ? millis : 0;
        taperMillis = held && outputAmps < floatBelowAmps ? taperMillis + millis : 0;
        return (taperMillis >= TAPER_HOLD_MILLIS || heldMillis >= absorptionMillis)
                && enter(equalizeIfDue());
    }

    /** Moves the timers through a step; whether one has switched the charger off. */
    private boolean timesOut(int millis) {
        clockMillis += millis;
        runMillis += millis;
        if (!switchedOn || runMillis < runsForMillis) {
            return false;
        }
        switchTo(false);
        return true;
    }

    private Phase equalizeIfDue() {
        if (equalizing == null || clockMillis < dueMillis) {
            return Phase.FLOAT;
        }
        dueMillis = clockMillis + equalizing.everyMillis();
        return Phase.EQUALIZING;
    }

    private boolean enter(Phase next) {
        phase = next;
        heldMillis = 0;
        taperMillis = 0;
        lowMillis = 0;
        stageMillis = 0;
        renewSetVolts();
        return true;
    }

    private void renewSetVolts() {
        double volts = phase == Phase.FLOAT ? floatVolts : absorptionVolts;
        if (phase == Phase.EQUALIZING && equalizing != null) {
            volts = equalizing.microvolts() / 1e6;
        }
        setVolts = (volts + compensationVolts) * meterFactor;
    }
}
