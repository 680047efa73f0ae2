package org.gaugebench.sim.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gaugebench.sim.judge.Attribution;
import org.gaugebench.sim.judge.AttributionRun;
import org.gaugebench.sim.judge.RunRecorder;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.scenario.Scenario;
import org.junit.jupiter.api.Test;

/**
 * The error split by cause in the picture. {@code golden/a-day-by-cause.svg} holds one byte for
 * byte: {@code -Dgolden.update=true} rewrites it.
 */
class PictureCausesTest {
    private static final Path GOLDEN = Path.of("src/test/resources/golden/a-day-by-cause.svg");
    private static final int FRAME_LEFT = 660;
    private static final int FRAME_RIGHT = 6_260;

    /** Begins 20 points low, reads a zero error high, and passes the truth on the way. */
    private static String wrong() {
        return Samples.hut().replace("noise: 2 uV", "noise: 2 uV, offset: 700 uV")
                + "gauge: {start: 40 %, rest-time: 0 h, absorption: 0 V}\n"
                + "wiring: {own-supply: 300 mA}\n";
    }

    private static String picture(String text) {
        Scenario scenario = Samples.read(text);
        PictureTrace trace =
                new PictureTrace(List.of(PictureSeries.STATE_OF_CHARGE, PictureSeries.CAUSES));
        RunResult result = RunRecorder.run(scenario, scenario.seed(), trace);
        Attribution causes = AttributionRun.overTime(scenario, scenario.seed());
        return Picture.of(result, trace, causes, "test");
    }

    @Test
    void theSameBytesEverywhere() throws IOException {
        String svg = picture(wrong());
        if (Boolean.getBoolean("golden.update")) {
            Files.writeString(GOLDEN, svg);
        }
        assertEquals(Files.readString(GOLDEN), svg, "-Dgolden.update=true rewrites it");
    }

    @Test
    void everyCauseHasItsNameAndNoWordsMeet() {
        String svg = picture(wrong());
        assertEquals(List.of(), SvgLabels.troubles(svg));
        for (String words :
                List.of(
                        "zero error",
                        "current that never crossed the shunt",
                        "charge lost as heat",
                        "not really full at the start",
                        "wrong amp-hours",
                        "everything else",
                        "their sum: shown less true state of charge")) {
            assertTrue(svg.contains(">" + words + "<"), words);
        }
        assertTrue(svg.contains(">4 not really full at the start<"), "the area bears its name");
        String desc = svg.substring(svg.indexOf("<desc"), svg.indexOf("</desc>"));
        assertTrue(desc.contains("split by cause: zero error"), desc);
        assertTrue(desc.contains("-20.00 points; "), desc);
    }

    /** Areas grow and shrink; none jumps from one side of zero to the other. */
    @Test
    void noAreaLeavesTheFrame() {
        Matcher area =
                Pattern.compile("d=\"(M[^\"]*z)\" fill=\"#(?!fff|dbe)").matcher(picture(wrong()));
        int areas = 0;
        while (area.find()) {
            Matcher start = Pattern.compile("M(\\d+) (\\d+)").matcher(area.group(1));
            while (start.find()) {
                int x = Integer.parseInt(start.group(1));
                assertTrue(x >= FRAME_LEFT && x <= FRAME_RIGHT, area.group());
            }
            areas++;
        }
        // Six boxes of the legend, and at least zero error, past the shunt and start.
        assertTrue(areas >= 9, "areas: " + areas);
    }

    @Test
    void whereNothingIsShownThereIsNothingToDraw() {
        String unknown = picture(Samples.hut() + "gauge: {start: unknown, rest-time: 0 h}\n");
        assertTrue(unknown.contains("shows nothing that could be split by cause"), unknown);
        assertEquals(List.of(), SvgLabels.troubles(unknown));
    }
}
