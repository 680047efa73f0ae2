package org.gaugebench.core.settings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.gaugebench.core.fixed.Crc32;

/**
 * An immutable set of settings, checked as a whole.
 *
 * <p>Rules across settings: the shunt's rated drop lies within the converter's full scale (else the
 * rated current could not be read), which keeps the rated current within 32 bits of microamps too.
 * With the full-charge rule on, absorption lies above its margin and within the voltage converter's
 * full scale, a float voltage is not above it, and the empty voltage lies under its threshold. The
 * rested voltages rise with the state of charge. The usable parts do not rise toward the cold.
 */
public final class GaugeSettings {
    private static final Setting[] REST_VOLTAGES = {
        Setting.REST_VOLTAGE_0,
        Setting.REST_VOLTAGE_10,
        Setting.REST_VOLTAGE_25,
        Setting.REST_VOLTAGE_50,
        Setting.REST_VOLTAGE_75,
        Setting.REST_VOLTAGE_90,
        Setting.REST_VOLTAGE_100
    };

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
            require(
                    problems,
                    get(Setting.SHUNT_RATED_DROP) <= get(Setting.SHUNT_FULL_SCALE),
                    Setting.SHUNT_RATED_DROP,
                    "must be at most",
                    Setting.SHUNT_FULL_SCALE,
                    "else the rated current cannot be read");
            if (get(Setting.ABSORPTION) > 0) {
                checkFull(problems);
            }
            for (int i = 1; i < REST_VOLTAGES.length; i++) {
                require(
                        problems,
                        get(REST_VOLTAGES[i]) > get(REST_VOLTAGES[i - 1]),
                        REST_VOLTAGES[i],
                        "must be above",
                        REST_VOLTAGES[i - 1],
                        "a fuller battery rests higher");
            }
            require(
                    problems,
                    get(Setting.USABLE_AT_0) <= get(Setting.USABLE_AT_10),
                    Setting.USABLE_AT_0,
                    "must be at most",
                    Setting.USABLE_AT_10,
                    "cold leaves no more");
            require(
                    problems,
                    get(Setting.USABLE_AT_MINUS_20) <= get(Setting.USABLE_AT_0),
                    Setting.USABLE_AT_MINUS_20,
                    "must be at most",
                    Setting.USABLE_AT_0,
                    "cold leaves no more");
        }

        private void checkFull(List<SettingsProblem> problems) {
            long threshold = get(Setting.ABSORPTION) - get(Setting.ABSORPTION_MARGIN);
            require(
                    problems,
                    threshold > 0,
                    Setting.ABSORPTION_MARGIN,
                    "must be below",
                    Setting.ABSORPTION,
                    "else any voltage is full");
            require(
                    problems,
                    get(Setting.ABSORPTION) <= get(Setting.VOLTAGE_FULL_SCALE),
                    Setting.ABSORPTION,
                    "must be at most",
                    Setting.VOLTAGE_FULL_SCALE,
                    "else full cannot be seen");
            require(
                    problems,
                    get(Setting.FLOAT_VOLTAGE) <= get(Setting.ABSORPTION),
                    Setting.FLOAT_VOLTAGE,
                    "must be at most",
                    Setting.ABSORPTION,
                    "a charger floats lower than it absorbs");
            require(
                    problems,
                    threshold <= 0 || get(Setting.EMPTY_VOLTAGE) < threshold,
                    Setting.EMPTY_VOLTAGE,
                    "must be below the threshold of",
                    Setting.ABSORPTION,
                    "else one voltage is full and empty");
        }

        private void require(
                List<SettingsProblem> problems,
                boolean holds,
                Setting setting,
                String relation,
                Setting other,
                String reason) {
            if (!holds) {
                String rule =
                        relation
                                + " "
                                + other.key()
                                + " ("
                                + get(other)
                                + " "
                                + other.unit()
                                + "), "
                                + reason;
                problems.add(new SettingsProblem(setting, get(setting), rule));
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
