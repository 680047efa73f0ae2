package org.gaugebench.sim.plant;

import org.jspecify.annotations.Nullable;

/**
 * Finds the bus voltage at which what the chargers give equals what the loads and the battery take.
 *
 * <p>A charger gives up to its limit below its set voltage, anything up to its limit at it, and
 * nothing above it. So the supply falls in steps as the voltage rises, the demand rises, and they
 * meet either at a set voltage (that charger regulates, those set higher give all they have, those
 * set lower nothing) or between two (nobody regulates: supply-limited).
 */
final class Bus {

    /** Slope given to chargers without cable where another has one: 0.1 mV at 100 A. */
    private static final double SHORT_FEED_OHMS = 1e-6;

    /** A charger on a slope holds its voltage to within the search and its rounding. */
    private static final double SLACK_VOLTS = 1e-9;

    private final Battery battery;
    private final LoadBank loads;
    private final Charger[] chargers;
    private final BracketedSecant secant = new BracketedSecant();

    /** Those that can give something now, lowest set voltage first. */
    private final Charger[] active;

    private final boolean sloped;
    private int activeCount;
    private double supplyAmps;

    // Conditions of the present step.
    private boolean chargeAllowed;
    private boolean dischargeAllowed;
    private boolean atRegulation;
    private int regulatorPlace;
    private double regulatorSpareAmps;
    private double volts;
    private double batteryAmps;
    private double loadAmps;
    private boolean starved;

    Bus(Battery battery, LoadBank loads, Charger[] chargers) {
        this.battery = battery;
        this.loads = loads;
        this.chargers = chargers;
        active = new Charger[chargers.length];
        boolean cables = false;
        for (Charger charger : chargers) {
            cables |= charger.cableOhms() > 0;
        }
        sloped = cables;
        for (Charger charger : chargers) {
            if (sloped) {
                charger.setFeedOhms(Math.max(charger.cableOhms(), SHORT_FEED_OHMS), SLACK_VOLTS);
            }
        }
    }

    /** Sorts the chargers anew, after any of them changed its set voltage or supply. */
    void renewChargers() {
        activeCount = 0;
        supplyAmps = 0;
        for (Charger charger : chargers) {
            charger.setOutputAmps(0);
            if (charger.availableAmps() <= 0) {
                continue;
            }
            int place = activeCount++;
            while (place > 0 && active[place - 1].setVolts() > charger.setVolts()) {
                active[place] = active[place - 1];
                place--;
            }
            active[place] = charger;
            supplyAmps += charger.availableAmps();
        }
    }

    /** Takes over the state of another bus; its battery, loads and chargers are copied already. */
    void adopt(Bus other) {
        supplyAmps = other.supplyAmps;
        activeCount = other.activeCount;
        for (int i = 0; i < activeCount; i++) {
            active[i] = chargers[other.placeOf(other.active[i])];
        }
        chargeAllowed = other.chargeAllowed;
        dischargeAllowed = other.dischargeAllowed;
        atRegulation = other.atRegulation;
        regulatorPlace = other.regulatorPlace;
        regulatorSpareAmps = other.regulatorSpareAmps;
        volts = other.volts;
        batteryAmps = other.batteryAmps;
        loadAmps = other.loadAmps;
        starved = other.starved;
    }

    @Nullable Charger find(String name) {
        for (Charger charger : chargers) {
            if (charger.name().equals(name)) {
                return charger;
            }
        }
        return null;
    }

    private int placeOf(Charger charger) {
        int place = 0;
        while (chargers[place] != charger) {
            place++;
        }
        return place;
    }

    /** Fills in what each charger gave in the last step, in amps, in their order. */
    void fillAmps(double[] out) {
        for (int i = 0; i < out.length; i++) {
            out[i] = chargers[i].outputAmps();
        }
    }

    /** What a charger gave in the last step, in amps; 0 for an unknown name. */
    double chargerAmps(String name) {
        Charger charger = find(name);
        return charger == null ? 0 : charger.outputAmps();
    }

    /** Whether the loads asked for more than there was. */
    boolean isStarved() {
        return starved;
    }

