"""A toy battery gauge behind the pipe of gauge-sim: it counts amp-seconds and nothing else.

No efficiency, no offset, no full-charge rule, no memory. Written from pipe-protocol.md alone:

    gauge-sim run --device "python3 gauge-sim/docs/examples/toy_gauge.py" scenarios/first-steps
"""
import sys

settings = {}
charge = None  # nanocoulombs; None while nobody has declared it
clock = None
microamps = microvolts = left = 0


def say(*words):
    print(*words, flush=True)


def capacity():
    return settings["capacity"] * 3_600_000_000  # mAh to nC


def take(shunt_counts, voltage_counts, raw_clock):
    """One tick: microamps for a millisecond are nanocoulombs."""
    global charge, clock, microamps, microvolts
    millis = 0 if clock is None else (raw_clock - clock) % 2**32
    clock = raw_clock
    rated = settings["shunt-rated-current"] * 1000
    full_scale = settings["shunt-full-scale"] * rated
    codes = settings["shunt-rated-drop"] << (settings["shunt-converter-bits"] - 1)
    microamps = shunt_counts * full_scale // codes
    microvolts = voltage_counts * settings["voltage-full-scale"] * 1000
    microvolts >>= settings["voltage-converter-bits"]
    if charge is not None:
        charge = min(max(charge + microamps * millis, 0), capacity())


def show():
    known = charge is not None
    part = charge * 1_000_000 // capacity() if known else -1
    say("readout", part, charge or 0, capacity(), microamps, microvolts, 1 if known else 0)


say("hello 1 toy-gauge")
say("readout state-of-charge remaining full-charge current voltage trust")
say("batch 1024")
say("ready")
for line in sys.stdin:
    word, *rest = line.split()
    if word == "set":
        settings[rest[0]] = int(rest[1])
    elif word == "ticks":
        left = int(rest[0])
    elif word == "tick":
        take(int(rest[0]), int(rest[1]), int(rest[3]))
        left -= 1
        if left <= 0:
            show()
    elif word == "command" and rest[0] == "declare-state-of-charge":
        charge = capacity() * int(rest[1]) // 1_000_000
        say("outcome done")
        show()
    elif word in ("command", "change"):
        say("outcome", "done" if word == "change" else "refused-not-offered")
        show()
    elif word == "power":
        show()
    elif word == "end":
        break
