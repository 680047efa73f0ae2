package org.gaugebench.sim.rig;

import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.frontend.FrontEnd;
import org.gaugebench.sim.frontend.IdealConverter;
import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.Change;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.SensorTrait;
import org.gaugebench.sim.scenario.WiringSpec;
import org.jspecify.annotations.Nullable;

/**
 * The tested gauge once more, in a lane of its own, with all causes of error up to one taken away.
 * Truth, timeline and noise are those of the tested gauge: the streams bear its name.
 *
 * <p>Nobody sees a twin: it announces nothing and folds into no digest.
 */
public final class Twin {
    private static final double NANOCOULOMBS_PER_AMP_HOUR = 3.6e12;

    private final TwinShape shape;
    private final Cause last;
    private final String gauge;
    private final TwinTruth truth;
    private final Lane lane;
    private final @Nullable IdealConverter converter;
    private GaugeSettings tested;
    private GaugeSettings.@Nullable Builder prepared;
    private WiringSpec wiring;
    private boolean testedHasPower;
    private boolean started;
    private boolean startSet;
    private long shiftNanocoulombs;

    /**
     * Builds a twin of one of a scenario's gauges.
     *
     * @param scenario what runs
     * @param spec the gauge, a core of that scenario
     * @param seed of the run
     * @param last all causes up to this one are taken away; {@link Cause#CAPACITY} at most
     * @param real the truth, at time 0
     */
    public Twin(Scenario scenario, GaugeSpec spec, long seed, Cause last, Truth real) {
        this.last = last;
        gauge = spec.name();
        tested = spec.settings();
        shape = new TwinShape(last, tested, scenario.sensor(), real);
        truth = new TwinTruth(real, last);
        SeedTree seeds = new SeedTree(seed);
        GaugeSpec own = shape.gauge(spec);
        var sensor = shape.sensor(scenario.sensor());
        converter =
                shape.lacks(Cause.CONVERTER)
                        ? new IdealConverter(sensor, seeds, gauge, own.settings())
                        : null;
        FrontEnd frontEnd =
                converter == null
                        ? new FrontEnd(sensor, seeds, gauge)
                        : new FrontEnd(sensor, seeds, gauge, converter);
        lane = new Lane(own, frontEnd, (int) scenario.tickMillis(), seeds, Observer.NONE);
        wiring = scenario.wiring();
        wire();
        follow();
    }

    /** The last cause that is taken away. */
    public Cause last() {
        return last;
    }

    private void wire() {
        lane.setWiring(shape.lacks(Cause.GAIN) ? WiringSpec.RIGHT : wiring);
    }

    private void follow() {
        if (converter != null) {
            converter.follow(
                    tested,
                    shape.settings(tested),
                    !shape.lacks(Cause.GAIN),
                    !shape.lacks(Cause.OFFSET));
        }
    }

    /** Power comes up as that of the tested gauge does; what was done before is not done again. */
    public void start() {
        if (started) {
            return;
        }
        started = true;
        lane.start(truth);
        testedHasPower = lane.hasPower();
        setStart();
    }

    /** Takes the truth's last step. */
    public void tick() {
        settle();
        truth.look();
        lane.tick(truth);
        setStart();
    }

    /** A twin without the cause "start" is told the truth once, when power first comes. */
    private void setStart() {
        if (shape.lacks(Cause.START) && !startSet && lane.hasPower()) {
            startSet = true;
            declareTruth();
        }
    }

    private void declareTruth() {
        long partsPerMillion = StrictMath.round(truth.stateOfCharge() * 1e6);
        lane.command(Command.DECLARE_STATE_OF_CHARGE, Math.min(partsPerMillion, 1_000_000));
        if (shape.lacks(Cause.CAPACITY)) {
            // A declaration has steps of a millionth, a capacity of a mAh: the rest is no error.
            long counted = lane.held().get(Register.CHARGE_NANOCOULOMBS);
            shiftNanocoulombs = trueNanocoulombs(truth) - counted;
        }
    }

    /** Takes a change of the timeline, unless it belongs to a cause that is taken away. */
    public void apply(Change change) {
        if (change.target() == Change.Target.SETTING) {
            tell(change);
            return;
        }
        settle();
        switch (change.target()) {
            case SENSOR_OFFSET -> applyUnless(shape.lacks(Cause.OFFSET), change);
            case SENSOR_TRAIT -> applyUnless(shape.lacks(SensorTrait.of(change.name())), change);
            case SENSOR_SAMPLES -> applyUnless(shape.lacks(Cause.CONVERTER), change);
            case WIRING -> {
                wiring = wiring.with(change.name(), change.value());
                wire();
            }
            default -> {
                if (change.name().equals(gauge)) {
                    applyOwn(change);
                }
            }
        }
    }

