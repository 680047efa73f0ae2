package org.gaugebench.sim.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Register;
import org.gaugebench.sim.device.GaugeDevice;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;

/** Runs a scenario up to a moment and lays one core gauge's arithmetic of that moment open. */
public final class Explainer implements Observer {
    private static final long NOTHING_SHOWN_YET = -2;

    private final long atMillis;
    private final String gauge;
    private final Recorder recorder;
    private @Nullable Rig rig;
    private @Nullable Explanation explanation;

    private Explainer(String gauge, long atMillis) {
        this.gauge = gauge;
        this.atMillis = atMillis;
        recorder = new Recorder(gauge, this::now);
    }

    /** Ends the run: what comes after the moment is not asked for. */
    private static final class Reached extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Reached() {
            super("reached", null, false, false);
        }
    }

    /** The gauges of a scenario that can be explained: its cores. */
    public static List<String> gauges(Scenario scenario) {
        return scenario.gauges().stream()
                .filter(gauge -> gauge.kind() == GaugeSpec.Kind.CORE)
                .map(GaugeSpec::name)
                .toList();
    }

    /**
     * Explains a moment. The moment is the first tick at or after the time, and the run is the same
     * to that point as without looking. What the timeline does at the moment comes after the
     * sample, as in the run, and is told last.
     *
     * @param scenario what to run
     * @param seed of every random stream
     * @param gauge one of {@link #gauges}
     * @param atMillis from the start, 0 to the scenario's duration
     * @throws IllegalArgumentException if there is no such core, or the moment is after the end
     */
    public static Explanation of(Scenario scenario, long seed, String gauge, long atMillis) {
        if (!gauges(scenario).contains(gauge)) {
            throw new IllegalArgumentException("no core gauge is called " + gauge);
        }
        Explainer explainer = new Explainer(gauge, atMillis);
        Rig rig = new Rig(scenario, seed, explainer);
        explainer.rig = rig;
        // The moment itself, and the tick after it, by when the timeline has had its say.
        rig.stopAt(new long[] {atMillis, atMillis + 1});
        try {
            rig.run();
        } catch (Reached e) {
            // as meant
        }
        Explanation found = explainer.explanation;
        if (found == null) {
            throw new IllegalArgumentException("the run ends before that moment");
        }
        return explainer.withCalls(found);
    }

    private long now() {
        Rig running = rig;
        return running == null ? 0 : running.timeMillis();
    }

    @Override
    public GaugeDevice watch(Lane lane, GaugeDevice device) {
        return recorder.watch(lane, device);
    }

    @Override
    public void onEvent(Lane lane, Event event, long value) {
        recorder.event(lane, event);
    }

    @Override
    public void onStart(Rig started) {
        onMoment(started);
    }

    @Override
    public void onMoment(Rig at) {
        if (at.timeMillis() < atMillis) {
            return;
        }
        if (explanation != null) {
            throw new Reached();
        }
        explanation = explain(at);
    }

    private Explanation explain(Rig at) {
        for (Lane lane : at.lanes()) {
            if (lane.name().equals(gauge)) {
                String sentence = Sentence.of(lane, at.truth());
                return lane.hasPower()
                        ? explain(at.timeMillis(), lane, sentence)
                        : new Explanation(
                                gauge,
                                at.timeMillis(),
                                sentence,
                                "Without power no sample is taken and nothing is counted. What the"
                                        + " memory holds comes back with the power, and the band"
                                        + " grows by the time without it (M4).",
                                List.of());
            }
        }
        throw new IllegalStateException("the rig has no lane of that gauge");
    }

    private Explanation explain(long millis, Lane lane, String sentence) {
        Followed followed = recorder.followed();
        Tick tick = recorder.tick();
        if (followed == null) {
            throw new IllegalStateException("the gauge was never watched");
        }
        boolean fresh = tick != null && tick.atMillis() == millis;
        List<Section> sections = new ArrayList<>();
        if (tick != null && fresh) {
            Sheet sheet = new Sheet(tick.after());
            new SenseSteps(sheet, tick).write();
            if (!tick.isRepeated() && !tick.first()) {
                new ChargeSteps(sheet, tick).write();
            }
            sections.addAll(sheet.sections());
        }
        sections.addAll(standing(lane, followed, fresh ? tick : null));
        return new Explanation(
                gauge, millis, sentence, situation(tick, fresh), List.copyOf(sections));
    }

    /** What stands at the moment, whether a sample came in it or not. */
    private static List<Section> standing(Lane lane, Followed followed, @Nullable Tick tick) {
        Sheet sheet = new Sheet(new Seen(lane.inspect()));
        ChargeSteps.stateOfCharge(sheet, followed.settings(), followed.isProven());
        Minute minute = followed.lastWhole();
        boolean ends = tick != null && !tick.minutes().isEmpty();
        if (minute == null) {
            sheet.section("Rules", "arithmetic 10, 15, 18; F, E, R");
            sheet.words(
                    "note",
                    "no whole minute since power-up or other settings: nothing was judged yet");
        } else {
            // Where a tick ends two minutes, the registers are those before the first of them.
            Seen before = tick != null && tick.minutes().size() == 1 ? tick.before() : null;
            new RuleSteps(sheet, followed, minute, before).write();
        }
        new BandSteps(sheet, followed.settings()).write();
        new HoursSteps(sheet, followed).write(followed.hours());
        new ShownSteps(sheet, followed.settings())
                .write(
                        followed.isProven(),
                        ends && tick != null && tick.minutes().size() == 1
                                ? tick.before(Register.SHOWN_PERCENT)
                                : NOTHING_SHOWN_YET);
        return sheet.sections();
    }

    private static String situation(@Nullable Tick tick, boolean fresh) {
        if (tick == null) {
            return "No sample has come since power-up.";
        }
        if (!fresh) {
            return "No sample came in this moment; the last one was that of "
                    + Figures.moment(tick.atMillis())
                    + ". What it left stands.";
        }
        String told =
                tick.events().isEmpty()
                        ? ""
                        : " The gauge announced: "
                                + tick.events().stream()
                                        .sorted()
                                        .map(Event::sentence)
                                        .collect(Collectors.joining("; "))
                                + ".";
        if (tick.first()) {
            return "The first sample since power-up: it sets the clock and adds nothing (G1)."
                    + told;
        }
        if (tick.isMissed()) {
            return "A sample after a gap: the interval is not counted (G6)." + told;
        }
        if (tick.isRepeated()) {
            return "A sample with the clock of the one before: it adds nothing." + told;
        }
        return (tick.minutes().isEmpty()
                        ? "A sample in the middle of a minute: charge is added; rules, band and"
                                + " hours stand as the last whole minute left them."
                        : "A sample that ends a minute: the charge is settled, then the rules"
                                + " judge, then the hours are worked out.")
                + told;
    }

    private Explanation withCalls(Explanation before) {
        List<Call> calls = recorder.callsAt(before.atMillis());
        if (calls.isEmpty()) {
            return before;
        }
        List<Section> sections = new ArrayList<>(before.sections());
        for (Call call : calls) {
            sections.add(section(call));
        }
        return new Explanation(
                before.gauge(),
                before.atMillis(),
                before.sentence(),
                before.situation(),
                List.copyOf(sections));
    }

    private static Section section(Call call) {
        Sheet sheet = new Sheet(call.after());
        sheet.section("Asked in this moment: " + call.words(), "G14, G15, M, S, Z");
        if (call.command() == Command.DECLARE_STATE_OF_CHARGE
                && call.argument() >= 0
                && call.argument() <= 1_000_000) {
            long capacity = sheet.register(Register.CAPACITY_NANOCOULOMBS);
            sheet.step(
                    "set to what is declared",
                    Expression.of(capacity).over(1_000_000).times(call.argument()),
                    Register.CHARGE_NANOCOULOMBS);
        }
        for (Register register : Register.values()) {
            long from = call.before().get(register);
            long to = call.after().get(register);
            if (from != to) {
                sheet.words(
                        "changed",
                        "%s from %d to %d %s".formatted(register, from, to, register.unit()));
            }
        }
        return sheet.sections().stream()
                .findFirst()
                .orElse(new Section("Asked in this moment: " + call.words(), "", List.of()));
    }
}
