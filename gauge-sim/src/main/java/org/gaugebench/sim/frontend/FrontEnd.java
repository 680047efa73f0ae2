package org.gaugebench.sim.frontend;

import org.gaugebench.core.port.Sample;
import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.SensorSpec;
import org.gaugebench.sim.scenario.SensorSpec.Sampling;
import org.gaugebench.sim.scenario.WiringSpec;

/**
 * Turns truth into the counts that a gauge gets. Each lane has one, with noise streams of its own
 * ("front-end/LANE/shunt-noise", "front-end/LANE/voltage-noise").
 */
public final class FrontEnd {
    private final ShuntModel shunt;
    private final AdcModel shuntConverter;
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
    }

    /**
     * Reads the truth at the end of its last step.
     *
     * @param truth what is really so
     * @param out refilled whole
     */
    public void sample(Truth truth, Sample out) {
        double amps = integrating ? truth.meanShuntAmps() : truth.shuntAmps();
        out.shuntCounts = shuntConverter.convert(shunt.voltsAt(amps));
        out.voltageCounts = voltageConverter.convert(truth.voltageVolts());
        out.temperatureMillicelsius =
                temperatureFitted
                        ? (int) Math.floor(truth.temperatureCelsius() * 1_000 + 0.5)
                        : Sample.TEMPERATURE_ABSENT;
        out.clockMillis = (int) (truth.timeMillis() + clockOffsetMillis);
    }

    /** Sets the input-referred offset of the shunt channel. */
    public void setOffsetNanovolts(long nanovolts) {
        shunt.setOffsetNanovolts(nanovolts);
    }

    /** Connects the leads from the shunt as they really are. */
    public void setWiring(WiringSpec wiring) {
        shunt.setWiring(wiring);
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
