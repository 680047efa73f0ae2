package org.gaugebench.sim.study;

/** A measurement model: one output quantity as a function of the inputs. */
public interface Model {
    /**
     * The output.
     *
     * @param inputs in the order of the study; not to be kept
     */
    double valueAt(double[] inputs);
}
