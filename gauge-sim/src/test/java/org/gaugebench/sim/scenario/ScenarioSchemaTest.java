package org.gaugebench.sim.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/**
 * The schema for editors and the reference scenario say what the readers do. The schema is made
 * from what the readers ask for while they read the reference scenario; a key that a reader learns
 * is in neither until it stands in the reference, and these tests fail until it does.
 */
class ScenarioSchemaTest {
    private static final Path SCHEMA = Path.of("docs", "scenario.schema.json");
    private static final Path REFERENCE = Path.of("docs", "reference-scenario.yaml");
    private static final Path SHELF = Path.of("..", "scenarios");
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private static KeyLog log() throws IOException, ScenarioException {
        return SchemaText.logOf(
                List.of(Files.readString(REFERENCE), Samples.SMALLEST, Samples.EVERYTHING));
    }

    private static JsonSchema schema() throws IOException {
        return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                .getSchema(Files.readString(SCHEMA));
    }

    private static Set<ValidationMessage> judge(String yaml) throws IOException {
        Object tree = new Load(LoadSettings.builder().build()).loadFromString(yaml);
        return schema().validate(MAPPER.valueToTree(tree));
    }

    @Test
    void theSchemaIsWhatTheReadersAskFor() throws IOException, ScenarioException {
        String made = SchemaText.of(log());
        if (Boolean.getBoolean("golden.update")) {
            Files.write(SCHEMA, made.getBytes(StandardCharsets.UTF_8));
        }
        assertEquals(made, Files.readString(SCHEMA), "-Dgolden.update=true rewrites it");
    }

    @Test
    void theReferenceHasEveryKeyThatAReaderKnows() throws IOException, ScenarioException {
        KeyLog log = log();
        assertEquals(List.of(), SchemaText.untyped(log), "the reference lacks them");
        List<String> missing = new ArrayList<>();
        Set<String> present = new java.util.TreeSet<>();
        String text = Files.readString(REFERENCE);
        Problems problems = new Problems("reference", text);
        Node root = YamlDocument.root(text, problems, "reference");
        problems.throwIfAny();
        walk(root, "", log, present);
        log.shapes()
                .forEach(
                        (path, shape) -> {
                            for (String key : shape.keys.keySet()) {
                                String full = path.isEmpty() ? key : path + "." + key;
                                // A gauge beside has the keys of the first one.
                                boolean there =
                                        present.contains(full)
                                                || present.contains(
                                                        full.replace("beside[].", "gauge."))
                                                || present.contains(
                                                        full.replace("gauge.", "beside[]."));
                                if (!shape.isNamed && !there) {
                                    missing.add(full);
                                }
                            }
                        });
        assertEquals(List.of(), missing);
        assertTrue(present.size() > 100, present.toString());
    }

    private static void walk(Node node, String path, KeyLog log, Set<String> present) {
        if (node instanceof SequenceNode list) {
            list.getValue().forEach(item -> walk(item, path + "[]", log, present));
        }
        if (!(node instanceof MappingNode mapping)) {
            return;
        }
        KeyLog.Shape shape = log.shapes().get(path);
        boolean named = shape != null && shape.isNamed;
        for (NodeTuple tuple : mapping.getValue()) {
            String key = named ? "*" : PartMerge.key(tuple);
            String full = path.isEmpty() ? key : path + "." + key;
            present.add(full);
            walk(tuple.getValueNode(), full, log, present);
        }
    }

    @Test
    void everyExampleAndEveryScenarioOfTheShelfPassesTheSchema() throws IOException {
        List<Path> files;
        try (Stream<Path> all = Files.walk(SHELF)) {
            files =
                    all.filter(file -> file.toString().endsWith(".yaml"))
                            .filter(file -> !file.toString().contains("parts"))
                            .sorted()
                            .toList();
        }
        assertTrue(files.size() >= 14, files.toString());
        for (Path file : files) {
            assertEquals(Set.of(), judge(Files.readString(file)), file.toString());
        }
        assertEquals(Set.of(), judge(Files.readString(REFERENCE)));
        Matcher fence =
                Pattern.compile("```yaml\n(.*?)```", Pattern.DOTALL)
                        .matcher(Files.readString(Path.of("docs", "scenario-format.md")));
        int examples = 0;
        while (fence.find()) {
            assertEquals(Set.of(), judge(fence.group(1)));
            examples++;
        }
        assertTrue(examples >= 1);
        assertEquals(Set.of(), judge(Samples.EVERYTHING));
        assertEquals(Set.of(), judge(Samples.SMALLEST));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "sede: 4",
                "seed: x",
                "tick: 5",
                "loads: {lamp: {curent: 1 A}}",
                "loads: {Lamp: {current: 1 A}}",
                "loads: {lamp: {current: 1 A, switched: maybe}}",
                "gauge: {tapper: 3 %}",
                "timeline: {at: 2 h}",
                "timeline: [{at: 2 h, sett: {lamp: on}}]",
                "expect: [{at: 2 h, reading: volts}]",
                "expect: [{throughout: yes, reading: voltage, is: 1 V}]",
                "tags: winter",
                "vary: {a: 4}"
            })
    void theSchemaRefusesWhatTheReaderRefuses(String line) throws IOException {
        assertFalse(judge(Samples.SMALLEST + line + "\n").isEmpty(), line);
        assertFalse(
                Samples.problemsOf(Samples.SMALLEST + line + "\n").isEmpty()
                        && !line.startsWith("vary"),
                line);
    }
}
