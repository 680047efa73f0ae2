package org.gaugebench.sim.live;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Trust;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Observers;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Change;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.ScenarioException;
import org.gaugebench.sim.scenario.StepText;

/**
 * A run that somebody works with. Whatever is done becomes a change of the timeline at the tick
 * boundary where the run stands, takes effect with the tick that begins there, and is recorded; so
 * what happened can be written as a scenario that runs to the same bits.
 *
 * <p>For one thread at a time.
 */
final class Bench {
    private static final int FIXED_FIGURES = 4;

    /** Places of a moment's figures in the history; those of the gauges follow. */
    static final int TRUE_PERCENT = 0;

    static final int LOWER_PERCENT = 1;
    static final int UPPER_PERCENT = 2;
    static final int AMPS = 3;

    private final Recording recording;
    private final ControlBoard board;
    private final double[] figures;
    private final Strip strip;
    private final int lesson;
    private Rig rig;
    private History history;
    private final List<BookKeeper> books = new ArrayList<>();
    private EventList events;
    private boolean fine = true;
    private long lastFineMillis;

    /** Acts of this moment, already recorded, which the rig has not heard of. */
    private int waiting;

    /**
     * Sets a scenario up, at its start.
     *
     * @param scenario checked
     * @param seed of every random stream
     */
    Bench(Scenario scenario, long seed) {
        this(scenario, seed, 0, Strip.HOW_FULL);
    }

    /**
     * Sets the scenario of a lesson up.
     *
     * @param lesson its number; 0 for none
     * @param strip what the upper strip of the chart shows
     */
    @SuppressWarnings("NullAway.Init") // build() fills the rest
    Bench(Scenario scenario, long seed, int lesson, Strip strip) {
        recording = new Recording(scenario, seed);
        board = new ControlBoard(scenario);
        this.lesson = lesson;
        this.strip = strip;
        int gauges = scenario.gauges().size();
        figures = new double[FIXED_FIGURES + gauges + (strip.isHowFull() ? 0 : 1 + gauges)];
        build();
    }

    private void build() {
        board.reset();
        history = new History(figures.length);
        books.clear();
        Observer all = new Sampler();
        for (int gauge = 0; gauge < recording.base().gauges().size(); gauge++) {
            BookKeeper book = new BookKeeper(new Causes(recording.base()), gauge);
            books.add(book);
            all = Observers.both(book, all);
        }
        events = new EventList(board);
        waiting = 0;
        lastFineMillis = 0;
        rig = new Rig(recording.whole(), recording.seed(), Observers.both(events, all));
        events.watch(rig);
        rig.begin();
    }

    /** Fills the history. */
    private final class Sampler implements Observer {
        @Override
        public void onStart(Rig started) {
            look(started, 0);
        }

        @Override
        public Observer forTicks() {
            return this;
        }

        @Override
        public void onTick(Rig ticking) {
            if (fine && ticking.timeMillis() - lastFineMillis >= 500) {
                lastFineMillis = ticking.timeMillis();
                look(ticking, 0);
            }
        }

        @Override
        public void onMoment(Rig standing) {
            if (!fine) {
                look(standing, 1);
            }
        }
    }

    private void look(Rig standing, int fromLevel) {
        figures[TRUE_PERCENT] = standing.truth().stateOfCharge() * 100;
        figures[AMPS] = Double.NaN;
        figures[LOWER_PERCENT] = Double.NaN;
        figures[UPPER_PERCENT] = Double.NaN;
        int place = FIXED_FIGURES;
        for (Lane lane : standing.lanes()) {
            Readout readout = lane.read();
            boolean known = lane.hasPower() && readout.trust != Trust.UNKNOWN;
            figures[place] = known ? readout.stateOfChargePartsPerMillion / 1e4 : Double.NaN;
            if (place == FIXED_FIGURES && lane.hasPower()) {
                figures[AMPS] = readout.currentMicroamps / 1e6;
            }
            if (place == FIXED_FIGURES && lane.hasPower() && !readout.bandUnknown) {
                figures[LOWER_PERCENT] = readout.lowerEdgePartsPerMillion / 1e4;
                figures[UPPER_PERCENT] = readout.upperEdgePartsPerMillion / 1e4;
            }
            place++;
        }
        if (!strip.isHowFull()) {
            figures[place++] = strip.actual(standing.truth());
            for (Lane lane : standing.lanes()) {
                boolean on = lane.hasPower();
                figures[place++] = on ? strip.shown(lane.read(), standing.truth()) : Double.NaN;
            }
        }
        history.add(standing.timeMillis(), figures, fromLevel);
    }

