package org.gaugebench.sim.report;

import java.util.Locale;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.sim.agree.Agreement;
import org.gaugebench.sim.agree.Difference;
import org.gaugebench.sim.agree.Script;

/** Whether a program agreed with the core over a list of sequences. */
public final class AgreementText {
    private AgreementText() {}

    /** Writes it, the answer first. */
    public static String of(Agreement.Result result) {
        Page page = new Page();
        Difference found = result.found();
        Script shrunk = result.shrunk();
        if (found == null || shrunk == null) {
            page.paragraph(
                    0,
                    String.format(
                            Locale.ROOT,
                            "AGREE: no difference in %,d ticks of %,d sequences (seed %d).",
                            result.ticks(),
                            result.scripts(),
                            result.seed()));
            return page.toString();
        }
        page.paragraph(
                0,
                String.format(
                        Locale.ROOT,
                        "DIFFER: in sequence %d of seed %d, after %,d ticks in all. Shrunk from %,d"
                                + " ticks to %,d.",
                        result.bad(),
                        result.seed(),
                        result.ticks(),
                        result.drawnTicks(),
                        shrunk.ticks()));
        GaugeSettings usual = Agreement.usual(shrunk);
        return page + DifferenceText.of(shrunk, usual, found);
    }
}
