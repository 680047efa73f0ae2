package org.gaugebench.sim.plant;

import java.util.List;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.BatterySpec;
import org.gaugebench.sim.scenario.BatteryTraits.Thermal;
import org.gaugebench.sim.scenario.Change;
import org.gaugebench.sim.scenario.ChargerSpec;
import org.gaugebench.sim.scenario.LoadSpec;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.WiringSpec;
import org.jspecify.annotations.Nullable;

/**
 * The plant: one battery behind its protection circuit and an isolator, chargers and loads on a
 * bus. The gauge's voltage leads are on the bus side, so with isolator or protection open they see
 * the chargers' voltage, or nothing.
 *
 * <p>Within a step currents are constant: cycling loads and the sun enter by their mean. Voltage
 * and charge are those at its end.
 */
public final class Circuit implements Truth {
    private final BatterySpec batterySpec;
    private final List<ChargerSpec> chargerSpecs;
    private final List<LoadSpec> loadSpecs;
    private final SeedTree seeds;
    private final Battery battery;
    private final Protection protection;
    private final LoadBank loads;
    private final Charger[] chargers;
    private final Bus bus;
    private final Wiring wiring;
    private final boolean anySun;
    private final @Nullable Surroundings surroundings;

    private long timeMillis;
    private boolean isolatorOpen;
    private double busVolts;
    private double meanAmps;
    // What is due, looked at once a step by one comparison.
    private long renewAfterMillis;
    private long nextMinuteMillis;
    private long heatedMillis;
    private boolean busChanged = true;

    /**
     * Builds the plant of a scenario.
     *
     * @param scenario checked
     * @param seeds of clouds and gusts: streams "plant/CHARGER/clouds" and "plant/CHARGER/gusts"
     */
    public Circuit(Scenario scenario, SeedTree seeds) {
        this(scenario.battery(), scenario.chargers(), scenario.loads(), seeds);
        setWiring(scenario.wiring());
    }

    /**
     * Builds a plant from its parts.
     *
     * @param batterySpec the battery
     * @param chargerSpecs names unlike each other
     * @param loadSpecs names unlike each other
     * @param seeds of the clouds
     */
    public Circuit(
            BatterySpec batterySpec,
            List<ChargerSpec> chargerSpecs,
            List<LoadSpec> loadSpecs,
            SeedTree seeds) {
        this(batterySpec, chargerSpecs, loadSpecs, seeds, new Battery(batterySpec));
    }

    private Circuit(
            BatterySpec batterySpec,
            List<ChargerSpec> chargerSpecs,
            List<LoadSpec> loadSpecs,
            SeedTree seeds,
            Battery battery) {
        this.batterySpec = batterySpec;
        this.chargerSpecs = chargerSpecs;
        this.loadSpecs = loadSpecs;
        this.seeds = seeds;
        this.battery = battery;
        Thermal thermal = batterySpec.traits().thermal();
        surroundings = thermal == null ? null : new Surroundings(thermal);
        protection = new Protection(batterySpec);
        loads = new LoadBank(loadSpecs);
        chargers = Charger.all(chargerSpecs, loadSpecs, seeds);
        boolean solar = false;
        for (Charger charger : chargers) {
            solar |= charger.isSolar();
            charger.setTemperature(battery.temperatureCelsius());
        }
        anySun = solar;
        bus = new Bus(battery, loads, chargers);
        wiring = new Wiring(loadSpecs, loads, chargers, bus);
        busVolts = battery.restVolts();
    }

    /** A plant in the same state, which goes on by itself and to the same bits. */
    public Circuit copy() {
        Circuit twin = new Circuit(batterySpec, chargerSpecs, loadSpecs, seeds, battery.copy());
        twin.protection.adopt(protection);
        twin.loads.adopt(loads);
        for (int i = 0; i < chargers.length; i++) {
            twin.chargers[i].adopt(chargers[i]);
        }
        twin.bus.adopt(bus);
        twin.setWiring(wiring.spec());
        twin.timeMillis = timeMillis;
        twin.isolatorOpen = isolatorOpen;
        twin.busVolts = busVolts;
        twin.meanAmps = meanAmps;
        twin.renewAfterMillis = renewAfterMillis;
        twin.nextMinuteMillis = nextMinuteMillis;
        twin.heatedMillis = heatedMillis;
        twin.busChanged = busChanged;
        return twin;
    }

