"""The program started with bytes on its standard input, as a pipe or a script starts it."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

PROGRAM = Path(__file__).parent / "program.py"
A_MINUTE = 60


def started(
    data: Path, *words: str, typed: bytes = b"", most_memory: int = 0
) -> subprocess.CompletedProcess[bytes]:
    """One whole run; fails where it hangs. `most_memory`: bytes of address space, if bounded."""

    def bound() -> None:
        import resource

        if most_memory:
            resource.setrlimit(resource.RLIMIT_AS, (most_memory, most_memory))

    done = subprocess.run(
        [sys.executable, str(PROGRAM), *words],
        input=typed,
        capture_output=True,
        env={**os.environ, "TROUBLESHOOT_DATA": str(data), "PYTHONIOENCODING": "utf-8:strict"},
        timeout=A_MINUTE,
        check=False,
        preexec_fn=bound,
    )
    assert b"Traceback" not in done.stderr, done.stderr.decode(errors="replace")[-3000:]
    return done
