package org.gaugebench.sim.study;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.ScenarioException;
import org.gaugebench.sim.scenario.StudySpec;
import org.gaugebench.sim.scenario.Tolerance;
import org.gaugebench.sim.units.QuantityFormat;

/** Devices that are run when they are asked for. */
public final class SimulatedDevices implements DeviceSource {
    private final StudySpec spec;
    private final Workers workers;

    /** Prepares to run the devices of a study. */
    public SimulatedDevices(StudySpec spec, Workers workers) {
        this.spec = spec;
        this.workers = workers;
    }

    @Override
    public List<DeviceRow> rows(int caseIndex, int first, int last) throws StudyException {
        List<Integer> numbers = new ArrayList<>();
        for (int number = first; number <= last; number++) {
            numbers.add(number);
        }
        return rows(caseIndex, numbers);
    }

    /** Rows of these devices, in their order. */
    public List<DeviceRow> rows(int caseIndex, List<Integer> numbers) throws StudyException {
        StudySpec.Case chosen = spec.cases().get(caseIndex);
        long[] moments = DeviceRun.moments(spec, chosen.durationMillis());
        List<Workers.Job> jobs = new ArrayList<>();
        for (int number : numbers) {
            jobs.add(
                    () -> {
                        long[] steps = DeviceDraws.steps(spec, number);
                        Scenario scenario = device(spec, chosen, number);
                        return DeviceRun.of(spec, scenario, moments, number, steps);
                    });
        }
        return workers.run(jobs);
    }

    /** Rows of devices that were not drawn: values and seeds of the caller's choice. */
    List<DeviceRow> chosen(int caseIndex, List<long[]> steps, long[] seeds) throws StudyException {
        StudySpec.Case chosen = spec.cases().get(caseIndex);
        long[] moments = DeviceRun.moments(spec, chosen.durationMillis());
        List<Workers.Job> jobs = new ArrayList<>();
        for (int i = 0; i < steps.size(); i++) {
            long[] values = steps.get(i);
            long seed = seeds[i];
            jobs.add(
                    () -> {
                        Scenario scenario = built(spec, chosen, values, "", seed);
                        return DeviceRun.of(spec, scenario, moments, 0, values);
                    });
        }
        return workers.run(jobs);
    }

    /**
     * The scenario of a device, its seed included: what runs it again.
     *
     * @throws StudyException if the scenario cannot hold its values
     */
    public static Scenario device(StudySpec spec, StudySpec.Case chosen, int number)
            throws StudyException {
        String variant = "device " + number;
        return built(
                spec,
                chosen,
                DeviceDraws.steps(spec, number),
                chosen.name().isEmpty() ? variant : chosen.name() + ", " + variant,
                DeviceDraws.seed(spec, number));
    }

    private static Scenario built(
            StudySpec spec, StudySpec.Case chosen, long[] steps, String variant, long seed)
            throws StudyException {
        try {
            return chosen.template().with(steps, variant, seed);
        } catch (ScenarioException e) {
            StringBuilder text = new StringBuilder("the scenario refuses");
            for (int i = 0; i < steps.length; i++) {
                Tolerance it = spec.tolerances().get(i);
                text.append(i == 0 ? " " : ", ").append(it.address()).append(": ");
                text.append(QuantityFormat.format(steps[i], it.unit()));
            }
            throw new StudyException(
                    text.append(System.lineSeparator()).append(e.render()).toString().strip());
        }
    }
}
