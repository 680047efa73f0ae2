package org.gaugebench.sim.device;

/** One message from a program; filled again for the next one. */
final class PipeReply {
    /** What it is. */
    enum Kind {
        READOUT("readout"),
        OUTCOME("outcome"),
        EVENT("event"),
        REGISTERS("registers"),
        READ("read"),
        ERASE("erase"),
        PROGRAM("program");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        /** The first word of its line. */
        String word() {
            return word;
        }
    }

    Kind kind = Kind.READOUT;

    /** Tick of the batch, from 0; for events and store requests. */
    int place;

    /** Number of the outcome or of the event. */
    int number;

    /** Of an event: time since power-up. */
    long uptimeMillis;

    /** Of an event: its figure. */
    long value;

    /** Values of a readout or of registers, in the order of the hello. */
    final long[] figures;

    /** How many of them there are; 0 for an event without. */
    int figureCount;

    /** Of a store request. */
    int slot;

    /** Bytes to be read. */
    int byteCount;

    /** Bytes to be programmed. */
    byte[] bytes = {};

    PipeReply(int mostFigures) {
        figures = new long[mostFigures];
    }
}
