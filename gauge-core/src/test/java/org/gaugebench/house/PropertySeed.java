package org.gaugebench.house;

import net.jqwik.api.lifecycle.AroundPropertyHook;
import net.jqwik.api.lifecycle.PropagationMode;
import net.jqwik.api.lifecycle.PropertyExecutionResult;
import net.jqwik.api.lifecycle.PropertyExecutor;
import net.jqwik.api.lifecycle.PropertyLifecycleContext;

/**
 * Gives every property the seed of the system property {@code gaugebench.propertySeed}, so that one
 * run can be repeated and a mutation score does not depend on luck. Without it jqwik draws a seed
 * for each property. A seed written at the property itself wins.
 *
 * <p>Registered for all tests through {@code META-INF/services}; jqwik itself knows no common seed.
 */
public final class PropertySeed implements AroundPropertyHook {
    /** Name of the system property. */
    public static final String NAME = "gaugebench.propertySeed";

    @Override
    public PropertyExecutionResult aroundProperty(
            PropertyLifecycleContext context, PropertyExecutor property) {
        String seed = System.getProperty(NAME);
        if (seed != null && context.attributes().seed().isEmpty()) {
            context.attributes().setSeed(seed);
        }
        return property.execute();
    }

    @Override
    public PropagationMode propagateTo() {
        return PropagationMode.ALL_DESCENDANTS;
    }

    @Override
    public int aroundPropertyProximity() {
        // Outermost: the seed is set before any other hook looks at the property.
        return -100;
    }
}
