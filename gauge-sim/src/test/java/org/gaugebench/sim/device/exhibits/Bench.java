package org.gaugebench.sim.device.exhibits;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.device.GaugeDevice;
import org.gaugebench.sim.memory.SimulatedStore;
import org.gaugebench.sim.scenario.Mistake;

/** An exhibit beside the plain counter, fed with the same samples. */
final class Bench {
    static final double NANOCOULOMBS_PER_AMP_HOUR = 3.6e12;
    private static final int REST_MILLIVOLTS = 12_600;

    final ExhibitGauge exhibit;
    final PlainCounter plain;
    final SimulatedStore store = new SimulatedStore(2, 64, 1);
    final List<Event> events = new ArrayList<>();
    private final Readout readout = new Readout();
    private final Sample sample = new Sample();
    private final double microampsPerCount;
    private GaugeSettings settings;
    private int tickMillis = 1_000;
    private int millivolts = REST_MILLIVOLTS;

    /** Settings with 1 mA a count: 1 mOhm, 20 bits, 2^19 uV of full scale; 100 Ah. */
    static GaugeSettings.Builder settings() {
        return GaugeSettings.builder()
                .set(Setting.CAPACITY, 100_000)
                .set(Setting.SHUNT_RATED_CURRENT, 100_000)
                .set(Setting.SHUNT_RATED_DROP, 100_000)
                .set(Setting.SHUNT_CONVERTER_BITS, 20)
                .set(Setting.SHUNT_FULL_SCALE, 524_288)
                .set(Setting.PEUKERT_EXPONENT, 1_200_000)
                .set(Setting.RATED_TIME, 20);
    }

    Bench(GaugeSettings settings, Mistake... mistakes) {
        this(settings, 1_000, 0, 0, mistakes);
    }

    Bench(GaugeSettings settings, int nominalTickMillis, int beginMillis, Mistake... mistakes) {
        this(settings, nominalTickMillis, beginMillis, 0, mistakes);
    }

    /** Both gauges have power and their first sample; nothing is declared yet. */
    Bench(
            GaugeSettings settings,
            int nominalTickMillis,
            int beginMillis,
            int beginCounts,
            Mistake... mistakes) {
        this.settings = settings;
        Set<Mistake> made = EnumSet.noneOf(Mistake.class);
        made.addAll(List.of(mistakes));
        exhibit =
                new ExhibitGauge(
                        settings,
                        made,
                        nominalTickMillis,
                        store,
                        (event, at, value) -> events.add(event));
        plain = new PlainCounter(settings);
        microampsPerCount = new CountScale(settings).microamps(1);
        tickMillis = nominalTickMillis;
        sample.clockMillis = beginMillis;
        powerUp(REST_MILLIVOLTS, beginCounts);
    }

    /** Power comes up and the first sample is taken, at no current. */
    void powerUp(int atMillivolts) {
        powerUp(atMillivolts, 0);
    }

    private void powerUp(int atMillivolts, int beginCounts) {
        exhibit.powerUp(0, OffTime.EXACT);
        plain.powerUp(0, OffTime.EXACT);
        volts(atMillivolts);
        counts(beginCounts, 0);
    }

    /** Both are told another capacity or efficiency. */
    Bench change(Setting setting, long value) {
        settings = settings.toBuilder().set(setting, value).build();
        exhibit.changeSettings(settings);
        plain.changeSettings(settings);
        return this;
    }

    Bench declare(double percent) {
        long parts = Math.round(percent * 10_000);
        exhibit.command(Command.DECLARE_STATE_OF_CHARGE, parts);
        plain.command(Command.DECLARE_STATE_OF_CHARGE, parts);
        return this;
    }

    /** The voltage from now on; one count of the voltage converter is 1 mV by default. */
    Bench volts(int newMillivolts) {
        millivolts = newMillivolts;
        return this;
    }

    Bench tickOf(int millis) {
        tickMillis = millis;
        return this;
    }

    /** One sample of a code, so long after the one before. */
    void counts(int shuntCounts, int millis) {
        sample.clockMillis += millis;
        sample.shuntCounts = shuntCounts;
        sample.voltageCounts = millivolts;
        exhibit.tick(sample);
        plain.tick(sample);
    }

    void amps(double amps, int millis) {
        counts((int) Math.round(amps * 1e6 / microampsPerCount), millis);
    }

    /** A constant current for a time, in ticks. */
    Bench run(double amps, double seconds) {
        long ticks = Math.round(seconds * 1_000 / tickMillis);
        for (long i = 0; i < ticks; i++) {
            amps(amps, tickMillis);
        }
        return this;
    }

    Readout read() {
        return read(exhibit);
    }

    private Readout read(GaugeDevice device) {
        device.read(readout);
        return readout;
    }

    double ampHours() {
        return read().remainingNanocoulombs / NANOCOULOMBS_PER_AMP_HOUR;
    }

    double plainAmpHours() {
        return read(plain).remainingNanocoulombs / NANOCOULOMBS_PER_AMP_HOUR;
    }

    double percent() {
        return read().stateOfChargePartsPerMillion / 1e4;
    }

    double filteredAmps() {
        return read().averageCurrentMicroamps / 1e6;
    }

    long count(Event event) {
        return events.stream().filter(e -> e == event).count();
    }
}
