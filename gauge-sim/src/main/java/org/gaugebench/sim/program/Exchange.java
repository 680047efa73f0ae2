package org.gaugebench.sim.program;

import java.util.Arrays;

/**
 * Questions to a program and its answers, as bytes: what is to be sent is put together in one
 * buffer, what came lies in another, and the time of an answer runs from its question.
 */
public final class Exchange {
    private static final int LINE_FEED = '\n';

    private final ChildProgram program;
    private final long answerMillis;
    private final int mostMessageBytes;
    private final byte[] in;
    private byte[] out = new byte[4096];
    private int outLength;
    private int at;
    private int limit;
    private int start;
    private int messageEnd;
    private boolean takenAll;
    private long askedNanos;

    /**
     * Speaks to a program.
     *
     * @param program running
     * @param answerMillis how long an answer may take
     * @param mostMessageBytes longest line or frame that it may write
     */
    public Exchange(ChildProgram program, long answerMillis, int mostMessageBytes) {
        this.program = program;
        this.answerMillis = answerMillis;
        this.mostMessageBytes = mostMessageBytes;
        // Room for some messages, so that what is left of one is moved seldom.
        in = new byte[4 * mostMessageBytes];
        askedNanos = System.nanoTime();
    }

    /** The same program with messages of another length; nothing must lie unread. */
    public Exchange with(int otherMostMessageBytes) {
        if (at < limit) {
            throw new ProgramException("it wrote more than it was asked for");
        }
        return new Exchange(program, answerMillis, otherMostMessageBytes);
    }

    /** Adds a byte to what is to be sent. */
    public void put(int value) {
        if (outLength == out.length) {
            out = Arrays.copyOf(out, 2 * out.length);
        }
        out[outLength++] = (byte) value;
    }

    /** Adds the characters of a text of ASCII characters. */
    public void put(String text) {
        for (int i = 0; i < text.length(); i++) {
            put(text.charAt(i));
        }
    }

    /** Adds a number of bytes, the lowest first. */
    public void putLittleEndian(long value, int bytes) {
        for (int i = 0; i < bytes; i++) {
            put((int) (value >> (Byte.SIZE * i)));
        }
    }

    /** How much was put together and not sent. */
    public int length() {
        return outLength;
    }

    /** Changes bytes that were put together before. */
    public void patchLittleEndian(int place, long value, int bytes) {
        for (int i = 0; i < bytes; i++) {
            out[place + i] = (byte) (value >> (Byte.SIZE * i));
        }
    }

    /** Sends what was put together as a question: the time of its answer begins. */
    public void ask() {
        if (program.hasOutput()) {
            fill(); // so that it can be shown
        }
        if (at < limit) {
            throw new ProgramException("it wrote more than it was asked for, or before it was");
        }
        askedNanos = System.nanoTime();
        reply();
    }

    /** Sends what was put together inside a question that is still open. */
    public void reply() {
        int length = outLength;
        outLength = 0;
        program.write(out, length, answerMillis);
    }

    /** Waits for a line; {@link #start()} to {@link #end()} are its bytes without the line end. */
    public void line() {
        int from = at;
        while (true) {
            for (int i = from; i < limit; i++) {
                if (in[i] == LINE_FEED && i - at < mostMessageBytes) {
                    take(i + 1 - at);
                    messageEnd = i > start() && in[i - 1] == '\r' ? i - 1 : i;
                    return;
                }
            }
            from = limit;
            if (limit - at >= mostMessageBytes) {
                take(limit - at);
                throw new ProgramException(
                        "it wrote a line of more than " + mostMessageBytes + " bytes");
            }
            from -= fill();
        }
    }

    /** Waits for a number of bytes; {@link #start()} is the first of them. */
    public void bytes(int count) {
        while (limit - at < count) {
            fill();
        }
        take(count);
    }

    private void take(int count) {
        start = at;
        at += count;
        messageEnd = at;
        if (at == limit) {
            // What was taken stays where it is until the next wait.
            takenAll = true;
        }
    }

    /** Waits for more; gives by how many bytes what lies there has moved towards the front. */
    private int fill() {
        int moved = 0;
        if (takenAll || limit == in.length) {
            moved = at;
            System.arraycopy(in, at, in, 0, limit - at);
            limit -= at;
            at = 0;
            takenAll = false;
        }
        limit += program.read(in, limit, askedNanos, answerMillis);
        return moved;
    }

    /** First byte of the line or of the bytes that came last. */
    public int start() {
        return start;
    }

    /** Behind its last byte. */
    public int end() {
        return messageEnd;
    }

    /** A byte of what came last, 0 to 255. */
    public int get(int place) {
        return in[place] & 0xFF;
    }

    /** A number of bytes, the lowest first, without a sign. */
    public long getLittleEndian(int place, int bytes) {
        long value = 0;
        for (int i = bytes - 1; i >= 0; i--) {
            value = (value << Byte.SIZE) | get(place + i);
        }
        return value;
    }

    /** What of an unfinished line lies there, as text. */
    public String unfinished() {
        return text(at, limit);
    }

    /** Bytes as text; what is no printable ASCII character becomes a point. */
    public String text(int from, int to) {
        StringBuilder text = new StringBuilder();
        for (int i = from; i < to; i++) {
            int c = get(i);
            text.append(c >= ' ' && c < 0x7F ? (char) c : '.');
        }
        return text.toString();
    }
}
