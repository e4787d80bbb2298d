"""Every door by which something comes in from outside, as a function of the bytes that come.

Each returns whether they were taken. What is turned away in the way the door promises is not; any
other error is a defect.
"""

from __future__ import annotations

import contextlib
import io
import json
import sys
from collections.abc import Callable, Iterator, Mapping
from dataclasses import asdict, dataclass
from datetime import datetime
from pathlib import Path
from typing import Any
from unittest.mock import patch

from tests.building import base, test_of
from tests.fuzz.register_doors import register_doors
from tests.visit.kept.samples import long_visit, write_journal
from troubleshoot.cli.case_input import plain_of, read_text_of
from troubleshoot.cli.failures import Failure
from troubleshoot.cli.practice.asking import Left
from troubleshoot.cli.practice.play import GivenUp, Play
from troubleshoot.cli.terminal import EndOfInput, Terminal
from troubleshoot.cli.visiting import converse
from troubleshoot.dialogue.talk import DangerCalled
from troubleshoot.knowledge.base import read_texts
from troubleshoot.knowledge.cache import keep, read_kept
from troubleshoot.knowledge.checks import essential_problems
from troubleshoot.knowledge.formatting import format_file
from troubleshoot.knowledge.layout import RuleText
from troubleshoot.knowledge.load import shipped_folder
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.problems import RuleFileError
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.practice import record, scores
from troubleshoot.practice.loading import checked_scenario, load_scenario, scenario_paths
from troubleshoot.practice.session import Session
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.unit.equipment import InputRefused
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.cases.assessment import assess_case
from troubleshoot.visit.cases.file import read_case
from troubleshoot.visit.events import replay
from troubleshoot.visit.kept.journal import Journal, JournalError
from troubleshoot.visit.kept.reading import read_visit
from troubleshoot.visit.kept.understanding import understood

CASE = """\
unit: {refrigerant: R-410A, metering: txv, circuits: 2, compressor-rla: 8.9 A}
conditions: {outdoor-temperature: 94 F, minutes-running: 20}
complaint: fails-hot-afternoons
readings:
  - {test: suction-pressure, at: circuit 1, text: 128 psig}
  - {test: compressor-start-attempt, at: circuit 2, outcome: hums-and-trips}
  - {test: contactor-contacts, at: contactor 2, outcome: [pole-burnt-away]}
"""
TYPED = (
    b"RTU-7\nno cooling\n1\n3 4 5 6\n\n\n\n\nw\n?\ntests\ndo 1\nnote ice\nu\ns\n2\nbecause 1\n"
    b"5.12 uF\n"
)
PLAYED = (
    b"tests\ntests air\n1\n\nsteps\nstep 1\nfind fan\n2\nhow 1\nstate\nhint\ncall\nfilter\n1\n\n\n"
)
PLAY = scores.Play(
    "2000-01-31", "Learner", "quarry-road", "refrigerant", 1, "right", False, 80, 64, 7, 60,
    6, 1, 2, 3, True, "sure", 0, False,
)  # fmt: skip

MOST_LINES = 100


@dataclass(frozen=True)
class Door:
    """What comes in: samples of it, and what takes a changed one."""

    samples: list[bytes]
    enter: Callable[[bytes], bool]


def doors(knowledge: Knowledge, folder: Path) -> Mapping[str, Door]:
    """Every door by its name; files are written into `folder`."""
    reasoner = Reasoner(knowledge)
    scenarios = [path.read_bytes() for path in list(scenario_paths().values())[:6]]
    cards = [
        path.read_bytes() for path in sorted((shipped_folder() / "faults").rglob("*.yaml"))[:6]
    ]
    whole = write_journal(folder / "samples", "whole", long_visit()).read_bytes()
    as_json = json.dumps(read_yaml(folder)).encode()
    return {
        "case file, YAML": Door([CASE.encode()], _case(knowledge, folder / "case.yaml")),
        "case file, JSON": Door([as_json], _case(knowledge, folder / "case.json")),
        "rule file": Door(cards, _rule_file),
        "scenario": Door(scenarios, _scenario(reasoner, folder / "scenario.yaml")),
        "journal, bytes": Door([whole], _journal(reasoner, folder / "kept" / "one.journal")),
        "journal, events": Door([json.dumps(long_visit()).encode()], _events(reasoner, folder)),
        "kept rules": Door([_kept(folder)], _cache(folder / "cache")),
        "record of plays": Door([json.dumps({"format": 1, **asdict(PLAY)}).encode() + b"\n"] * 2,
                                _plays(folder / "plays.jsonl")),
        "typed, a visit": Door([TYPED], _typed_visit(knowledge, folder / "data")),
        "typed, a practice": Door([PLAYED], _typed_practice(reasoner)),
        **{name: Door([sample], enter)
           for name, (sample, enter) in register_doors(knowledge, folder).items()},
    }  # fmt: skip


