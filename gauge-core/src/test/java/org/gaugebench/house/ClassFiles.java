package org.gaugebench.house;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.objectweb.asm.ClassReader;

/** Reads compiled classes, without loading them. */
public final class ClassFiles {
    private ClassFiles() {}

    /**
     * All class files below a folder, in the order of their paths; module-info is left out.
     *
     * @param root a folder such as {@code target/classes}
     * @return a reader for each class
     */
    public static List<ClassReader> under(Path root) {
        List<ClassReader> readers = new ArrayList<>();
        try (Stream<Path> paths = Files.walk(root)) {
            List<Path> files =
                    paths.filter(p -> p.toString().endsWith(".class"))
                            .filter(p -> !p.endsWith("module-info.class"))
                            .sorted(Comparator.comparing(Path::toString))
                            .toList();
            for (Path file : files) {
                readers.add(new ClassReader(Files.readAllBytes(file)));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return readers;
    }

    /**
     * The class files of some loaded classes, for planted faults.
     *
     * @param types the classes
     * @return a reader for each
     */
    public static List<ClassReader> of(Class<?>... types) {
        List<ClassReader> readers = new ArrayList<>();
        for (Class<?> type : types) {
            String resource = "/" + type.getName().replace('.', '/') + ".class";
            try (InputStream in = type.getResourceAsStream(resource)) {
                readers.add(new ClassReader(in));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return readers;
    }

    /**
     * The package of a class, with slashes.
     *
     * @param internalName a class name with slashes
     * @return everything before the last slash
     */
    public static String packageOf(String internalName) {
        int slash = internalName.lastIndexOf('/');
        return slash < 0 ? "" : internalName.substring(0, slash);
    }
}