    /** Place of a gauge's state of charge in the history. */
    static int percentOfGauge(int gauge) {
        return FIXED_FIGURES + gauge;
    }

    /**
     * Place of what is true of the strip, before that of each gauge; -1 where it is the percent.
     */
    int placeOfStrip() {
        return strip.isHowFull() ? -1 : FIXED_FIGURES + scenario().gauges().size();
    }

    /** Whether a figure of the history says something of the truth. */
    boolean isSecret(int figure) {
        int place = placeOfStrip();
        return figure == TRUE_PERCENT
                || figure == place
                || (place >= 0 && figure > place && strip.isSecret());
    }

    /** What the upper strip of the chart shows. */
    Strip strip() {
        return strip;
    }

    /** Number of the lesson that is held; 0 for none. */
    int lesson() {
        return lesson;
    }

    /**
     * Says how closely the past is kept from now on.
     *
     * @param wanted every half second, for a slow run; else every minute
     */
    void setFine(boolean wanted) {
        if (wanted && !fine) {
            history.forgetFinest();
        }
        fine = wanted;
    }

    /** Runs on to a moment, at most to the scenario's end. */
    void advanceTo(long millis) {
        if (millis <= rig.timeMillis() || isEnded()) {
            return;
        }
        if (waiting > 0) {
            recording.at(rig.timeMillis()).forEach(rig::append);
            waiting = 0;
        }
        rig.advanceTo(millis);
    }

    boolean isEnded() {
        return rig.timeMillis() >= recording.base().durationMillis();
    }

    /**
     * Does something now.
     *
     * @param set addresses and values in the language of scenario files
     * @throws ScenarioException with every reason why not; nothing was done then
     */
    void set(Map<String, String> set) throws ScenarioException {
        take(StepText.set(recording.base(), recording.timeline(), rig.timeMillis(), set));
    }

    /**
     * Gives a gauge a command now.
     *
     * @param command its keys and values, such as "command" and "zero-adjustment"
     * @throws ScenarioException with every reason why not; nothing was done then
     */
    void command(Map<String, String> command) throws ScenarioException {
        take(StepText.command(recording.base(), recording.timeline(), rig.timeMillis(), command));
    }

    private void take(List<Change> changes) {
        for (Change change : changes) {
            if (!recording.replaceLast(change)) {
                recording.add(change);
            }
            board.took(change);
        }
        waiting = recording.at(rig.timeMillis()).size();
        if (rig.timeMillis() == 0) {
            build();
            changes.forEach(board::took);
        }
    }

    /** Whether the run can take so many changes more: a timeline has a limit. */
    boolean hasRoomFor(int changes) {
        int now = recording.base().changes().size() + recording.acts();
        return now + changes <= StepText.MOST_CHANGES;
    }

    /** Back to the start, as if nobody had done anything. */
    void reset() {
        recording.clear();
        build();
    }

    /** What happened so far as a scenario file; see {@link Recording#text}. */
    String scenarioText() {
        return recording.text(rig.timeMillis());
    }

    /** Whether something was done that takes effect with the next tick. */
    boolean isWaiting() {
        return waiting > 0;
    }

    int acts() {
        return recording.acts();
    }

    Rig rig() {
        return rig;
    }

    Scenario scenario() {
        return recording.base();
    }

    History history() {
        return history;
    }

    /**
     * The account book of a gauge.
     *
     * @param gauge from 0, in the scenario's order
     */
    BookKeeper book(int gauge) {
        return books.get(gauge);
    }

    EventList events() {
        return events;
    }

    ControlBoard board() {
        return board;
    }
}
