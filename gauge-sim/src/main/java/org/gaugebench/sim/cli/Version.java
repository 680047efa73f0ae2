package org.gaugebench.sim.cli;

import picocli.CommandLine.IVersionProvider;

/** The version that the jar's manifest states. */
final class Version implements IVersionProvider {
    Version() {}

    static String text() {
        String stated = Version.class.getPackage().getImplementationVersion();
        return stated == null ? "not packaged" : stated;
    }

    @Override
    public String[] getVersion() {
        return new String[] {"gauge-sim " + text()};
    }
}
