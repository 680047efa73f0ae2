package org.gaugebench.sim.report;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.HexFormat;
import org.gaugebench.core.port.StateStore;

/** A memory that answers as the vectors say, and notes the first call that they do not have. */
final class VectorStore implements StateStore {
    private final Deque<Call> calls = new ArrayDeque<>();
    private String trouble = "";

    private VectorStore() {}

    private record Call(String operation, int slot, int answer, String bytes) {}

    static VectorStore read(Path file) throws VectorException {
        VectorStore store = new VectorStore();
        try (CsvReader<CsvRecord> csv = VectorCheck.open(file)) {
            boolean first = true;
            for (CsvRecord line : csv) {
                if (!first) {
                    store.calls.add(
                            new Call(
                                    line.getField(1),
                                    Integer.parseInt(line.getField(2)),
                                    Integer.parseInt(line.getField(3)),
                                    line.getField(4)));
                }
                first = false;
            }
        } catch (IOException
                | UncheckedIOException
                | CsvParseException
                | IllegalArgumentException e) {
            throw new VectorException(file + ": " + e.getMessage());
        }
        return store;
    }

    String trouble() {
        return trouble;
    }

    boolean isUsedUp() {
        return calls.isEmpty();
    }

    private Call next(String operation, int slot, String bytes) {
        Call call = calls.poll();
        boolean asWritten =
                call != null
                        && call.operation.equals(operation)
                        && call.slot == slot
                        && (bytes.isEmpty() || call.bytes.equals(bytes));
        if (call == null || !asWritten) {
            if (trouble.isEmpty()) {
                trouble = "the memory is asked to " + operation + " slot " + slot + " " + bytes;
            }
            return new Call(operation, slot, FAILED, "");
        }
        return call;
    }

    @Override
    public int slots() {
        return next("slots", 0, "").answer;
    }

    @Override
    public int slotBytes() {
        return next("slot-bytes", 0, "").answer;
    }

    @Override
    public int read(int slot, byte[] destination) {
        Call call = next("read", slot, "");
        byte[] bytes = HexFormat.of().parseHex(call.bytes);
        byte[] whole = Arrays.copyOf(bytes, destination.length);
        System.arraycopy(whole, 0, destination, 0, destination.length);
        return call.answer;
    }

    @Override
    public int erase(int slot) {
        return next("erase", slot, "").answer;
    }

    @Override
    public int program(int slot, byte[] source) {
        return next("program", slot, HexFormat.of().formatHex(source)).answer;
    }
}
