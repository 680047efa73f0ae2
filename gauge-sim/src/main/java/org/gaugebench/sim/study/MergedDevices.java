package org.gaugebench.sim.study;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.scenario.StudySpec;

/**
 * Devices that several machines have run, put back into the order of their numbers. Files may come
 * in any order; a device that is missing, or there twice, is refused.
 */
public final class MergedDevices implements DeviceSource {
    private final List<DeviceRow[]> rows = new ArrayList<>();

    /**
     * Puts files together.
     *
     * @param version of this program; files of another one are refused
     * @throws StudyException if they are not the whole study
     */
    public MergedDevices(StudySpec spec, String version, List<RowsFile> files)
            throws StudyException {
        spec.cases().forEach(it -> rows.add(new DeviceRow[spec.devices()]));
        String[] from = new String[spec.devices()];
        for (RowsFile file : files) {
            if (!file.version().equals(version)) {
                throw new StudyException(
                        "%s was written by version %s, this is %s; run all shards with one version"
                                .formatted(file.name(), file.version(), version));
            }
            for (int i = 0; i < rows.size(); i++) {
                for (DeviceRow row : file.rows().get(i)) {
                    put(spec, rows.get(i), row, from, file.name());
                }
            }
        }
        for (DeviceRow[] each : rows) {
            refuseGaps(each);
        }
    }

    private static void put(
            StudySpec spec, DeviceRow[] place, DeviceRow row, String[] from, String name)
            throws StudyException {
        if (row.number() < 1 || row.number() > spec.devices()) {
            throw new StudyException(
                    "%s: there is no device %s in the study, which has %s"
                            .formatted(name, row.number(), spec.devices()));
        }
        int at = row.number() - 1;
        if (place[at] != null) {
            throw new StudyException(
                    "device %s is in %s and in %s; name each shard once"
                            .formatted(row.number(), from[at], name));
        }
        place[at] = row;
        from[at] = name;
    }

    private static void refuseGaps(DeviceRow[] place) throws StudyException {
        int missing = 0;
        int first = 0;
        for (int i = place.length - 1; i >= 0; i--) {
            if (place[i] == null) {
                missing++;
                first = i + 1;
            }
        }
        if (missing > 0) {
            throw new StudyException(
                    "%s of %s devices are missing, the first is number %s; name the files of all"
                                    .formatted(missing, place.length, first)
                            + " shards");
        }
    }

    @Override
    public List<DeviceRow> rows(int caseIndex, int first, int last) {
        return List.of(rows.get(caseIndex)).subList(first - 1, last);
    }
}
