"""Trying mutants: each in a child of a process that has imported what mutants do not touch.

Everything happens in a copy of the checkout, so that programs which tests start meet the mutant
too. A child runs only tests that were seen to enter the mutated function, the quickest first, and
stops at the first that fails.
"""

from __future__ import annotations

import compileall
import gc
import json
import os
import resource
import shutil
import signal
import sys
import time
from collections import Counter
from collections.abc import Collection, Iterable, Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from tests.mutation.operators import Mutant

COPIED = ("troubleshoot", "rules", "scenarios", "tests", "pyproject.toml", "README.md")
WITHOUT = ("randomly", "cacheprovider", "unraisableexception", "threadexception")
OPTIONS = ("-n0", "-x", "-q", "--assert=plain", "--tb=no", *(f"-pno:{name}" for name in WITHOUT))
MOST_SECONDS = 20
"""Of a mutant's own, beyond what its tests take: one that never ends is as good as killed."""
A_FILE = 2
"""Seconds that a file's tests take to be collected, which the map does not measure."""
BUSY = 50
"""How many times as long as it works a mutant may take by the clock, on a machine that is busy."""
IN_ALL_AT_FIRST = 5.0
"""Seconds of tests, as measured when the map was made, that a mutant has to survive at first."""
PAGE_OF_TABLES = "tests/cli/test_work_state_page.py"
"""The page of the work state is printed from the tables of the safety steps, and held whole."""

Map = dict[str, Any]
"""`seconds`: test -> how long it took; `entered`: function -> the tests that entered it."""


def copy_of(checkout: Path, folder: Path) -> Path:
    """A copy of the checkout to be spoilt."""
    shutil.rmtree(folder, ignore_errors=True)
    folder.mkdir(parents=True)
    for name in COPIED:
        source = checkout / name
        if source.is_dir():
            shutil.copytree(source, folder / name)
        else:
            shutil.copy(source, folder / name)
    return folder


class Seen:
    """A pytest plugin that notes which functions each test enters, and how long it takes."""

    def __init__(self, package: Path) -> None:
        self.package = str(package) + os.sep
        self.entered: dict[str, set[str]] = {}
        self.seconds: dict[str, float] = {}
        self.now = ""

    def _trace(self, frame: Any, event: str, argument: object) -> None:
        code = frame.f_code
        if code.co_filename.startswith(self.package):
            name = code.co_qualname.replace(".<locals>", "").partition(".<")[0]
            module = code.co_filename[len(self.package) :]
            self.entered.setdefault(f"{module}:{name}", set()).add(self.now)

    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Item) -> Iterator[None]:
        self.now, begun = item.nodeid, time.process_time()
        sys.settrace(self._trace)
        try:
            return (yield)
        finally:
            sys.settrace(None)
            self.seconds[item.nodeid] = time.process_time() - begun


class Chosen:
    """A pytest plugin that runs the tests given, in that order, and notes the first that fails.

    A function's name stands for all its cases.
    """

    def __init__(self, tests: Iterable[str]) -> None:
        self.order = {name: number for number, name in enumerate(tests)}
        self.killer = ""

    @pytest.hookimpl(trylast=True)
    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        ranked = [(self._rank(item.nodeid), item) for item in items]
        chosen = [(rank, item) for rank, item in ranked if rank is not None]
        items[:] = [item for _, item in sorted(chosen, key=lambda pair: pair[0])]

    def _rank(self, test: str) -> int | None:
        return self.order.get(test, self.order.get(function_of(test)))

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if report.failed and not self.killer:
            self.killer = report.nodeid


def ready(copy: Path) -> None:
    """Make this process one whose children can try mutants in the copy."""
    os.chdir(copy)
    sys.dont_write_bytecode = True
    sys.path[:] = [str(copy), *(p for p in sys.path if Path(p or ".").resolve() != copy)]
    os.environ |= {"PYTHONPATH": str(copy), "PYTHONDONTWRITEBYTECODE": "1"}
    from hypothesis import Phase, settings

    settings.register_profile(
        "mutants", phases=(Phase.explicit, Phase.generate), derandomize=True, database=None
    )
    settings.load_profile("mutants")
    import troubleshoot.reasoning.conclude  # noqa: F401
    from troubleshoot.knowledge import load

    shipped, read = load.load_shipped(), load.load_shipped
    load.load_shipped = lambda packs=(), **how: read(packs, **how) if packs or how else shipped
    compileall.compile_dir(copy / "tests", quiet=1)
    gc.collect()
    gc.freeze()


