"""Mutants through every door, by hand: python tests/bench/fuzz_doors.py [SECONDS A DOOR [SEED]]

Prints for each door how many came, how many were taken, the slowest with its seed, and the peak
memory of this process so far. A defect is printed with its seed and ends the door. The goals: no
defect, nothing over 2 s, never over 300 MB.
"""

from __future__ import annotations

import resource
import sys
import tempfile
import time
import traceback
from pathlib import Path
from random import Random

from tests.fuzz.doors import Door, doors
from tests.fuzz.mutants import mutant
from troubleshoot.knowledge.load import load_shipped


def try_door(name: str, door: Door, seconds: float, seed: int) -> bool:
    """Send mutants for some seconds; whether all were taken or turned away."""
    end = time.monotonic() + seconds
    count = taken = 0
    slowest, slowest_seed = 0.0, 0
    while time.monotonic() < end:
        data = mutant(door.samples, Random(seed + count))
        start = time.process_time()  # what else runs on the machine is no defect of ours
        try:
            taken += door.enter(data)
        except Exception:
            print(f"{name}: DEFECT, seed {seed + count}, {len(data)} bytes")
            traceback.print_exc()
            return False
        spent = time.process_time() - start
        if spent > slowest:
            slowest, slowest_seed = spent, seed + count
        count += 1
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(
        f"{name:<18} {count:7} came, {taken:6} taken, slowest {1000 * slowest:6.0f} ms "
        f"(seed {slowest_seed}), peak {peak:4.0f} MB",
        flush=True,
    )
    return True


def main() -> None:
    seconds = float(sys.argv[1]) if len(sys.argv) > 1 else 20.0
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else 1
    with tempfile.TemporaryDirectory() as folder:
        found = doors(load_shipped(), Path(folder))
        whole = [try_door(name, door, seconds, seed) for name, door in found.items()]
    sys.exit(0 if all(whole) else 1)


if __name__ == "__main__":
    main()