    @Override
    public void step(int millis) {
        long endMillis = timeMillis + millis;
        if (endMillis > renewAfterMillis) {
            renew(endMillis);
        }
        battery.prepare(millis);
        boolean joined = !isolatorOpen && !protection.isForcedOpen();
        if (protection.isTripped()) {
            solveTripped(joined);
        } else {
            bus.solve(joined, joined);
        }
        busVolts = bus.volts();
        meanAmps = bus.batteryAmps();
        battery.advance(meanAmps, busVolts);
        double terminalVolts = busVolts - meanAmps * wiring.jointOhms();
        protection.watch(meanAmps, battery.decidingVolts(meanAmps, terminalVolts));
        timeMillis = endMillis;
        for (Charger charger : chargers) {
            if (charger.advance(millis, busVolts)) {
                askForRenewal();
                busChanged = true;
            }
        }
    }

    /** Asks first what the battery would do with both paths closed, then solves what it may. */
    private void solveTripped(boolean joined) {
        bus.solve(joined, joined);
        protection.notice(bus.batteryAmps() > 0, bus.batteryAmps() < 0);
        bus.solve(joined && protection.allowsCharge(), joined && protection.allowsDischarge());
    }

    private void renew(long endMillis) {
        long next = loads.renew(timeMillis, endMillis);
        if (anySun || surroundings != null) {
            if (timeMillis >= nextMinuteMillis) {
                beginMinute();
            }
            next = Math.min(next, nextMinuteMillis);
        }
        for (Charger charger : chargers) {
            busChanged |= charger.beginStep(timeMillis, endMillis);
            next = Math.min(next, charger.nextChangeMillis(timeMillis));
        }
        renewAfterMillis = next;
        if (busChanged) {
            bus.renewChargers();
            busChanged = false;
        }
    }

    private void beginMinute() {
        long start = timeMillis - timeMillis % Sun.MINUTE_MILLIS;
        if (surroundings != null && timeMillis > heatedMillis) {
            double heat = battery.takeHeatJoules();
            setBatteryTemperature(
                    surroundings.after(
                            battery.temperatureCelsius(), heatedMillis, timeMillis, heat));
            heatedMillis = timeMillis;
        }
        for (Charger charger : chargers) {
            charger.beginMinute(start);
        }
        nextMinuteMillis = start + Sun.MINUTE_MILLIS;
        busChanged = true;
    }

    private void askForRenewal() {
        renewAfterMillis = timeMillis;
    }

    /**
     * Carries out a change, effective from the next step.
     *
     * @param change its time is not looked at
     * @return whether the address belongs to the plant and the name is known
     */
    public boolean apply(Change change) {
        boolean on = change.value() != 0;
        switch (change.target()) {
            case LOAD_SWITCH -> {
                return switchLoad(change.name(), on);
            }
            case LOAD_AMOUNT -> {
                return setLoadAmount(change.name(), change.value());
            }
            case CHARGER_SWITCH -> {
                return switchCharger(change.name(), on);
            }
            case ISOLATOR -> setIsolatorOpen(on);
            case PROTECTION -> forceProtectionOpen(on);
            case BATTERY_TEMPERATURE -> setBatteryTemperature(change.value() / 1e3);
            case WIRING -> setWiring(wiring.spec().with(change.name(), change.value()));
            default -> {
                return false;
            }
        }
        return true;
    }

    /** Switches a load, with what it gives back; false for an unknown name. It begins its cycle. */
    public boolean switchLoad(String name, boolean on) {
        Load load = loads.find(name);
        if (load == null) {
            return false;
        }
        load.switchTo(on, timeMillis);
        switchCharger(name, on);
        askForRenewal();
        return true;
    }

    /** Sets a load's amount: microamps, microwatts or microohms; false for an unknown name. */
    public boolean setLoadAmount(String name, long amount) {
        Load load = loads.find(name);
        if (load == null) {
            return false;
        }
        load.setAmount(amount);
        askForRenewal();
        return true;
    }

    /** Switches a charger; false for an unknown name. Switched on, it begins in bulk. */
    public boolean switchCharger(String name, boolean on) {
        Charger charger = bus.find(name);
        if (charger == null) {
            return false;
        }
        charger.switchTo(on, timeMillis);
        busChanged = true;
        askForRenewal();
        return true;
    }

