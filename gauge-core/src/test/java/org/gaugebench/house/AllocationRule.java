package org.gaugebench.house;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.Handle;
import org.objectweb.asm.Opcodes;

/**
 * Nothing is allocated where a tick can come: no {@code new}, no array, no boxing, no lambda or
 * text join (invokedynamic), no {@code values()} of an enum (it clones an array), outside
 * constructors and static initialisers. The methods that the compiler writes into every enum are
 * left out: they are judged where they are called.
 *
 * <p>The allow-list names methods off the tick's way, each with the reason. An entry that matches
 * nothing is a finding too, so that the list cannot rot.
 */
public final class AllocationRule extends CodeScan {
    private static final Set<String> BOXES =
            Set.of(
                    "java/lang/Boolean",
                    "java/lang/Byte",
                    "java/lang/Character",
                    "java/lang/Short",
                    "java/lang/Integer",
                    "java/lang/Long",
                    "java/lang/Float",
                    "java/lang/Double");

    /** Thrown by the default that the compiler adds to a switch over all words of an enum. */
    private static final Set<String> WRITTEN_BY_COMPILER =
            Set.of("java/lang/IncompatibleClassChangeError", "java/lang/MatchException");

    private final Map<String, String> allowed;
    private final Set<String> used = new LinkedHashSet<>();

    private AllocationRule(Map<String, String> allowed) {
        this.allowed = allowed;
    }

    /**
     * Finds allocations.
     *
     * @param classes the class files
     * @param hotPackages says whether a package (with slashes) is one that a tick reaches
     * @param allowed class and method, such as {@code org/x/Gauge.report}, to the reason why
     * @return a finding for each place
     */
    public static List<Finding> check(
            List<ClassReader> classes, Predicate<String> hotPackages, Map<String, String> allowed) {
        AllocationRule rule = new AllocationRule(allowed);
        List<ClassReader> hot =
                classes.stream()
                        .filter(c -> hotPackages.test(ClassFiles.packageOf(c.getClassName())))
                        .toList();
        List<Finding> findings = new ArrayList<>(rule.scan(hot));
        for (String entry : allowed.keySet()) {
            if (!rule.used.contains(entry)) {
                findings.add(new Finding(entry, "allowed to allocate, but does not: drop it"));
            }
        }
        return findings;
    }

    @Override
    boolean enters(int classAccess, int access, String name, String descriptor) {
        if (name.equals("<init>") || name.equals("<clinit>")) {
            return false;
        }
        boolean inEnum = (classAccess & Opcodes.ACC_ENUM) != 0;
        boolean writtenByCompiler =
                (name.equals("values") && descriptor.startsWith("()["))
                        || (name.equals("valueOf") && descriptor.startsWith("(Ljava/lang/String;)"))
                        || name.equals("$values");
        return !(inEnum && writtenByCompiler);
    }

    private void allocation(String what) {
        if (allowed.containsKey(place())) {
            used.add(place());
        } else {
            report(what);
        }
    }

    @Override
    public void visitTypeInsn(int opcode, String type) {
        if (opcode == Opcodes.NEW && !WRITTEN_BY_COMPILER.contains(type)) {
            allocation("new " + type);
        } else if (opcode == Opcodes.ANEWARRAY) {
            allocation("new array of " + type);
        }
    }

    @Override
    public void visitIntInsn(int opcode, int operand) {
        if (opcode == Opcodes.NEWARRAY) {
            allocation("new array");
        }
    }

    @Override
    public void visitMultiANewArrayInsn(String descriptor, int dimensions) {
        allocation("new array " + descriptor);
    }

    @Override
    public void visitInvokeDynamicInsn(
            String name, String descriptor, Handle bootstrap, Object... arguments) {
        allocation("invokedynamic " + name + " (lambda, method reference or text join)");
    }

    @Override
    public void visitMethodInsn(
            int opcode, String owner, String name, String descriptor, boolean isInterface) {
        if (BOXES.contains(owner) && name.equals("valueOf")) {
            allocation("boxing into " + owner);
        } else if (name.equals("values") && descriptor.startsWith("()[")) {
            allocation("values() of " + owner + ", which clones an array");
        } else if (owner.startsWith("[") && name.equals("clone")) {
            allocation("clone of an array");
        }
    }
}
