/** The simulator that alone knows the truth, and the command line around it. */
module org.gaugebench.sim {
    requires org.gaugebench.core;
    requires static org.jspecify;
    requires org.slf4j;
    requires info.picocli;
    requires org.snakeyaml.engine;
    requires de.siegmar.fastcsv;
    requires com.fasterxml.jackson.core;
    requires jdk.httpserver;

    opens org.gaugebench.sim.cli to
            info.picocli;
}
