"""What many tests share: the shipped rule base, loaded once, and a command line to call."""

from __future__ import annotations

import gc
import io
import json
import os
import shutil
from collections.abc import Callable, Iterator, Sequence
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, settings

from troubleshoot.knowledge import load
from troubleshoot.knowledge.model import Knowledge

_read = load.load_shipped
_shipped = cache(_read)


def _read_once(packs: Sequence[Path | str] = (), **where: Any) -> Knowledge:
    """The shipped rules do not change: every test has the same object, and what is made of it."""
    return _read(packs, **where) if packs or where else _shipped()


load.load_shipped = _read_once


MEMORY = Path("/dev/shm")
ROOM_FOR_ALL = 2**30
"""Bytes: four times what all tests together write."""

# A visit is on the disk before each answer is acknowledged: where there is a file system in memory,
# the tests wait for no disk.
if os.access(MEMORY, os.W_OK) and shutil.disk_usage(MEMORY).free > ROOM_FOR_ALL:
    os.environ.setdefault("PYTEST_DEBUG_TEMPROOT", str(MEMORY))


@pytest.hookimpl(wrapper=True)
def pytest_collection() -> Iterator[None]:
    """What collecting makes lives to the end: none of it is looked through for rubbish, ever.

    After it rubbish is looked for thirty times as seldom: visits and walks make much that lives on,
    and looking through it took a tenth of their time.
    """
    gc.disable()
    try:
        return (yield)
    finally:
        gc.freeze()
        gc.set_threshold(20_000, 20, 50)
        gc.enable()


# A slow machine never fails a test: no time limit an example, no complaint about slow drawing.
settings.register_profile("unhurried", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("unhurried")


@pytest.fixture(scope="session", autouse=True)
def _own_cache(tmp_path_factory: pytest.TempPathFactory) -> Any:
    """Tests keep compiled rules, and the compiled program that they start, in folders of their own.

    The program is started many hundred times: where the surroundings forbid Python to keep what it
    compiled, half of each start would go into compiling it anew.
    """
    patch = pytest.MonkeyPatch()
    patch.setenv("TROUBLESHOOT_CACHE", str(tmp_path_factory.mktemp("cache")))
    patch.setenv("PYTHONPYCACHEPREFIX", str(tmp_path_factory.mktemp("compiled")))
    patch.delenv("PYTHONDONTWRITEBYTECODE", raising=False)
    yield
    patch.undo()


@pytest.fixture(scope="session")
def shipped(_own_cache: None) -> Knowledge:
    """The shipped rule base."""
    return _read_once()


@pytest.fixture
def command(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> Callable[..., tuple[int, str, str]]:
    """Calls the command line in this process: (exit code, standard output, standard error)."""
    from troubleshoot.cli.failures import run_command
    from troubleshoot.cli.main import cli

    monkeypatch.setenv("TROUBLESHOOT_DATA", str(tmp_path / "data"))

    def call(*words: str) -> tuple[int, str, str]:
        monkeypatch.setattr("sys.argv", ["troubleshoot", *words])
        code = run_command(cli)
        streams = capsys.readouterr()
        return code, streams.out, streams.err

    return call


@pytest.fixture
def typed(monkeypatch: pytest.MonkeyPatch) -> Callable[..., None]:
    """Lines that will be typed."""

    def lines(*words: str) -> None:
        monkeypatch.setattr("sys.stdin", io.StringIO("\n".join(words) + "\n"))

    return lines


@pytest.fixture
def case_file(tmp_path: Path) -> Callable[[dict[str, Any]], str]:
    """Writes a case file and returns its path."""

    def write(case: dict[str, Any]) -> str:
        path = tmp_path / "case.json"
        path.write_text(json.dumps(case), "utf-8")
        return str(path)

    return write
