package org.gaugebench.sim.scenario;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.gaugebench.sim.scenario.KeyLog.Asked;
import org.gaugebench.sim.scenario.KeyLog.Shape;
import org.snakeyaml.engine.v2.nodes.Node;

/** Makes the JSON Schema of the format from what the readers ask for. */
final class SchemaText {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    /** A number with a unit, or several of them: "2 h 30 min". */
    private static final String QUANTITY = "^[+-]?[0-9.]";

    /** Read before the readers of blocks, from the tree. */
    private static final Set<String> OF_THE_TREE = Set.of(PartReader.KEY, VaryReader.VARY);

    /** Beside the file of the reference's profiles; parts are found among those built in. */
    private static final Path PLACE = Path.of("docs", "reference-scenario.yaml");

    private final KeyLog log;

    private SchemaText(KeyLog log) {
        this.log = log;
    }

    /** What the readers ask for while they read some right texts. */
    static KeyLog logOf(List<String> texts) throws ScenarioException {
        KeyLog log = new KeyLog();
        for (String text : texts) {
            Problems problems = new Problems("sample", text, log);
            Node root = ScenarioReader.tree("sample", text, PLACE, problems);
            new FileReader(problems, "sample", new ProfileFolder(problems, PLACE)).read(root);
            new VaryReader(problems, root, null).seeds();
            problems.throwIfAny();
        }
        alike(log, "gauge", "beside[]");
        alike(log, "beside[]", "gauge");
        return log;
    }

    /** A gauge beside has the keys of the first one: what is asked of either is known of both. */
    private static void alike(KeyLog log, String from, String to) {
        for (Map.Entry<String, Shape> entry : Map.copyOf(log.shapes()).entrySet()) {
            String path = entry.getKey();
            if (!path.equals(from) && !path.startsWith(from + ".")) {
                continue;
            }
            Shape shape = log.shape(to + path.substring(from.length()));
            shape.required = shape.required == null ? entry.getValue().required : shape.required;
            entry.getValue()
                    .keys
                    .forEach(
                            (name, key) -> {
                                if (!name.equals("name")) {
                                    shape.keys.computeIfAbsent(name, it -> new Asked()).take(key);
                                }
                            });
        }
    }

    static String of(KeyLog log) {
        ObjectNode schema = MAPPER.createObjectNode();
        schema.put("$schema", "https://json-schema.org/draft/2020-12/schema");
        schema.put("title", "Scenario of gauge-sim, format 1");
        schema.put(
                "description",
                "Made from the readers by a test; scenario-format.md says what each key means.");
        schema.setAll(new SchemaText(log).object(""));
        DefaultIndenter indent = new DefaultIndenter(" ", "\n");
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
        printer.indentObjectsWith(indent);
        try {
            return MAPPER.writer(printer).writeValueAsString(schema) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    private ObjectNode object(String path) {
        Shape shape = log.shapes().get(path);
        ObjectNode object = MAPPER.createObjectNode().put("type", "object");
        if (shape == null || (shape.isNamed && !log.shapes().containsKey(below(path, "*")))) {
            // Names of the user's own with single values: what a step sets.
            object.putObject("additionalProperties").putArray("type").add("string").add("number");
            return object;
        }
        if (shape.isNamed) {
            object.putObject("propertyNames").put("pattern", "^[a-z][a-z0-9-]{0,30}$");
            object.set("additionalProperties", object(below(path, "*")));
            return object;
        }
        ObjectNode properties = object.putObject("properties");
        for (Map.Entry<String, Asked> entry : shape.keys.entrySet()) {
            properties.set(entry.getKey(), key(path, entry.getKey(), entry.getValue()));
        }
        Set<String> required = shape.required;
        if (required != null && !required.isEmpty()) {
            ArrayNode names = object.putArray("required");
            required.stream().sorted().forEach(names::add);
        }
        object.put("additionalProperties", false);
        return object;
    }

    private static String below(String path, String key) {
        return path.isEmpty() ? key : path + "." + key;
    }

    private ObjectNode key(String path, String name, Asked key) {
        if (path.isEmpty() && name.equals(VaryReader.VARY)) {
            ObjectNode vary = MAPPER.createObjectNode().put("type", "object");
            ObjectNode values = vary.putObject("additionalProperties");
            values.put("type", "array").put("minItems", 1);
            scalar(values.putObject("items"));
            return vary;
        }
        if (path.isEmpty() && name.equals(PartReader.KEY)) {
            ObjectNode parts = MAPPER.createObjectNode().put("type", "array");
            parts.putObject("items").put("type", "string");
            return parts;
        }
        List<ObjectNode> forms = forms(path, name, key);
        if (forms.size() == 1) {
            return forms.get(0);
        }
        ObjectNode any = MAPPER.createObjectNode();
        ArrayNode list = any.putArray("anyOf");
        forms.forEach(list::add);
        return any;
    }

    private List<ObjectNode> forms(String path, String name, Asked key) {
        List<ObjectNode> forms = new ArrayList<>();
        if (name.equals("gauge") && !path.isEmpty()) {
            // The words seen are the names of the sample's own gauges.
            return List.of(MAPPER.createObjectNode().put("type", "string"));
        }
        if (!key.words.isEmpty()) {
            ObjectNode words = MAPPER.createObjectNode();
            ArrayNode list = words.putArray("enum");
            for (String word : key.words) {
                if (word.equals("true")) {
                    list.add(true);
                } else {
                    list.add(word);
                }
            }
            forms.add(words);
        }
        if (key.isWhole) {
            ObjectNode whole = MAPPER.createObjectNode().put("type", "integer");
            forms.add(whole.put("minimum", key.minimum).put("maximum", key.maximum));
        }
        if (key.isQuantity || key.isParsed || key.isText) {
            ObjectNode text = MAPPER.createObjectNode();
            if (key.isQuantity && !key.isParsed && !key.isText) {
                text.put("type", "string").put("pattern", QUANTITY);
                text.put("description", String.join(", or ", key.ranges));
            } else {
                scalar(text);
            }
            ArrayNode examples = text.putArray("examples");
            key.examples.forEach(examples::add);
            forms.add(text);
        }
        if (key.isList) {
            ObjectNode list = MAPPER.createObjectNode().put("type", "array");
            String items = below(path, name) + "[]";
            if (log.shapes().containsKey(items)) {
                list.set("items", object(items));
            } else {
                scalar(list.putObject("items"));
            }
            forms.add(list);
        }
        if (key.isBlock) {
            forms.add(object(below(path, name)));
        }
        return forms;
    }

    private static void scalar(ObjectNode node) {
        node.putArray("type").add("string").add("number");
    }

    /** Keys of which nothing but their presence was ever asked: the samples lack them. */
    static List<String> untyped(KeyLog log) {
        List<String> untyped = new ArrayList<>();
        log.shapes()
                .forEach(
                        (path, shape) ->
                                shape.keys.forEach(
                                        (name, key) -> {
                                            boolean tree =
                                                    path.isEmpty() && OF_THE_TREE.contains(name);
                                            if (!key.isTyped() && !tree) {
                                                untyped.add(below(path, name));
                                            }
                                        }));
        return untyped;
    }
}
