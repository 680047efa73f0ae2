package org.gaugebench.sim.device;

import java.util.List;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.settings.Setting;

/** Puts messages to a program into bytes and reads its own: as text lines or as frames. */
interface PipeWire {
    void set(List<Setting> settings, long[] values);

    void power(OffTime known, long millis);

    void ticks(PipeTicks ticks);

    void command(Command command, long argument);

    void change();

    void registers();

    /** The answer to a store request; the bytes follow where a read succeeded, else none do. */
    void stored(boolean isOk, byte[] bytes);

    void cut();

    void end();

    /**
     * Waits for the next message.
     *
     * @throws org.gaugebench.sim.program.ProgramException for anything that is none
     */
    void next(PipeReply reply);

    /** What of an unfinished message came. */
    String unfinished();
}
