package org.gaugebench.house;

import java.util.ArrayList;
import java.util.List;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.Label;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;

/**
 * Walks the methods of class files and collects findings; a rule overrides the visits that it cares
 * about and calls {@link #report}.
 */
abstract class CodeScan extends MethodVisitor {
    private final List<Finding> findings = new ArrayList<>();
    private String className = "";
    private String methodName = "";
    private int line;

    CodeScan() {
        super(Opcodes.ASM9);
    }

    /** Scans classes and returns what was found, in class-file order. */
    final List<Finding> scan(List<ClassReader> classes) {
        for (ClassReader reader : classes) {
            reader.accept(new Classes(), 0);
        }
        return findings;
    }

    /** The class under the scan, with slashes. */
    final String className() {
        return className;
    }

    /** Class and method under the scan, such as {@code core/Gauge.tick}. */
    final String place() {
        return className + "." + methodName;
    }

    final void report(String what) {
        findings.add(new Finding(line == 0 ? place() : place() + ":" + line, what));
    }

    /** A field is met. */
    void field(String name, String descriptor, Object constant) {}

    /** Whether to look into a method; the default looks into all. */
    boolean enters(int classAccess, int access, String name, String descriptor) {
        return true;
    }

    @Override
    public final void visitLineNumber(int number, Label start) {
        line = number;
    }

    private final class Classes extends ClassVisitor {
        private int classAccess;

        Classes() {
            super(Opcodes.ASM9);
        }

        @Override
        public void visit(
                int version,
                int access,
                String name,
                String signature,
                String superName,
                String[] interfaces) {
            className = name;
            classAccess = access;
        }

        @Override
        public org.objectweb.asm.FieldVisitor visitField(
                int access, String name, String descriptor, String signature, Object value) {
            methodName = name;
            line = 0;
            if ((access & Opcodes.ACC_SYNTHETIC) == 0) {
                field(name, descriptor, value);
            }
            return null;
        }

        @Override
        public MethodVisitor visitMethod(
                int access, String name, String descriptor, String signature, String[] exceptions) {
            methodName = name;
            line = 0;
            return enters(classAccess, access, name, descriptor) ? CodeScan.this : null;
        }
    }
}
