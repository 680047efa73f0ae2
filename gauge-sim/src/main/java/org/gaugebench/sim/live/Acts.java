package org.gaugebench.sim.live;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.gaugebench.sim.live.lessons.Sketch;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.ScenarioException;
import org.gaugebench.sim.scenario.ScenarioProblem;
import org.gaugebench.sim.scenario.SourceMark;
import org.gaugebench.sim.units.Quantity;
import org.gaugebench.sim.units.QuantityException;
import org.gaugebench.sim.units.RecordUnit;

/** Does what a message asks for. */
final class Acts {
    private static final String KNOWN =
            "play, pause, step, speed, next-event, to-end, run-to, reset, reveal, set, command,"
                    + " lesson or stop";

    private final Player player;
    private final LessonShelf lessons;
    private final Scenario first;
    private final long seed;
    private final Runnable stop;

    /**
     * Acts on a player.
     *
     * @param first scenario to which "lesson 0" leads back
     * @param stop ends the program
     */
    Acts(Player player, LessonShelf lessons, Scenario first, long seed, Runnable stop) {
        this.player = player;
        this.lessons = lessons;
        this.first = first;
        this.seed = seed;
        this.stop = stop;
    }

    /**
     * Does one thing.
     *
     * @param message with the field "act" and what belongs to it
     * @throws Refusal if it cannot be done; then nothing was done
     */
    void take(Map<String, String> message) throws Refusal {
        Map<String, String> rest = new LinkedHashMap<>(message);
        String act = rest.remove("act");
        if (act == null) {
            throw new Refusal(400, "the message lacks 'act'; expected one of " + KNOWN);
        }
        switch (act) {
            case "set" -> set(rest);
            case "command" -> command(rest);
            case "speed" -> player.setSpeed(number(only(rest, "value")));
            case "run-to" -> player.runTo(moment(only(rest, "at")));
            case "reveal" -> player.setRevealed(yes(only(rest, "value")));
            case "lesson" -> lesson(only(rest, "number"));
            default -> plain(act, rest);
        }
    }

    private void plain(String act, Map<String, String> rest) throws Refusal {
        if (!rest.isEmpty()) {
            throw new Refusal(
                    400, "'" + act + "' takes nothing beside it; expected {\"act\":\"play\"}");
        }
        switch (act) {
            case "play" -> player.play();
            case "pause" -> player.pause();
            case "step" -> player.step();
            case "next-event" -> player.toNextEvent();
            case "to-end" -> player.runTo(Long.MAX_VALUE);
            case "reset" -> player.reset();
            case "stop" -> stop.run();
            default -> throw new Refusal(400, "no such act; expected one of " + KNOWN);
        }
    }

    private void set(Map<String, String> set) throws Refusal {
        if (set.isEmpty()) {
            throw new Refusal(400, "nothing is set; expected {\"act\":\"set\",\"lamp\":\"on\"}");
        }
        tell(bench -> bench.set(set), set.size());
    }

    private void command(Map<String, String> command) throws Refusal {
        tell(bench -> bench.command(command), 1);
    }

    private void tell(Player.Work<ScenarioException> work, int changes) throws Refusal {
        try {
            player.act(
                    bench -> {
                        if (!bench.hasRoomFor(changes)) {
                            throw new ScenarioException(List.of(full()));
                        }
                        work.on(bench);
                    });
        } catch (ScenarioException e) {
            throw new Refusal(
                    422,
                    e.problems().stream()
                            .map(ScenarioProblem::message)
                            .collect(Collectors.joining("; ")));
        }
    }

    private static ScenarioProblem full() {
        return new ScenarioProblem(
                new SourceMark("", 1, 1),
                "this run holds as many changes as a scenario can; save it, then reset",
                "");
    }

    private void lesson(String number) throws Refusal {
        if (number.equals("0")) {
            player.load(new Bench(first, seed));
            return;
        }
        int wanted = LiveRoutes.lessonNumber(number);
        Scenario scenario = lessons.scenario(wanted);
        if (scenario == null) {
            throw new Refusal(404, "there is no lesson " + number);
        }
        Sketch sketch = lessons.sketch(wanted);
        Strip strip = sketch == null ? Strip.HOW_FULL : Strip.of(sketch);
        player.load(new Bench(scenario, scenario.seed(), wanted, strip));
    }

    private static String only(Map<String, String> rest, String key) throws Refusal {
        String value = rest.get(key);
        if (value == null || rest.size() != 1) {
            throw new Refusal(400, "expected exactly one field '" + key + "' beside 'act'");
        }
        return value;
    }

    private static double number(String text) throws Refusal {
        try {
            double value = Double.parseDouble(text);
            if (value >= Player.SLOWEST && value <= Player.FASTEST) {
                return value;
            }
        } catch (NumberFormatException e) {
            // told below
        }
        throw new Refusal(
                422, "a speed is 1 to 604800 simulated seconds in a second; expected such as 3600");
    }

    private static boolean yes(String text) throws Refusal {
        return switch (text) {
            case "true" -> true;
            case "false" -> false;
            default -> throw new Refusal(400, "expected true or false");
        };
    }

    private static long moment(String text) throws Refusal {
        try {
            long millis = Quantity.parse(text, RecordUnit.MILLIS);
            if (millis >= 0) {
                return millis;
            }
        } catch (QuantityException e) {
            // told below
        }
        throw new Refusal(422, "a moment is a time from the start, such as '2 d 3 h'");
    }
}
