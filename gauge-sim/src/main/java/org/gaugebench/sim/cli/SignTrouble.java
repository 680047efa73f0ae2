package org.gaugebench.sim.cli;

import java.util.Locale;
import org.gaugebench.sim.logs.LogProblem;
import org.gaugebench.sim.logs.MeasuredLog;
import org.gaugebench.sim.logs.SignCheck;

/** What to say of a log whose voltage speaks for the other sign. */
final class SignTrouble {
    private SignTrouble() {}

    static LogProblem of(MeasuredLog log, SignCheck sign, boolean positiveIsCharge) {
        return new LogProblem(
                log.file(),
                0,
                0,
                String.format(
                        Locale.ROOT,
                        "the current's sign contradicts the voltage: taken as told, the voltage"
                                + " falls with the charge put in (score %+.2f, a right sign has a"
                                + " positive one); say --positive %s, or leave --voltage out if the"
                                + " voltage is not this battery's",
                        sign.score(),
                        positiveIsCharge ? "discharge" : "charge"));
    }
}
