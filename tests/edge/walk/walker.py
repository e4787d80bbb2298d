"""A walk: people at the terminal for as many turns as wanted, and an officer who watches them.

Real conversations in this process, on real journals in a folder of their own, under a clock that
the walk sets. Programs are killed and started again, folders copied and gone on with a week later.
"""

from __future__ import annotations

import shutil
import traceback
from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from datetime import UTC, datetime, timedelta
from pathlib import Path
from random import Random
from typing import Any
from unittest.mock import patch

import click

from tests.edge.walk.officer import Officer
from tests.edge.walk.people import Person
from tests.edge.walk.screen import Killed, Screen
from troubleshoot.cli import clock, visiting
from troubleshoot.cli import reopen as reopening
from troubleshoot.cli.failures import Failure
from troubleshoot.cli.terminal import EndOfInput
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning import made_once
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.visit.kept import journal

START = datetime(2026, 11, 26, 9, 0, tzinfo=UTC)
VISITS_A_FOLDER = 4
TURNS_A_FOLDER = 600
MOST_KEPT = 200


class Walk:
    """Data folders one after the other, until so many lines were typed."""

    def __init__(self, knowledge: Knowledge, seed: int, home: Path) -> None:
        self.knowledge = knowledge
        self.met: Counter[str] = Counter()
        self.objections: list[str] = []
        self._seed = seed
        self._home = home
        self._kept = Kept()
        self._folders = 0

    def go(self, turns: int, most_objections: int = 1) -> None:
        """Walk until so many lines were typed, or so much was objected to."""
        while self.met["turns"] < turns and len(self.objections) < most_objections:
            self._folders += 1
            random = Random(f"{self._seed} {self._folders}")
            folder = _Folder(self.knowledge, random, self._home / f"{self._folders}")
            with _in_this_process(folder, self.knowledge, self._kept):
                folder.walk(min(TURNS_A_FOLDER, turns - self.met["turns"]))
            self.met += folder.met
            where = f"seed {self._seed}, folder {self._folders}"
            self.objections += [f"{where}: {words}" for words in folder.objections]
            for folder in self._home.iterdir():
                shutil.rmtree(folder)


