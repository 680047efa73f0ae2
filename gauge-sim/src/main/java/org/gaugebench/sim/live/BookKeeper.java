package org.gaugebench.sim.live;

import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Trust;
import org.gaugebench.sim.plant.Circuit;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Change;
import org.gaugebench.sim.scenario.GaugeSpec;

/**
 * Keeps the account book of a run for one of its gauges. An entry ends with the hour, with a change
 * of the timeline, and with a step of the gauge's count.
 *
 * <p>Two sums hold for each entry: the flows and the losses are the change of the true charge; the
 * flows, what is misread, the allowance and the steps are the change of the gauge's count. While
 * charge flows in, what is not stored holds the self-discharge of that time too: the plant tells
 * them apart no further.
 */
final class BookKeeper implements Observer {
    private static final double MILLIS_PER_HOUR = 3.6e6;
    private static final double NANOCOULOMBS_PER_AMP_HOUR = 3.6e12;
    private static final long HOUR_MILLIS = 3_600_000;
    private static final int NO_STEP = -1;

    private final Causes causes;
    private final int gauge;
    private final Ledger ledger;
    private final double[] loadAmps;
    private final double[] chargerAmps;
    private String name = "";
    private Entry open;
    private Balance opening = new Balance(Double.NaN, Double.NaN, Double.NaN, 0, 0);
    private double trueAmpHours;
    private double flowAmpHours;
    private long hourMillis;
    private int owner = NO_STEP;
    private boolean closing;
    private long revision;

    /**
     * Opens a book.
     *
     * @param causes what its lines can be about
     * @param gauge whose book, from 0
     */
    BookKeeper(Causes causes, int gauge) {
        this.causes = causes;
        this.gauge = gauge;
        ledger = new Ledger(causes.count());
        loadAmps = new double[causes.loads()];
        chargerAmps = new double[causes.chargers()];
        open = new Entry(Entry.Grain.BOOKED, 0, causes.count());
    }

    Ledger ledger() {
        return ledger;
    }

    Causes causes() {
        return causes;
    }

    /** Rises with every entry that is closed. */
    long revision() {
        return revision;
    }

    /** The entry that is being written, with the balances of now; the book keeps another one. */
    Entry openEntry(Rig rig) {
        Entry shown = new Entry(Entry.Grain.BOOKED, open.fromMillis, causes.count());
        shown.take(open);
        settle(shown, rig, false);
        return shown;
    }

    @Override
    public void onStart(Rig rig) {
        open = new Entry(Entry.Grain.BOOKED, rig.timeMillis(), causes.count());
        trueAmpHours = rig.truth().chargeAmpHours();
        name = rig.lanes().get(gauge).name();
        opening = balance(rig);
        owner = NO_STEP;
        closing = false;
    }

    @Override
    public Observer forTicks() {
        return this;
    }

    @Override
    public void onTick(Rig rig) {
        Circuit plant = rig.plant();
        double hours = rig.scenario().tickMillis() / MILLIS_PER_HOUR;
        double amps = plant.meanCurrentAmps();
        plant.fillAmps(loadAmps, chargerAmps);
        double rest = amps;
        for (int i = 0; i < loadAmps.length; i++) {
            open.book(i, -loadAmps[i] * hours);
            rest += loadAmps[i];
        }
        for (int i = 0; i < chargerAmps.length; i++) {
            open.book(loadAmps.length + i, chargerAmps[i] * hours);
            rest -= chargerAmps[i];
        }
        open.book(causes.otherFlow(), rest * hours);
        double charge = plant.chargeAmpHours();
        double lost = charge - trueAmpHours - amps * hours;
        open.book(amps > 0 ? causes.notStored() : causes.selfDischarge(), lost);
        trueAmpHours = charge;
        flowAmpHours += amps * hours;
        long now = rig.timeMillis();
        if (closing || now - hourMillis >= HOUR_MILLIS) {
            hourMillis = now - now % HOUR_MILLIS;
            close(rig);
        }
    }

    @Override
    public void onChange(Rig rig, Change change) {
        if (rig.timeMillis() > open.fromMillis) {
            close(rig);
        }
    }

    @Override
    public void onEvent(Lane lane, Event event, long value) {
        if (!lane.name().equals(name)) {
            return;
        }
        if (causes.step(event) >= 0) {
            step(event, value);
        } else if (event == Event.POWERED_UP) {
            owner = causes.step(Event.RESTORED);
            closing = true;
        }
    }

    private void step(Event event, long value) {
        closing = true;
        if (event.unit().equals("nC")) {
            open.book(causes.step(event), value / NANOCOULOMBS_PER_AMP_HOUR);
        } else {
            // Its figure is not a step: the rest that nothing else explains is.
            owner = causes.step(event);
        }
    }

    private void close(Rig rig) {
        settle(open, rig, true);
        ledger.add(open);
        open = new Entry(Entry.Grain.BOOKED, rig.timeMillis(), causes.count());
        closing = false;
        owner = NO_STEP;
        revision++;
    }

    /** Books what only the balances of the gauge tell, and writes the balances down. */
    private void settle(Entry entry, Rig rig, boolean forGood) {
        Balance now = balance(rig);
        double moved = now.gauge() - opening.gauge();
        int firstStep = causes.allowance() + 1;
        double unexplained = moved - flowAmpHours - entry.net(firstStep, causes.count());
        double counted = now.counted() - opening.counted();
        boolean restarted = owner == causes.step(Event.RESTORED);
        if (!Double.isNaN(unexplained)) {
            double misread = Double.isNaN(counted) ? unexplained : counted - flowAmpHours;
            if (restarted) {
                entry.book(owner, unexplained);
            } else {
                entry.book(causes.misread(), misread);
                entry.book(owner == NO_STEP ? causes.allowance() : owner, unexplained - misread);
            }
        } else if (!Double.isNaN(now.gauge())) {
            // Nothing was shown before: the whole balance comes with this entry.
            entry.book(
                    owner == NO_STEP ? causes.step(Event.DECLARED) : owner,
                    now.gauge() - entry.net(firstStep, causes.count()) - flowAmpHours);
        }
        entry.close(rig.timeMillis(), now);
        if (forGood) {
            opening = now;
            flowAmpHours = 0;
        }
    }

    private Balance balance(Rig rig) {
        Lane lane = rig.lanes().get(gauge);
        double truth = rig.truth().chargeAmpHours();
        if (!lane.hasPower()) {
            return new Balance(Double.NaN, Double.NaN, Double.NaN, Double.NaN, truth);
        }
        Readout readout = lane.read();
        boolean known = readout.trust != Trust.UNKNOWN;
        double full = readout.fullChargeNanocoulombs / NANOCOULOMBS_PER_AMP_HOUR;
        Registers registers = lane.inspect();
        boolean counts = lane.spec().kind() == GaugeSpec.Kind.CORE;
        long net =
                registers.get(Register.IN_NANOCOULOMBS) - registers.get(Register.OUT_NANOCOULOMBS);
        return new Balance(
                known ? readout.remainingNanocoulombs / NANOCOULOMBS_PER_AMP_HOUR : Double.NaN,
                readout.bandUnknown ? Double.NaN : full * readout.lowerEdgePartsPerMillion / 1e6,
                readout.bandUnknown ? Double.NaN : full * readout.upperEdgePartsPerMillion / 1e6,
                counts ? net / NANOCOULOMBS_PER_AMP_HOUR : Double.NaN,
                truth);
    }
}
