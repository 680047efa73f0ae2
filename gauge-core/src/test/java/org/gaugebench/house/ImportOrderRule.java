package org.gaugebench.house;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.objectweb.asm.ClassReader;

/**
 * No package uses one that is listed after it. Class files tell what is used without an import (a
 * full name, a type met on the way); sources tell what a compiler may fold away (a constant).
 */
public final class ImportOrderRule {
    private static final Pattern IMPORT =
            Pattern.compile("^import (?:static )?([\\w.]+);", Pattern.MULTILINE);

    private final String base;
    private final List<String> order;
    private final Map<String, Set<String>> never;
    private final List<Finding> findings = new ArrayList<>();

    /**
     * Creates the rule for one module.
     *
     * @param base the module's root package, with dots
     * @param order sub-packages from first to last; the root package itself is ""
     * @param never sub-package to those that it never uses, whatever the order; a name that starts
     *     with {@link #base()}'s parent may also be a full package name
     */
    public ImportOrderRule(String base, List<String> order, Map<String, Set<String>> never) {
        this.base = base;
        this.order = List.copyOf(order);
        this.never = Map.copyOf(never);
    }

    /**
     * The module's root package.
     *
     * @return with dots
     */
    public String base() {
        return base;
    }

    /**
     * Judges class files.
     *
     * @param classes the module's classes
     * @return this rule
     */
    public ImportOrderRule judgeClasses(List<ClassReader> classes) {
        for (ClassReader reader : classes) {
            String user = reader.getClassName().replace('/', '.');
            for (String used : referencesOf(reader)) {
                judge(user, user, used);
            }
        }
        return this;
    }

    /**
     * Judges the imports of sources.
     *
     * @param root a folder such as {@code src/main/java}
     * @return this rule
     */
    public ImportOrderRule judgeSources(Path root) {
        for (Path file : SourceRule.javaFilesUnder(root)) {
            String user =
                    root.relativize(file).toString().replace('/', '.').replaceAll("\\.java$", "");
            if (user.equals("module-info")) {
                continue;
            }
            try {
                Matcher matcher = IMPORT.matcher(Files.readString(file));
                while (matcher.find()) {
                    judge(root.relativize(file).toString(), user, matcher.group(1));
                }
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return this;
    }

    /**
     * What was found so far.
     *
     * @return a finding for each user and used class
     */
    public List<Finding> findings() {
        return List.copyOf(findings);
    }

    private void judge(String place, String user, String used) {
        String from = subPackage(user);
        if (from == null) {
            return;
        }
        int fromIndex = order.indexOf(from);
        if (fromIndex < 0) {
            findings.add(new Finding(place, "package '" + from + "' is not in the house's list"));
            return;
        }
        for (String barred : never.getOrDefault(from, Set.of())) {
            if (used.startsWith(barred.contains(".") ? barred + "." : base + "." + barred + ".")) {
                findings.add(new Finding(place, from + " never uses " + used));
                return;
            }
        }
        String to = subPackage(used);
        if (to == null) {
            return;
        }
        if (order.indexOf(to) > fromIndex) {
            findings.add(new Finding(place, from + " uses " + used + ", which is listed after it"));
        } else if (!order.contains(to)) {
            findings.add(new Finding(place, "package '" + to + "' is not in the house's list"));
        }
    }

    /** The sub-package of a class of this module, "" for the root, null for a stranger. */
    private String subPackage(String className) {
        if (!className.startsWith(base + ".")) {
            return null;
        }
        String rest = className.substring(base.length() + 1);
        // A type's name is the first part with a capital; what stands before it is the package.
        StringBuilder result = new StringBuilder();
        for (String part : rest.split("\\.", -1)) {
            if (part.equals("package-info")
                    || (!part.isEmpty() && Character.isUpperCase(part.charAt(0)))) {
                break;
            }
            result.append(result.length() == 0 ? "" : ".").append(part);
        }
        return result.toString();
    }

    private Set<String> referencesOf(ClassReader reader) {
        String prefix = base.substring(0, base.lastIndexOf('.')).replace('.', '/');
        Pattern pattern = Pattern.compile(Pattern.quote(prefix) + "/[\\w/$-]+");
        Set<String> names = new TreeSet<>();
        // Class references, descriptors and signatures all end in UTF-8 entries (tag 1).
        for (int i = 1; i < reader.getItemCount(); i++) {
            int offset = reader.getItem(i);
            if (offset == 0 || reader.readByte(offset - 1) != 1) {
                continue;
            }
            Matcher matcher = pattern.matcher(utf8At(reader, offset));
            while (matcher.find()) {
                names.add(matcher.group().replace('/', '.'));
            }
        }
        return names;
    }

    /** Class names are ASCII here, so bytes are characters. */
    private static String utf8At(ClassReader reader, int offset) {
        int length = reader.readUnsignedShort(offset);
        StringBuilder text = new StringBuilder(length);
        for (int i = 0; i < length; i++) {
            text.append((char) (reader.readByte(offset + 2 + i) & 0xFF));
        }
        return text.toString();
    }
}
