package org.gaugebench.sim.scenario;

/**
 * One thing wrong with a scenario file.
 *
 * @param mark where it stands
 * @param message what is wrong, what was expected and an example of it
 * @param sourceLine the line it stands in, without its line end; empty where there is none
 */
public record ScenarioProblem(SourceMark mark, String message, String sourceLine) {
    private static final int WIDEST_LINE = 100;

    /**
     * The problem as people read it: position and message, the offending line, a caret under the
     * offending place.
     *
     * @return one to three lines, each ending with a line feed
     */
    public String render() {
        StringBuilder out = new StringBuilder();
        out.append(mark).append(": ").append(message).append('\n');
        int[] codePoints = sourceLine.codePoints().toArray();
        if (sourceLine.isBlank() || mark.column() > codePoints.length + 1) {
            return out.toString();
        }
        int caret = mark.column() - 1;
        int start = Math.max(0, Math.min(caret - WIDEST_LINE / 2, codePoints.length - WIDEST_LINE));
        int end = Math.min(codePoints.length, start + WIDEST_LINE);
        out.append("    ");
        for (int i = start; i < end; i++) {
            out.appendCodePoint(printable(codePoints[i]));
        }
        out.append("\n    ").append(" ".repeat(caret - start)).append("^\n");
        return out.toString();
    }

    /** A tab or a control character would move the caret or the terminal. */
    private static int printable(int codePoint) {
        return Character.isISOControl(codePoint) ? ' ' : codePoint;
    }

    @Override
    public String toString() {
        return mark + ": " + message;
    }
}