    private void applyOwn(Change change) {
        switch (change.target()) {
            case CLOCK_ERROR, CLOCK_JITTER, CLOCK_JUMP, CLOCK_SWITCH ->
                    applyUnless(shape.lacks(Cause.CLOCK), change);
            case GAUGE_OFF_TIME, GAUGE_CUT -> applyUnless(shape.lacks(Cause.POWER), change);
            case GAUGE_POWER -> applyPower(change);
            case DECLARE, NEW_BATTERY -> {
                if (shape.lacks(Cause.START)) {
                    declareTruth();
                } else {
                    command(change);
                }
            }
            case ZERO_ADJUSTMENT -> {
                if (!shape.lacks(Cause.OFFSET)) {
                    command(change);
                }
            }
            case SPAN_ADJUSTMENT -> {
                if (!shape.lacks(Cause.GAIN)) {
                    command(change);
                }
            }
            case FORGET_MEASURED -> command(change);
            default -> {
                // a load or a charger of the same name
            }
        }
    }

    private void command(Change change) {
        Command command = change.target().command();
        if (command != null) {
            lane.command(command, change.value());
        }
    }

    private void applyUnless(boolean lacking, Change change) {
        if (!lacking) {
            lane.apply(change, truth);
        }
    }

    /** Without the cause "power" it comes once, and stays. */
    private void applyPower(Change change) {
        boolean on = change.value() == 1;
        if (!shape.lacks(Cause.POWER) || !lane.hasPower()) {
            lane.apply(change, truth);
            setStart();
        } else if (on && !testedHasPower) {
            // The tested gauge takes a sample when it comes back: the noise stays in step.
            lane.tick(truth);
        }
        testedHasPower = on;
    }

    private void tell(Change change) {
        if (!change.name().startsWith(gauge + ".")) {
            return;
        }
        for (Setting setting : Setting.values()) {
            if (change.name().equals(gauge + "." + setting.key())) {
                if (prepared == null) {
                    prepared = tested.toBuilder();
                }
                prepared.set(setting, change.value());
                lane.prepare(setting, shape.valueOf(setting, change.value()));
            }
        }
    }

    /** Hands over the settings that were told together. */
    public void settle() {
        GaugeSettings.Builder builder = prepared;
        if (builder != null) {
            prepared = null;
            tested = builder.build();
            follow();
            lane.changeSettings();
        }
    }

    /** The charge that it counts within its limits, in nanocoulombs. */
    public long limitedNanocoulombs() {
        return lane.held().get(Register.CHARGE_NANOCOULOMBS) + shiftNanocoulombs;
    }

    /**
     * The charge that it would count without limits, in nanocoulombs: what the limits cut off of
     * whole minutes is counted apart, and the minute under way is as the core would settle it.
     */
    public long unlimitedNanocoulombs() {
        Registers held = lane.held();
        return held.get(Register.SETTLED_NANOCOULOMBS)
                + minuteUnderWay(held)
                + held.get(Register.SURPLUS_NANOCOULOMBS)
                - held.get(Register.DEFICIT_NANOCOULOMBS)
                + shiftNanocoulombs;
    }

    /** As the core settles it: a net charge by the efficiency in 1/65536, what is cut off kept. */
    private long minuteUnderWay(Registers held) {
        long net = held.get(Register.MINUTE_NANOCOULOMBS);
        if (net <= 0) {
            return net;
        }
        long told = tested.get(Setting.COULOMBIC_EFFICIENCY);
        long partsPerMillion = shape.valueOf(Setting.COULOMBIC_EFFICIENCY, told);
        long efficiencyQ16 = ((partsPerMillion << 16) + 500_000) / 1_000_000;
        long low = (net & 0xFFFF) * efficiencyQ16 + held.get(Register.EFFICIENCY_REMAINDER_Q16);
        return (net >> 16) * efficiencyQ16 + (low >> 16);
    }

    /** The true charge in nanocoulombs; to a few at thousands of ampere-hours. */
    public static long trueNanocoulombs(Truth truth) {
        return StrictMath.round(truth.chargeAmpHours() * NANOCOULOMBS_PER_AMP_HOUR);
    }
}
