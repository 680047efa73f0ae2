package org.gaugebench.sim.scenario;

import static org.gaugebench.sim.units.RecordUnit.MICROAMPS;
import static org.gaugebench.sim.units.RecordUnit.MICROOHMS;
import static org.gaugebench.sim.units.RecordUnit.MICROVOLTS;
import static org.gaugebench.sim.units.RecordUnit.MICROVOLTS_PER_KELVIN;
import static org.gaugebench.sim.units.RecordUnit.MILLICELSIUS;
import static org.gaugebench.sim.units.RecordUnit.MILLIS;
import static org.gaugebench.sim.units.RecordUnit.NANOVOLTS;
import static org.gaugebench.sim.units.RecordUnit.PARTS_PER_MILLION;
import static org.gaugebench.sim.units.RecordUnit.PARTS_PER_MILLION_PER_MONTH;

import org.gaugebench.sim.units.CapacityRating;
import org.gaugebench.sim.units.ConverterRange;
import org.gaugebench.sim.units.RecordUnit;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;

/** Writes the physical parts: battery, sensor, chargers, loads. */
final class PartWriter {
    private final Lines lines;

    PartWriter(Lines lines) {
        this.lines = lines;
    }

    void battery(BatterySpec it) {
        BatterySpec usual =
                Defaults.battery(it.chemistry(), it.nominalVolts(), it.capacityMicroampHours());
        lines.open("battery");
        lines.value("chemistry", it.chemistry().key());
        lines.quantity(
                "nominal-voltage",
                MICROVOLTS,
                it.nominalVolts() * 1_000_000L,
                Defaults.NOMINAL_VOLTS * 1_000_000L);
        lines.value(
                "capacity",
                CapacityRating.format(it.capacityMicroampHours(), RecordUnit.MICROAMP_HOURS));
        part("start", it.startPartsPerMillion(), usual.startPartsPerMillion());
        lines.quantity(
                "series-resistance", MICROOHMS, it.seriesMicroohms(), usual.seriesMicroohms());
        lines.open("polarization");
        lines.quantity(
                "resistance", MICROOHMS, it.polarizationMicroohms(), usual.polarizationMicroohms());
        lines.quantity(
                "time-constant", MILLIS, it.polarizationMillis(), usual.polarizationMillis());
        lines.close();
        part(
                "coulombic-efficiency",
                it.coulombicEfficiencyPartsPerMillion(),
                usual.coulombicEfficiencyPartsPerMillion());
        lines.quantity(
                "self-discharge",
                PARTS_PER_MILLION_PER_MONTH,
                it.selfDischargePartsPerMillionPerMonth(),
                usual.selfDischargePartsPerMillionPerMonth());
        lines.quantity(
                "temperature",
                MILLICELSIUS,
                it.temperatureMillicelsius(),
                usual.temperatureMillicelsius());
        lines.quantityOrNone(
                "acceptance-time", MILLIS, it.acceptanceMillis(), usual.acceptanceMillis());
        part("end-current", it.endCurrentPartsPerMillion(), usual.endCurrentPartsPerMillion());
        lines.quantityOrNone(
                "charge-stop", MICROVOLTS, it.chargeStopMicrovolts(), usual.chargeStopMicrovolts());
        lines.quantityOrNone(
                "discharge-stop",
                MICROVOLTS,
                it.dischargeStopMicrovolts(),
                usual.dischargeStopMicrovolts());
        new TraitsWriter(lines).write(it.traits());
        lines.close();
    }

    void sensor(SensorSpec it) {
        SensorSpec usual = Defaults.sensor(it.shuntRatedMicroamps(), it.shuntRatedMicrovolts());
        lines.open("sensor");
        lines.value(
                "shunt",
                new ShuntRating(it.shuntRatedMicroamps(), it.shuntRatedMicrovolts()).toString());
        part("shunt-error", it.shuntErrorPartsPerMillion(), usual.shuntErrorPartsPerMillion());
        lines.value(
                "converter",
                converter(it.converterBits(), it.fullScaleMicrovolts()),
                converter(usual.converterBits(), usual.fullScaleMicrovolts()));
        part("gain-error", it.gainErrorPartsPerMillion(), usual.gainErrorPartsPerMillion());
        lines.quantity("offset", NANOVOLTS, it.offsetNanovolts(), usual.offsetNanovolts());
        lines.quantity("noise", NANOVOLTS, it.noiseNanovolts(), usual.noiseNanovolts());
        lines.value(
                "voltage-converter",
                converter(it.voltageConverterBits(), it.voltageFullScaleMicrovolts()),
                converter(usual.voltageConverterBits(), usual.voltageFullScaleMicrovolts()));
        lines.quantity(
                "voltage-noise",
                MICROVOLTS,
                it.voltageNoiseMicrovolts(),
                usual.voltageNoiseMicrovolts());
        lines.value(
                "sampling", SensorReader.key(it.sampling()), SensorReader.key(usual.sampling()));
        lines.value(
                "temperature-sensor",
                it.temperatureFitted() ? "fitted" : "none",
                usual.temperatureFitted() ? "fitted" : "none");
        it.traits().write(lines);
        ProfileBlock.write(it.voltageProfile(), ProfileBlock.VOLTAGE_KEY, lines);
        lines.close();
    }

