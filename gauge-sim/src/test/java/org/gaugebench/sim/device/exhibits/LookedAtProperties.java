package org.gaugebench.sim.device.exhibits;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.gaugebench.core.port.Readout;
import org.gaugebench.sim.scenario.Mistake;
import org.gaugebench.sim.scenario.MistakeCheck;
import org.junit.jupiter.api.Test;

/** What is read in every tick is what a whole reading would show. */
class LookedAtProperties {
    private static long limited(double figure, int limit) {
        return StrictMath.round(Math.max(-limit, Math.min(figure, limit)));
    }

    /**
     * Eighths have halves among them; a step beside each is where rounding by adding a half errs.
     */
    @Property(tries = 2_000)
    void wholeNumbersAreThoseOfTheLibrary(@ForAll int eighths, @ForAll double any) {
        double figure = eighths / 8.0;
        for (double each :
                new double[] {figure, Math.nextUp(figure), Math.nextDown(figure), any, any / 1e6}) {
            for (int limit : new int[] {Integer.MAX_VALUE, 2_000_000_000, 1_000}) {
                assertEquals(limited(each, limit), CountScale.whole(each, limit), "" + each);
            }
        }
    }

    @Test
    void aHairBelowAHalfIsNothing() {
        assertEquals(0, CountScale.whole(0.49999999999999994, 10));
        assertEquals(0, CountScale.whole(-0.5, 10));
        assertEquals(-1, CountScale.whole(Math.nextDown(-0.5), 10));
        assertEquals(0, CountScale.whole(-1e-300, 10));
    }

    /** Hours are added where they can be: they jump most. */
    @Property(tries = 200)
    void aSampleShowsWhatAWholeReadingShows(
            @ForAll Mistake mistake,
            @ForAll @Size(min = 1, max = 60)
                    List<@IntRange(min = -90_000, max = 90_000) Integer> counts) {
        Set<Mistake> set = EnumSet.of(mistake, Mistake.HOURS_INSTANT);
        Mistake[] made =
                MistakeCheck.problems(set).isEmpty()
                        ? set.toArray(new Mistake[0])
                        : new Mistake[] {Mistake.HOURS_INSTANT};
        Bench bench = new Bench(Bench.settings().build(), made).declare(50);
        Readout whole = new Readout();
        Readout sample = new Readout();
        for (int each : counts) {
            bench.volts(12_000 + each / 60).counts(each, 60_000);
            bench.exhibit.readSample(sample);
            bench.exhibit.read(whole);
            assertEquals(whole.stateOfChargePartsPerMillion, sample.stateOfChargePartsPerMillion);
            assertEquals(whole.timeToEmptyState, sample.timeToEmptyState);
            assertEquals(whole.timeToEmptyMinutes, sample.timeToEmptyMinutes);
            assertSameSample(whole, sample);
            bench.plain.readSample(sample);
            bench.plain.read(whole);
            assertSameSample(whole, sample);
        }
    }

    /** Most that look at every tick have no use for it, and it costs more than the rest. */
    @Test
    void aFigureThatDoesNotJumpIsNotWorkedOutForASample() {
        assertEquals(7, stateOfSample(Mistake.NO_CLAMP));
        assertEquals(500_000, stateOfSample(Mistake.LOST_SIGN));
    }

    private static int stateOfSample(Mistake mistake) {
        Bench bench = new Bench(Bench.settings().build(), mistake).declare(50);
        Readout sample = new Readout();
        sample.stateOfChargePartsPerMillion = 7;
        bench.exhibit.readSample(sample);
        return sample.stateOfChargePartsPerMillion;
    }

    private static void assertSameSample(Readout whole, Readout sample) {
        assertEquals(whole.currentMicroamps, sample.currentMicroamps);
        assertEquals(whole.voltageMicrovolts, sample.voltageMicrovolts);
        assertEquals(whole.temperatureMillicelsius, sample.temperatureMillicelsius);
    }
}
