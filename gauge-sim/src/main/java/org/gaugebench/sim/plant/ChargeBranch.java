package org.gaugebench.sim.plant;

/**
 * How charge current and terminal voltage belong together: two parallel branches behind the series
 * resistance.
 *
 * <p><b>Storing branch.</b> It takes at most the acceptance {@code A} (missing charge over time
 * constant and efficiency). The nearer it comes, the more overpotential it asks:
 *
 * <pre>overpotential = knee x u / (1 + knee/span - u),   u = stored branch current / A, 0..1</pre>
 *
 * a hyperbola through 0 at u = 0 and {@code span} at u = 1. With {@code span} or more on offer the
 * branch takes exactly A, whatever else the charger offers.
 *
 * <p><b>Gassing branch.</b> A conductance above the open-circuit voltage of the full battery; it
 * carries the rated end current at 2.4 V a cell and stores nothing.
 *
 * <p>Knee and span are ours: chosen so that a battery at half its acceptance stands 26 mV a cell,
 * at nine tenths 98 mV a cell above its resting and resistive voltage, and span plus any resting
 * voltage stays under 2.4 V a cell. They shape the voltage on the way; the taper itself does not
 * depend on them.
 */
final class ChargeBranch {
    /** Overpotential scale of the storing branch, volts a cell. */
    private static final double KNEE_CELL_VOLTS = 0.040;

    /** Overpotential at which the storing branch takes all it accepts, volts a cell. */
    private static final double SPAN_CELL_VOLTS = 0.150;

    private final double kneeVolts;
    private final double spanVolts;
    private final double ceiling;
    private final double endCurrentAmps;
    private final double endCurrentVolts;

    private double seriesOhms;
    private double fullVolts;
    private double gassingSiemens;

    /**
     * Creates the branches.
     *
     * @param cells in series
     * @param endCurrentAmps gassing current at 2.4 V a cell; 0 for none
     */
    ChargeBranch(int cells, double endCurrentAmps) {
        this.endCurrentAmps = endCurrentAmps;
        kneeVolts = KNEE_CELL_VOLTS * cells;
        spanVolts = SPAN_CELL_VOLTS * cells;
        ceiling = 1 + kneeVolts / spanVolts;
        endCurrentVolts = 2.4 * cells;
    }

    /** Tells the resistance before both branches, as it acts at the end of the step. */
    void setSeriesOhms(double ohms) {
        seriesOhms = ohms;
    }

    /** Tells where gassing begins: the open-circuit voltage of the full battery. */
    void setFullVolts(double volts) {
        fullVolts = volts;
        gassingSiemens = endCurrentAmps / (endCurrentVolts - volts);
    }

    /** Current of the gassing branch at a terminal voltage. */
    double gassingAmps(double terminalVolts) {
        return terminalVolts > fullVolts ? gassingSiemens * (terminalVolts - fullVolts) : 0;
    }

    /**
     * Current of the storing branch at a terminal voltage.
     *
     * @param terminalVolts not below {@code restVolts}
     * @param restVolts open-circuit voltage and RC pair, without this step's current
     * @param acceptanceAmps most the branch takes, 0 or above
     */
    double storingAmps(double terminalVolts, double restVolts, double acceptanceAmps) {
        double drive = terminalVolts - restVolts - seriesOhms * gassingAmps(terminalVolts);
        if (drive <= 0) {
            return 0;
        }
        double resistive = seriesOhms * acceptanceAmps;
        if (drive >= resistive + spanVolts) {
            return acceptanceAmps;
        }
        // Smaller root of resistive u^2 - b u + drive x ceiling = 0, in the form without
        // cancellation.
        double b = resistive * ceiling + kneeVolts + drive;
        double product = drive * ceiling;
        double u = 2 * product / (b + Math.sqrt(b * b - 4 * resistive * product));
        return acceptanceAmps * Math.min(u, 1);
    }

    /** Current of both branches at a terminal voltage. */
    double chargeAmps(double terminalVolts, double restVolts, double acceptanceAmps) {
        return storingAmps(terminalVolts, restVolts, acceptanceAmps) + gassingAmps(terminalVolts);
    }

    /**
     * Terminal voltage at which both branches together take a current; the inverse of {@link
     * #chargeAmps}.
     *
     * @param amps above 0, and less than the branches take at the highest voltage on offer
     * @param restVolts open-circuit voltage and RC pair
     * @param acceptanceAmps most the storing branch takes
     */
    double voltsAt(double amps, double restVolts, double acceptanceAmps) {
        double behind = restVolts + seriesOhms * amps;
        double room = ceiling * acceptanceAmps - amps;
        if (room > 0) {
            double over = kneeVolts * amps / room;
            if (over <= spanVolts && behind + over <= fullVolts) {
                return behind + over;
            }
        }
        // gassing x over^2 + b over + c = 0 with the gassing branch open.
        double base = behind - fullVolts;
        double b = room + gassingSiemens * (base + kneeVolts);
        double c = kneeVolts * (gassingSiemens * base - amps);
        if (c >= 0) {
            // The gassing branch alone takes it all.
            return fullVolts + amps / gassingSiemens;
        }
        double root = Math.sqrt(b * b - 4 * gassingSiemens * c);
        double over = b > 0 ? -2 * c / (b + root) : (root - b) / (2 * gassingSiemens);
        if (over > spanVolts) {
            // Without gassing only rounding leads here.
            over =
                    gassingSiemens > 0
                            ? Math.max((amps - acceptanceAmps) / gassingSiemens - base, spanVolts)
                            : spanVolts;
        }
        return behind + over;
    }
}
