package org.gaugebench.core;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import net.jqwik.api.stateful.Action;
import net.jqwik.api.stateful.ActionSequence;
import net.jqwik.api.statistics.Statistics;
import net.jqwik.api.statistics.StatisticsCollector;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.OffTime;

/**
 * Any sequence of what may happen to a gauge, judged step by step by the books of {@link
 * GaugeLife}.
 */
class GaugeLifeProperties {
    private static Arbitrary<Integer> between(int low, int high) {
        return Arbitraries.integers().between(low, high);
    }

    private static Arbitrary<Action<GaugeLife>> tick() {
        Arbitrary<Integer> counts =
                Arbitraries.oneOf(
                        between(-300_000, 300_000), Arbitraries.of(0, 1, -8_388_608, 8_388_607));
        Arbitrary<Integer> millis =
                Arbitraries.oneOf(
                        between(0, 65_535), Arbitraries.of(0, 1, 1_000, 59_999, 60_000, 65_535));
        return Combinators.combine(counts, between(11_000, 14_500), millis)
                .as(LifeActions.Tick::new);
    }

    private static Arbitrary<Action<GaugeLife>> edit() {
        return Arbitraries.oneOf(
                between(500_000, 1_000_000).map(LifeActions.EditEfficiency::new),
                Arbitraries.of(10_000, 9_000, 12_345).map(LifeActions.EditCapacity::new));
    }

    private static Arbitrary<Action<GaugeLife>> command() {
        return Arbitraries.oneOf(
                Arbitraries.of(0, 300_000, 995_000, 1_000_000).map(LifeActions.Declare::new),
                Arbitraries.of(
                                Command.NEW_BATTERY,
                                Command.FORGET_MEASURED,
                                Command.ZERO_ADJUSTMENT,
                                Command.SPAN_ADJUSTMENT)
                        .map(LifeActions.Ask::new));
    }

    @Provide
    static Arbitrary<ActionSequence<GaugeLife>> lives() {
        Arbitrary<Action<GaugeLife>> actions =
                Arbitraries.frequencyOf(
                        Tuple.of(8, tick()),
                        Tuple.of(
                                4,
                                Combinators.combine(between(0, 20), between(1, 30))
                                        .as(LifeActions.Load::new)),
                        Tuple.of(4, between(1, 20).map(LifeActions.ChargerOn::new)),
                        Tuple.of(
                                1,
                                Combinators.combine(between(1, 14), between(11_500, 13_000))
                                        .as(LifeActions.Rest::new)),
                        Tuple.of(2, between(1, 6).map(LifeActions.RunEmpty::new)),
                        Tuple.of(
                                1,
                                Combinators.combine(between(-80_000, 80_000), between(2, 9))
                                        .as(LifeActions.SensorStuck::new)),
                        Tuple.of(1, between(65_536, 10_000_000).map(LifeActions.Gap::new)),
                        Tuple.of(1, between(1, 1_000_000).map(LifeActions.ClockBack::new)),
                        Tuple.of(1, between(0, 65_535).map(LifeActions.Garbage::new)),
                        Tuple.of(
                                3,
                                Combinators.combine(
                                                between(0, 10_000_000),
                                                Arbitraries.of(
                                                        OffTime.EXACT,
                                                        OffTime.EXACT,
                                                        OffTime.AT_LEAST,
                                                        OffTime.UNKNOWN))
                                        .as(LifeActions.PowerCut::new)),
                        Tuple.of(2, command()),
                        Tuple.of(1, edit()));
        return Arbitraries.sequences(actions).ofSize(30);
    }

    @Property(tries = 500)
    void noLifeEverSurprisesTheBooks(@ForAll("lives") ActionSequence<GaugeLife> actions) {
        GaugeLife life = actions.run(new GaugeLife());
        // Lives that never meet an anchor of each kind would prove nothing of it.
        for (Event event :
                List.of(
                        Event.SET_TO_FULL,
                        Event.SET_TO_EMPTY,
                        Event.CORRECTED_BY_REST,
                        Event.BATTERY_DOUBTFUL,
                        Event.RESTORED,
                        Event.SETTINGS_CHANGED)) {
            StatisticsCollector collector = Statistics.label(event.name());
            collector.collect(life.seen.contains(event));
            collector.coverage(c -> c.check(true).count(n -> n > 0));
        }
    }
}
