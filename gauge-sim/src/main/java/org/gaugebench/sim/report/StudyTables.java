package org.gaugebench.sim.report;

import java.util.List;
import java.util.Locale;
import org.gaugebench.sim.study.CaseResult;
import org.gaugebench.sim.study.Cause;
import org.gaugebench.sim.study.DeviceDraws;
import org.gaugebench.sim.study.DeviceRow;
import org.gaugebench.sim.study.Moment;
import org.gaugebench.sim.study.StudyResult;

/**
 * Tables of a study for programs: a row for each moment, and a row for each device. Errors are in
 * the steps that the header names; what is not known is empty. The same study gives the same bytes.
 */
public final class StudyTables {
    private StudyTables() {}

    /**
     * All devices over time: both ways of working limits out, and each cause's share.
     *
     * @return a CSV file with a header
     */
    public static String moments(StudyResult result) {
        String unit = "_" + result.spec().unit().name().toLowerCase(Locale.ROOT);
        StringBuilder out = new StringBuilder("case,time_s,devices_that_know");
        for (String name :
                List.of(
                        "mean",
                        "standard_uncertainty",
                        "smallest",
                        "lower_limit",
                        "quarter",
                        "median",
                        "three_quarters",
                        "upper_limit",
                        "largest",
                        "first_order_mean",
                        "first_order_uncertainty",
                        "first_order_lower",
                        "first_order_upper")) {
            out.append(',').append(name).append(unit);
        }
        out.append(",first_order_limits");
        for (Cause cause : result.cases().get(0).causes()) {
            String name = cell(cause.name());
            out.append(",first_order_share:").append(name).append(",drawn_share:").append(name);
        }
        out.append('\n');
        for (CaseResult each : result.cases()) {
            for (int i = 0; i < each.moments().size(); i++) {
                moment(out, each, i);
            }
        }
        return out.toString();
    }

    private static void moment(StringBuilder out, CaseResult each, int index) {
        Moment it = each.moments().get(index);
        out.append(cell(each.name())).append(',').append(Decimals.plain(it.atMillis(), 3));
        out.append(',').append(it.sample().count());
        append(out, it.sample().mean());
        append(out, it.sample().standardUncertainty());
        for (double percentile : it.percentiles()) {
            append(out, percentile);
        }
        append(out, it.estimate());
        append(out, it.uncertainty());
        append(out, it.firstLimits().lower());
        append(out, it.firstLimits().upper());
        out.append(',').append(it.validation().answer().name().toLowerCase(Locale.ROOT));
        for (Cause cause : each.causes()) {
            append(out, cause.firstShare()[index]);
            append(out, cause.drawnShare()[index]);
        }
        out.append('\n');
    }

    /**
     * Every device with its seed, its values and its worst error.
     *
     * @return a CSV file with a header
     */
    public static String devices(StudyResult result) {
        String unit = "_" + result.spec().unit().name().toLowerCase(Locale.ROOT);
        StringBuilder out = new StringBuilder("case,device,seed,worst" + unit + ",worst_at_s");
        out.append(",at_end").append(unit).append(",minutes_not_known");
        result.spec()
                .tolerances()
                .forEach(
                        it ->
                                out.append(',')
                                        .append(cell(it.address()))
                                        .append('_')
                                        .append(it.unit().name().toLowerCase(Locale.ROOT)));
        out.append('\n');
        for (CaseResult each : result.cases()) {
            for (DeviceRow row : each.rows()) {
                out.append(cell(each.name())).append(',').append(row.number());
                out.append(',').append(DeviceDraws.seed(result.spec(), row.number()));
                boolean known = row.worst() != DeviceRow.NONE;
                out.append(',').append(known ? Long.toString(row.worst()) : "");
                out.append(',').append(known ? Decimals.plain(row.worstAtMillis(), 3) : "");
                long end = row.errors()[row.errors().length - 1];
                out.append(',').append(end == DeviceRow.NONE ? "" : Long.toString(end));
                out.append(',').append(row.unknownMinutes());
                for (long step : row.steps()) {
                    out.append(',').append(step);
                }
                out.append('\n');
            }
        }
        return out.toString();
    }

    private static void append(StringBuilder out, double value) {
        out.append(',').append(StudyFigures.plain(value));
    }

    /** A cell with a comma or a quote goes into quotes. */
    private static String cell(String text) {
        return text.matches("[^,\"\n\r]*") ? text : '"' + text.replace("\"", "\"\"") + '"';
    }
}
