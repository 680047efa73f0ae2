package org.gaugebench.sim.scenario;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.nodes.Node;

/** Reads a scenario file into a {@link Scenario} with every default filled in. */
public final class ScenarioReader {
    /** Most bytes of a file: no scenario written by a person comes near. */
    public static final int LARGEST_BYTES = 1 << 20;

    private static final char BYTE_ORDER_MARK = '\ufeff';

    private ScenarioReader() {}

    /**
     * Reads a file. Of a file that makes several runs this is the plain one, without what varies:
     * {@link Variants} reads them all.
     *
     * @param file a scenario of at most 1 MiB, in UTF-8
     * @return the scenario
     * @throws ScenarioException with every problem of the file, one that cannot be opened included
     */
    public static Scenario read(Path file) throws ScenarioException {
        return read(file.toString(), text(file), file);
    }

    /** The text of a file. */
    static String text(Path file) throws ScenarioException {
        String name = file.toString();
        byte[] bytes;
        try {
            if (Files.isDirectory(file)) {
                throw refusal(name, "this is a folder; expected a file such as week.yaml");
            }
            try (InputStream in = Files.newInputStream(file)) {
                bytes = in.readNBytes(LARGEST_BYTES + 1);
            }
        } catch (NoSuchFileException e) {
            throw refusal(name, "there is no such file");
        } catch (IOException e) {
            throw refusal(name, "the file cannot be read");
        }
        if (bytes.length > LARGEST_BYTES) {
            throw refusal(name, "the file is larger than 1 MiB; a scenario is a few kilobytes");
        }
        return decoded(name, bytes);
    }

    static String decoded(String name, byte[] bytes) throws ScenarioException {
        ByteBuffer in = ByteBuffer.wrap(bytes);
        try {
            return StandardCharsets.UTF_8.newDecoder().decode(in).toString();
        } catch (CharacterCodingException e) {
            String before = new String(bytes, 0, in.position(), StandardCharsets.UTF_8);
            int lineStart = before.lastIndexOf('\n') + 1;
            int line = (int) before.chars().filter(c -> c == '\n').count() + 1;
            int column = before.codePointCount(lineStart, before.length()) + 1;
            throw new ScenarioException(
                    java.util.List.of(
                            new ScenarioProblem(
                                    new SourceMark(name, line, column),
                                    "a byte here is not UTF-8; save the file as UTF-8",
                                    "")));
        }
    }

    private static ScenarioException refusal(String name, String message) {
        return new ScenarioException(
                java.util.List.of(new ScenarioProblem(new SourceMark(name, 1, 1), message, "")));
    }

    /**
     * Reads a text; of parts it can name those that are built in.
     *
     * @param fileName the name that problems and reports show
     * @param text the scenario
     * @return the scenario
     * @throws ScenarioException with every problem of the text
     */
    public static Scenario read(String fileName, String text) throws ScenarioException {
        return read(fileName, text, null);
    }

    /** Reads a text as if it stood in a file. */
    static Scenario read(String fileName, String text, @Nullable Path file)
            throws ScenarioException {
        Problems problems = new Problems(fileName, text);
        Node root = tree(fileName, text, file, problems);
        Scenario scenario =
                new FileReader(problems, fileName, new ProfileFolder(problems, file)).read(root);
        problems.throwIfAny();
        return scenario;
    }

    /** The tree of a text, over its parts. */
    static Node tree(String fileName, String text, @Nullable Path file, Problems problems)
            throws ScenarioException {
        if (text.length() > LARGEST_BYTES) {
            throw refusal(fileName, "the file is larger than 1 MiB; a scenario is a few kilobytes");
        }
        String plain =
                !text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK ? text.substring(1) : text;
        problems.addFile(fileName, plain);
        Node root = YamlDocument.root(plain, problems, fileName);
        problems.throwIfAny();
        if (root == null) {
            throw refusal(
                    fileName,
                    "the file is empty; expected a scenario that begins with 'format: 1'");
        }
        Node merged = PartReader.merged(root, file, problems);
        problems.throwIfAny();
        return merged;
    }
}
