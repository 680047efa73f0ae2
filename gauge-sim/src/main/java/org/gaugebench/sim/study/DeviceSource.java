package org.gaugebench.sim.study;

import java.util.List;

/** Where the rows of devices come from: a simulation now, or files that others have written. */
public interface DeviceSource {
    /**
     * Rows of some devices.
     *
     * @param caseIndex which combination of what varies
     * @param first number of the first device, from 1
     * @param last number of the last one
     * @return one for each, in order
     * @throws StudyException if one cannot be had
     */
    List<DeviceRow> rows(int caseIndex, int first, int last) throws StudyException;
}
