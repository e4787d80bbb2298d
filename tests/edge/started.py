"""The program started with bytes on its standard input, as a pipe or a script starts it."""

from __future__ import annotations

import contextlib
import os
import signal
import subprocess
from collections.abc import Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

from tests.edge.starting import StartedAnew, ready


def started(
    data: Path, *words: str, typed: bytes = b"", most_memory: int = 0, anew: bool = False
) -> subprocess.CompletedProcess[bytes]:
    """One whole run; killed, with no exit code, where it hangs.

    `most_memory`: bytes of address space, if bounded; `anew`: started as a shell does, not by a
    fork of the program that is kept ready.
    """
    done = run(
        words,
        {"TROUBLESHOOT_DATA": str(data), "PYTHONIOENCODING": "utf-8:strict"},
        typed,
        most_memory,
        anew,
    )
    assert b"Traceback" not in done.stderr, done.stderr.decode(errors="replace")[-3000:]
    return done


def run(
    words: Sequence[str],
    environment: Mapping[str, str],
    typed: bytes = b"",
    most_memory: int = 0,
    anew: bool = False,
) -> subprocess.CompletedProcess[bytes]:
    """The same with these changes to the environment, and whatever comes of it."""
    ways = [os.pipe() for _ in range(3)]
    (given, types), (out, said), (wrong, complains) = ways
    theirs = (given, said, complains)
    starts = StartedAnew if anew else ready().start
    program = starts(words, {**os.environ, **environment}, theirs, most_memory=most_memory)
    for each in theirs:
        os.close(each)
    with ThreadPoolExecutor(2) as reading:
        heard = [reading.submit(_all_of, each) for each in (out, wrong)]
        with contextlib.suppress(BrokenPipeError), os.fdopen(types, "wb", buffering=0) as typing:
            left = memoryview(typed)
            while left:
                left = left[typing.write(left) or 0 :]
        code = program.ends()
    code = -signal.SIGKILL if code is None else code
    return subprocess.CompletedProcess([*words], code, *(each.result() for each in heard))


def _all_of(descriptor: int) -> bytes:
    with os.fdopen(descriptor, "rb") as stream:
        return stream.read()
