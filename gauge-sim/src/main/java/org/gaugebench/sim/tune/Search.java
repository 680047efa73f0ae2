package org.gaugebench.sim.tune;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.random.SplitMix64;

/**
 * One setting after the other, in an order that the seed shuffles anew in each round: all its steps
 * are tried with the others as they stand, and the best stays. It ends when a whole round changed
 * nothing. Then the half way to each neighbour is tried in the same way, once. At last each setting
 * goes back towards the preset as far as nobody would notice: what a tenth of a point decides on a
 * simulated battery is no reason to leave what is usual.
 */
final class Search {
    /** Each round can only get better, so few are needed; a limit all the same. */
    static final int MOST_ROUNDS = 8;

    private final List<TunedSetting> settings;
    private final Trials trials;
    private final Comparator<TuneScore> order;

    Search(List<TunedSetting> settings, Trials trials) {
        this.settings = settings;
        this.trials = trials;
        this.order = TuneScore.order(settings);
    }

    /** The best that is found from a start, within the safe range whatever the start is. */
    TuneScore from(Candidate start, long seed) {
        SplitMix64 dice = new SplitMix64(new SeedTree(seed).seedOf("tune/order"));
        TuneScore best = trials.of(start);
        for (int round = 0; round < MOST_ROUNDS; round++) {
            TuneScore before = best;
            for (int index : shuffled(dice)) {
                best = alongSteps(best, index);
            }
            if (before.equals(best)) {
                break;
            }
        }
        for (int index : shuffled(dice)) {
            best = halfWay(best, index);
        }
        return home(best);
    }

    private TuneScore home(TuneScore best) {
        TuneScore at = best;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            TuneScore before = at;
            for (int index = 0; index < settings.size(); index++) {
                at = home(best, at, index);
            }
            if (before.equals(at)) {
                break;
            }
        }
        return at;
    }

    private TuneScore home(TuneScore best, TuneScore at, int index) {
        TunedSetting setting = settings.get(index);
        long now = setting.distance(at.candidate().value(index));
        List<Long> nearer =
                Stream.concat(setting.steps().stream(), halves(setting))
                        .filter(it -> setting.distance(it) < now)
                        .sorted(Comparator.comparingLong(setting::distance))
                        .toList();
        for (long step : nearer) {
            TuneScore tried = trials.of(at.candidate().with(index, step));
            if (tried.isAsGoodAs(best)) {
                return tried;
            }
        }
        return at;
    }

    private static Stream<Long> halves(TunedSetting setting) {
        List<Long> steps = setting.steps();
        return IntStream.range(1, steps.size())
                .mapToObj(i -> (steps.get(i - 1) + steps.get(i)) / 2);
    }

    private List<Integer> shuffled(SplitMix64 dice) {
        List<Integer> indices = new ArrayList<>();
        for (int i = 0; i < settings.size(); i++) {
            indices.add(i);
        }
        for (int i = indices.size() - 1; i > 0; i--) {
            Collections.swap(indices, i, (int) Long.remainderUnsigned(dice.nextLong(), i + 1L));
        }
        return indices;
    }

    private TuneScore alongSteps(TuneScore from, int index) {
        TunedSetting setting = settings.get(index);
        List<Candidate> tried = new ArrayList<>();
        for (long step : setting.steps()) {
            tried.add(from.candidate().with(index, step));
        }
        if (setting.isSafe(from.candidate().value(index))) {
            tried.add(from.candidate());
        }
        return Collections.min(trials.of(tried), order);
    }

    private TuneScore halfWay(TuneScore from, int index) {
        TunedSetting setting = settings.get(index);
        long value = from.candidate().value(index);
        List<Candidate> tried = new ArrayList<>(List.of(from.candidate()));
        for (long neighbour : neighbours(setting, value)) {
            long half = (value + neighbour) / 2;
            if (half != value && half != neighbour) {
                tried.add(from.candidate().with(index, half));
            }
        }
        return Collections.min(trials.of(tried), order);
    }

    private static List<Long> neighbours(TunedSetting setting, long value) {
        List<Long> found = new ArrayList<>();
        setting.steps().stream().filter(it -> it < value).reduce((a, b) -> b).ifPresent(found::add);
        setting.steps().stream().filter(it -> it > value).findFirst().ifPresent(found::add);
        return found;
    }
}
