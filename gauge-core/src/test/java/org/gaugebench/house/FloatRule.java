package org.gaugebench.house;

import java.lang.reflect.Field;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.Handle;
import org.objectweb.asm.Label;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;

/**
 * Integers only: no float or double as an instruction, a constant, a field, a parameter, a result
 * or a local variable, and no call of anything that takes or gives one.
 */
public final class FloatRule extends CodeScan {
    private static final String ARITHMETIC =
            "[FD](CONST_[012]|A?LOAD|A?STORE|ADD|SUB|MUL|DIV|REM|NEG)";
    private static final String COMPARISON_OR_CONVERSION = "[FD](CMP[LG]|RETURN|2[ILFD])|[IL]2[FD]";
    private static final Pattern FLOATING =
            Pattern.compile(ARITHMETIC + "|" + COMPARISON_OR_CONVERSION);
    private static final Map<Integer, String> OPCODES = floatingOpcodes();
    private static final Set<String> BOXES = Set.of("java/lang/Float", "java/lang/Double");

    private FloatRule() {}

    /**
     * Finds floating point.
     *
     * @param classes the class files to judge
     * @return a finding for each place
     */
    public static List<Finding> check(List<ClassReader> classes) {
        return new FloatRule().scan(classes);
    }

    private static Map<Integer, String> floatingOpcodes() {
        Map<Integer, String> names = new HashMap<>();
        try {
            for (Field field : Opcodes.class.getFields()) {
                if (FLOATING.matcher(field.getName()).matches()) {
                    names.put(field.getInt(null), field.getName());
                }
            }
        } catch (IllegalAccessException e) {
            throw new IllegalStateException(e);
        }
        return names;
    }

    private static boolean isFloating(Type type) {
        Type element = type.getSort() == Type.ARRAY ? type.getElementType() : type;
        return element.getSort() == Type.FLOAT
                || element.getSort() == Type.DOUBLE
                || (element.getSort() == Type.OBJECT && BOXES.contains(element.getInternalName()));
    }

    private static boolean mentionsFloating(String methodDescriptor) {
        for (Type argument : Type.getArgumentTypes(methodDescriptor)) {
            if (isFloating(argument)) {
                return true;
            }
        }
        return isFloating(Type.getReturnType(methodDescriptor));
    }

    @Override
    void field(String name, String descriptor, Object constant) {
        if (isFloating(Type.getType(descriptor))) {
            report("floating-point field");
        }
    }

    @Override
    boolean enters(int classAccess, int access, String name, String descriptor) {
        if (mentionsFloating(descriptor)) {
            report("floating point in the signature " + descriptor);
        }
        return true;
    }

    private void instruction(int opcode) {
        String name = OPCODES.get(opcode);
        if (name != null) {
            report("floating-point instruction " + name);
        }
    }

    @Override
    public void visitInsn(int opcode) {
        instruction(opcode);
    }

    @Override
    public void visitVarInsn(int opcode, int index) {
        instruction(opcode);
    }

    @Override
    public void visitIntInsn(int opcode, int operand) {
        if (opcode == Opcodes.NEWARRAY
                && (operand == Opcodes.T_FLOAT || operand == Opcodes.T_DOUBLE)) {
            report("floating-point array");
        }
    }

    @Override
    public void visitTypeInsn(int opcode, String type) {
        if (isFloating(Type.getObjectType(type))) {
            report("floating-point type " + type);
        }
    }

    @Override
    public void visitLdcInsn(Object value) {
        if (value instanceof Float || value instanceof Double) {
            report("floating-point constant " + value);
        }
    }

    @Override
    public void visitFieldInsn(int opcode, String owner, String name, String descriptor) {
        if (isFloating(Type.getType(descriptor))) {
            report("floating-point field " + owner + "." + name);
        }
    }

    @Override
    public void visitMethodInsn(
            int opcode, String owner, String name, String descriptor, boolean isInterface) {
        if (mentionsFloating(descriptor) || BOXES.contains(owner)) {
            report("call of " + owner + "." + name + descriptor);
        }
    }

    @Override
    public void visitInvokeDynamicInsn(
            String name, String descriptor, Handle bootstrap, Object... arguments) {
        if (mentionsFloating(descriptor)) {
            report("dynamic call with " + descriptor);
        }
    }

    @Override
    public void visitLocalVariable(
            String name, String descriptor, String signature, Label start, Label end, int index) {
        if (isFloating(Type.getType(descriptor))) {
            report("floating-point local " + name);
        }
    }
}
