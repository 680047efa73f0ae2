package org.gaugebench.house;

import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import org.objectweb.asm.ClassReader;

/**
 * What feeds a result gives the same bits on every machine: no function of {@code Math} that may
 * differ by a last digit (its {@code StrictMath} twin does not), no clock of the machine, no
 * generator of the JDK (no sequence is promised across versions).
 */
public final class SameEverywhereRule extends CodeScan {
    /**
     * Functions whose result {@code Math} leaves open within one or two units in the last place.
     */
    private static final Set<String> LOOSE =
            Set.of(
                    "sin", "cos", "tan", "asin", "acos", "atan", "atan2", "exp", "expm1", "log",
                    "log10", "log1p", "pow", "cbrt", "sinh", "cosh", "tanh", "hypot", "random");

    private static final Set<String> GENERATORS =
            Set.of(
                    "java/util/Random",
                    "java/util/SplittableRandom",
                    "java/util/concurrent/ThreadLocalRandom",
                    "java/security/SecureRandom");

    private SameEverywhereRule() {}

    /**
     * Finds what may differ between machines or runs.
     *
     * @param classes the class files
     * @param packages says whether a package (with slashes) is judged
     * @return a finding for each call
     */
    public static List<Finding> check(List<ClassReader> classes, Predicate<String> packages) {
        return new SameEverywhereRule()
                .scan(
                        classes.stream()
                                .filter(c -> packages.test(ClassFiles.packageOf(c.getClassName())))
                                .toList());
    }

    @Override
    public void visitMethodInsn(
            int opcode, String owner, String name, String descriptor, boolean isInterface) {
        boolean loose = owner.equals("java/lang/Math") && LOOSE.contains(name);
        boolean clock =
                owner.equals("java/lang/System")
                        && (name.equals("currentTimeMillis") || name.equals("nanoTime"));
        boolean date =
                (owner.startsWith("java/time/") && name.equals("now"))
                        || (owner.equals("java/time/Clock") && name.startsWith("system"));
        if (loose || clock || date || GENERATORS.contains(owner)) {
            report("call of " + owner + "." + name);
        }
    }

    @Override
    public void visitInvokeDynamicInsn(
            String name,
            String descriptor,
            org.objectweb.asm.Handle bootstrap,
            Object... arguments) {
        for (Object argument : arguments) {
            if (argument instanceof org.objectweb.asm.Handle handle) {
                visitMethodInsn(0, handle.getOwner(), handle.getName(), handle.getDesc(), false);
            }
        }
    }
}
