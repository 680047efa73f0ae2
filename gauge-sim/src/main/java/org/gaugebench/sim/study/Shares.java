package org.gaugebench.sim.study;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Share of a cause in the variance of drawn devices, straight or not: the devices in order of the
 * cause's value are cut into groups, and what their means vary is the cause's. It is the
 * first-order index of Sobol, estimated from the draws that are there; the chance part of the
 * groups' means is taken out as T. L. Kelley does ("An unbiased correlation ratio measure",
 * Proceedings of the National Academy of Sciences 21, 1935).
 *
 * <p>What no cause has alone is left over: noise, and causes that only matter together.
 */
final class Shares {
    private static final int MOST_GROUPS = 20;
    private static final int DEVICES_IN_A_GROUP = 25;

    private Shares() {}

    /** Places of the devices in order of one cause; of equal values the lower number first. */
    static int[] order(List<DeviceRow> rows, int cause) {
        Integer[] places = new Integer[rows.size()];
        Arrays.setAll(places, i -> i);
        Arrays.sort(
                places,
                Comparator.comparingLong((Integer it) -> rows.get(it).steps()[cause])
                        .thenComparingInt(it -> it));
        return Arrays.stream(places).mapToInt(it -> it).toArray();
    }

    /**
     * A cause's share.
     *
     * @param errors of the devices; NaN where there is none
     * @param order of the devices by the cause's value
     * @return 0 to 1, or NaN for too few devices or no variance
     */
    static double of(double[] errors, int[] order) {
        double[] inOrder =
                Arrays.stream(order)
                        .mapToDouble(it -> errors[it])
                        .filter(it -> !Double.isNaN(it))
                        .toArray();
        int count = inOrder.length;
        int groups = Math.min(MOST_GROUPS, count / DEVICES_IN_A_GROUP);
        if (groups < 2) {
            return Double.NaN;
        }
        Sample all = Sample.of(inOrder, 0, count);
        double total = all.standardUncertainty() * all.standardUncertainty() * (count - 1);
        double between = 0;
        for (int group = 0; group < groups; group++) {
            int from = (int) ((long) count * group / groups);
            int to = (int) ((long) count * (group + 1) / groups);
            double distance = Sample.of(inOrder, from, to).mean() - all.mean();
            between += (to - from) * distance * distance;
        }
        double within = (total - between) / (count - groups);
        double share = (between - (groups - 1) * within) / total;
        return total > 0 ? Math.min(1, Math.max(0, share)) : Double.NaN;
    }
}
