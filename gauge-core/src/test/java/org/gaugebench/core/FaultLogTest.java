package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.core.port.Fault;
import org.junit.jupiter.api.Test;

class FaultLogTest {
    private final List<Long> announced = new ArrayList<>();
    private final FaultLog log = new FaultLog((event, uptime, value) -> announced.add(value));

    @Test
    void aMomentaryFaultIsAnnouncedWhenTheTickBeforeDidNotHaveIt() {
        for (int tick = 0; tick < 5; tick++) {
            log.beginTick();
            if (tick != 2) {
                log.raise(Fault.SHUNT_CLIPPED, 100 + tick);
            }
        }
        assertEquals(2, announced.size());
        assertEquals(4, log.count(Fault.SHUNT_CLIPPED));
        assertEquals(100, log.firstUptimeMillis(Fault.SHUNT_CLIPPED));
        assertEquals(104, log.lastUptimeMillis(Fault.SHUNT_CLIPPED));
        assertEquals(4, log.faultTicks());
    }

    @Test
    void twoFaultsOfOneTickAreOneFaultTick() {
        log.beginTick();
        log.raise(Fault.SHUNT_CLIPPED, 1);
        log.raise(Fault.VOLTAGE_CLIPPED, 1);
        assertEquals(1, log.faultTicks());
        assertEquals(Fault.SHUNT_CLIPPED.bit() | Fault.VOLTAGE_CLIPPED.bit(), log.momentaryBits());
    }

    @Test
    void aStandingFaultIsAnnouncedOnceUntilItWentAndCame() {
        int bit = Fault.FULL_OVERDUE.bit();
        log.stand(bit, bit, 10);
        log.stand(bit, bit, 20);
        log.stand(bit, 0, 30);
        log.stand(bit, bit, 40);
        assertEquals(2, announced.size());
        assertEquals(2, log.count(Fault.FULL_OVERDUE));
        assertEquals(10, log.firstUptimeMillis(Fault.FULL_OVERDUE));
        assertEquals(40, log.lastUptimeMillis(Fault.FULL_OVERDUE));
    }

    @Test
    void aMaskLeavesTheOtherStandingFaultsAlone() {
        log.stand(Fault.MEMORY_FAILING.bit(), Fault.MEMORY_FAILING.bit(), 10);
        log.stand(Fault.FULL_OVERDUE.bit(), Fault.FULL_OVERDUE.bit(), 20);
        log.stand(Fault.FULL_OVERDUE.bit(), 0, 30);
        assertEquals(Fault.MEMORY_FAILING.bit(), log.presentBits());
    }

    @Test
    void standingFaultsAreNoFaultOfTheTick() {
        log.stand(Fault.MEMORY_FAILING.bit(), Fault.MEMORY_FAILING.bit(), 10);
        log.beginTick();
        assertEquals(0, log.momentaryBits());
        assertEquals(0, log.faultTicks());
    }

    @Test
    void aRestartEmptiesTheLog() {
        log.beginTick();
        log.raise(Fault.SHUNT_CLIPPED, 7);
        log.stand(Fault.FULL_OVERDUE.bit(), Fault.FULL_OVERDUE.bit(), 8);
        log.restart();
        for (Fault fault : Fault.values()) {
            assertEquals(0, log.count(fault), fault.name());
            assertEquals(0, log.firstUptimeMillis(fault), fault.name());
            assertEquals(0, log.lastUptimeMillis(fault), fault.name());
        }
        assertEquals(0, log.presentBits());
        assertEquals(0, log.faultTicks());
    }
}