    private static String converter(int bits, long microvolts) {
        return Lines.quoted(new ConverterRange(bits, microvolts).toString());
    }

    void charger(ChargerSpec it, BatterySpec battery) {
        ChargerSpec usual = Defaults.charger(it.name(), battery);
        lines.open(it.name());
        onOff(it.switchedOn(), usual.switchedOn());
        lines.quantity(
                "absorption", MICROVOLTS, it.absorptionMicrovolts(), usual.absorptionMicrovolts());
        lines.quantity("float", MICROVOLTS, it.floatMicrovolts(), usual.floatMicrovolts());
        lines.quantity(
                "current-limit",
                MICROAMPS,
                it.currentLimitMicroamps(),
                usual.currentLimitMicroamps());
        lines.quantity(
                "temperature-coefficient",
                MICROVOLTS_PER_KELVIN,
                it.microvoltsPerKelvin(),
                usual.microvoltsPerKelvin());
        lines.quantityOrNone(
                "float-below", MICROAMPS, it.floatBelowMicroamps(), usual.floatBelowMicroamps());
        lines.quantityOrNone(
                "absorption-limit", MILLIS, it.absorptionMillis(), usual.absorptionMillis());
        sun(it.sun(), it.currentLimitMicroamps());
        ChargerTraitsReader.write(it.traits(), it.currentLimitMicroamps(), lines);
        lines.close();
    }

    private void sun(ChargerSpec.@Nullable SunSpec it, long limit) {
        if (it == null) {
            return;
        }
        ChargerSpec.SunSpec usual = Defaults.sun(limit);
        lines.open("sun");
        lines.quantity("peak", MICROAMPS, it.peakMicroamps(), usual.peakMicroamps());
        lines.quantity("sunrise", MILLIS, it.sunriseMillis(), usual.sunriseMillis());
        lines.quantity("sunset", MILLIS, it.sunsetMillis(), usual.sunsetMillis());
        part("clouds", it.cloudsPartsPerMillion(), usual.cloudsPartsPerMillion());
        part("cloud-depth", it.cloudDepthPartsPerMillion(), usual.cloudDepthPartsPerMillion());
        lines.close();
    }

    void load(LoadSpec it, BatterySpec battery) {
        lines.open(it.name());
        if (it.traits().profile() == null) {
            lines.value(
                    LoadReader.key(it.kind()),
                    org.gaugebench.sim.units.QuantityFormat.format(
                            it.amount(), LoadReader.unit(it.kind())));
        }
        onOff(it.switchedOn(), true);
        if (it.periodMillis() > 0) {
            lines.value("on-for", ScenarioWriter.time(it.onMillis()));
            lines.value("every", ScenarioWriter.time(it.periodMillis()));
        }
        loadTraits(it.traits());
        ReturningReader.write(it, battery, lines);
        lines.close();
    }

    private void loadTraits(LoadTraits it) {
        ProfileBlock.write(it.profile(), ProfileBlock.KEY, lines);
        if (it.startsAfterMillis() > 0) {
            lines.value("starts-after", ScenarioWriter.time(it.startsAfterMillis()));
        }
        LoadShape shape = it.shape();
        if (shape != null) {
            LoadShapeReader.write(shape, lines);
        }
    }

    private void onOff(boolean on, boolean usual) {
        lines.value("switched", on ? "on" : "off", usual ? "on" : "off");
    }

    private void part(String key, long value, long usual) {
        lines.quantity(key, PARTS_PER_MILLION, value, usual);
    }
}
