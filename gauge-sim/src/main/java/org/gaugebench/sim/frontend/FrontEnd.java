package org.gaugebench.sim.frontend;

import org.gaugebench.core.port.Sample;
import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.ClockSpec;
import org.gaugebench.sim.scenario.SampleMode;
import org.gaugebench.sim.scenario.SensorSpec;
import org.gaugebench.sim.scenario.SensorSpec.Sampling;
import org.gaugebench.sim.scenario.SensorTrait;
import org.gaugebench.sim.scenario.SensorTraits;
import org.gaugebench.sim.scenario.WiringSpec;
import org.jspecify.annotations.Nullable;

/**
 * Turns truth into the counts that a gauge gets. Each lane has one, with noise streams of its own
 * ("front-end/LANE/shunt-noise", "front-end/LANE/voltage-noise").
 */
public final class FrontEnd {
    private final SensorSpec spec;
    private ShuntPath shunt;
    private Converter shuntConverter;
    private VoltagePath voltage;
    private SensorTraits traits;
    private long offsetNanovolts;
    private long nowMillis;
    private Sample latest = new Sample();
    private final AdcModel voltageConverter;
    private final boolean integrating;
    private final boolean temperatureFitted;
    private final SeedTree seeds;
    private final String lane;
    private @Nullable SenseLeads leads;
    private @Nullable SampleTimer timer;
    private @Nullable Frames frames;
    private @Nullable WrongClock wrongClock;
    private long startMillis;
    private long clockOffsetMillis;

    /**
     * Creates a front end.
     *
     * @param spec shunt and converters as they really are
     * @param seeds of the run
     * @param lane name of the gauge it feeds
     */
    public FrontEnd(SensorSpec spec, SeedTree seeds, String lane) {
        this(
                spec,
                seeds,
                lane,
                AdcModel.bipolar(
                        spec.converterBits(),
                        spec.fullScaleMicrovolts() / 1e6,
                        spec.gainErrorPartsPerMillion() / 1e6,
                        spec.noiseNanovolts() / 1e9,
                        seeds.seedOf(shuntNoise(lane))));
    }

    /** Creates the front end of a twin, whose shunt converter has no steps. */
    public FrontEnd(SensorSpec spec, SeedTree seeds, String lane, IdealConverter converter) {
        this(spec, seeds, lane, (Converter) converter);
    }

    private FrontEnd(SensorSpec spec, SeedTree seeds, String lane, Converter converter) {
        this.spec = spec;
        this.seeds = seeds;
        this.lane = lane;
        offsetNanovolts = spec.offsetNanovolts();
        shunt = new ShuntModel(spec);
        shuntConverter = converter;
        voltageConverter =
                AdcModel.unipolar(
                        spec.voltageConverterBits(),
                        spec.voltageFullScaleMicrovolts() / 1e6,
                        spec.voltageNoiseMicrovolts() / 1e6,
                        seeds.seedOf("front-end/" + lane + "/voltage-noise"));
        integrating = spec.sampling() == Sampling.INTEGRATED;
        temperatureFitted = spec.temperatureFitted();
        traits = SensorTraits.NONE;
        voltage = VoltagePath.of(traits, spec.voltageProfile(), integrating);
        adopt(spec.traits());
    }

    /** Name of the stream of a gauge's shunt noise. */
    static String shuntNoise(String lane) {
        return "front-end/" + lane + "/shunt-noise";
    }

    /** Stages beyond the plain model are there from the first trait on that needs them. */
    private void adopt(SensorTraits wanted) {
        if (wanted.equals(traits)) {
            return;
        }
        traits = wanted;
        if (shunt instanceof WarmShunt warm) {
            warm.configure(traits);
        } else if (WarmShunt.isNeeded(traits)) {
            shunt = new WarmShunt(spec, traits, offsetNanovolts, nowMillis);
        }
        if (shuntConverter instanceof FlawedConverter flawed) {
            flawed.configure(traits);
        } else if (FlawedConverter.isNeeded(traits)) {
            double fullScaleVolts = spec.fullScaleMicrovolts() / 1e6;
            shuntConverter = new FlawedConverter(shuntConverter, fullScaleVolts, traits);
        }
        voltage = VoltagePath.of(traits, spec.voltageProfile(), integrating);
        adoptTimes();
    }

