package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.atomic.AtomicInteger;
import org.gaugebench.house.ClassFiles;
import org.junit.jupiter.api.Test;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Label;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;

/**
 * The JVM's compiler puts a method that is called often into its caller if it has at most 325 bytes
 * (FreqInlineSize of OpenJDK 17). The ordinary tick must be such a method. What comes once a minute
 * must not: inlined, it took the registers of every tick, and the tick a tenth more time.
 */
class TickSizeTest {
    private static final int LARGEST_INLINED_BYTES = 325;

    private static int bytes(String name) {
        AtomicInteger size = new AtomicInteger();
        ClassReader gauge = ClassFiles.of(Gauge.class).get(0);
        // Written anew by the writer, which alone knows where each instruction lies.
        ClassVisitor writer =
                new ClassVisitor(Opcodes.ASM9, new ClassWriter(0)) {
                    @Override
                    public MethodVisitor visitMethod(
                            int access, String method, String type, String generic, String[] e) {
                        MethodVisitor code = super.visitMethod(access, method, type, generic, e);
                        if (!method.equals(name)) {
                            return code;
                        }
                        return new MethodVisitor(Opcodes.ASM9, code) {
                            @Override
                            public void visitMaxs(int stack, int locals) {
                                Label end = new Label();
                                super.visitLabel(end);
                                size.set(end.getOffset());
                                super.visitMaxs(stack, locals);
                            }
                        };
                    }
                };
        gauge.accept(writer, 0);
        assertTrue(size.get() > 0, "Gauge." + name + " is not there any more");
        return size.get();
    }

    @Test
    void theOrdinaryTickIsSmall() {
        assertTrue(bytes("tick") <= LARGEST_INLINED_BYTES, "bytes: " + bytes("tick"));
    }

    @Test
    void aTickInFullIsTooLargeToBePutIntoTheOrdinaryOne() {
        int bytes = bytes("tickInFull");
        assertTrue(
                bytes > LARGEST_INLINED_BYTES,
                "Gauge.tickInFull has "
                        + bytes
                        + " bytes: measure .ci/twin-speed before you split");
    }
}
