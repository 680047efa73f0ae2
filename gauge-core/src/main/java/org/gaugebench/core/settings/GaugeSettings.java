package org.gaugebench.core.settings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.gaugebench.core.fixed.Crc32;

/**
 * An immutable set of settings, checked as a whole.
 *
 * <p>Rules across settings: the shunt's rated drop lies within the converter's full scale (else the
 * rated current could not be read); the rated current fits 32 bits of microamps; the absorption
 * threshold (absorption less margin) is above zero when the rule is on and within the voltage
 * converter's full scale.
 */
public final class GaugeSettings {
    private final long[] values;

    private GaugeSettings(long[] values) {
        this.values = values;
    }

    /**
     * Starts from the defaults.
     *
     * @return a builder
     */
    public static Builder builder() {
        return new Builder();
    }

    /**
     * Reads one setting.
     *
     * @param setting which
     * @return its value, in {@link Setting#unit()}
     */
    public long get(Setting setting) {
        return values[setting.ordinal()];
    }

    /**
     * A number that changes when any setting changes: the CRC-32 of all values in table order,
     * eight bytes each, little endian. Kept with the saved state.
     *
     * @return any 32-bit pattern
     */
    public int fingerprint() {
        byte[] bytes = new byte[Long.BYTES * values.length];
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = (byte) (values[i / Long.BYTES] >> (Byte.SIZE * (i % Long.BYTES)));
        }
        return Crc32.of(bytes, 0, bytes.length);
    }

    /**
     * Starts from these settings.
     *
     * @return a builder that holds the same values
     */
    public Builder toBuilder() {
        Builder builder = new Builder();
        System.arraycopy(values, 0, builder.values, 0, values.length);
        return builder;
    }

    /** Equal when every setting is: two readings of one file give equal scenarios. */
    @Override
    public boolean equals(Object other) {
        return other instanceof GaugeSettings that && Arrays.equals(values, that.values);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(values);
    }

    /** Collects values and checks them together. */
    public static final class Builder {
        private final long[] values = new long[Setting.values().length];

        private Builder() {
            for (Setting setting : Setting.values()) {
                values[setting.ordinal()] = setting.defaultValue();
            }
        }

        /**
         * Sets one value; checked in {@link #build()}.
         *
         * @param setting which
         * @param value in {@link Setting#unit()}
         * @return this builder
         */
        public Builder set(Setting setting, long value) {
            values[setting.ordinal()] = value;
            return this;
        }

        /**
         * Every broken rule of the values so far.
         *
         * @return empty when {@link #build()} would succeed
         */
        public List<SettingsProblem> problems() {
            List<SettingsProblem> problems = new ArrayList<>();
            for (Setting setting : Setting.values()) {
                long value = get(setting);
                if (value < setting.minimum() || value > setting.maximum()) {
                    problems.add(
                            new SettingsProblem(
                                    setting,
                                    value,
                                    "must be "
                                            + setting.minimum()
                                            + " to "
                                            + setting.maximum()
                                            + " "
                                            + setting.unit()));
                }
            }
            if (problems.isEmpty()) {
                checkTogether(problems);
            }
            return problems;
        }

        private void checkTogether(List<SettingsProblem> problems) {
            if (get(Setting.SHUNT_RATED_DROP) > get(Setting.SHUNT_FULL_SCALE)) {
                problems.add(
                        new SettingsProblem(
                                Setting.SHUNT_RATED_DROP,
                                get(Setting.SHUNT_RATED_DROP),
                                "must be at most shunt-full-scale ("
                                        + get(Setting.SHUNT_FULL_SCALE)
                                        + " uV), else the rated current cannot be read"));
            }
            long absorption = get(Setting.ABSORPTION);
            if (absorption > 0 && absorption <= get(Setting.ABSORPTION_MARGIN)) {
                problems.add(
                        new SettingsProblem(
                                Setting.ABSORPTION_MARGIN,
                                get(Setting.ABSORPTION_MARGIN),
                                "must be below absorption (" + absorption + " mV)"));
            }
            if (absorption > get(Setting.VOLTAGE_FULL_SCALE)) {
                problems.add(
                        new SettingsProblem(
                                Setting.ABSORPTION,
                                absorption,
                                "must be at most voltage-full-scale ("
                                        + get(Setting.VOLTAGE_FULL_SCALE)
                                        + " mV), else full cannot be seen"));
            }
        }

        private long get(Setting setting) {
            return values[setting.ordinal()];
        }

        /**
         * Checks and freezes the values.
         *
         * @return the settings
         * @throws SettingsException with every broken rule
         */
        public GaugeSettings build() {
            List<SettingsProblem> problems = problems();
            if (!problems.isEmpty()) {
                throw new SettingsException(problems);
            }
            return new GaugeSettings(values.clone());
        }
    }
}
