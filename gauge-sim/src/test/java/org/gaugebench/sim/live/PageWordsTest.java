package org.gaugebench.sim.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Fault;
import org.gaugebench.sim.live.lessons.FigureUnit;
import org.gaugebench.sim.live.lessons.Words;
import org.gaugebench.sim.page.PageAsset;
import org.gaugebench.sim.scenario.Change;
import org.junit.jupiter.api.Test;

/** Every word of the page stands in one file, and none of them is ours alone. */
class PageWordsTest {
    private static final Map<String, String> WORDS = Words.english().page();

    private static Set<String> asked(String file, String pattern) {
        Set<String> keys = new TreeSet<>();
        Matcher matcher = Pattern.compile(pattern).matcher(PageAsset.text(LiveRoutes.class, file));
        while (matcher.find()) {
            keys.add(matcher.group(1));
        }
        return keys;
    }

    @Test
    void everyWordThatThePageAsksForIsThere() {
        Set<String> keys = asked("live.html", "data-word=\"([a-z0-9-]+)\"");
        keys.addAll(asked("live.html", "data-name=\"([a-z0-9-]+)\""));
        for (String script : List.of("live.js", "book.js", "lesson.js", "chart.js")) {
            keys.addAll(asked(script, "\\bw\\('([a-z-]*[a-z])'"));
        }
        for (FigureUnit unit : EnumSet.range(FigureUnit.PERCENT, FigureUnit.MINUTES)) {
            keys.add("chart-" + new Strip(unit, 0, 1).word());
        }
        for (Event event : Event.values()) {
            keys.add("event-" + event.name().toLowerCase(Locale.ROOT).replace('_', '-'));
        }
        for (Fault fault : Fault.values()) {
            keys.add("fault-" + fault.name().toLowerCase(Locale.ROOT).replace('_', '-'));
        }
        assertTrue(keys.size() > 40, keys.toString());
        for (Control control : BenchSamples.bench().board().controls()) {
            keys.add(control.group());
            boolean named = control.word().startsWith("name:") || control.group().equals("power");
            if (!named) {
                keys.add("c-" + control.word());
            }
            if (control.isSwitch()) {
                for (String word : control.range().unit().split("\\|", -1)) {
                    keys.add("s-" + word);
                }
            }
        }
        Set<Change.Target> moved =
                BenchSamples.bench().board().controls().stream()
                        .map(Control::target)
                        .collect(Collectors.toCollection(() -> EnumSet.of(Change.Target.WIRING)));
        // Of these four not every part has a control: others change by a timeline alone.
        moved.removeAll(
                EnumSet.of(
                        Change.Target.WIRING,
                        Change.Target.SENSOR_TRAIT,
                        Change.Target.SETTING,
                        Change.Target.LOAD_AMOUNT));
        for (Change.Target target : EnumSet.complementOf(EnumSet.copyOf(moved))) {
            keys.add("changed-" + target.name().toLowerCase(Locale.ROOT).replace('_', '-'));
        }
        keys.addAll(List.of("power-gone", "power-back", "part-isolator", "part-reversed"));
        Causes causes = new Causes(BenchSamples.scenario());
        for (int cause = causes.otherFlow(); cause < causes.count(); cause++) {
            keys.add(causes.word(cause).replace("step:", "step-"));
        }
        keys.removeAll(WORDS.keySet());
        assertEquals(Set.of(), keys);
        assertTrue(causes.step(Event.SET_TO_FULL) > 0);
    }

    @Test
    void noWordIsOneThatOnlyTheProgramsAuthorsKnow() {
        for (String text : WORDS.values()) {
            String plain = " " + text.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", " ") + " ";
            for (String ours :
                    new String[] {
                        "plant", "rig", "lane", "judge", "device", "tick", "c20", "sync"
                    }) {
                assertFalse(plain.contains(" " + ours + " "), text);
            }
        }
    }

    @Test
    void theTextsOfThePageHoldNoWordOfTheirOwn() {
        String html = PageAsset.text(LiveRoutes.class, "live.html");
        String words = html.replaceAll("(?s)<head>.*</head>", "").replaceAll("<[^>]*>", " ");
        String left = words.replaceAll("&#?[a-z0-9]+;|0 d 00:00:00|uPlot", "").strip();
        assertEquals("", left.replaceAll("\\s+", " "));
        assertTrue(WORDS.get("simulation").startsWith("Simulation only"));
    }
}
