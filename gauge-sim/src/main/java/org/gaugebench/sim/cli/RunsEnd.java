package org.gaugebench.sim.cli;

import java.util.List;
import java.util.Locale;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.judge.ShelfCase;
import org.gaugebench.sim.judge.ShelfCase.Ending;

/** What some runs came to together. */
final class RunsEnd {
    private RunsEnd() {}

    /** How fast they went, for people. */
    static String speed(List<ShelfCase> cases, double seconds) {
        long simulatedMillis =
                cases.stream()
                        .map(ShelfCase::result)
                        .mapToLong(result -> result == null ? 0 : result.simulatedMillis())
                        .sum();
        return String.format(
                Locale.ROOT,
                "%s simulated in %.2f s, %,.0f times as fast as life",
                Figures.duration(simulatedMillis),
                seconds,
                simulatedMillis / 1e3 / seconds);
    }

    /** A list of runs is not green while one of them shows nothing. */
    static int exitCode(List<ShelfCase> cases, boolean single) {
        int exitCode = ExitCodes.OK;
        boolean broke = false;
        for (ShelfCase each : cases) {
            if (each.ending() == Ending.CRASHED) {
                return ExitCodes.OUR_BUG;
            }
            broke |= each.ending() == Ending.BROKE_OFF;
            boolean hollow = "no verdict".equals(each.verdictWords());
            if (!each.isGood() && !(single && hollow)) {
                exitCode = ExitCodes.FAILED;
            }
        }
        return broke ? ExitCodes.PROGRAM_FAILED : exitCode;
    }
}
