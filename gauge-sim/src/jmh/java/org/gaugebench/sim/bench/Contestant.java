package org.gaugebench.sim.bench;

/** Who takes part in the tick benchmark. */
public enum Contestant {
    /** The integer core. */
    CORE("core, integers"),
    /** Double fields, 2^bits by Math.pow for each sample. */
    DOUBLE_POW("double fields with Math.pow"),
    /** Double fields, 2^bits worked out once. */
    DOUBLE_TIDY("double fields, power hoisted"),
    /** Boxed doubles in a map. */
    BOXED_MAP("boxed Double in a HashMap"),
    /** Decimal fractions of 16 digits. */
    BIG_DECIMAL("BigDecimal, 16 digits");

    private final String label;

    Contestant(String label) {
        this.label = label;
    }

    String label() {
        return label;
    }

    BenchGauge create() {
        return switch (this) {
            case CORE -> new CoreGauge();
            case DOUBLE_POW -> new DoubleGauge(true);
            case DOUBLE_TIDY -> new DoubleGauge(false);
            case BOXED_MAP -> new BoxedMapGauge();
            case BIG_DECIMAL -> new BigDecimalGauge();
        };
    }
}