def map_of(copy: Path, tests: Iterable[str], but: Iterable[str]) -> Map:
    """Which tests enter which functions; run in a child, since it imports everything."""
    ready(copy)
    seen = Seen(copy / "troubleshoot")
    left_out = [word for name in but for word in ("--deselect", name)]
    options = [option for option in OPTIONS if option != "-x"]
    pytest.main([*options, *left_out, *tests], plugins=[seen])
    entered = {name: sorted(by) for name, by in seen.entered.items()}
    return {"seconds": seen.seconds, "entered": entered}


def tests_for(mutant: Mutant, known: Map, most: float, kills: Counter[str]) -> list[str]:
    """The tests to try a mutant with, whole files together, up to `most` seconds of each kind.

    Those that killed most so far come first, then the quickest.
    """
    seconds = known["seconds"]
    here = known["entered"].get(f"{mutant.module}:{mutant.function}")
    if here is None:  # a table, or a class: whatever enters the module, or imports it or its room
        inside = f"{mutant.module}:"
        here = {t for name, by in known["entered"].items() if name.startswith(inside) for t in by}
        names = mutant.module.removesuffix(".py").removesuffix("/__init__").split("/")[-2:]
        here |= {test for test in seconds if any(_imports(file_of(test), name) for name in names)}
        if mutant.module.startswith("safety/"):
            here |= {test for test in seconds if file_of(test) == PAGE_OF_TABLES}
    quickest = sorted(here, key=lambda test: (seconds[test], test))
    killers = sorted(quickest, key=lambda test: -kills[function_of(test)])
    chosen = {*_within(killers, seconds, most / 2), *_within(quickest, seconds, most)}
    chosen |= {test for test in here if file_of(test) == PAGE_OF_TABLES}
    files = list(dict.fromkeys(file_of(test) for test in killers if test in chosen))
    return sorted(chosen, key=lambda test: (files.index(file_of(test)), seconds[test], test))


def _within(tests: list[str], seconds: Mapping[str, float], most: float) -> Iterator[str]:
    for number, test in enumerate(tests):
        most -= seconds[test]
        if most < 0 and number:
            return
        yield test


@cache
def _imports(file: str, module: str) -> bool:
    text = Path(file).read_text("utf-8")
    return f".{module} import" in text or f" import {module}\n" in text


def file_of(test: str) -> str:
    return test.partition("::")[0]


def function_of(test: str) -> str:
    return test.partition("[")[0]


def seconds_for(tests: Collection[str], known: Map) -> float:
    """How long a mutant may work: what survives slow tests is not to be taken for endless."""
    files = {file_of(test) for test in tests}
    return MOST_SECONDS + A_FILE * len(files) + sum(known["seconds"][test] for test in tests)


def tried(mutant: Mutant, copy: Path, tests: list[str], most: float = MOST_SECONDS) -> str:
    """The test that kills a mutant within `most` seconds of work; empty where it survives."""
    path = copy / "troubleshoot" / mutant.module
    sound = path.read_bytes()
    path.write_bytes(mutant.applied(sound))
    told, tell = os.pipe()
    try:
        child = os.fork()
        if not child:
            try:
                _child(mutant, tests, tell, int(most))
            finally:
                os._exit(1)
        os.close(tell)
        with os.fdopen(told) as pipe:
            killer = pipe.read() if _ended_well(child, most) else "::crashed, or took too long"
    finally:
        path.write_bytes(sound)
    return killer


def _child(mutant: Mutant, tests: list[str], tell: int, most: int) -> None:
    os.setsid()
    silent = os.open(os.devnull, os.O_RDWR)
    for stream in (0, 1, 2):
        os.dup2(silent, stream)
    resource.setrlimit(resource.RLIMIT_CPU, (most, most))
    if mutant.module.startswith("reasoning"):
        for name in [name for name in sys.modules if name.startswith("troubleshoot.reasoning")]:
            del sys.modules[name]
    chosen = Chosen(tests)
    for file in dict.fromkeys(file_of(test) for test in tests):
        code = pytest.main([*OPTIONS, file], plugins=[chosen])
        if code != 0:
            os.write(tell, (chosen.killer or f"{file}::not even collected").encode())
            break
    os._exit(0)


def _ended_well(child: int, most: float) -> bool:
    until = time.monotonic() + BUSY * most
    while True:
        ended, status = os.waitpid(child, os.WNOHANG)
        if ended:
            return status == 0
        if time.monotonic() > until:
            os.killpg(child, signal.SIGKILL)
            os.waitpid(child, 0)
            return False
        time.sleep(0.005)


def kept_results(path: Path) -> Mapping[str, str]:
    """What earlier runs found: mutant -> the test that killed it, or nothing."""
    lines = path.read_text("utf-8").splitlines() if path.exists() else []
    return dict(json.loads(line) for line in lines)
