"""Starting the program: as a shell does, or by a fork of one that is kept ready (`ready.py`)."""

from __future__ import annotations

import fcntl
import json
import os
import resource
import select
import signal
import socket
import subprocess
import sys
import termios
from collections.abc import Mapping, Sequence
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PROGRAM = Path(__file__).parent / "program.py"
A_MINUTE = 60
_ready: dict[int, Ready] = {}
"""By the number of the process that started it: whoever was forked off has another program."""


class Started:
    """One start: its process, and the pipe on which that tells its number and its exit code."""

    def __init__(self, told: int) -> None:
        self._told = told
        self._said = b""
        while b"\n" not in self._said:
            heard = os.read(told, 100)
            assert heard, "the program was never started"
            self._said += heard
        self.number = int(self._said.split()[0])
        self._open = True

    def kill(self, by: int = signal.SIGKILL) -> None:
        if self._open:
            os.kill(self.number, by)

    def ends(self) -> int | None:
        """Wait for the end; returns the exit code, or None where it was killed."""
        while self._open:
            if not select.select([self._told], [], [], A_MINUTE)[0]:
                self.kill()
            heard = os.read(self._told, 100)
            self._said += heard
            if not heard:
                self._open = False
                os.close(self._told)
        return int(self._said.split()[1]) if self._said.count(b"\n") == 2 else None


class StartedAnew:
    """One start as a shell makes it: the program is imported and reads its rules."""

    def __init__(
        self,
        words: Sequence[str],
        environment: Mapping[str, str],
        streams: Sequence[int],
        terminal: bool = False,
        most_memory: int = 0,
    ) -> None:
        def prepare() -> None:
            if terminal:
                fcntl.ioctl(0, termios.TIOCSCTTY, 0)
            if most_memory:
                resource.setrlimit(resource.RLIMIT_AS, (most_memory, most_memory))

        given, taken, wrong = streams
        self._program = subprocess.Popen(
            [sys.executable, str(PROGRAM), *words],
            env=dict(environment),
            stdin=given,
            stdout=taken,
            stderr=wrong,
            start_new_session=True,
            preexec_fn=prepare,
        )

    @property
    def number(self) -> int:
        return self._program.pid

    def kill(self, by: int = signal.SIGKILL) -> None:
        self._program.send_signal(by)

    def ends(self) -> int | None:
        """Wait for the end; returns the exit code, or None where it was killed."""
        try:
            code = self._program.wait(A_MINUTE)
        except subprocess.TimeoutExpired:
            self.kill()
            code = self._program.wait()
        return None if code < 0 else code


class Ready:
    """The program kept ready, and the socket on which it is asked for starts."""

    def __init__(self) -> None:
        self._asked, asked = socket.socketpair()
        with asked:
            self._program = subprocess.Popen(
                [sys.executable, "-m", "tests.edge.ready"], cwd=ROOT, stdin=asked
            )

    def start(
        self,
        words: Sequence[str],
        environment: Mapping[str, str],
        streams: Sequence[int],
        terminal: bool = False,
        most_memory: int = 0,
    ) -> Started:
        """Start it with these arguments on these descriptors (input, output, errors)."""
        wanted = {
            "words": list(words),
            "environment": dict(environment),
            "folder": str(Path.cwd()),
            "terminal": terminal,
            "most_memory": most_memory,
        }
        told, tells = os.pipe()
        try:
            line = json.dumps(wanted).encode() + b"\n"
            sent = socket.send_fds(self._asked, [line], [*streams, tells])
            self._asked.sendall(line[sent:])
        finally:
            os.close(tells)
        return Started(told)

    def close(self) -> None:
        self._asked.close()
        self._program.wait(A_MINUTE)


def ready() -> Ready:
    """The program kept ready for this process; the first who asks waits until it is."""
    here = os.getpid()
    if here not in _ready:
        _ready[here] = Ready()
    return _ready[here]


def nobody_starts_any_more() -> None:
    """Let the program that is kept ready go, if there is one."""
    kept = _ready.pop(os.getpid(), None)
    if kept is not None:
        kept.close()
