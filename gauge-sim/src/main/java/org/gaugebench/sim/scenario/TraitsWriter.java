package org.gaugebench.sim.scenario;

import static org.gaugebench.sim.units.RecordUnit.MICROAMP_HOURS;
import static org.gaugebench.sim.units.RecordUnit.MICROOHMS;
import static org.gaugebench.sim.units.RecordUnit.MICROVOLTS;
import static org.gaugebench.sim.units.RecordUnit.MILLICELSIUS;
import static org.gaugebench.sim.units.RecordUnit.MILLIKELVIN;
import static org.gaugebench.sim.units.RecordUnit.MILLIKELVIN_PER_WATT;
import static org.gaugebench.sim.units.RecordUnit.MILLIS;
import static org.gaugebench.sim.units.RecordUnit.PARTS_PER_MILLION;

import org.gaugebench.sim.scenario.BatteryTraits.Ageing;
import org.gaugebench.sim.scenario.BatteryTraits.Kinetic;
import org.gaugebench.sim.scenario.BatteryTraits.Thermal;
import org.gaugebench.sim.scenario.BatteryTraits.WeakCell;
import org.gaugebench.sim.units.QuantityFormat;
import org.gaugebench.sim.units.RecordUnit;

/** Writes a battery's traits. One that is off leaves no trace in the text that is digested. */
final class TraitsWriter {
    private static final String NONE = "none";

    private final Lines lines;

    TraitsWriter(Lines lines) {
        this.lines = lines;
    }

    void write(BatteryTraits it) {
        kinetic(it);
        slowPolarization(it);
        lines.unlessUsual(
                "hysteresis",
                it.hysteresisMicrovolts() == 0
                        ? NONE
                        : QuantityFormat.format(it.hysteresisMicrovolts(), MICROVOLTS),
                NONE);
        lines.unlessUsual(
                "capacity-by-temperature", it.capacityFollowsTemperature() ? "on" : "off", "off");
        lines.unlessUsual(
                "efficiency-near-full",
                it.efficiencyFallsNearFull() ? "falls" : "constant",
                "constant");
        surroundings(it);
        ageing(it.ageing());
        weakCell(it);
    }

    private void kinetic(BatteryTraits it) {
        Kinetic ratings = it.kinetic();
        if (ratings == null) {
            lines.unlessUsual("kinetic", NONE, NONE);
            return;
        }
        lines.open("kinetic");
        value("capacity-10-h", MICROAMP_HOURS, ratings.tenHourMicroampHours());
        value("capacity-1-h", MICROAMP_HOURS, ratings.oneHourMicroampHours());
        lines.close();
    }

    private void slowPolarization(BatteryTraits it) {
        if (it.slowPolarizationMillis() == 0) {
            lines.unlessUsual("slow-polarization", NONE, NONE);
            return;
        }
        lines.open("slow-polarization");
        value("resistance", MICROOHMS, it.slowPolarizationMicroohms());
        value("time-constant", MILLIS, it.slowPolarizationMillis());
        lines.close();
    }

    private void surroundings(BatteryTraits it) {
        Thermal thermal = it.thermal();
        if (thermal == null) {
            lines.unlessUsual("surroundings", NONE, NONE);
            return;
        }
        lines.open("surroundings");
        value("mean", MILLICELSIUS, thermal.ambientMillicelsius());
        lines.quantity("swing", MILLIKELVIN, thermal.swingMillicelsius(), 0);
        lines.quantity("warmest", MILLIS, thermal.warmestMillis(), TraitsReader.WARMEST_MILLIS);
        lines.quantity("rise", MILLIKELVIN_PER_WATT, thermal.millikelvinPerWatt(), 0);
        value("time-constant", MILLIS, thermal.timeConstantMillis());
        lines.close();
    }

    private void ageing(Ageing it) {
        if (it.equals(Ageing.NEW)) {
            lines.unlessUsual("ageing", NONE, NONE);
            return;
        }
        lines.open("ageing");
        lines.quantity("capacity-loss", PARTS_PER_MILLION, it.capacityLossPartsPerMillion(), 0);
        lines.quantity(
                "resistance-growth", PARTS_PER_MILLION, it.resistanceGrowthPartsPerMillion(), 0);
        lines.quantity("acceptance-loss", PARTS_PER_MILLION, it.acceptanceLossPartsPerMillion(), 0);
        lines.close();
    }

    private void weakCell(BatteryTraits it) {
        WeakCell cell = it.weakCell();
        if (cell == null) {
            lines.unlessUsual("weak-cell", NONE, NONE);
            return;
        }
        lines.open("weak-cell");
        value("capacity", PARTS_PER_MILLION, cell.capacityPartsPerMillion());
        lines.quantity("lag", PARTS_PER_MILLION, cell.lagPartsPerMillion(), 0);
        lines.close();
    }

    private void value(String key, RecordUnit unit, long value) {
        lines.value(key, QuantityFormat.format(value, unit));
    }
}
