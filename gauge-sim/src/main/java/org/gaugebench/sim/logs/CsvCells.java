package org.gaugebench.sim.logs;

import de.siegmar.fastcsv.reader.CsvRecord;

/** Cells of a row and where they stand. */
final class CsvCells {
    private static final char BYTE_ORDER_MARK = '\uFEFF';

    private CsvCells() {}

    /** A cell without the white space around it; empty where the row is too short. */
    static String cell(CsvRecord record, int position) {
        return position < 0 || position >= record.getFieldCount()
                ? ""
                : record.getField(position).strip();
    }

    /** Where a cell starts in its line, from 1; quotes counted where a cell needs them. */
    static int characterOf(CsvRecord record, int position, char separator) {
        int character = 1;
        for (int i = 0; i < Math.min(position, record.getFieldCount()); i++) {
            String field = record.getField(i);
            boolean quoted = field.indexOf(separator) >= 0 || field.indexOf('"') >= 0;
            character += field.length() + 1 + (quoted ? 2 : 0);
        }
        return character;
    }

    static String withoutMark(String cell) {
        return !cell.isEmpty() && cell.charAt(0) == BYTE_ORDER_MARK ? cell.substring(1) : cell;
    }
}
