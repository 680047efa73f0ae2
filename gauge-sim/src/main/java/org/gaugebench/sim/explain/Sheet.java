package org.gaugebench.sim.explain;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import org.gaugebench.core.port.Register;
import org.jspecify.annotations.Nullable;

/** Explanations under way: sections, and the registers that their figures are held against. */
final class Sheet {
    private final List<Section> sections = new ArrayList<>();
    private final Seen registers;
    private List<Step> steps = new ArrayList<>();

    /**
     * Begins an empty sheet.
     *
     * @param registers of the moment, by ordinal
     */
    Sheet(Seen registers) {
        this.registers = registers;
    }

    /** Begins a section. */
    void section(String title, String where) {
        steps = new ArrayList<>();
        sections.add(new Section(title, where, steps));
    }

    /** A figure that stands in no register. */
    Expression step(String label, Expression calculation, String unit) {
        add(label, calculation, unit, "", null);
        return Expression.of(calculation.value());
    }

    /** A figure that a register must hold too; the unit is the register's. */
    Expression step(String label, Expression calculation, Register register) {
        add(
                label,
                calculation,
                register.unit(),
                register.name(),
                BigInteger.valueOf(registers.get(register)));
        return Expression.of(calculation.value());
    }

    private void add(
            String label,
            Expression calculation,
            String unit,
            String register,
            @Nullable BigInteger held) {
        String result = calculation.value().toString();
        boolean bare = calculation.text().equals(result);
        steps.add(new Step(label, bare ? "" : calculation.text(), result, unit, register, held));
    }

    /** A comparison, which holds or not. */
    boolean holds(String label, Expression left, String sign, Expression right) {
        int order = left.value().compareTo(right.value());
        boolean yes =
                switch (sign) {
                    case ">=" -> order >= 0;
                    case "<=" -> order <= 0;
                    case ">" -> order > 0;
                    case "<" -> order < 0;
                    default -> throw new IllegalArgumentException(sign);
                };
        String text = left.text() + " " + sign + " " + right.text();
        steps.add(new Step(label, text, yes ? "yes" : "no", "", "", null));
        return yes;
    }

    boolean holds(String label, long left, String sign, long right) {
        return holds(label, Expression.of(left), sign, Expression.of(right));
    }

    /** Words beside a label. */
    void words(String label, String text) {
        steps.add(new Step(label, "", text, "", "", null));
    }

    long register(Register register) {
        return registers.get(register);
    }

    /** What has been written; sections without a line are left out. */
    List<Section> sections() {
        return sections.stream()
                .filter(section -> !section.steps().isEmpty())
                .map(s -> new Section(s.title(), s.where(), List.copyOf(s.steps())))
                .toList();
    }
}
