package org.gaugebench.sim.agree;

import java.util.List;

/**
 * Deep cycles between proven fulls in which nothing is wrong: what the gauge measures capacity and
 * efficiency by (C rules), and what chance alone does not hit. Two results have to agree before a
 * measured value moves, so there are three fulls and two ends.
 */
final class MeasuredCycles {
    private static final int PACE_MILLIS = 60_000;
    private static final int MINUTES_PER_HOUR = 60;

    /** Longer than it takes to fall through the taper range, and to hold there. */
    private static final int ABSORPTION_MINUTES = 300;

    private static final int CYCLES = 2;

    /** Longer than the longest float hold of {@link SettingsDraw#measuring}. */
    private static final int FLOAT_MINUTES = 80;

    private final Dice dice;
    private final int efficiencyPermille;
    private final Feeder feeder;
    private final List<Step> steps;

    /** Current moved in, less current moved out, in mA for a minute. */
    private long netMilliampMinutes;

    private int ticks;

    private MeasuredCycles(Dice dice, int efficiencyPermille, Feeder feeder, List<Step> steps) {
        this.dice = dice;
        this.efficiencyPermille = efficiencyPermille;
        this.feeder = feeder;
        this.steps = steps;
    }

    /**
     * Adds them.
     *
     * @param dice of the script
     * @param efficiencyPermille what the gauge reckons with
     * @param feeder gives the counts
     * @param steps receives the ticks
     * @return how many ticks they take
     */
    static int add(Dice dice, int efficiencyPermille, Feeder feeder, List<Step> steps) {
        MeasuredCycles it = new MeasuredCycles(dice, efficiencyPermille, feeder, steps);
        it.run();
        return it.ticks;
    }

    private void run() {
        long hourly = feeder.capacityMilliampHours();
        long bulk = hourly / 5;
        charge(bulk, 60);
        // About what the gauge reckons with: a full that the count contradicts is no evidence, nor
        // is an end far from empty.
        int returnedPermille = Math.min(990, efficiencyPermille + dice.between(-10, 10));
        int outPercent = dice.between(93, 99);
        for (int i = 0; i < CYCLES; i++) {
            netMilliampMinutes = 0;
            long out = hourly * MINUTES_PER_HOUR * (outPercent + dice.between(-1, 1)) / 100;
            discharge(hourly / 8, out);
            long wanted = -netMilliampMinutes * 1_000 / returnedPermille;
            // What the absorption will bring: from twice the taper down by a 256th a minute.
            long brought = absorptionMilliampMinutes();
            charge(bulk, (int) Math.max(20, (wanted - brought) / Math.max(1, bulk)));
        }
        if (dice.once(2)) {
            floatAtLast(bulk);
        }
    }

    /** A shallow cycle that ends at a float charger, which proves full as well. */
    private void floatAtLast(long bulkMilliamps) {
        long hourly = feeder.capacityMilliampHours();
        feeder.beginSteady(-hourly / 8, feeder.nominalMillivolts());
        feed(120);
        feeder.beginSteady(bulkMilliamps, feeder.absorptionMillivolts() - 100);
        feed(90);
        feeder.beginCalm(Feeder.Phase.FLOAT);
        feed(FLOAT_MINUTES);
    }

    private long absorptionMilliampMinutes() {
        long sum = 0;
        feeder.beginCalm(Feeder.Phase.ABSORPTION);
        long milliamps = feeder.milliamps();
        for (int i = 0; i < ABSORPTION_MINUTES; i++) {
            milliamps -= milliamps / 256;
            sum += milliamps;
        }
        return sum;
    }

    private void charge(long milliamps, int minutes) {
        feeder.beginSteady(milliamps, feeder.absorptionMillivolts() - 100);
        feed(minutes);
        feeder.beginCalm(Feeder.Phase.ABSORPTION);
        feed(ABSORPTION_MINUTES);
    }

    private void discharge(long milliamps, long milliampMinutes) {
        feeder.beginSteady(-milliamps, feeder.nominalMillivolts());
        feed((int) (milliampMinutes / milliamps));
        // The end: light enough to be believed, for long enough.
        feeder.beginSteady(-feeder.capacityMilliampHours() / 40, feeder.emptyMillivolts() - 100);
        feed(10);
    }

    private void feed(int minutes) {
        for (int i = 0; i < minutes; i++) {
            steps.add(feeder.tick(PACE_MILLIS));
            netMilliampMinutes += feeder.milliamps();
        }
        ticks += minutes;
    }
}