def read_yaml(folder: Path) -> Any:
    """The plain data of the sample case."""
    (folder / "sample.yaml").write_text(CASE, "utf-8")
    return plain_of(read_text_of(str(folder / "sample.yaml")), "sample.yaml")


def _case(knowledge: Knowledge, path: Path) -> Callable[[bytes], bool]:
    def enter(data: bytes) -> bool:
        path.write_bytes(data)
        try:
            assess_case(
                knowledge, read_case(knowledge, plain_of(read_text_of(str(path)), str(path)))
            )
        except (InputRefused, Failure):
            return False
        return True

    return enter


def _rule_file(data: bytes) -> bool:
    base = read_texts([RuleText("a.yaml", "faults/a/b.yaml", 0, data)])
    with contextlib.suppress(RuleFileError, UnicodeDecodeError):
        format_file(data.decode(), "a.yaml", "fault")
    essential_problems(base)  # a card alone names tests that stand in other files
    return not base.problems


def _scenario(reasoner: Reasoner, path: Path) -> Callable[[bytes], bool]:
    def enter(data: bytes) -> bool:
        path.write_bytes(data)
        try:
            checked_scenario(reasoner, path)
        except (RuleFileError, NotUsable):
            return False
        return True

    return enter


def _journal(reasoner: Reasoner, path: Path) -> Callable[[bytes], bool]:
    path.parent.mkdir()

    def enter(data: bytes) -> bool:
        path.write_bytes(data)
        try:
            events = read_visit(path).events
            with Journal.open(path) as journal:
                assert journal.events == events
        except JournalError:
            assert path.read_bytes() == data
            return False
        found = understood(reasoner.knowledge, events)
        conclude_visit(reasoner, replay(reasoner.knowledge, found.events))
        return True

    return enter


def _events(reasoner: Reasoner, folder: Path) -> Callable[[bytes], bool]:
    """Events of a whole chain, whatever is in them."""

    def enter(data: bytes) -> bool:
        try:
            held = json.loads(data)
            path = write_journal(
                folder / "chained", "one", held if isinstance(held, list) else [held]
            )
            events = read_visit(path).events
        except (ValueError, RecursionError, JournalError):
            return False
        found = understood(reasoner.knowledge, events)
        conclude_visit(reasoner, replay(reasoner.knowledge, found.events))
        return not found.unknown

    return enter


def _kept(folder: Path) -> bytes:
    keep(folder / "cache", "0" * 64, base([test_of("look", "bad")]))
    (path,) = (folder / "cache").iterdir()
    return path.read_bytes()


def _cache(folder: Path) -> Callable[[bytes], bool]:
    (path,) = folder.iterdir()

    def enter(data: bytes) -> bool:
        path.write_bytes(data)
        return read_kept(folder, "0" * 64) is not None

    return enter


def _plays(path: Path) -> Callable[[bytes], bool]:
    def enter(data: bytes) -> bool:
        path.write_bytes(data)
        try:
            plays = record.read_plays(path)
        except record.RecordDamaged:
            return False
        record.as_csv(plays)
        scores.progress(plays)
        record.keep_play(path, PLAY)
        assert record.read_plays(path) == (*plays, PLAY)
        return True

    return enter


def _typed_visit(knowledge: Knowledge, data: Path) -> Callable[[bytes], bool]:
    visits = data / "visits"

    def enter(lines: bytes) -> bool:
        for path in visits.iterdir() if visits.is_dir() else ():
            path.unlink()
        with _typing(lines):
            return converse(knowledge, None, (), str(data)) in (0, 4)

    return enter


def _typed_practice(reasoner: Reasoner) -> Callable[[bytes], bool]:
    path = next(iter(scenario_paths().values()))
    scenario = load_scenario(reasoner.knowledge, path)

    def enter(lines: bytes) -> bool:
        with _typing(lines), contextlib.suppress(Left, GivenUp, EndOfInput, DangerCalled):
            Play(Terminal(), Session(reasoner, scenario), lambda _: None).run()
        return True

    return enter


@contextlib.contextmanager
def _typing(lines: bytes) -> Iterator[None]:
    """Standard input as the program's own start makes it, and an output that is thrown away.

    Any line may be long, but no more of them come than a person types in an hour.
    """
    first = b"".join(lines.splitlines(keepends=True)[:MOST_LINES])
    stdin = io.TextIOWrapper(io.BytesIO(first), "utf-8", "surrogateescape")
    morning = datetime.fromisoformat("2026-11-26T09:00:00+00:00")
    with (
        patch.object(sys, "stdin", stdin),
        patch("troubleshoot.cli.clock.now", lambda: morning),
        contextlib.redirect_stdout(io.StringIO()),
    ):
        yield
