package org.gaugebench.sim.cli;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.gaugebench.sim.scenario.Scenario;

/**
 * The two tables of scenarios/README.md, made from the files themselves: what each shows, and what
 * the owner of such a system would notice.
 */
final class ShelfCatalogue {
    /** What an owner notices, by the tag that says so, in the order of the page. */
    private static final Map<String, String> NOTICED = new LinkedHashMap<>();

    static {
        NOTICED.put("reads-high", "It shows more than there is");
        NOTICED.put("reads-low", "It shows less than there is");
        NOTICED.put("full-too-early", "It says full, and the battery is not");
        NOTICED.put("full-missed", "It never says full");
        NOTICED.put("stands-still", "The figure does not move");
        NOTICED.put("jumps", "The figure jumps");
        NOTICED.put("current-wrong", "The amps are not those of a meter");
        NOTICED.put("hours-wrong", "The hours mislead");
        NOTICED.put("empty-wrong", "It says empty, or the lights go out, at the wrong moment");
        NOTICED.put("after-restart", "Something is lost, or not, while its power was off");
        NOTICED.put("warns", "It warns, or asks for something");
        NOTICED.put("as-it-should", "Nothing: all is as it should be");
    }

    private final SortedMap<String, Scenario> files;

    /**
     * @param files the first run of each file, by its name below the shelf
     */
    ShelfCatalogue(SortedMap<String, Scenario> files) {
        this.files = files;
    }

    /** A table for each folder: file, what it shows, what it is evidence for. */
    String byFolder() {
        StringBuilder text = new StringBuilder();
        String folder = "";
        for (Map.Entry<String, Scenario> entry : files.entrySet()) {
            String its = entry.getKey().substring(0, entry.getKey().lastIndexOf('/'));
            if (!its.equals(folder)) {
                folder = its;
                text.append("\n### ").append(folder).append("\n\n");
                text.append("| file | what it shows | covers |\n|---|---|---|\n");
            }
            Scenario scenario = entry.getValue();
            text.append(
                    "| `%s` | %s %s | %s |%n"
                            .formatted(
                                    entry.getKey(),
                                    sentence(scenario.title()),
                                    oneLine(scenario.about()),
                                    String.join(", ", scenario.marks().covers()))
                            .replace("\r\n", "\n"));
        }
        return text.append('\n').toString();
    }

    /** The same files by what is noticed; one that is noticed in two ways stands twice. */
    String bySymptom() {
        StringBuilder text = new StringBuilder();
        NOTICED.forEach(
                (tag, heading) -> {
                    List<Map.Entry<String, Scenario>> its =
                            files.entrySet().stream()
                                    .filter(e -> e.getValue().marks().tags().contains(tag))
                                    .sorted(
                                            Comparator.comparing(
                                                    e -> e.getValue().marks().symptom()))
                                    .toList();
                    text.append("\n### ").append(heading).append("\n\n");
                    text.append("| in its owner's words | file |\n|---|---|\n");
                    for (Map.Entry<String, Scenario> entry : its) {
                        text.append("| ")
                                .append(entry.getValue().marks().symptom())
                                .append(" | `")
                                .append(entry.getKey())
                                .append("` |\n");
                    }
                });
        return text.append('\n').toString();
    }

    /** Files that say no symptom, or under none of the headings; lessons have a page of theirs. */
    List<String> withoutSymptom() {
        List<String> names = new ArrayList<>();
        files.forEach(
                (name, scenario) -> {
                    boolean filed = scenario.marks().tags().stream().anyMatch(NOTICED::containsKey);
                    boolean lesson = scenario.marks().tags().contains("lesson");
                    if (!lesson && (!filed || scenario.marks().symptom().isEmpty())) {
                        names.add(name);
                    }
                });
        return names;
    }

    /** Which of the numbers the shelf covers. */
    Set<String> covered(List<String> numbers) {
        return files.values().stream()
                .flatMap(scenario -> scenario.marks().covers().stream())
                .filter(numbers::contains)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static String sentence(String title) {
        return title.endsWith("?") || title.endsWith(".") ? title : title + ".";
    }

    private static String oneLine(String text) {
        return text.strip().replaceAll("\\s+", " ").replace("|", "/");
    }
}
