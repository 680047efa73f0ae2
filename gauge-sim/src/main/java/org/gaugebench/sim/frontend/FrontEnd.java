package org.gaugebench.sim.frontend;

import org.gaugebench.core.port.Sample;
import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.SensorSpec;
import org.gaugebench.sim.scenario.SensorSpec.Sampling;
import org.gaugebench.sim.scenario.SensorTrait;
import org.gaugebench.sim.scenario.SensorTraits;

/**
 * Turns truth into the counts that a gauge gets. Each lane has one, with noise streams of its own
 * ("front-end/LANE/shunt-noise", "front-end/LANE/voltage-noise").
 */
public final class FrontEnd {
    private final SensorSpec spec;
    private ShuntPath shunt;
    private Converter shuntConverter;
    private VoltagePath voltage = VoltagePath.TRUE;
    private SensorTraits traits;
    private long offsetNanovolts;
    private long nowMillis;
    private final AdcModel voltageConverter;
    private final boolean integrating;
    private final boolean temperatureFitted;
    private long clockOffsetMillis;

    /**
     * Creates a front end.
     *
     * @param spec shunt and converters as they really are
     * @param seeds of the run
     * @param lane name of the gauge it feeds
     */
    public FrontEnd(SensorSpec spec, SeedTree seeds, String lane) {
        this.spec = spec;
        offsetNanovolts = spec.offsetNanovolts();
        shunt = new ShuntModel(spec);
        shuntConverter =
                AdcModel.bipolar(
                        spec.converterBits(),
                        spec.fullScaleMicrovolts() / 1e6,
                        spec.gainErrorPartsPerMillion() / 1e6,
                        spec.noiseNanovolts() / 1e9,
                        seeds.seedOf("front-end/" + lane + "/shunt-noise"));
        voltageConverter =
                AdcModel.unipolar(
                        spec.voltageConverterBits(),
                        spec.voltageFullScaleMicrovolts() / 1e6,
                        spec.voltageNoiseMicrovolts() / 1e6,
                        seeds.seedOf("front-end/" + lane + "/voltage-noise"));
        integrating = spec.sampling() == Sampling.INTEGRATED;
        temperatureFitted = spec.temperatureFitted();
        traits = SensorTraits.NONE;
        adopt(spec.traits());
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
        voltage = VoltagePath.of(traits);
    }

    /** Sets a trait while it runs, in its unit. */
    public void set(SensorTrait trait, long value) {
        adopt(traits.with(trait, value));
    }

    /**
     * Reads the truth at the end of its last step.
     *
     * @param truth what is really so
     * @param out refilled whole
     */
    public void sample(Truth truth, Sample out) {
        nowMillis = truth.timeMillis();
        double amps = integrating ? truth.meanCurrentAmps() : truth.currentAmps();
        out.shuntCounts = shuntConverter.convert(shunt.voltsAt(amps, truth));
        out.voltageCounts = voltageConverter.convert(voltage.voltsAt(truth));
        out.temperatureMillicelsius =
                temperatureFitted
                        ? (int) Math.floor(truth.temperatureCelsius() * 1_000 + 0.5)
                        : Sample.TEMPERATURE_ABSENT;
        out.clockMillis = (int) (truth.timeMillis() + clockOffsetMillis);
    }

    /** Sets the input-referred offset of the shunt channel. */
    public void setOffsetNanovolts(long nanovolts) {
        offsetNanovolts = nanovolts;
        shunt.setOffsetNanovolts(nanovolts);
    }

    /** The gauge's machine starts anew: its millisecond counter begins at zero. */
    public void restartClock(long trueMillis) {
        clockOffsetMillis = -trueMillis;
    }

    /** Sets what the gauge's clock shows beyond the true time, any sign; it wraps at 2^32 ms. */
    public void setClockOffsetMillis(long millis) {
        clockOffsetMillis = millis;
    }
}
