package org.gaugebench.sim.browser;

import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.api.extension.ParameterResolver;

/**
 * Hands one {@link Browser} to every test that asks for it. It starts once, since a start takes as
 * long as ten tests, and ends with the test run. Where there is no browser the tests are skipped.
 */
public final class BrowserExtension implements ExecutionCondition, ParameterResolver {
    private static final ExtensionContext.Namespace PLACE =
            ExtensionContext.Namespace.create(BrowserExtension.class);

    /** The browser, or why there is none. */
    private record Found(Browser browser, String reason) implements AutoCloseable {
        @Override
        public void close() {
            if (browser != null) {
                browser.close();
            }
        }
    }

    @Override
    public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
        Found found = found(context);
        return found.browser() == null
                ? ConditionEvaluationResult.disabled(found.reason())
                : ConditionEvaluationResult.enabled("a browser is here");
    }

    @Override
    public boolean supportsParameter(ParameterContext parameter, ExtensionContext context) {
        return parameter.getParameter().getType() == Browser.class;
    }

    @Override
    public Object resolveParameter(ParameterContext parameter, ExtensionContext context) {
        Browser browser = found(context).browser();
        browser.reset();
        return browser;
    }

    private static Found found(ExtensionContext context) {
        return context.getRoot()
                .getStore(PLACE)
                .getOrComputeIfAbsent("browser", key -> find(), Found.class);
    }

    private static Found find() {
        try {
            return new Found(Browser.start(), "");
        } catch (Browser.MissingException e) {
            String reason = "Browser tests are skipped: " + e.getMessage();
            System.err.println(reason);
            return new Found(null, reason);
        }
    }
}
