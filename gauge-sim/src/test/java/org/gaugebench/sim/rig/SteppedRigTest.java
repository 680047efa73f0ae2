package org.gaugebench.sim.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import org.gaugebench.sim.random.SplitMix64;
import org.gaugebench.sim.report.Samples;
import org.gaugebench.sim.scenario.Change;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.StepText;
import org.junit.jupiter.api.Test;

/** A rig that is run in pieces, and that hears of changes while it runs. */
class SteppedRigTest {
    private static Rig rig(String text) {
        Scenario scenario = Samples.read(text);
        return new Rig(scenario, scenario.seed(), Observer.NONE);
    }

    private static String withStep(String step) {
        return Samples.hut().replace("timeline:", "timeline:\n  - " + step);
    }

    @Test
    void piecesChangeNothing() {
        Rig whole = rig(Samples.hut());
        whole.run();
        SplitMix64 random = new SplitMix64(1);
        for (int round = 0; round < 5; round++) {
            Rig pieces = rig(Samples.hut());
            pieces.begin();
            while (pieces.timeMillis() < 86_400_000) {
                pieces.advanceTo(pieces.timeMillis() + 1 + (long) (random.nextDouble() * 9e6));
            }
            assertEquals(whole.digest(), pieces.digest());
            assertEquals(whole.digest(), pieces.digestIfEndedNow());
            assertEquals(whole.ticks(), pieces.ticks());
        }
    }

    @Test
    void aRunThatEndsWithinAMinuteHasTheDigestOfAScenarioSoLong() {
        for (long millis : new long[] {59_000, 60_000, 61_000, 43_215_000}) {
            String early = Samples.hut().replace("at: 12 h", "at: 30 s");
            Rig whole = rig(early.replace("duration: 1 d", "duration: " + millis + " ms"));
            whole.run();
            Rig cut = rig(early);
            cut.begin();
            cut.advanceTo(millis);
            assertEquals(whole.digest(), cut.digestIfEndedNow(), millis + " ms");
        }
    }

    @Test
    void anAppendedChangeIsLikeOneOfTheFile() throws Exception {
        Rig told = rig(withStep("{at: 3 h, set: {lamp: off, gauge.capacity: 90 Ah}}"));
        told.run();
        Rig heard = rig(Samples.hut());
        heard.begin();
        heard.advanceTo(10_800_000);
        Map<String, String> set = Map.of("lamp", "off");
        append(heard, set);
        append(heard, Map.of("gauge.capacity", "90 Ah"));
        heard.advanceTo(Long.MAX_VALUE);
        assertEquals(told.digest(), heard.digest());
    }

    /** The scenario switches at 12 h; what is given at 12 h belongs to the same moment. */
    @Test
    void aChangeAtTheMomentOfOneOfTheScenarioComesAfterIt() throws Exception {
        String first = Samples.hut() + "  - {at: 12 h, set: {gauge.capacity: 10 Ah}}\n";
        Rig told = rig(first + "  - {at: 12 h, set: {gauge.capacity: 60 Ah}}\n");
        told.run();
        Rig heard = rig(first);
        heard.begin();
        heard.advanceTo(43_200_000);
        append(heard, Map.of("gauge.capacity", "60 Ah"));
        heard.advanceTo(Long.MAX_VALUE);
        assertEquals(told.digest(), heard.digest());
    }

    private static void append(Rig rig, Map<String, String> set) throws Exception {
        List<Change> timeline = rig.scenario().changes();
        StepText.set(rig.scenario(), timeline, rig.timeMillis(), set).forEach(rig::append);
    }

    @Test
    void whatIsPastCannotBeChanged() {
        Rig rig = rig(Samples.hut());
        rig.begin();
        Change late = new Change(5_000, Change.Target.LOAD_SWITCH, "lamp", 0);
        rig.advanceTo(6_000);
        assertThrows(IllegalArgumentException.class, () -> rig.append(late));
    }
}
