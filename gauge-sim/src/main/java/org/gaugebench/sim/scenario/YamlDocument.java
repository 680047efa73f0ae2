package org.gaugebench.sim.scenario;

import java.util.Optional;
import org.gaugebench.sim.units.Texts;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.composer.Composer;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.parser.ParserImpl;
import org.snakeyaml.engine.v2.scanner.StreamReader;

/**
 * Text to a tree of marked nodes. Scenarios use the plain part of YAML: mappings, lists and texts.
 * What could make a small file large or strange (aliases, tags, deep nesting, several documents) is
 * refused before a tree is built.
 */
final class YamlDocument {
    /** The format needs five levels; the rest is room. */
    private static final int DEEPEST = 16;

    private final Problems problems;
    private final String fileName;
    private int depth;
    private int documents;

    private YamlDocument(Problems problems, String fileName) {
        this.problems = problems;
        this.fileName = fileName;
    }

    /**
     * Builds the tree.
     *
     * @param fileName known to the problems; every node carries it
     * @return the root, or null if a problem was added or the text is empty
     */
    static @Nullable Node root(String text, Problems problems, String fileName) {
        return new YamlDocument(problems, fileName).parse(text);
    }

    private SourceMark at(int line, int column) {
        return new SourceMark(fileName, line, column);
    }

    private @Nullable Node parse(String text) {
        if (!onlyPrintable(text)) {
            return null;
        }
        LoadSettings settings =
                LoadSettings.builder()
                        .setUseMarks(true)
                        .setLabel(fileName)
                        .setParseComments(false)
                        .setAllowDuplicateKeys(true)
                        .setAllowNonScalarKeys(true)
                        .build();
        try {
            if (!isPlain(new ParserImpl(settings, new StreamReader(settings, text)))) {
                return null;
            }
            Composer composer =
                    new Composer(
                            settings, new ParserImpl(settings, new StreamReader(settings, text)));
            return composer.getSingleNode().orElse(null);
        } catch (MarkedYamlEngineException e) {
            addSyntax(e);
        } catch (YamlEngineException e) {
            problems.add(at(1, 1), "this is not YAML: " + firstLine(e.getMessage()));
        }
        return null;
    }

    private boolean isPlain(ParserImpl parser) {
        while (parser.hasNext()) {
            String refusal = refusal(parser.peekEvent());
            if (refusal != null) {
                Optional<Mark> mark = parser.peekEvent().getStartMark();
                problems.add(mark.map(problems::mark).orElse(at(1, 1)), refusal);
                return false;
            }
            parser.next();
        }
        return true;
    }

    private @Nullable String refusal(Event event) {
        Event.ID id = event.getEventId();
        if (id == Event.ID.DocumentStart && ++documents > 1) {
            return "one file holds one scenario; remove the '---'";
        }
        if (event instanceof CollectionStartEvent && ++depth > DEEPEST) {
            return "nested deeper than " + DEEPEST + " levels; a scenario needs five";
        }
        if (id == Event.ID.MappingEnd || id == Event.ID.SequenceEnd) {
            depth--;
        }
        if (event instanceof AliasEvent
                || (event instanceof NodeEvent node && node.getAnchor().isPresent())) {
            return "anchors (&name) and aliases (*name) are not used in scenarios;"
                    + " write the value out, or put the text in quotes";
        }
        Optional<String> tag = Optional.empty();
        if (event instanceof ScalarEvent scalar) {
            tag = scalar.getTag();
        } else if (event instanceof CollectionStartEvent collection) {
            tag = collection.getTag();
        }
        return tag.isPresent()
                ? "tags (!name) are not used in scenarios; put the text in quotes"
                : null;
    }

    private void addSyntax(MarkedYamlEngineException e) {
        Optional<Mark> mark = e.getProblemMark().or(e::getContextMark);
        SourceMark at = mark.map(problems::mark).orElse(at(1, 1));
        String line = problems.line(at);
        String indent = line.substring(0, line.length() - line.stripLeading().length());
        if (indent.indexOf('\t') >= 0) {
            problems.add(
                    at(at.line(), indent.indexOf('\t') + 1),
                    "a tab in the indent; expected spaces, such as '  capacity: 60 Ah'");
            return;
        }
        String problem = firstLine(e.getProblem());
        String hint =
                problem.startsWith("mapping values are not allowed")
                        ? "a text with ': ' in it needs quotes, such as title: \"Week 1: rain\""
                        : "expected lines such as 'title: A week', lists and {key: value} closed";
        problems.add(at, "this is not YAML (" + problem + "); " + hint);
    }

    private static String firstLine(@Nullable String text) {
        return text == null ? "unreadable" : Texts.shortened(text.lines().findFirst().orElse(""));
    }

    /** Whether every character may stand in YAML; adds the first one that may not. */
    private boolean onlyPrintable(String text) {
        int line = 1;
        int column = 1;
        int length = text.length();
        for (int i = 0; i < length; ) {
            int c = text.codePointAt(i);
            boolean allowed =
                    c == '\t'
                            || c == '\n'
                            || c == '\r'
                            || (c >= 0x20 && c <= 0x7e)
                            || c == 0x85
                            || (c >= 0xa0 && c <= 0xd7ff)
                            || (c >= 0xe000 && c <= 0xfffd && c != 0xfeff)
                            || c >= 0x10000;
            if (!allowed) {
                problems.add(
                        at(line, column),
                        String.format("the character U+%04X cannot stand here; remove it", c));
                return false;
            }
            i += Character.charCount(c);
            boolean lineEnd = c == '\n' || (c == '\r' && (i >= length || text.charAt(i) != '\n'));
            line = lineEnd ? line + 1 : line;
            column = lineEnd ? 1 : column + 1;
        }
        return true;
    }
}
