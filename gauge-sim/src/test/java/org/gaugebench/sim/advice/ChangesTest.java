package org.gaugebench.sim.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import org.gaugebench.sim.advice.OwnChange.What;
import org.gaugebench.sim.advice.OwnersGauge.AfterOff;
import org.gaugebench.sim.plant.UsableCapacity;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.Mistake;
import org.gaugebench.sim.scenario.ScenarioException;
import org.gaugebench.sim.scenario.ScenarioReader;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class ChangesTest {
    /** A tenth of a point: what a run's minutes and the front end's steps leave. */
    private static final double CLOSE = 0.1;

    private static final OwnersGauge RIGHT = OwnSamples.gauge(0.0, 0.0, AfterOff.KEEPS);

    private static ChangesResult changed(
            OwnSystem system, OwnersGauge gauge, What what, double amount, @Nullable Double shown) {
        return Changes.of(system, gauge, OwnSamples.shunt(), new OwnChange(what, amount, shown));
    }

    private static double figure(ChangesResult result, String words) {
        return result.figures().stream()
                .filter(it -> it.words().startsWith(words))
                .findFirst()
                .orElseThrow(() -> new AssertionError(words + " in " + result.figures()))
                .value();
    }

    /** By hand: 10 A for 20 min are 3.33 Ah of 100 Ah. */
    @Test
    void whatFlowedUnseenIsCurrentTimesTime() {
        OwnSystem system = OwnSamples.hut(Chemistry.LIFEPO4, 0, "pump: 10 A, 4 h");
        ChangesResult result = changed(system, RIGHT, What.WIRE_OFF, 1 / 3.0, 80.0);
        assertEquals(3.33, result.offAtOnce(), CLOSE);
        assertTrue(result.answer().contains("3.3 points"), result.answer());
        assertTrue(result.daysBelieved() > 0, result.toString());
    }

    /** What it showed stood there as the wire went off: by hand, and what flows since. */
    @ParameterizedTest
    @ValueSource(doubles = {45, 60})
    void theWireGoesOffWhereTheFigureStood(double shown) {
        // 35 Ah go out until 7 o'clock, and from 8 on a sixth of that comes back in an hour.
        OwnSystem system = OwnSamples.hut(Chemistry.LIFEPO4, 10, "pump: 5 A, 7 h");
        ChangesResult result = changed(system, RIGHT, What.WIRE_OFF, 1 / 3.0, shown);
        // 5.83 A for 20 min are 1.94 Ah of 100 Ah.
        assertEquals(1.94, result.offAtOnce(), CLOSE);
        // It is looked at a minute after, and the stretch is found in steps: two minutes of that.
        assertEquals(shown + 1.94, figure(result, "really left"), 0.19 + CLOSE);
    }

    /** It cannot have held more than all before: what it held then is told. */
    @Test
    void whereTheBatteryCannotHaveHeldSoMuchItSaysSo() {
        OwnSystem system = OwnSamples.hut(Chemistry.LIFEPO4, 10, "pump: 5 A, 7 h");
        ChangesResult result = changed(system, RIGHT, What.WIRE_OFF, 1 / 3.0, 100.0);
        assertTrue(
                result.assumed().stream().anyMatch(it -> it.contains("as the wire goes off: 6")),
                result.toString());
    }

    /**
     * By hand: 48 A for half an hour and 2 A all day are 72 Ah, put in from 8 to 14 o'clock by 12
     * A, of which 10 A stay. In four hours most flows while it charges, 40 Ah; in two hours it
     * would be the pump's half hour, 28 Ah, whose four hours are 32 Ah.
     */
    @Test
    void theWorstStretchIsLookedForInItsWholeLength() {
        OwnSystem system =
                OwnSamples.hut(Chemistry.LIFEPO4, 20, "pump: 48 A, 30 min", "logger: 2 A, 24 h");
        ChangesResult four = changed(system, RIGHT, What.WIRE_OFF, 4, 80.0);
        // Of what the charger gives, a hundredth is lost as heat.
        assertEquals(40, four.offAtOnce(), 0.01 * 48 + CLOSE);
        ChangesResult two = changed(system, RIGHT, What.WIRE_OFF, 2, 80.0);
        assertEquals(28, two.offAtOnce(), 2.0 / 60 * 50 + CLOSE);
    }

    @ParameterizedTest
    @EnumSource
    void afterACutEachKindOfGaugeHasItsOwnAnswer(AfterOff afterOff) {
        OwnSystem system = OwnSamples.hut(Chemistry.LIFEPO4, 0, "pump: 10 A, 4 h");
        OwnersGauge gauge = OwnSamples.gauge(0.0, 0.0, afterOff);
        ChangesResult result = changed(system, gauge, What.WIRE_OFF, 1 / 3.0, 80.0);
        double left = figure(result, "really left");
        double full = 100 - left;
        // It counts again for a minute before it is read: 10 A for a minute are 0.17 points.
        switch (afterOff) {
            case KEEPS -> assertEquals(3.33, result.offAtOnce(), CLOSE);
            case FULL -> {
                assertEquals(full, result.offAtOnce(), 0.17 + CLOSE);
                assertEquals(100, figure(result, "shown then"), 0.17 + CLOSE);
            }
            case ZERO -> {
                assertEquals(left, result.offAtOnce(), 0.17 + CLOSE);
                assertEquals(0, figure(result, "shown then"), CLOSE);
            }
            case GUESSES ->
                    assertEquals(
                            Math.abs(figure(result, "shown then") - left),
                            result.offAtOnce(),
                            CLOSE);
            // It may be set to anything from 0 to 100.
            case NOTHING -> assertEquals(80, result.offAtOnce(), CLOSE);
            case NOT_KNOWN -> {
                assertEquals(full, figure(result, "off by, if it shows 100 %"), 0.17 + CLOSE);
                assertTrue(result.offAtOnce() >= full - 0.17 - CLOSE);
            }
        }
        if (afterOff != AfterOff.NOT_KNOWN) {
            // Ours keeps its count, and lacks what flowed: 10 A for 20 min.
            assertEquals(3.33, figure(result, "our gauge beside it"), CLOSE);
        }
    }

    /** The wire goes off from the gauge that was told: each step of the run names it. */
    @ParameterizedTest
    @EnumSource
    void theGaugeOfTheAnswersIsTheOneThatIsRun(AfterOff afterOff) throws ScenarioException {
        OwnSystem system = OwnSamples.hut(Chemistry.LIFEPO4, 5, "logger: 50 mA, 24 h");
        OwnersGauge gauge = composed(afterOff, 0.1);
        for (What what : What.values()) {
            double amount = what == What.WINTER ? 5 : 30;
            ChangesResult result = changed(system, gauge, what, amount, 70.0);
            GaugeSpec main = ScenarioReader.read("trial.yaml", result.scenario()).gauges().get(0);
            assertEquals(GaugeSpec.Kind.EXHIBIT, main.kind(), result.scenario());
            assertTrue(main.mistakes().contains(Mistake.DEAD_BAND), result.scenario());
            assertTrue(main.mistakes().contains(Mistake.NO_CLAMP), result.scenario());
            assertTrue(
                    result.assumed().contains("your gauge counts no current below 0.10 A"),
                    result.toString());
        }
        GaugeSpec wire =
                ScenarioReader.read(
                                "trial.yaml",
                                changed(system, gauge, What.WIRE_OFF, 1, 70.0).scenario())
                        .gauges()
                        .get(0);
        assertEquals(afterOff == AfterOff.FULL, wire.mistakes().contains(Mistake.START_AT_FULL));
        assertEquals(
                afterOff == AfterOff.GUESSES,
                wire.mistakes().contains(Mistake.VOLTAGE_GUESS_AT_START));
    }

    private static OwnersGauge composed(AfterOff afterOff, @Nullable Double smallestAmps) {
        return new OwnersGauge(
                OwnersGauge.SetsFull.BY_HAND,
                OwnersGauge.PastFull.SHOWS_MORE,
                afterOff,
                smallestAmps,
                null,
                0.012,
                0.02,
                0,
                null);
    }

    /** By hand: 20 mA that nobody draws are 26.9 Ah in 8 weeks, unless it counts none so small. */
    @Test
    void inStoreWhatIsTooSmallToCountStandsStill() {
        OwnSystem system = OwnSamples.hut(Chemistry.LIFEPO4, 5, "lamp: 1 A, 5 h");
        double counts =
                figure(
                        changed(system, composed(AfterOff.KEEPS, 0.0), What.STORED, 56, 60.0),
                        "shown then");
        ChangesResult not = changed(system, composed(AfterOff.KEEPS, 0.1), What.STORED, 56, 60.0);
        assertEquals(60 + 26.9, counts, 0.2);
        assertEquals(60, figure(not, "shown then"), CLOSE);
        // Ours is told of the 12 mA that are drawn, 16.1 Ah; it counts the zero error, no leak.
        double ours = figure(not, "our gauge beside it would show");
        assertEquals(60 + 26.9 - 16.1, ours, 0.2);
    }

    /** What is not known widens the answer, by what a bad gauge would do. */
    @Test
    void whatIsNotKnownOfItMakesTheAnswerWider() {
        OwnSystem system = OwnSamples.hut(Chemistry.LIFEPO4, 5, "logger: 80 mA, 24 h");
        OwnersGauge half =
                new OwnersGauge(
                        OwnersGauge.SetsFull.BY_HAND,
                        OwnersGauge.PastFull.STOPS,
                        AfterOff.KEEPS,
                        null,
                        null,
                        null,
                        0.0,
                        0,
                        null);
        ChangesResult result = changed(system, half, What.STORED, 50, 60.0);
        // By hand: 20 mA for 50 days are 24 Ah of 100 Ah.
        assertEquals(
                figure(result, "too much by") + 24,
                figure(result, "too much by, if what is not known"),
                0.5);
        // And 80 mA are below what a bad one counts at all.
        ChangesResult winter = changed(system, half, What.WINTER, 5, 60.0);
        // The leak of 50 days of 60 is counted by nobody.
        assertEquals(0, figure(winter, "the count itself is off"), 1);
        assertTrue(figure(winter, "right ones, off as the lights go out") > 80, winter.toString());
        OwnersGauge all = composed(AfterOff.KEEPS, 0.0);
        assertTrue(
                changed(system, all, What.STORED, 50, 60.0).figures().stream()
                        .noneMatch(it -> it.words().contains("not known")));
    }

    /** By hand: 12 mA over 8 weeks are 16.1 Ah; 2 % leak away in each of 1.87 months. */
    @Test
    void inStoreItsOwnCurrentAndTheLeakAreLost() {
        OwnSystem system = OwnSamples.hut(Chemistry.LIFEPO4, 5, "lamp: 1 A, 5 h");
        OwnersGauge gauge = OwnSamples.gauge(0.012, 0.0, AfterOff.KEEPS);
        ChangesResult result = changed(system, gauge, What.STORED, 56, 60.0);
        double leak = 2 * 56 / 30.0;
        // The leak is a part of what is still there, so less than of a full battery.
        assertEquals(60 - 16.13 - 0.56 * leak, figure(result, "really left, its wire on"), 0.4);
        assertEquals(60 - 0.6 * leak, figure(result, "really left, its wire off"), 0.4);
        assertEquals(60, figure(result, "shown then"), CLOSE);
        assertEquals(0, result.daysBelieved());
        assertTrue(result.answer().startsWith("After 8 weeks stored"), result.answer());
    }

    /** By hand: half of two is all of one. */
    @Test
    void aSecondBatteryShowsNothingWithHalfLeft() {
        OwnSystem system = OwnSamples.hut(Chemistry.LIFEPO4, 5, "lamp: 1 A, 5 h, idle 1 A");
        ChangesResult result = changed(system, RIGHT, What.SECOND_BATTERY, 100, 70.0);
        assertEquals(50, figure(result, "left as it shows 0 %"), 1);
        assertTrue(figure(result, "both batteries half empty") <= 1.5, result.toString());
        assertEquals(50, figure(result, "the same, typed in as 200 Ah"), 1);
        assertTrue(result.answer().startsWith("Type in 200 Ah"), result.answer());
    }

    /** By hand: 80 Ah drawn from 100 Ah typed in leave 20 % on show. */
    @Test
    void aSmallerBatteryGoesDarkWithSomethingOnShow() {
        OwnSystem system = OwnSamples.hut(Chemistry.LEAD_ACID_AGM, 5, "lamp: 1 A, 5 h, idle 1 A");
        ChangesResult result = changed(system, RIGHT, What.BATTERY_SWAPPED, 80, 30.0);
        // 40 of 80 Ah gone are 40 of 100 Ah as it counts.
        assertEquals(60, figure(result, "the new battery half empty"), 1);
        assertEquals(20, figure(result, "shown as the lights go out"), 2);
        assertEquals(70, result.offAtOnce(), CLOSE);
        assertEquals(0, result.daysBelieved());
    }

    /** What the cold keeps back is what the published table says of this temperature. */
    @Test
    void winterKeepsBackWhatTheTableSays() {
        OwnSystem system = OwnSamples.hut(Chemistry.LEAD_ACID_AGM, 5, "lamp: 1 A, 5 h, idle 1 A");
        ChangesResult result = changed(system, RIGHT, What.WINTER, 0, null);
        double kept = 100 * (1 - UsableCapacity.partAt(Chemistry.LEAD_ACID_AGM, 0));
        assertEquals(kept, figure(result, "shown as the lights go out, at 0 °C"), 2);
        assertEquals(15, figure(result, "volts to expect"), 0.001);
        ChangesResult warm = changed(system, RIGHT, What.WINTER, 25, null);
        assertTrue(warm.answer().contains("next to nothing"), warm.answer());
    }

    /** By hand: it counts none of 80 mA, and a third of lead-acid stays in at -5 °C. */
    @Test
    void winterSaysNoMoreOfTheCountThanItsFiguresDo() {
        OwnSystem system = OwnSamples.hut(Chemistry.LEAD_ACID_AGM, 20, "logger: 80 mA, 24 h");
        ChangesResult blind = changed(system, composed(AfterOff.KEEPS, 0.1), What.WINTER, -5, null);
        assertEquals(
                "At -5 °C the lights go out with 100 % on show: the cold keeps 34 % back, and the"
                        + " count is off by 65.8 points by then.",
                blind.answer());
        assertEquals(65.8, figure(blind, "the count itself is off by then by"), 0.05);
        assertTrue(blind.redo().contains("count what is shown less 34 as what can be drawn"));

        ChangesResult warm = changed(system, composed(AfterOff.KEEPS, 0.1), What.WINTER, 25, null);
        assertTrue(warm.answer().contains("next to nothing is kept back, and"), warm.answer());
        assertTrue(warm.redo().stream().noneMatch(it -> it.contains("what is shown less")));

        // With nothing known of its smallest current it may be as blind.
        ChangesResult half = changed(system, composed(AfterOff.KEEPS, null), What.WINTER, -5, null);
        double worst = figure(half, "right ones, off as the lights go out, at worst");
        assertTrue(worst > 60, half.toString());
        assertTrue(half.answer().endsWith(text(", at worst by %.1f.", worst)), half.answer());

        OwnSystem lamp = OwnSamples.hut(Chemistry.LEAD_ACID_AGM, 20, "lamp: 1 A, 5 h, idle 1 A");
        ChangesResult right = changed(lamp, RIGHT, What.WINTER, -5, null);
        assertTrue(
                right.answer().endsWith("and the count is right within 1 point."), right.answer());
        assertEquals(0, figure(right, "the count itself is off by then by"), 1);
    }

    private static String text(String format, double value) {
        return String.format(Locale.ROOT, format, value);
    }

    @Test
    void belowFreezingLithiumIsNotToBeCharged() {
        OwnSystem system = OwnSamples.hut(Chemistry.LIFEPO4, 5, "lamp: 1 A, 5 h");
        ChangesResult result = changed(system, RIGHT, What.WINTER, -5, null);
        assertTrue(result.redo().get(0).contains("no charging below 0 °C"), result.toString());
    }

    @ParameterizedTest
    @EnumSource
    void everyAnswerHasANumberAndARunThatReads(What what) throws ScenarioException {
        for (Chemistry chemistry : Chemistry.values()) {
            OwnSystem none = OwnSamples.of(24, chemistry, 60, 0);
            double amount = what == What.WINTER ? 5 : 30;
            ChangesResult result = changed(none, OwnersGauge.UNKNOWN, what, amount, null);
            assertTrue(result.answer().matches("(?s).*\\d.*"), result.answer());
            assertTrue(result.redo().size() >= 2, result.toString());
            assertTrue(result.assumed().size() >= 1, result.toString());
            assertTrue(
                    result.figures().stream().allMatch(it -> Double.isFinite(it.value())),
                    result.toString());
            ScenarioReader.read("trial.yaml", result.scenario());
        }
    }

    @Test
    void anAmountThatCannotBeIsRefused() {
        OwnSystem system = OwnSamples.hut(Chemistry.LIFEPO4, 5);
        for (What each : What.values()) {
            OwnChange any = new OwnChange(each, 1, null);
            for (double amount : new double[] {any.least() - 1, any.most() + 1, Double.NaN}) {
                assertThrows(
                        IllegalArgumentException.class,
                        () -> changed(system, RIGHT, each, amount, null));
            }
        }
    }
}