    double volts() {
        return volts;
    }

    double batteryAmps() {
        return batteryAmps;
    }

    /** What the loads really got: less than they ask when nothing can supply them. */
    double loadAmps() {
        return loadAmps;
    }

    /** Whether a charger holds its set voltage. */
    boolean isRegulated() {
        return atRegulation;
    }

    /** Whether a charger is the one that held its set voltage last. */
    boolean isRegulator(Charger charger) {
        return active[regulatorPlace] == charger;
    }

    /** Whether the charger that holds its set voltage follows what the loads do in an instant. */
    boolean followsInstants() {
        return atRegulation && !active[regulatorPlace].isPulsed();
    }

    /** Resistance between a current that changes at once and the bus's voltage. */
    double promptOhms() {
        return battery.promptOhms();
    }

    /** What the regulating charger could give on top. */
    double regulatorSpareAmps() {
        return regulatorSpareAmps;
    }

    /** Solves the step for which the battery is prepared. */
    void solve(boolean mayCharge, boolean mayDischarge) {
        chargeAllowed = mayCharge;
        dischargeAllowed = mayDischarge;
        atRegulation = false;
        starved = false;
        if (sloped) {
            solveOnSlopes();
            return;
        }
        double from = supplyAmps;
        for (int i = 0; i < activeCount; i++) {
            Charger charger = active[i];
            double setVolts = charger.setVolts();
            double above = i == activeCount - 1 ? 0 : from - charger.availableAmps();
            double asked = loads.ampsAt(setVolts);
            double taken = allowed(battery.ampsAt(setVolts));
            double demand = asked + taken;
            if (demand >= from) {
                giveAll(i);
                solveBetween(from, setVolts);
                return;
            }
            if (demand >= above) {
                atRegulation = true;
                regulatorPlace = i;
                regulatorSpareAmps = from - demand;
                charger.setOutputAmps(demand - above);
                giveAll(i + 1);
                volts = setVolts;
                batteryAmps = taken;
                loadAmps = asked;
                return;
            }
            charger.setOutputAmps(0);
            from = above;
        }
        solveBetween(0, Double.POSITIVE_INFINITY);
    }

    /**
     * Chargers behind cables: each gives up to its limit, falling in a straight line to nothing as
     * the bus nears its set voltage, I = (set - V) / cable. Supply less demand then falls with the
     * voltage, and the Illinois search finds where they meet.
     */
    private void solveOnSlopes() {
        double high = activeCount > 0 ? active[activeCount - 1].setVolts() : 0;
        double low = battery.restVolts() / 2;
        if (activeCount == 0 || high <= low || feedExcess(high) >= 0) {
            for (int i = 0; i < activeCount; i++) {
                active[i].setOutputAmps(0);
            }
            solveBetween(0, Double.POSITIVE_INFINITY);
            return;
        }
        double excessLow = feedExcess(low);
        double excessHigh = feedExcess(high);
        if (excessLow <= 0) {
            giveAll(0);
            solveBetween(supplyAmps, high);
            return;
        }
        secant.begin(low, excessLow, high, excessHigh);
        while (secant.next()) {
            secant.take(feedExcess(secant.at()));
        }
        settleOnSlopes(secant.at());
    }

    private void settleOnSlopes(double atVolts) {
        double supply = 0;
        for (int i = 0; i < activeCount; i++) {
            double amps = feedAmps(active[i], atVolts);
            active[i].setOutputAmps(amps);
            supply += amps;
            if (amps > 0 && amps < active[i].availableAmps()) {
                atRegulation = true;
                regulatorPlace = i;
                regulatorSpareAmps = active[i].availableAmps() - amps;
            }
        }
        double amps = supply - loads.ampsAt(atVolts);
        boolean barred = amps > 0 ? !chargeAllowed : !dischargeAllowed;
        if (barred) {
            // Nothing flows through the battery; what the search left over is rounding.
            volts = atVolts;
            batteryAmps = 0;
            loadAmps = supply;
            return;
        }
        settle(amps, atVolts, supply);
    }

