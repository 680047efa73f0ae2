package org.gaugebench.sim.logs;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * How a file is written down: character set and field separator, found from its first bytes.
 *
 * @param charset UTF-8, UTF-16 by its mark, or ISO 8859-1 where the bytes are not UTF-8
 * @param separator what most often divides the header: comma, semicolon or tab
 * @param empty whether the file has no character beside white space
 * @param notes what is worth telling
 */
record FileShape(Charset charset, char separator, boolean empty, List<String> notes) {
    private static final int LOOKED_AT_BYTES = 65_536;
    private static final String SEPARATORS = ",;\t";

    /** Looks at the start of a file. */
    static FileShape of(Path path) throws IOException {
        byte[] bytes;
        try (InputStream in = Files.newInputStream(path)) {
            bytes = in.readNBytes(LOOKED_AT_BYTES);
        }
        List<String> notes = new ArrayList<>();
        Charset charset = charsetOf(bytes, notes);
        String text = new String(bytes, charset);
        if (!text.isEmpty() && text.charAt(0) == '\uFEFF') {
            notes.add("a byte-order mark starts the file");
            text = text.substring(1);
        }
        char separator = separatorOf(text.stripLeading().lines().findFirst().orElse(""));
        if (separator != ',') {
            notes.add((separator == ';' ? "semicolons" : "tabs") + " separate the cells");
        }
        return new FileShape(charset, separator, text.isBlank(), notes);
    }

    /** The file's rows, as far as they go: a missing or an extra cell is the reader's to judge. */
    CsvReader<CsvRecord> open(Path path) throws IOException {
        return CsvReader.builder()
                .fieldSeparator(separator)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .ofCsvRecord(
                        new BufferedReader(
                                new InputStreamReader(Files.newInputStream(path), charset)));
    }

    private static Charset charsetOf(byte[] bytes, List<String> notes) {
        if (bytes.length >= 2 && (bytes[0] & 0xFF) == 0xFF && (bytes[1] & 0xFF) == 0xFE) {
            notes.add("the file is written in UTF-16");
            return StandardCharsets.UTF_16LE;
        }
        if (bytes.length >= 2 && (bytes[0] & 0xFF) == 0xFE && (bytes[1] & 0xFF) == 0xFF) {
            notes.add("the file is written in UTF-16");
            return StandardCharsets.UTF_16BE;
        }
        // A character cut in two by the end of the look is not the file's fault.
        int length = bytes.length;
        while (bytes.length == LOOKED_AT_BYTES && length > 0 && bytes[length - 1] < 0) {
            length--;
        }
        try {
            StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(bytes, 0, length));
            return StandardCharsets.UTF_8;
        } catch (CharacterCodingException e) {
            notes.add("the bytes are not UTF-8; read as ISO 8859-1");
            return StandardCharsets.ISO_8859_1;
        }
    }

    private static char separatorOf(String header) {
        char best = ',';
        long most = 0;
        for (int i = 0; i < SEPARATORS.length(); i++) {
            char candidate = SEPARATORS.charAt(i);
            long count = header.chars().filter(c -> c == candidate).count();
            if (count > most) {
                most = count;
                best = candidate;
            }
        }
        return best;
    }
}
