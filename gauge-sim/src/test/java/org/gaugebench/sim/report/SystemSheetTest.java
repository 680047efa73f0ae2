package org.gaugebench.sim.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import org.gaugebench.sim.advice.Changes;
import org.gaugebench.sim.advice.CheckPlan;
import org.gaugebench.sim.advice.FirstCharge;
import org.gaugebench.sim.advice.MonthAhead;
import org.gaugebench.sim.advice.MonthAheadResult;
import org.gaugebench.sim.advice.OwnChange;
import org.gaugebench.sim.advice.OwnSamples;
import org.gaugebench.sim.advice.OwnSettings;
import org.gaugebench.sim.advice.OwnSystem;
import org.gaugebench.sim.advice.OwnersGauge;
import org.gaugebench.sim.advice.Sizing;
import org.gaugebench.sim.advice.WiringPlan.Source;
import org.gaugebench.sim.advice.WrongSide;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.units.ShuntRating;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class SystemSheetTest {
    private static final OwnersGauge GAUGE =
            OwnSamples.gauge(0.012, 0.005, OwnersGauge.AfterOff.FULL);
    private static final OwnSystem HUT =
            OwnSamples.of(
                    12,
                    Chemistry.LEAD_ACID_AGM,
                    100,
                    20,
                    "lamp: 1.2 A, 5 h",
                    "fridge: 45 W, 8 h, surge 120 W");

    private static String sheet(OwnSystem system) {
        return SystemSheet.html(system, GAUGE, SheetDetails.NONE, "1");
    }

    /** The page as it reads, without markup and with plain spaces. */
    private static String words(String html) {
        return html.replaceAll("(?s)<style>.*?</style>", " ")
                .replaceAll("<[^>]*>", " ")
                .replace("&#39;", "'")
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&quot;", "\"")
                .replace("&amp;", "&")
                .replaceAll("[\\s\u202f]+", " ");
    }

    @Test
    void theSameSystemGivesTheSameBytes() {
        assertEquals(sheet(HUT), sheet(HUT));
    }

    @Test
    void itsFiguresAreThoseOfTheOtherAnswers() {
        ShuntRating shunt = Sizing.of(HUT).chosen();
        assertEquals("50 A / 75 mV", String.valueOf(shunt));
        MonthAheadResult ahead = MonthAhead.of(HUT, GAUGE, shunt);
        String words = words(sheet(HUT));
        assertTrue(words.contains(AheadText.answer(ahead)), words);
        assertTrue(words.contains("50 A / 75 mV"), words);
        assertTrue(
                words.contains(
                        "taken in a day " + "%.1f Ah".formatted(Sizing.of(HUT).ampHoursPerDay())),
                words);
        assertTrue(words.contains("%.1f A for hours".formatted(Sizing.of(HUT).steadyAmps())));
        for (int days : new int[] {28, 84}) {
            OwnChange stored = new OwnChange(OwnChange.What.STORED, days, null);
            assertTrue(words.contains(Changes.of(HUT, GAUGE, shunt, stored).answer()), words);
        }
        OwnChange off = new OwnChange(OwnChange.What.WIRE_OFF, 1, null);
        assertTrue(words.contains(Changes.of(HUT, GAUGE, shunt, off).answer()), words);
        FirstCharge.Result charge = FirstCharge.of(HUT, GAUGE, shunt, null);
        for (FirstCharge.Row each : charge.rows()) {
            assertTrue(
                    words.contains(
                            each.words()
                                    + " %.1f h %.1f points"
                                            .formatted(each.hours(), each.costPoints())),
                    each + " in " + words);
        }
        WrongSide.Result wrong = WrongSide.load(HUT, GAUGE, shunt);
        assertTrue(
                words.contains(
                        "it shows %.0f %%, and %.0f %% are left"
                                .formatted(wrong.shownPercent(), wrong.truePercent())),
                words);
        for (OwnSettings.Line each : OwnSettings.lines(HUT, GAUGE, shunt, null)) {
            assertTrue(words.contains(each.key() + " " + each.why() + " " + each.value()), words);
        }
        for (CheckPlan.Line each : CheckPlan.of(HUT, GAUGE, shunt)) {
            assertTrue(words.contains(each.how()), words);
            assertTrue(words.contains("Good: " + each.good()), words);
            assertTrue(words.contains(each.check().key()), words);
        }
        double low = (ahead.tooHighPerDay() + ahead.eitherWayPerDay()) * 7;
        assertTrue(words.contains("a week \u2212%.1f to ".formatted(low)), words);
    }

    /** The list is that of the trade: what hurts somebody, spoils a battery or a shunt. */
    @Test
    void everyCautionIsThere() {
        String words = words(sheet(HUT)).toLowerCase(Locale.ROOT);
        for (String each :
                List.of(
                        "rings, watch and chain off",
                        "insulated tools",
                        "negative off first, and on last",
                        "supply wire goes on last of all, and comes off first",
                        "bridge the posts or stand proud",
                        "again after a week",
                        "main fuse stands at the positive post",
                        "rated for the cable",
                        "must be able to break more than",
                        "no sealed enclosure",
                        "hydrogen",
                        "never a meter's amp range across a battery",
                        "the percentage protects nothing",
                        "local code",
                        "licensed person",
                        "two thirds of its rating",
                        "about 80 °c",
                        "about 140 °c",
                        "own small screws, never on its large bolts",
                        "twisted",
                        "one metal",
                        "no second earth",
                        "engine block",
                        "every thin wire live",
                        "two kinds or two ages in parallel",
                        "bilge pump",
                        "medical",
                        "heating")) {
            assertTrue(words.contains(each), each);
        }
        String lithium =
                words(sheet(OwnSamples.hut(Chemistry.LIFEPO4, 5, "lamp: 1 A, 5 h")))
                        .toLowerCase(Locale.ROOT);
        for (String each :
                List.of(
                        "protection circuit that can part it",
                        "its relay must not be the only",
                        "no charging below 0 °c of the cells. a small current is no remedy",
                        "alternator")) {
            assertTrue(lithium.contains(each), each);
            assertFalse(words.contains(each), each);
        }
        assertFalse(lithium.contains("hydrogen"), lithium);
    }

    /** By hand: 12.7 V over 3.6 milliohms are 3528 A, and 0.05 x 6 x 8 mA/Ah x 100 Ah 0.24 m³. */
    @Test
    void theDangersAreThoseOfThisBattery() {
        String words = words(sheet(HUT));
        assertTrue(words.contains("holds 1200 Wh and can give about 3528 A"), words);
        assertTrue(words.contains("about 0.2 m³ of fresh air"), words);
    }

    @Test
    void nothingThatSomebodyTypedBecomesMarkup() {
        String evil = "<script>alert('1')</script> & \"x\"";
        OwnSystem system =
                OwnSamples.of(
                        12,
                        Chemistry.LIFEPO4,
                        100,
                        5,
                        "<img src=x onerror=alert(1)>: 1 A, 5 h",
                        "a</svg><b>\"'&: 2 A, 1 h");
        String html =
                SystemSheet.html(
                        system,
                        GAUGE,
                        new SheetDetails(evil, List.of(Source.SOLAR), 14.2, true),
                        "1");
        assertFalse(html.contains("<script"), html);
        assertFalse(html.contains("<img"), html);
        assertFalse(html.contains("<b>\"'"), html);
        assertTrue(words(html).contains(evil), words(html));
        assertTrue(words(html).contains("a</svg><b>\"'&"), words(html));
    }

    @Test
    void itAsksNobodyForAnything() {
        String html = sheet(HUT);
        assertTrue(html.contains("default-src 'none'"), html);
        assertFalse(html.contains("<script"), html);
        String outside = html.replace("http://www.w3.org/2000/svg", "");
        assertFalse(outside.contains("http:"), outside);
        assertFalse(outside.contains("https:"), outside);
        assertFalse(outside.contains(" style="), outside);
        assertFalse(outside.contains("url("), outside);
    }

    /** Plain words of builders; what stands in the file of the scenario is another matter. */
    @Test
    void noWordOfOursThatABuilderDoesNotKnow() {
        String words =
                words(sheet(HUT).replaceAll("(?s)<pre.*?</pre>|<code>.*?</code>", " "))
                        .toLowerCase(Locale.ROOT);
        for (String each :
                List.of(
                        "plant",
                        "rig",
                        "lane",
                        "judge",
                        "device",
                        "tick",
                        "c20",
                        "anchor",
                        "taper",
                        "absorption",
                        "state of charge",
                        "unmeasured",
                        "error band",
                        "declare")) {
            assertFalse(words.matches("(?s).*\\b" + each + "s?\\b.*"), each);
        }
    }

    @ParameterizedTest
    @CsvSource({"12, 0, 0", "12, 1, 20", "24, 5, 0", "36, 2, 10", "48, 12, 60"})
    void itStandsForSystemsOfAllSizes(int volts, int loads, double chargerAmps) {
        String[] words = new String[loads];
        for (int i = 0; i < loads; i++) {
            words[i] = "load " + i + ": " + (i + 1) + " A, 30 min" + (i == 4 ? ", inverter" : "");
        }
        OwnSystem system =
                OwnSamples.of(volts, Chemistry.LEAD_ACID_FLOODED, 200, chargerAmps, words);
        for (List<Source> sources :
                List.of(List.<Source>of(), List.of(Source.SOLAR), List.of(Source.MAINS))) {
            String html =
                    SystemSheet.html(
                            system,
                            OwnersGauge.UNKNOWN,
                            new SheetDetails("", sources, null, false),
                            "1");
            int drawn = html.split("data-part=\"charger-", -1).length - 1;
            // One more stands in the picture of the mistake.
            int right = sources.isEmpty() && chargerAmps == 0 ? 0 : 1;
            assertEquals(right + 1, drawn);
            assertTrue(html.contains("battery, " + volts + " V"), html);
            assertFalse(html.contains("NaN"), html);
            assertFalse(html.contains("Infinity"), html);
        }
    }

    @ParameterizedTest
    @EnumSource
    void itStandsForEachKindOfBattery(Chemistry chemistry) {
        String html = sheet(OwnSamples.hut(chemistry, 5, "lamp: 1 A, 5 h"));
        assertTrue(html.contains(chemistry.key()), html);
        assertFalse(html.contains("NaN"), html);
    }

    @Test
    void whatDoesNotFitIsSaidFirst() {
        OwnSystem system =
                new OwnSystem(
                        12,
                        Chemistry.LIFEPO4,
                        200,
                        OwnSamples.hut(Chemistry.LIFEPO4, 0, "winch: 80 A, 10 min").loads(),
                        null,
                        20,
                        null,
                        new ShuntRating(100_000_000, 75_000),
                        null);
        String words = words(sheet(system));
        assertTrue(words.contains("Does not fit: the shunt 100 A / 75 mV"), words);
        OwnSystem huge = OwnSamples.hut(Chemistry.LIFEPO4, 0, "winch: 5000 A, 10 min");
        assertThrows(IllegalArgumentException.class, () -> sheet(huge));
    }

    @Test
    void whatWasTakenWhereNothingWasToldIsListed() {
        String words =
                words(
                        SystemSheet.html(
                                OwnSamples.hut(Chemistry.LIFEPO4, 0),
                                OwnersGauge.UNKNOWN,
                                SheetDetails.NONE,
                                "1"));
        for (String each :
                List.of(
                        "a lamp of 1 A for 5 h a day stands as the example",
                        "one of a tenth of the amp-hours is the example",
                        "charger's highest steady volts are those usual",
                        "the negative has one earth",
                        "own current is left out")) {
            assertTrue(words.contains(each), each + " in " + words);
        }
    }
}