    private double feedExcess(double atVolts) {
        double supply = 0;
        for (int i = 0; i < activeCount; i++) {
            supply += feedAmps(active[i], atVolts);
        }
        return supply - loads.ampsAt(atVolts) - allowed(battery.ampsAt(atVolts));
    }

    private static double feedAmps(Charger charger, double atVolts) {
        double amps = (charger.setVolts() - atVolts) / charger.feedOhms();
        return Math.min(Math.max(amps, 0), charger.availableAmps());
    }

    private void giveAll(int first) {
        for (int i = first; i < activeCount; i++) {
            active[i].setOutputAmps(active[i].availableAmps());
        }
    }

    private double allowed(double amps) {
        if (amps >= 0) {
            return chargeAllowed ? amps : 0;
        }
        return dischargeAllowed ? Math.max(amps, -battery.drawableAmps()) : 0;
    }

    /** Nobody regulates: the voltage settles where the battery takes or gives the difference. */
    private void solveBetween(double supply, double highestVolts) {
        double restVolts = battery.restVolts();
        double difference = supply - loads.ampsAt(restVolts);
        boolean charging = difference > 0;
        if (charging ? !chargeAllowed : !dischargeAllowed) {
            collapse(supply);
        } else if (!charging && loads.isConstantCurrent()) {
            settle(difference, battery.voltsAt(difference), supply);
        } else if (loads.isConstantCurrent()) {
            settle(difference, Math.min(battery.voltsAt(difference), highestVolts), supply);
        } else if (!charging || battery.isLinearOnCharge()) {
            settleOnLine(supply, battery.ohms(charging));
        } else {
            settleBySearch(supply, highestVolts);
        }
    }

    private void settle(double amps, double settledVolts, double supply) {
        if (settledVolts <= 0 || amps < -battery.drawableAmps()) {
            battery.refuse();
            collapse(supply);
            return;
        }
        volts = settledVolts;
        batteryAmps = amps;
        loadAmps = supply - amps;
    }

    /**
     * A straight battery line: V = rest + R (supply - I - P/V - G V), the larger root. Without a
     * root the constant-power loads ask more than the battery can give, and the bus breaks down.
     */
    private void settleOnLine(double supply, double ohms) {
        double weight = 1 / (1 + ohms * loads.conductanceSiemens());
        double open = (battery.restVolts() + ohms * (supply - loads.currentAmps())) * weight;
        double root = open * open - 4 * ohms * weight * loads.powerWatts();
        if (open <= 0 || root < 0) {
            collapse(supply);
            return;
        }
        double settledVolts = (open + Math.sqrt(root)) / 2;
        settle(supply - loads.ampsAt(settledVolts), settledVolts, supply);
    }

    /**
     * Searches between rest voltage, where the battery takes nothing, and the set voltage, where
     * battery and loads take all.
     */
    private void settleBySearch(double supply, double highestVolts) {
        double low = battery.restVolts();
        // A load that feeds the bus knows no highest voltage; the battery alone takes less there.
        double high =
                highestVolts < Double.POSITIVE_INFINITY
                        ? highestVolts
                        : battery.voltsAt(supply - loads.currentAmps());
        double excessLow = excess(supply, low);
        double excessHigh = excess(supply, high);
        secant.begin(low, excessLow, high, excessHigh);
        while (secant.next()) {
            secant.take(excess(supply, secant.at()));
        }
        double settledVolts = secant.at();
        settle(supply - loads.ampsAt(settledVolts), settledVolts, supply);
    }

    private double excess(double supply, double atVolts) {
        return supply - loads.ampsAt(atVolts) - battery.ampsAt(atVolts);
    }

    /**
     * The battery can neither give nor take. What the chargers give goes into the loads: beside
     * constant-current loads resistive ones hold a voltage on the rest; loads that ask more than
     * there is pull the bus to zero.
     */
    private void collapse(double supply) {
        batteryAmps = 0;
        loadAmps = supply;
        starved = loads.isAsking();
        double spare = supply - loads.currentAmps();
        boolean holds = loads.powerWatts() == 0 && loads.conductanceSiemens() > 0 && spare > 0;
        volts = holds ? spare / loads.conductanceSiemens() : 0;
    }
}
