package org.gaugebench.sim.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.gaugebench.sim.advice.OwnersGauge;
import org.gaugebench.sim.advice.TypedFields;
import org.gaugebench.sim.advice.TypedGauge;
import org.gaugebench.sim.units.QuantityException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** A gauge by what it does, as options; each may be left out or be {@code not-known}. */
final class GaugeOptions {
    @Option(
            names = "--sets-full",
            paramLabel = "WORD",
            description =
                    "on what it sets itself to 100 %%: volts, volts-and-current, by-hand (you do),"
                            + " never, not-known")
    private @Nullable String setsFull;

    @Option(
            names = "--past-full",
            paramLabel = "WORD",
            description = "what it does past 100 %%: stops, shows-more, hides-more, not-known")
    private @Nullable String pastFull;

    @Option(
            names = "--after-off",
            paramLabel = "WORD",
            description =
                    "what it shows after its wire was off for a minute: keeps, full, zero, guesses,"
                            + " nothing, not-known")
    private @Nullable String afterOff;

    @Option(
            names = "--smallest-amps",
            paramLabel = "CURRENT",
            description = "smallest current that it shows, such as \"100 mA\"")
    private @Nullable String smallestAmps;

    @Option(
            names = "--smallest-amp-hours",
            paramLabel = "CHARGE",
            description = "smallest step of the amp-hours that it shows, such as \"0.1 Ah\"")
    private @Nullable String smallestAmpHours;

    @Option(
            names = "--longest-hours",
            paramLabel = "TIME",
            description = "longest time that it shows, such as \"99 h\"")
    private @Nullable String longestHours;

    @Option(
            names = "--own-current",
            paramLabel = "CURRENT",
            description = "what it draws itself, past the shunt, such as \"12 mA\"")
    private @Nullable String ownCurrent;

    @Option(
            names = "--zero-error",
            paramLabel = "CURRENT",
            description = "what it counts when nothing flows, either way, such as \"5 mA\"")
    private @Nullable String zeroError;

    @Option(
            names = "--past-shunt",
            paramLabel = "CURRENT",
            description = "mean current of what does not go through the shunt, such as \"20 mA\"")
    private @Nullable String pastShunt;

    @Option(
            names = "--efficiency-set",
            paramLabel = "PERCENT",
            description = "charge efficiency that it is set to, such as \"95 %%\"")
    private @Nullable String efficiencySet;

    /** Whether anything is told. */
    boolean isAnyTold() {
        return !typed().equals(TypedGauge.NOTHING);
    }

    /** Answers become options; an empty one is not known. */
    void ask(Questions questions) throws InputException {
        questions.say("Of the gauge; an empty answer means not known.");
        if (setsFull == null) {
            setsFull =
                    word(
                            questions,
                            "On what does it set itself to 100 %",
                            OwnersGauge.SetsFull.NOT_KNOWN);
        }
        if (pastFull == null) {
            pastFull =
                    word(questions, "What does it do past 100 %", OwnersGauge.PastFull.NOT_KNOWN);
        }
        if (afterOff == null) {
            afterOff =
                    word(
                            questions,
                            "What does it show after its wire was off for a minute",
                            OwnersGauge.AfterOff.NOT_KNOWN);
        }
        if (smallestAmps == null) {
            smallestAmps =
                    questions.ask(
                            "Smallest current that it shows",
                            "100 mA",
                            it -> {
                                smallestAmps = it;
                                return check("smallest-amps");
                            });
        }
        if (smallestAmpHours == null) {
            smallestAmpHours =
                    questions.ask(
                            "Smallest step of the amp-hours that it shows",
                            "0.1 Ah",
                            it -> {
                                smallestAmpHours = it;
                                return check("smallest-amp-hours");
                            });
        }
        if (longestHours == null) {
            longestHours =
                    questions.ask(
                            "Longest time that it shows",
                            "99 h",
                            it -> {
                                longestHours = it;
                                return check("longest-hours");
                            });
        }
        if (ownCurrent == null) {
            ownCurrent =
                    questions.ask(
                            "Current that it draws itself",
                            "12 mA",
                            it -> {
                                ownCurrent = it;
                                return check("own-current");
                            });
        }
        if (zeroError == null) {
            zeroError =
                    questions.ask(
                            "What it counts when nothing flows",
                            "5 mA",
                            it -> {
                                zeroError = it;
                                return check("zero-error");
                            });
        }
    }

    private boolean check(String field) throws QuantityException {
        AnswerCheck.of(Set.of(field), typed()::read);
        return true;
    }

    private static <E extends Enum<E>> @Nullable String word(
            Questions questions, String question, E unknown) throws InputException {
        Class<E> type = unknown.getDeclaringClass();
        return questions.ask(
                question + ": " + TypedFields.words(type),
                "not-known",
                it -> TypedFields.word(it, type));
    }

    /**
     * The gauge.
     *
     * @throws InputException with every message, if something is wrong
     */
    OwnersGauge gauge() throws InputException {
        List<String> wrong = new ArrayList<>();
        OwnersGauge gauge = typed().read(new QuantityArguments(wrong));
        if (!wrong.isEmpty()) {
            throw new InputException(String.join(System.lineSeparator(), wrong));
        }
        return gauge;
    }

    private TypedGauge typed() {
        return new TypedGauge(
                setsFull,
                pastFull,
                afterOff,
                smallestAmps,
                smallestAmpHours,
                longestHours,
                ownCurrent,
                zeroError,
                pastShunt,
                efficiencySet);
    }
}
