package org.gaugebench.sim.bench;

import java.util.HashMap;
import java.util.Map;
import org.gaugebench.core.port.Sample;

/** The peer with a flexible model: the same state, as boxed doubles in a map by name. */
final class BoxedMapGauge implements BenchGauge {
    private final Map<String, Double> state = new HashMap<>();
    private boolean started;
    private int lastClockMillis;

    BoxedMapGauge() {
        for (String name :
                new String[] {
                    "charge", "minuteCharge", "in", "out", "surplus", "deficit", "energyIn",
                    "energyOut", "minuteSeconds", "voltSeconds", "highestVolts", "discharged",
                    "full", "held", "fullCount", "minutesToEmpty", "faults"
                }) {
            state.put(name, 0.0);
        }
        state.put("armed", 1.0);
        state.put("lowestVolts", Double.MAX_VALUE);
        state.put("filtered", Double.NaN);
        state.put("capacity", 100.0);
        state.put("efficiency", 0.92);
        state.put("offsetCounts", 1.5);
        state.put("ampsPerCount", 0.1 / 524_288 / 0.00075);
        state.put("voltsPerCount", 65.536 / 65_536);
    }

    private double get(String name) {
        return state.get(name);
    }

    private void set(String name, double value) {
        state.put(name, value);
    }

    private void increase(String name, double value) {
        state.merge(name, value, Double::sum);
    }

    @Override
    public void start() {
        set("charge", 70);
    }

    @Override
    public void tick(Sample sample) {
        double seconds = started ? (sample.clockMillis - lastClockMillis) / 1000.0 : 0;
        started = true;
        lastClockMillis = sample.clockMillis;
        double amps = (sample.shuntCounts - get("offsetCounts")) * get("ampsPerCount");
        double volts = sample.voltageCounts * get("voltsPerCount");
        if (Math.abs(sample.shuntCounts) >= 524_287 || sample.voltageCounts >= 65_535) {
            increase("faults", 1);
        }
        while (seconds >= 60 - get("minuteSeconds")) {
            double stretch = 60 - get("minuteSeconds");
            add(amps, volts, stretch);
            seconds -= stretch;
            closeMinute(sample.temperatureMillicelsius / 1000.0);
        }
        if (seconds > 0) {
            add(amps, volts, seconds);
        }
    }

    private void add(double amps, double volts, double seconds) {
        double ampHours = amps * seconds / 3600;
        increase("minuteCharge", ampHours);
        if (ampHours > 0) {
            increase("in", ampHours);
            increase("energyIn", ampHours * volts);
        } else {
            increase("out", -ampHours);
            increase("energyOut", -ampHours * volts);
        }
        increase("minuteSeconds", seconds);
        increase("voltSeconds", volts * seconds);
        set("lowestVolts", Math.min(get("lowestVolts"), volts));
        set("highestVolts", Math.max(get("highestVolts"), volts));
    }

    private double stored() {
        double net = get("minuteCharge");
        return net > 0 ? net * get("efficiency") : net;
    }

    private void closeMinute(double celsius) {
        double capacity = get("capacity");
        double limit = get("full") > 0 ? capacity : Math.max(0.99 * capacity, get("charge"));
        double target = get("charge") + stored();
        set("charge", Math.max(0, Math.min(limit, target)));
        increase("surplus", Math.max(0, target - get("charge")));
        increase("deficit", Math.max(0, get("charge") - target));
        double mean = get("minuteCharge") * 60;
        judge(mean, celsius);
        double filtered = get("filtered");
        filtered = Double.isNaN(filtered) ? mean : filtered + (mean - filtered) / 8;
        set("filtered", filtered);
        set(
                "minutesToEmpty",
                filtered < -0.01 ? Math.min(99 * 60, get("charge") / -filtered * 60) : 0);
        set("minuteCharge", 0);
        set("minuteSeconds", 0);
        set("voltSeconds", 0);
        set("lowestVolts", Double.MAX_VALUE);
        set("highestVolts", 0);
    }

    private void judge(double mean, double celsius) {
        double threshold = 14.4 - 0.2 - 0.024 * (celsius - 25);
        if (get("armed") == 0) {
            set("discharged", Math.max(0, get("discharged") - mean / 60));
            if (get("discharged") >= 2) {
                set("armed", 1);
                set("full", 0);
                set("held", 0);
            }
        } else if (get("lowestVolts") < threshold || mean > 2 || mean < -0.5) {
            set("held", 0);
        } else {
            increase("held", 1);
            if (get("held") >= 60) {
                set("charge", get("capacity"));
                set("full", 1);
                set("armed", 0);
                set("discharged", 0);
                set("surplus", 0);
                set("deficit", 0);
                set("held", 0);
                increase("fullCount", 1);
            }
        }
    }

    @Override
    public double chargeAmpHours() {
        return get("charge") + stored();
    }

    @Override
    public double energyOutWattHours() {
        return get("energyOut");
    }

    @Override
    public int fullCount() {
        return (int) get("fullCount");
    }

    @Override
    public int timeToEmptyMinutes() {
        return (int) get("minutesToEmpty");
    }
}
