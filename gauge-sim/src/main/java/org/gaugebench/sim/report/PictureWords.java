package org.gaugebench.sim.report;

import java.util.List;
import org.gaugebench.core.port.Readout;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.judge.LaneResult;
import org.gaugebench.sim.judge.RunResult;

/** What a picture says, in words, for those who do not see it. */
final class PictureWords {
    private PictureWords() {}

    static String of(RunResult result, PictureTrace trace, PictureLedger ledger) {
        List<String> shows =
                trace.strips().stream().map(it -> it.series().word().replace('-', ' ')).toList();
        StringBuilder text = new StringBuilder("Chart of a simulated run of ");
        text.append(Figures.duration(result.simulatedMillis()));
        text.append(": ").append(String.join(", ", shows)).append(" over time. ");
        text.append("At the end the true state of charge is ");
        text.append(Figures.percent(result.finalTruePartsPerMillion())).append('.');
        for (LaneResult lane : result.lanes()) {
            text.append(' ').append(Page.clean(lane.gauge())).append(" shows ");
            if (lane.finalPartsPerMillion() == Readout.NOT_KNOWN) {
                text.append("nothing then");
            } else {
                text.append(Figures.percent(lane.finalPartsPerMillion()));
            }
            if (lane.worstAtMillis() >= 0) {
                text.append("; its worst error is ");
                text.append(Figures.decimal(lane.worstErrorPartsPerMillion(), 4, 2));
                text.append(" points at ").append(Figures.moment(lane.worstAtMillis()));
            }
            text.append('.');
        }
        for (PictureLedger.Line line : ledger.lines()) {
            text.append(' ').append(line.words()).append('.');
        }
        return text.toString();
    }
}