    private void adoptTimes() {
        if (timer == null && traits.hasAny(SensorTrait.SAMPLING_INTERVAL)) {
            timer = new SampleTimer(integrating);
        }
        if (timer != null) {
            timer.configure(
                    traits.get(SensorTrait.SAMPLING_INTERVAL),
                    traits.get(SensorTrait.AWAKE_TIME),
                    traits.get(SensorTrait.SAMPLING_PHASE),
                    nowMillis);
        }
        if (Frames.isNeeded(traits)) {
            frames();
        }
        if (frames != null) {
            frames.configure(traits);
        }
    }

    private Frames frames() {
        if (frames == null) {
            frames = new Frames(seeds, lane, latest, nowMillis);
        }
        return frames;
    }

    /** Sets what becomes of the samples on their way to the gauge. */
    public void setMode(SampleMode mode) {
        frames().setMode(mode);
    }

    /** What the gauge's counter shows at power-up, how fast it runs, how it trembles. */
    public void setClock(ClockSpec clock) {
        startMillis = clock.startMillis();
        clockOffsetMillis = startMillis;
        if (clock.errorPartsPerMillion() != 0) {
            setClockError(clock.errorPartsPerMillion());
        }
        if (clock.jitterMillis() != 0) {
            setClockJitter(clock.jitterMillis());
        }
    }

    /** Sets how much too fast the counter runs from now on. */
    public void setClockError(long partsPerMillion) {
        wrongClock().setErrorPartsPerMillion(partsPerMillion);
    }

    /** Sets how far each reading of the counter may be too early or too late. */
    public void setClockJitter(long millis) {
        wrongClock().setJitterMillis(millis);
    }

    /** Moves the counter once. */
    public void jumpClock(long millis) {
        wrongClock().jump(millis);
    }

    /** Stops the counter, or lets it go on from where it stands. */
    public void setClockRunning(boolean running) {
        wrongClock().setRunning(running);
    }

    private WrongClock wrongClock() {
        if (wrongClock == null) {
            wrongClock =
                    new WrongClock(
                            seeds.seedOf("front-end/" + lane + "/clock"),
                            nowMillis + clockOffsetMillis,
                            nowMillis);
        }
        return wrongClock;
    }

    /** Sets a trait while it runs, in its unit. */
    public void set(SensorTrait trait, long value) {
        adopt(traits.with(trait, value));
    }

    /**
     * Reads the truth at the end of its last step.
     *
     * @param truth what is really so
     * @param out refilled whole; left alone by the caller until the next call
     * @return false where no sample arrives; what stands in {@code out} is then of no use
     */
    public boolean sample(Truth truth, Sample out) {
        nowMillis = truth.timeMillis();
        double amps = integrating ? truth.meanShuntAmps() : truth.shuntAmps();
        double volts =
                leads == null
                        ? shunt.voltsAt(amps, truth)
                        : shunt.voltsAt(leads.ampsSeen(amps), truth) + leads.volts();
        if (timer != null) {
            if (!timer.take(volts, nowMillis)) {
                return false;
            }
            volts = timer.volts();
        }
        out.shuntCounts = shuntConverter.convert(volts);
        out.voltageCounts = voltageConverter.convert(voltage.voltsAt(truth));
        out.temperatureMillicelsius =
                temperatureFitted
                        ? (int) Math.floor(truth.temperatureCelsius() * 1_000 + 0.5)
                        : Sample.TEMPERATURE_ABSENT;
        out.clockMillis =
                wrongClock == null
                        ? (int) (nowMillis + clockOffsetMillis)
                        : wrongClock.read(nowMillis);
        latest = out;
        return frames == null || frames.pass(out, nowMillis);
    }

    /** Sets the input-referred offset of the shunt channel. */
    public void setOffsetNanovolts(long nanovolts) {
        offsetNanovolts = nanovolts;
        shunt.setOffsetNanovolts(nanovolts);
    }

    /** Connects the leads from the shunt as they really are. */
    public void setWiring(WiringSpec wiring) {
        if (leads == null) {
            leads = new SenseLeads(spec);
        }
        leads.connect(wiring);
    }

    /** The gauge's machine starts anew: its millisecond counter begins where it always does. */
    public void restartClock(long trueMillis) {
        clockOffsetMillis = startMillis - trueMillis;
        if (wrongClock != null) {
            wrongClock.restart(startMillis, trueMillis);
        }
    }

    /** Sets what the gauge's clock shows beyond the true time, any sign; it wraps at 2^32 ms. */
    public void setClockOffsetMillis(long millis) {
        clockOffsetMillis = millis;
    }
}
