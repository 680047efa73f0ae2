package org.gaugebench.sim.agree;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicLong;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.sim.device.PipeCommand;
import org.jspecify.annotations.Nullable;

/** Plays scripts, drawn by chance, to the core and to a program until they differ. */
public final class Agreement {
    /** Ticks of one script: days of a system, and a fraction of a second to play. */
    public static final int SCRIPT_TICKS = 20_000;

    private final PipeCommand command;
    private final long seed;
    private final long first;
    private final long scripts;
    private final AtomicLong next;
    private final AtomicLong lowestBad;
    private final AtomicLong ticks = new AtomicLong();
    private final Progress progress;

    /** Told now and then how far it is. */
    public interface Progress {
        /** Says how many ticks are done of how many. */
        void done(long ticks, long ofTicks);
    }

    /**
     * What came of it.
     *
     * @param seed of the list of scripts
     * @param scripts that were played
     * @param ticks of them
     * @param bad number of the first script that shows a difference; -1 for none
     * @param found where in that script, shrunk; null for none
     * @param shrunk the shortest script that still shows it; null for none
     * @param drawnTicks ticks up to the difference in the script as it was drawn
     */
    public record Result(
            long seed,
            long scripts,
            long ticks,
            long bad,
            @Nullable Difference found,
            @Nullable Script shrunk,
            long drawnTicks) {}

    private Agreement(PipeCommand command, long seed, long first, long scripts, Progress progress) {
        this.command = command;
        this.seed = seed;
        this.first = first;
        this.scripts = scripts;
        this.next = new AtomicLong(first);
        this.lowestBad = new AtomicLong(Long.MAX_VALUE);
        this.progress = progress;
    }

    /**
     * Plays scripts. The result does not depend on the number of threads: of several scripts that
     * show a difference the first in the list is told.
     *
     * @param command how the program is started
     * @param seed of the list
     * @param first number of the first script
     * @param scripts how many
     * @param threads at once, each with a process of its own
     * @param shrinkMillis longest time that shrinking may take
     * @param progress is told now and then
     */
    public static Result of(
            PipeCommand command,
            long seed,
            long first,
            long scripts,
            int threads,
            long shrinkMillis,
            Progress progress)
            throws InterruptedException {
        Agreement agreement = new Agreement(command, seed, first, scripts, progress);
        agreement.playAll(threads);
        return agreement.result(shrinkMillis);
    }

    private void playAll(int threads) throws InterruptedException {
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            List<Future<?>> running = new ArrayList<>();
            for (int i = 0; i < threads; i++) {
                running.add(pool.submit(this::play));
            }
            for (Future<?> each : running) {
                each.get();
            }
        } catch (ExecutionException e) {
            throw new IllegalStateException("a comparison died", e.getCause());
        } finally {
            pool.shutdownNow();
        }
    }

    private void play() {
        long number = next.getAndIncrement();
        while (number < first + scripts && number < lowestBad.get()) {
            Script script = ScriptMaker.draw(seed, number, SCRIPT_TICKS);
            if (Duel.differs(script, command)) {
                long bad = number;
                lowestBad.accumulateAndGet(bad, Math::min);
            }
            progress.done(ticks.addAndGet(script.ticks()), scripts * SCRIPT_TICKS);
            number = next.getAndIncrement();
        }
    }

    private Result result(long shrinkMillis) {
        long bad = lowestBad.get();
        if (bad == Long.MAX_VALUE) {
            return new Result(seed, scripts, ticks.get(), -1, null, null, 0);
        }
        long played = bad - first + 1;
        Script drawn = ScriptMaker.draw(seed, bad, SCRIPT_TICKS);
        Difference there = Duel.first(drawn, command);
        if (there == null) {
            // It happened once and not again: the program is not the same each time.
            Difference unsteady =
                    new Difference(
                            0,
                            0,
                            "they differed once and not when asked again",
                            List.of(),
                            List.of());
            return new Result(seed, played, 0, bad, unsteady, drawn, 0);
        }
        long before = (played - 1) * SCRIPT_TICKS + there.tick();
        Script shrunk =
                new Shrinker(script -> Duel.differs(script, command), shrinkMillis)
                        .shrink(drawn, there.step());
        Difference found = Duel.first(shrunk, command);
        return new Result(
                seed, played, before, bad, found == null ? there : found, shrunk, there.tick());
    }

    /** The preset of a script's own chemistry and voltage. */
    public static GaugeSettings usual(Script script) {
        return Shrinker.usual(script.settings());
    }

    /** Chemistries, kinds of steps and so on that some scripts of a list contain; for tests. */
    static Set<String> kinds(long seed, long scripts) {
        Set<String> kinds = new TreeSet<>();
        for (long i = 0; i < scripts; i++) {
            for (Step step : ScriptMaker.draw(seed, i, SCRIPT_TICKS).steps()) {
                kinds.add(step.getClass().getSimpleName());
            }
        }
        return kinds;
    }
}