class _Folder:
    """One data folder: visits to a few units, one after the other and again."""

    def __init__(self, knowledge: Knowledge, random: Random, folder: Path) -> None:
        self.now = START
        self.met: Counter[str] = Counter()
        self.objections: list[str] = []
        self._random = random
        self._folder = folder
        self._person = Person(knowledge, random)
        self._officer = Officer(knowledge, lambda: self.now)
        self._typed = ""
        self._history: list[str] = []
        self._turns = 0

    @property
    def _visits(self) -> Path:
        return self._folder / "visits"

    def walk(self, turns: int) -> None:
        self._turns = turns
        self._visits.mkdir(parents=True)
        while self._goes_on(turns):
            self._person.careful = self._random.choice((0.6, 0.8, 0.93, 0.98))
            self._session()
            self._between()
        self.met += self._officer.met
        if self._officer.objections:
            told = "\n    ".join((*self._officer.account(), *self._history[-12:]))
            self.objections = [f"{words}\n    {told}" for words in self._officer.objections]

    def _goes_on(self, turns: int) -> bool:
        few = len(self._officer.jobs) <= VISITS_A_FOLDER
        return few and self.met["turns"] < turns and not self._officer.objections

    def _session(self) -> None:
        """The program is started, and ends somehow."""
        self._officer.begin()
        stopped = [v for v, job in self._officer.jobs.items() if job.ended == "stopped"]
        try:
            if stopped and self._random.random() < 0.6:
                self.met["reopen"] += 1
                self._reopen(self._random.choice(stopped).removesuffix(".journal"))
            else:
                self.met["started"] += 1
                visiting.converse(self._officer.knowledge, None, (), str(self._folder))
        except (Killed, Failure, click.exceptions.Exit) as ended:
            self._history.append(f"({type(ended).__name__}: {ended})")
        except Exception:
            self._officer.objections.append(traceback.format_exc())
        self._officer.look(self._visits, (), self._typed)

    def _reopen(self, visit: str) -> None:
        with click.Context(reopening.reopen, obj={"data": str(self._folder)}) as context:
            context.invoke(reopening.reopen, visit=visit)

    def _between(self) -> None:
        """What happens while the program is not running."""
        random = self._random
        self.now += timedelta(minutes=random.choice((0.5, 2.0, 10.0, 29.5, 31.0, 200.0, -10.0)))
        kept = sorted(self._visits.glob("*.journal"))
        if kept and random.random() < 0.1:
            self.met["torn"] += 1
            with random.choice(kept).open("ab") as file:
                file.write(b'{"event": {"event": "answ')
        if random.random() < 0.1:
            self._copy()

    def _copy(self) -> None:
        """The folder is copied, and gone on with a week later."""
        self.met["copied"] += 1
        copy = self._folder.with_name(f"{self._folder.name}c")
        shutil.copytree(self._folder, copy)
        self._folder = copy
        self.now += timedelta(days=7)

    def type(self, prompt: str, screen: list[str]) -> str:
        """The next line; raises Killed, and EndOfInput where the terminal is closed."""
        random, officer = self._random, self._officer
        self._history += [*screen, f"[{self.now:%d %H:%M:%S}]"]
        officer.look(self._visits, screen, self._typed, prompt)
        self.met["turns"] += 1
        if officer.objections or self.met["turns"] >= self._turns:
            raise Killed("enough")
        minutes = self._person.wait(officer.task)
        self.met["long silence"] += minutes > 20
        self.met["clock back"] += minutes < 0
        self.now += timedelta(minutes=minutes)
        if random.random() < 0.004:
            self.met["killed"] += 1
            raise Killed("killed")
        if random.random() < 0.002:
            raise EndOfInput
        line = self._person.types(prompt, screen, officer.task)
        line = line.replace("{now}", f"{self.now:%H:%M}")
        self._typed, _, paste = line.partition("\n")
        self.met["paste"] += bool(paste)
        self._history.append(f"{prompt} {self._typed}")
        self._typed = self._typed.strip()
        return self._typed + "\n"


class Kept:
    """What is costly to build and never changes, built once for a walk.

    The program builds its chaining engine and its hypotheses anew at every start.
    """

    def __init__(self) -> None:
        self.rules = _once(made_once.compile_chains, id)
        self.chain = _once(made_once.Chain, id)
        self.hypotheses = _once(made_once.hypotheses_for, _unit_key)


def _once(make: Callable[..., Any], key: Callable[..., object]) -> Callable[..., Any]:
    made: dict[object, Any] = {}

    def made_once(*given: Any) -> Any:
        name = key(*given)
        if name not in made:
            if len(made) > MOST_KEPT:
                made.clear()
            made[name] = make(*given)
        return made[name]

    return made_once


def _unit_key(knowledge: Knowledge, unit: Unit) -> object:
    return frozenset(unit.facts.items()), unit.layout, frozenset(unit.plate.items())


@contextmanager
def _in_this_process(folder: _Folder, knowledge: Knowledge, kept: Kept) -> Iterator[None]:
    """The program's edges led to the walk: its terminal, its clock, its disk not waited for."""
    with ExitStack() as stack:
        for edge, name, ours in (
            (visiting, "VisitTerminal", lambda knowledge: Screen(folder.type)),
            (reopening, "VisitTerminal", lambda knowledge: Screen(folder.type)),
            (reopening, "rules_in_force", lambda: knowledge),
            (clock, "now", lambda: folder.now),
            (journal, "_make_durable", lambda descriptor: None),
            (journal, "_sync_folder", lambda folder: None),
            (made_once, "compile_chains", kept.rules),
            (made_once, "Chain", kept.chain),
            (made_once, "hypotheses_for", kept.hypotheses),
        ):
            stack.enter_context(patch.object(edge, name, ours))
        yield
