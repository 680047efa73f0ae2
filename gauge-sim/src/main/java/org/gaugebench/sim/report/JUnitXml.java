package org.gaugebench.sim.report;

import java.util.List;
import java.util.Locale;
import org.gaugebench.sim.judge.ExpectationResult;
import org.gaugebench.sim.judge.ExpectationResult.Outcome;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.judge.ShelfCase;
import org.gaugebench.sim.judge.ShelfCase.Ending;
import org.gaugebench.sim.judge.TestedProgram;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.ScenarioWriter;

/**
 * A list of runs in the XML form of JUnit reports, which continuous-integration servers read.
 *
 * <p>A scenario is a suite, so that its properties (covers, seed, digest, version) stand where the
 * form has a place for them. Its first case is the run itself: an error where it crashed, hung or
 * took too long, skipped where it was left out. Each expectation is a case: a failure where it did
 * not hold, or held though the scenario expects it to fail.
 */
public final class JUnitXml {
    private static final String RUN_CASE = "runs to its end";

    private final List<ShelfCase> cases;
    private final String version;
    private final XmlText xml = new XmlText();

    private JUnitXml(List<ShelfCase> cases, String version) {
        this.cases = cases;
        this.version = version;
    }

    /** How many of each a suite has. */
    private record Counts(long tests, long failures, long errors, long skipped) {
        static Counts of(ShelfCase each) {
            boolean hollow = each.ending() == Ending.FINISHED && each.results().isEmpty();
            long failures = each.results().size() - each.heldCount() + (hollow ? 1 : 0);
            boolean isError =
                    switch (each.ending()) {
                        case CRASHED, BROKE_OFF, TIMED_OUT -> true;
                        case FINISHED, SKIPPED -> false;
                    };
            return new Counts(
                    1 + each.results().size() + (hollow ? 1 : 0),
                    failures,
                    isError ? 1 : 0,
                    each.ending() == Ending.SKIPPED ? 1 : 0);
        }

        Counts plus(Counts other) {
            return new Counts(
                    tests + other.tests,
                    failures + other.failures,
                    errors + other.errors,
                    skipped + other.skipped);
        }
    }

    /**
     * Writes the document.
     *
     * @param cases in the order in which they were named
     * @param version of this program
     * @return the whole document
     */
    public static String of(List<ShelfCase> cases, String version) {
        return new JUnitXml(cases, version).write();
    }

    private String write() {
        Counts all = new Counts(0, 0, 0, 0);
        long nanos = 0;
        for (ShelfCase each : cases) {
            all = all.plus(Counts.of(each));
            nanos += each.tookNanos();
        }
        xml.open("testsuites").with("name", "gauge-sim");
        counts(all, nanos);
        for (ShelfCase each : cases) {
            suite(each);
        }
        xml.close();
        return xml.toString();
    }

    private void counts(Counts it, long nanos) {
        xml.with("tests", it.tests())
                .with("failures", it.failures())
                .with("errors", it.errors())
                .with("skipped", it.skipped())
                .with("time", seconds(nanos));
    }

    private static String seconds(long nanos) {
        return String.format(Locale.ROOT, "%.3f", nanos / 1e9);
    }

    private void suite(ShelfCase each) {
        Scenario scenario = each.scenario();
        xml.open("testsuite").with("name", scenario.name());
        counts(Counts.of(each), each.tookNanos());
        xml.open("properties");
        property("title", scenario.title());
        property("covers", String.join(" ", scenario.marks().covers()));
        property("tags", String.join(" ", scenario.marks().tags()));
        property("symptom", scenario.marks().symptom());
        property("seed", Long.toString(each.seed()));
        property("scenarioDigest", ScenarioWriter.digest(scenario));
        RunResult result = each.result();
        property("digest", result == null ? "" : RunJson.hex(result.digest()));
        TestedProgram program = result == null ? null : result.program();
        property("program", program == null ? "" : program.name() + ", " + program.command());
        property("version", version);
        xml.close();
        runCase(each);
        for (ExpectationResult claim : each.results()) {
            claimCase(each, claim);
        }
        if (each.ending() == Ending.FINISHED && each.results().isEmpty()) {
            testCase(scenario, "expects something", 0);
            xml.open("failure").with("message", "expects nothing").with("type", "no verdict");
            xml.close("The file expects nothing, so its run proves nothing.").close();
        }
        xml.close();
    }

    /** A property without a value is left out: some readers take it for a mistake. */
    private void property(String name, String value) {
        if (!value.isEmpty()) {
            xml.open("property").with("name", name).with("value", value).close();
        }
    }

    private void testCase(Scenario scenario, String name, long nanos) {
        xml.open("testcase")
                .with("name", name)
                .with("classname", className(scenario))
                .with("time", seconds(nanos));
    }

    /** Servers split class names at points into folders and names. */
    private static String className(Scenario scenario) {
        // A point would be one folder more.
        String variant =
                scenario.variant().isEmpty() ? "" : "_" + scenario.variant().replace('.', '_');
        String plain = scenario.file().replaceFirst("\\.ya?ml$", "").replaceFirst("^[./\\\\]+", "");
        String folders = plain.replace('.', '_').replace('/', '.').replace('\\', '.');
        return folders + variant.replace(' ', '_');
    }

    private void runCase(ShelfCase each) {
        testCase(each.scenario(), RUN_CASE, each.tookNanos());
        switch (each.ending()) {
            case CRASHED, BROKE_OFF, TIMED_OUT -> {
                xml.open("error").with("message", each.why()).with("type", each.verdictWords());
                xml.close(FailureText.ofUnfinished(each, Ink.PLAIN));
            }
            case SKIPPED -> xml.open("skipped").with("message", each.why()).close();
            case FINISHED -> {
                // nothing to tell
            }
        }
        xml.close();
    }

    private void claimCase(ShelfCase each, ExpectationResult claim) {
        testCase(each.scenario(), claim.expectation().text(), 0);
        if (!claim.outcome().isGood()) {
            Page page = new Page();
            FailureText.claim(page, claim, FailureText.Again.of(each));
            xml.open("failure")
                    .with("message", FailureText.whatWasFound(claim))
                    .with("type", claim.outcome().words());
            xml.close("\n" + page);
        } else if (claim.outcome() == Outcome.FAILED_AS_EXPECTED) {
            xml.open("system-out");
            xml.close(
                    "Fails as expected, because "
                            + claim.expectation().expectedToFail()
                            + ": "
                            + FailureText.whatWasFound(claim));
        }
        xml.close();
    }
}
