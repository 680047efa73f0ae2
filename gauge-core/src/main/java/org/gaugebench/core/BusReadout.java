package org.gaugebench.core;

import org.gaugebench.core.estimate.RateModel;
import org.gaugebench.core.port.FullTimeState;
import org.gaugebench.core.readout.SmartBatteryInput;
import org.gaugebench.core.readout.SmartBatteryView;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * Fills the bus view from the stages: once a minute, as it remembers that the battery was empty,
 * and whenever somebody reads it.
 */
final class BusReadout {
    private final SmartBatteryInput input = new SmartBatteryInput();
    private final SmartBatteryView view;

    BusReadout(GaugeSettings settings, RateModel rateModel) {
        view =
                new SmartBatteryView(
                        settings.get(Setting.CAPACITY),
                        (int) settings.get(Setting.NOMINAL_VOLTAGE),
                        settings.get(Setting.SHUNT_RATED_CURRENT),
                        rateModel);
    }

    /**
     * Takes the figures of this instant.
     *
     * <p><b>Range:</b> an edge of at most 1,000,000 ppm times a millionth of the capacity.
     */
    void update(Stages s, boolean known, LastSample last) {
        long capacityNanocoulombs = s.charge.capacityNanocoulombs();
        long capacityPart = capacityNanocoulombs / 1_000_000;
        // A band that says nothing is wider than any MaxError: nothing is initialized then.
        input.known = known && !s.band.isUnknown();
        input.lowNanocoulombs = s.band.lowerEdgePartsPerMillion() * capacityPart;
        input.highNanocoulombs = s.band.upperEdgePartsPerMillion() * capacityPart;
        input.fullChargeNanocoulombs = capacityNanocoulombs;
        input.currentMicroamps = last.currentMicroamps;
        input.oneMinuteMicroamps = s.loadFilter.oneMinuteMicroamps();
        input.voltageMicrovolts = last.voltageMicrovolts;
        input.temperatureMillicelsius = last.temperatureMillicelsius;
        input.cycleCount = s.charge.outNanocoulombs() / capacityNanocoulombs;
        input.timeToFullMinutes =
                s.timeToFull.state() == FullTimeState.ESTIMATE ? s.timeToFull.minutes() : -1;
        input.fullProven = s.charge.isFullProven();
        view.update(input);
    }

    int read(int code) {
        return view.read(code);
    }

    boolean write(int code, int value) {
        return view.write(code, value);
    }
}
