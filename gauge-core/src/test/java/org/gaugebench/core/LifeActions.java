package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import net.jqwik.api.stateful.Action;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.settings.Setting;

/** What may happen to a gauge, one small class each. */
final class LifeActions {
    private static final int MINUTE = 60_000;

    private LifeActions() {}

    /** One tick of any length and current. */
    record Tick(int counts, int millivolts, int millis) implements Step {
        @Override
        public void happen(GaugeLife life) {
            life.tick(counts, millivolts, millis);
        }
    }

    /** A steady load. */
    record Load(int amps, int minutes) implements Step {
        @Override
        public void happen(GaugeLife life) {
            for (int i = 0; i < minutes; i++) {
                life.tick(-amps * GaugeFixture.COUNTS_PER_AMP, 12_500, MINUTE);
            }
        }
    }

    /** A charger at full voltage whose current tapers: long enough, it proves full. */
    record ChargerOn(int minutes) implements Step {
        @Override
        public void happen(GaugeLife life) {
            for (int i = 0; i < minutes; i++) {
                life.tick(GaugeFixture.COUNTS_PER_AMP, 14_400, MINUTE);
            }
        }
    }

    /** Nothing flows and the voltage settles. */
    record Rest(int hours, int millivolts) implements Step {
        @Override
        public void happen(GaugeLife life) {
            for (int i = 0; i < 60 * hours; i++) {
                life.tick(0, millivolts, MINUTE);
            }
        }
    }

    /** The battery ends under a small load. */
    record RunEmpty(int minutes) implements Step {
        @Override
        public void happen(GaugeLife life) {
            for (int i = 0; i < minutes; i++) {
                life.tick(-GaugeFixture.COUNTS_PER_AMP, 10_500, MINUTE);
            }
        }
    }

    /** The current reading stands still at a figure while the voltage steps. */
    record SensorStuck(int counts, int minutes) implements Step {
        @Override
        public void happen(GaugeLife life) {
            for (int i = 0; i < minutes; i++) {
                life.tick(counts, i % 2 == 0 ? 12_200 : 12_900, MINUTE);
            }
        }
    }

    /** No samples for a while. */
    record Gap(int millis) implements Step {
        @Override
        public void happen(GaugeLife life) {
            life.tick(0, 12_800, millis);
        }
    }

    /** The clock runs back. */
    record ClockBack(int millis) implements Step {
        @Override
        public void happen(GaugeLife life) {
            life.tick(0, 12_800, -millis);
        }
    }

    /** A frame of garbage. */
    record Garbage(int millis) implements Step {
        @Override
        public void happen(GaugeLife life) {
            life.garbage(millis);
        }
    }

    /** Power goes and comes. */
    record PowerCut(int offMillis, OffTime offTime) implements Step {
        @Override
        public void happen(GaugeLife life) {
            life.powerCut(offMillis, offTime);
        }
    }

    /** Somebody declares a state of charge. */
    record Declare(int partsPerMillion) implements Step {
        @Override
        public void happen(GaugeLife life) {
            life.command(Command.DECLARE_STATE_OF_CHARGE, partsPerMillion);
        }
    }

    /** Another command without a figure. */
    record Ask(Command command) implements Step {
        @Override
        public void happen(GaugeLife life) {
            life.command(command, 0);
        }
    }

    /** Another efficiency: nothing changes retroactively. */
    record EditEfficiency(int partsPerMillion) implements Step {
        @Override
        public void happen(GaugeLife life) {
            long charge = life.gauge.charge();
            long residual = life.gauge.register(Register.BAND_RESIDUAL_PARTS_PER_MILLION);
            long step =
                    life.edit(
                            life.settings.toBuilder()
                                    .set(Setting.COULOMBIC_EFFICIENCY, partsPerMillion)
                                    .build());
            assertEquals(0, step);
            assertEquals(charge, life.gauge.charge());
            assertEquals(residual, life.gauge.register(Register.BAND_RESIDUAL_PARTS_PER_MILLION));
        }
    }

    /** Another capacity: the percentage stays, the band widens, what was measured goes. */
    record EditCapacity(int milliampHours) implements Step {
        @Override
        public void happen(GaugeLife life) {
            boolean same = life.settings.get(Setting.CAPACITY) == milliampHours;
            int shown = life.gauge.read().stateOfChargePartsPerMillion;
            long residual = life.gauge.register(Register.BAND_RESIDUAL_PARTS_PER_MILLION);
            long capacity = life.settings.get(Setting.CAPACITY);
            life.edit(life.settings.toBuilder().set(Setting.CAPACITY, milliampHours).build());
            assertEquals(shown, life.gauge.read().stateOfChargePartsPerMillion, 1);
            long now = life.gauge.register(Register.BAND_RESIDUAL_PARTS_PER_MILLION);
            if (same) {
                assertEquals(residual, now);
            } else {
                // Told in the new capacity where that is larger, and then as much more.
                long net = Math.abs(life.gauge.register(Register.BAND_NET_NANOCOULOMBS));
                long counted = milliampHours > capacity ? net / milliampHours * capacity : net;
                long widened = residual + 50_000 + apart(counted, capacity);
                assertTrue(now >= Math.min(widened, 1_000_000), "low");
                // Rounded up once and down once, to a ppm each.
                assertTrue(now <= widened + 2, "high");
                assertEquals(0, life.gauge.register(Register.MEASURED_CAPACITY_MILLIAMP_HOURS));
            }
        }

        /** By how much a charge differs as a part of the two capacities, ppm, rounded down. */
        private long apart(long nanocoulombs, long before) {
            return BigInteger.valueOf(Math.max(nanocoulombs, 0))
                    .multiply(BigInteger.valueOf(Math.abs(before - milliampHours)))
                    .divide(
                            BigInteger.valueOf(before * 3_600)
                                    .multiply(BigInteger.valueOf(milliampHours)))
                    .min(BigInteger.valueOf(1_000_000))
                    .longValueExact();
        }
    }

    /** An action that changes the one life there is. */
    interface Step extends Action<GaugeLife> {
        /** Happens to a life. */
        void happen(GaugeLife life);

        @Override
        default GaugeLife run(GaugeLife life) {
            happen(life);
            life.assertTwinAgrees();
            return life;
        }
    }
}
