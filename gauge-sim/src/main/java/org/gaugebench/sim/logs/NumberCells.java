package org.gaugebench.sim.logs;

import java.math.BigDecimal;
import java.util.regex.Pattern;
import org.gaugebench.sim.units.Texts;

/**
 * Reads numbers with a decimal point or a decimal comma, but never both in one file: a file that
 * mixes them cannot be told from one with thousands separators.
 */
final class NumberCells {
    private static final Pattern NUMBER =
            Pattern.compile("[+-]?([0-9]+([.,][0-9]*)?|[.,][0-9]+)([eE][+-]?[0-9]{1,4})?");

    /** A finite double needs no more; longer cells are damage, and slow to convert. */
    private static final int LONGEST_CELL = 100;

    private char decimalMark;

    /** Whether a cell has the form of a number. */
    static boolean isNumber(String cell) {
        return cell.length() <= LONGEST_CELL && NUMBER.matcher(cell).matches();
    }

    /** The decimal mark seen so far; 0 while there was none. */
    char decimalMark() {
        return decimalMark;
    }

    /** Reads a cell exactly. */
    BigDecimal exact(String cell) throws CellException {
        return new BigDecimal(normalized(cell));
    }

    /** Reads a cell as the nearest double. */
    double nearest(String cell) throws CellException {
        double value = Double.parseDouble(normalized(cell));
        if (!Double.isFinite(value)) {
            throw new CellException("'" + cell + "' is beyond every measurement");
        }
        return value;
    }

    private String normalized(String cell) throws CellException {
        if (cell.isEmpty()) {
            throw new CellException("the cell is empty; expected a number, such as -2.5");
        }
        if (!isNumber(cell)) {
            throw new CellException(
                    "'" + Texts.shortened(cell) + "' is not a number; expected one such as -2.5");
        }
        char mark = cell.indexOf('.') >= 0 ? '.' : cell.indexOf(',') >= 0 ? ',' : 0;
        if (mark != 0 && decimalMark == 0) {
            decimalMark = mark;
        }
        if (mark != 0 && mark != decimalMark) {
            throw new CellException(
                    "'"
                            + cell
                            + "' has a decimal "
                            + nameOf(mark)
                            + ", but the rows before have a decimal "
                            + nameOf(decimalMark));
        }
        return mark == ',' ? cell.replace(',', '.') : cell;
    }

    private static String nameOf(char mark) {
        return mark == '.' ? "point" : "comma";
    }
}
