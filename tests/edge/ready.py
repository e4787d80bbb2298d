"""The program kept ready: imported, with its rules read, so that a start is a fork and no more.

Run as `python -m tests.edge.ready` with a socket for its standard input; `starting.py` does so, and
asks for starts over it. Each start is a process of its own, in a session of its own, with its own
arguments, environment, folder, streams and terminal; the clock, the environment and the terminal
are looked at in it, as ever. What importing costs is paid once. `test_harness.py` holds both ways
of starting to the same.
"""

from __future__ import annotations

import contextlib
import gc
import importlib
import io
import json
import os
import pkgutil
import resource
import socket
import sys
import traceback
from collections.abc import Callable
from datetime import UTC, datetime
from functools import cache
from typing import Any, NoReturn

import troubleshoot
from tests.edge.program import begin
from troubleshoot.dialogue.book import Forgotten, VisitBook
from troubleshoot.dialogue.dialogue import Dialogue
from troubleshoot.dialogue.opening import Visitor, visit
from troubleshoot.knowledge import load
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.kept.on_record import Recorded

ROOM = 1 << 16
NOT_FLUSHED = 120
"""The exit code of Python where its last words could not be written."""
FIRST_WORDS = ("RTU-7", "no cooling", "no-cooling", "3 4 5 6 7 8")
NEVER_AT_A_START = ("__main__", "pint_bridge", "make_saturation_tables")
NEVER_ON_A_VISIT = ("troubleshoot.physics.", "troubleshoot.measure.physics.")
"""What only makes figures and tables; what solves for them takes 400 MB of addresses."""


def main() -> None:
    """Import everything, read the rules, and fork for whoever asks until nobody is left to."""
    for found in pkgutil.walk_packages(troubleshoot.__path__, "troubleshoot."):
        name = found.name
        if not name.endswith(NEVER_AT_A_START) and not name.startswith(NEVER_ON_A_VISIT):
            importlib.import_module(name)
    _lead_a_visit(_read_once())
    gc.freeze()  # what all children share is not gone through by any of them
    with socket.socket(fileno=os.dup(0)) as asking:
        while asked := _next_start(asking):
            _reap()
            if os.fork() == 0:
                asking.close()
                _become(*asked)
            for descriptor in asked[1]:
                os.close(descriptor)


def _read_once() -> Knowledge:
    """The rules that come with the program do not change: every start has those read here."""
    read: Callable[..., Any] = load.load_shipped
    shipped = cache(read)
    load.load_shipped = lambda packs=(), **where: read(packs, **where) if packs else shipped()
    return shipped()


class _Nowhere:
    """A shelf on which nothing is kept."""

    def __init__(self, knowledge: Knowledge) -> None:
        self.knowledge = knowledge

    def waiting(self) -> tuple[()]:
        return ()

    def standing(self, but: str = "") -> tuple[()]:
        return ()

    def elsewhere(self, unit: str, but: str = "") -> tuple[()]:
        return ()

    def met_meanwhile(self, unit: str, but: str) -> tuple[()]:
        return ()

    def not_read(self) -> tuple[str, ...]:
        return ()

    def left_before(self, unit: str, but: str = "") -> tuple[()]:
        return ()

    def on_record(self, unit: str) -> Recorded:
        return Recorded()

    def read_before(self, unit: str, test: str, at: str | None, but: str) -> str:
        return ""

    def new(self) -> VisitBook:
        return VisitBook(self.knowledge, "visit", Forgotten(), lambda: datetime.now(UTC))


def _lead_a_visit(knowledge: Knowledge) -> None:
    """A visit that nobody sees: what is made of the rules at the first questions is made here."""
    dialogue = Dialogue(lambda voice: visit(_Nowhere(knowledge), voice, Visitor()))
    for typed in FIRST_WORDS:
        dialogue.answer(typed)


def _next_start(asking: socket.socket) -> tuple[dict[str, Any], list[int]] | None:
    """What is asked for next, in one line of JSON, and the descriptors that came with it."""
    line, descriptors, _, _ = socket.recv_fds(asking, ROOM, 4)
    while line and not line.endswith(b"\n"):
        line += asking.recv(ROOM)
    return (json.loads(line), descriptors) if line else None


def _reap() -> None:
    """Take leave of the starts that have ended."""
    with contextlib.suppress(ChildProcessError):
        while os.waitpid(-1, os.WNOHANG)[0]:
            pass


def _become(start: dict[str, Any], descriptors: list[int]) -> NoReturn:
    """Be the program that was started; tells its number at once, and its exit code at the end."""
    *streams, told = descriptors
    os.setsid()
    for number, stream in enumerate(streams):
        os.dup2(stream, number)
        os.close(stream)
    if start["terminal"]:
        import fcntl
        import termios

        fcntl.ioctl(0, termios.TIOCSCTTY, 0)
    if start["most_memory"]:
        resource.setrlimit(resource.RLIMIT_AS, (start["most_memory"],) * 2)
    os.environ.clear()
    os.environ.update(start["environment"])
    os.chdir(start["folder"])
    sys.argv = ["troubleshoot", *start["words"]]
    _open_streams()
    os.write(told, f"{os.getpid()}\n".encode())
    code = _exit_code()
    os.write(told, f"{code}\n".encode())
    os._exit(code)


def _open_streams() -> None:
    """Standard streams as Python makes them, by PYTHONIOENCODING or as this process has them."""
    named, _, errors = os.environ.get("PYTHONIOENCODING", "").partition(":")
    for number, name in enumerate(("stdin", "stdout", "stderr")):
        old = getattr(sys, name)
        stream = open(  # noqa: SIM115 - a standard stream is never closed
            number,
            "w" if number else "r",
            buffering=1 if name == "stderr" else -1,
            encoding=named or old.encoding,
            errors=old.errors if name == "stderr" else errors or old.errors,
            newline="\n",
            closefd=False,
        )
        setattr(sys, name, stream)
        setattr(sys, f"__{name}__", stream)


def _exit_code() -> int:
    """Run the program to its end, as Python ends it."""
    code = 1
    try:
        begin()
    except SystemExit as end:
        code = end.code if isinstance(end.code, int) else 0 if end.code is None else 1
    except BaseException:
        traceback.print_exc()
    try:
        sys.stdout.flush()
    except OSError:
        return NOT_FLUSHED
    with contextlib.suppress(OSError, io.UnsupportedOperation):
        sys.stderr.flush()
    return code


if __name__ == "__main__":
    main()
