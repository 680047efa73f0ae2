package org.gaugebench.sim.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.gaugebench.core.port.Event;
import org.gaugebench.sim.report.Samples;
import org.gaugebench.sim.scenario.Scenario;
import org.junit.jupiter.api.Test;

/** The account book balances, and what is old takes little room. */
class BookTest {
    /**
     * 3 days of ampere-hours summed tick by tick in doubles lose some 1e-10; a microamp-hour shows.
     */
    private static final double ROUNDING = 1e-6;

    /** The sums of every gauge's book: each of them tells the same flows. */
    private static void checkSums(Bench bench, double gaugeAtStart, double truthAtStart) {
        for (int place = 0; place < bench.scenario().gauges().size(); place++) {
            checkSums(bench, bench.book(place), gaugeAtStart, truthAtStart);
        }
    }

    private static void checkSums(
            Bench bench, BookKeeper book, double gaugeAtStart, double truthAtStart) {
        Causes causes = book.causes();
        double gauge = gaugeAtStart;
        double truth = truthAtStart;
        List<Entry> entries = new ArrayList<>(book.ledger().entries());
        entries.add(book.openEntry(bench.rig()));
        long at = 0;
        for (Entry entry : entries) {
            assertEquals(at, entry.fromMillis, "entries stand without a gap");
            at = entry.toMillis;
            double flows = entry.net(0, causes.selfDischarge());
            truth += flows + entry.net(causes.selfDischarge(), causes.misread());
            assertEquals(entry.truth, truth, ROUNDING, "true balance at " + at);
            gauge += flows + entry.net(causes.misread(), causes.count());
            assertEquals(entry.gauge, gauge, ROUNDING, "balance by the gauge at " + at);
        }
        assertEquals(bench.rig().timeMillis(), at);
    }

    @Test
    void everyEntryIsTheDifferenceOfItsBalances() throws Exception {
        Bench bench = BenchSamples.bench();
        bench.advanceTo(7 * 3_600_000 + 5_000);
        bench.set(Map.of("shore", "on"));
        bench.advanceTo(20 * 3_600_000);
        bench.set(Map.of("lamp", "off", "gauge.capacity", "15 Ah"));
        bench.advanceTo(50 * 3_600_000 + 7_000);
        checkSums(bench, 14, 14);
    }

    @Test
    void entriesSayWhoGaveAndWhoTook() {
        Bench bench = BenchSamples.bench();
        bench.advanceTo(3_600_000);
        Entry hour = bench.book(0).ledger().entries().get(0);
        Causes causes = bench.book(0).causes();
        assertEquals("load:lamp", causes.word(0));
        assertEquals(1.0, hour.out[0], 1e-9, "the lamp draws 1 A for an hour");
        // Two cycles of 2 min at 12 W and some 12.5 V.
        assertEquals(12.0 / 12.5 * 4 / 60, hour.out[1], 0.005);
        assertEquals(0, hour.in[causes.otherFlow()] + hour.out[causes.otherFlow()], 1e-9);
        // 4 % a month of the mean of 14 and some 12.93 Ah, as an exponential.
        assertEquals(-Math.log(0.96) * 13.47 / 720, hour.out[causes.selfDischarge()], 1e-6);
        // 1 uV on 1.5 mOhm is 0.67 mA.
        assertEquals(0.00067, hour.in[causes.misread()], 0.0003);
    }

    @Test
    void aStepOfTheCountIsAnEntryOfItsOwnCause() throws Exception {
        Bench bench = BenchSamples.bench();
        bench.advanceTo(600_000);
        bench.set(Map.of("gauge.declare", "50 %"));
        bench.advanceTo(700_000);
        Causes causes = bench.book(0).causes();
        int declared = causes.step(Event.DECLARED);
        Entry last = bench.book(0).ledger().entries().get(1);
        assertEquals(10 - 13.82, last.in[declared] - last.out[declared], 0.05);
        checkSums(bench, 14, 14);
    }

    /** What one gauge misreads stands in its own book alone. */
    @Test
    void eachGaugeHasABookOfItsOwn() throws Exception {
        Bench bench = BenchSamples.bench();
        bench.set(Map.of("gauge.declare", "50 %"));
        bench.advanceTo(2 * 3_600_000);
        Causes causes = bench.book(0).causes();
        Entry ours = bench.book(0).ledger().entries().get(1);
        Entry plain = bench.book(1).ledger().entries().get(1);
        assertEquals(ours.truth, plain.truth, 0);
        assertEquals(ours.out[0], plain.out[0], 0, "the lamp is the same lamp");
        // 14 Ah less an hour or two of a lamp that takes 1 A; declared are 10 Ah of the first.
        assertEquals(4, plain.gauge - ours.gauge, 0.05);
        assertEquals(0, plain.in[causes.step(Event.DECLARED)], 0);
    }

    @Test
    void withoutPowerTheBookGoesOnForTheTruthAlone() throws Exception {
        Bench bench = BenchSamples.bench();
        bench.advanceTo(600_000);
        bench.set(Map.of("gauge.power", "off"));
        bench.advanceTo(2 * 3_600_000);
        assertTrue(Double.isNaN(bench.book(0).openEntry(bench.rig()).gauge));
        bench.set(Map.of("gauge.power", "on"));
        bench.advanceTo(3 * 3_600_000);
        Entry last = bench.book(0).openEntry(bench.rig());
        assertEquals(bench.rig().truth().chargeAmpHours(), last.truth, 1e-9);
        assertTrue(last.gauge > 0);
    }

    /** Ten years, a minute a tick: what is kept does not grow. */
    @Test
    void tenYearsTakeNoMoreRoomThanTwoMonths() {
        String text =
                BenchSamples.text()
                        .replaceAll("(?s)timeline:.*", "")
                        .replace("duration: 3 d", "duration: 3653 d\ntick: 1 min");
        Scenario scenario = Samples.scenario("years.yaml", text);
        Bench bench = new Bench(scenario, 1);
        bench.setFine(false);
        bench.advanceTo(Long.MAX_VALUE);
        assertTrue(bench.isEnded());
        List<Entry> entries = bench.book(0).ledger().entries();
        assertTrue(entries.size() <= Ledger.BOOKED + Ledger.DAYS + Ledger.MONTHS + 1);
        assertTrue(entries.size() > 200, "days and months stand: " + entries.size());
        assertTrue(bench.events().events().size() <= EventList.MOST);
        checkSums(bench, 14, 14);
        History history = bench.history();
        int oldest = History.levels() - 2;
        assertEquals(0, history.first(oldest), "the whole run is within one level");
        assertEquals(3652 / 8, history.last(oldest));
        assertEquals(70, history.highest(oldest, 0, Bench.TRUE_PERCENT), 20);
    }

    /** A slow run is drawn by seconds: each bucket of two has its own figures. */
    @Test
    void whoGoesSlowlySeesEveryBucketOfTheFinestLevel() throws Exception {
        Bench bench = BenchSamples.bench();
        bench.advanceTo(90_000);
        History history = bench.history();
        assertEquals(45, history.last(0));
        for (long bucket = 0; bucket <= 45; bucket++) {
            assertEquals(70, history.lowest(0, bucket, Bench.TRUE_PERCENT), 20, "" + bucket);
        }
    }
}