    /** Opens or closes the isolator between the battery and everything else. */
    public void setIsolatorOpen(boolean open) {
        isolatorOpen = open;
    }

    /** Forces the protection circuit open, or leaves it to itself. */
    public void forceProtectionOpen(boolean open) {
        protection.force(open);
    }

    /** Wires the plant anew; the front end's part of the wiring is not the plant's. */
    public void setWiring(WiringSpec spec) {
        wiring.set(spec);
        battery.setJointOhms(wiring.jointOhms());
        loads.setOwnAmps(wiring.ownAmps());
        askForRenewal();
    }

    /** The present wiring. */
    public WiringSpec wiring() {
        return wiring.spec();
    }

    /** Moves battery and temperature-compensated chargers to a temperature. */
    public void setBatteryTemperature(double celsius) {
        battery.setTemperature(celsius);
        for (Charger charger : chargers) {
            charger.setTemperature(celsius);
        }
        busChanged = true;
        askForRenewal();
    }

    @Override
    public long timeMillis() {
        return timeMillis;
    }

    @Override
    public double meanCurrentAmps() {
        return meanAmps;
    }

    @Override
    public double currentAmps() {
        return wiring.batteryAmpsAt(timeMillis, meanAmps);
    }

    @Override
    public double meanShuntAmps() {
        return wiring.isStraight() ? meanAmps : wiring.meanShuntAmps(meanAmps);
    }

    @Override
    public double shuntAmps() {
        return wiring.shuntAmpsAt(timeMillis, meanAmps);
    }

    @Override
    public double batteryVolts() {
        boolean parted = isolatorOpen || protection.isForcedOpen();
        boolean blocked = protection.isTripped() && meanAmps == 0;
        return parted || blocked ? battery.restVolts() : busVolts - meanAmps * wiring.jointOhms();
    }

    @Override
    public double voltageVolts() {
        return wiring.isVoltageAtBattery() ? batteryVolts() : busVolts;
    }

    @Override
    public double instantVolts() {
        return voltageVolts() + wiring.unevenVoltsAt(timeMillis, meanAmps);
    }

    @Override
    public double temperatureCelsius() {
        return battery.temperatureCelsius();
    }

    @Override
    public double chargeAmpHours() {
        return battery.chargeAmpHours();
    }

    @Override
    public double capacityAmpHours() {
        return battery.capacityAmpHours();
    }

    /**
     * Charge that can be drawn as things stand, in ampere-hours: with the present current held if
     * the battery is discharging and at the 20 h rate if not, at the present temperature; 0 while
     * isolator or protection keep the battery from discharging.
     */
    public double availableAmpHours() {
        if (isolatorOpen || !protection.allowsDischarge()) {
            return 0;
        }
        return battery.drawableAmpHours(meanAmps < 0 ? -meanAmps : battery.twentyHourAmps());
    }

    /** Whether the loads asked for more in the last step than there was. */
    public boolean isStarved() {
        return bus.isStarved();
    }

    /**
     * A plant of this battery as it stands, behind its protection circuit and in its surroundings,
     * with one load of constant current and nothing else.
     *
     * @param amps drawn, above 0
     */
    Circuit withOneLoad(double amps) {
        LoadSpec load =
                new LoadSpec(
                        "held", true, LoadSpec.Kind.CONSTANT_CURRENT, Math.round(amps * 1e6), 0, 0);
        Circuit twin = new Circuit(batterySpec, List.of(), List.of(load), seeds, battery.copy());
        twin.protection.adopt(protection);
        twin.setWiring(wiring.spec().jointAlone());
        twin.isolatorOpen = isolatorOpen;
        twin.timeMillis = timeMillis;
        twin.heatedMillis = heatedMillis;
        twin.busVolts = busVolts;
        return twin;
    }

    /** What the loads got in the last step, in amps. */
    public double loadAmps() {
        return bus.loadAmps();
    }

    /** Fills in what each load got and each charger gave in the last step, in amps. */
    public void fillAmps(double[] loadAmps, double[] chargerAmps) {
        loads.fillAmps(loadAmps, bus.isStarved() ? 0 : 1, busVolts);
        bus.fillAmps(chargerAmps);
    }

    /** What a charger gave in the last step, in amps; 0 for an unknown name. */
    public double chargerAmps(String name) {
        return bus.chargerAmps(name);
    }
}
