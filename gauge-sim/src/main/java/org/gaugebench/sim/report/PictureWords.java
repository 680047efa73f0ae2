package org.gaugebench.sim.report;

import java.util.List;
import org.gaugebench.core.port.Readout;
import org.gaugebench.sim.judge.Attribution;
import org.gaugebench.sim.judge.Attribution.Split;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.judge.LaneResult;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.rig.Cause;
import org.jspecify.annotations.Nullable;

/** What a picture says, in words, for those who do not see it. */
final class PictureWords {
    private PictureWords() {}

    static String of(
            RunResult result,
            PictureTrace trace,
            PictureLedger ledger,
            @Nullable Attribution causes) {
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
        if (causes != null) {
            text.append(causes(causes));
        }
        for (PictureLedger.Line line : ledger.lines()) {
            text.append(' ').append(line.words()).append('.');
        }
        return text.toString();
    }

    /** The parts at the last moment, for those who do not see the areas. */
    private static String causes(Attribution attribution) {
        Split last = attribution.splits().get(attribution.splits().size() - 1);
        String gauge = Page.clean(attribution.gauge());
        if (!last.known()) {
            return " At the end " + gauge + " shows nothing that could be split by cause.";
        }
        StringBuilder text = new StringBuilder(" At the end the error of ");
        text.append(gauge).append(", split by cause: ");
        for (Cause cause : Attribution.PLAIN) {
            text.append(cause.words()).append(' ');
            text.append(Figures.decimal(last.partsPerMillion(cause), 4, 2)).append(" points; ");
        }
        text.append("everything else ");
        text.append(Figures.decimal(last.elsePartsPerMillion(), 4, 2)).append(" points.");
        return text.toString();
    }
}
