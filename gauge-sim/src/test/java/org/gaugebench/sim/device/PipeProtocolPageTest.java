package org.gaugebench.sim.device;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Fault;
import org.gaugebench.core.port.FullTimeState;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.RuleState;
import org.gaugebench.core.port.Trust;
import org.gaugebench.core.port.TrustReason;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.house.TopLevelRule;
import org.gaugebench.sim.PageSection;
import org.junit.jupiter.api.Test;

/** The tables of the page are those of the code: a stranger's program is written from them. */
class PipeProtocolPageTest {
    private static final Path PAGE =
            TopLevelRule.projectRoot().resolve("gauge-sim/docs/pipe-protocol.md");

    private final StringBuilder text = new StringBuilder();

    private void row(Object... cells) {
        for (Object cell : cells) {
            text.append("| ").append(cell).append(' ');
        }
        text.append("|\n");
    }

    private void head(String... cells) {
        row((Object[]) cells);
        text.append("|---".repeat(cells.length)).append("|\n");
    }

    private static String code(String name) {
        return "`" + name + "`";
    }

    private void check(String section) throws IOException {
        PageSection.check(PAGE, section, text.toString());
    }

    @Test
    void readoutFields() throws IOException {
        head("place in `all`", "name", "unit or table", "size", "meaning");
        for (ReadoutField it : ReadoutField.values()) {
            String name = code(PipeNames.of(it));
            row(it.ordinal(), name, it.unit(), it.sizeWords(), it.meaning());
        }
        check("readout");
    }

    @Test
    void statesReasonsAndAnswers() throws IOException {
        head("table", "numbers and names");
        names("off time", OffTime.values());
        names("command", Command.values());
        names("outcome", CommandOutcome.values());
        names("estimate state", EstimateState.values());
        names("full-time state", FullTimeState.values());
        names("rule state", RuleState.values());
        names("trust", Trust.values());
        names("trust reason", TrustReason.values());
        names("rule reason", RuleReason.values());
        check("codes");
    }

    private void names(String table, Enum<?>[] constants) {
        StringBuilder all = new StringBuilder();
        for (Enum<?> it : constants) {
            all.append(it.ordinal() == 0 ? "" : ", ");
            all.append(it.ordinal()).append(' ').append(code(PipeNames.of(it)));
        }
        row(table, all);
    }

    @Test
    void events() throws IOException {
        head("number", "name", "unit of its figure", "what happened");
        for (Event it : Event.values()) {
            row(it.ordinal(), code(PipeNames.of(it)), it.unit(), it.sentence());
        }
        check("events");
    }

    @Test
    void faults() throws IOException {
        head("bit", "name", "what is wrong");
        for (Fault it : Fault.values()) {
            row(it.ordinal(), code(PipeNames.of(it)), it.sentence());
        }
        check("faults");
    }

    @Test
    void settings() throws IOException {
        head("number", "key", "unit", "range", "meaning");
        for (Setting it : Setting.values()) {
            String range = String.format(Locale.ROOT, "%d to %d", it.minimum(), it.maximum());
            row(it.ordinal(), code(it.key()), it.unit(), range, it.meaning());
        }
        check("settings");
    }

    @Test
    void registers() throws IOException {
        head("place in `all`", "name", "unit");
        for (Register it : Register.values()) {
            row(it.ordinal(), code(PipeNames.of(it)), it.unit());
        }
        check("registers");
    }
}
