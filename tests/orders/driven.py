"""A mechanic's order of looks beside the order in which a visit asks, and how near the two are."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from pathlib import Path
from typing import Any

import yaml

from tests.dialogue.constant import ConstantVisit, Mode
from troubleshoot.dialogue.prompts import AskTest, AtStop, DoStep, Prompt
from troubleshoot.dialogue.talk import Reply
from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Test
from troubleshoot.reasoning.conclude import Reasoner

FILE = Path(__file__).parent / "mechanic.yaml"
MOST = 8
"""More looks than these are not compared."""


@frozen
class Unwanted:
    """What the mechanic would not have among the first looks: `after` makes it right."""

    what: str
    tests: frozenset[str]
    needs: frozenset[str]
    states: frozenset[str]
    after: frozenset[str]
    danger: bool

    def among(self, order: Sequence[str], tests: Mapping[str, Test]) -> Iterator[str]:
        """Which of these looks are that."""
        for number, name in enumerate(order):
            test = tests.get(name)
            if test is None or not self.after.isdisjoint(order[:number]):
                continue
            needs = self.needs.intersection(test.needs_state)
            if name in self.tests or needs or test.work_state in self.states:
                yield name


@frozen
class Call:
    """One call: the unit, for each look the tests that are the same look, and what is unwanted."""

    complaint: str
    unit: Mapping[str, object]
    looks: tuple[frozenset[str], ...]
    words: tuple[str, ...]
    unwanted: tuple[Unwanted, ...]

    def hits(self, order: Sequence[str]) -> int:
        """How many of the mechanic's looks are among these."""
        return sum(not look.isdisjoint(order) for look in self.looks)


@cache
def calls() -> tuple[Call, ...]:
    """The calls of the mechanic's file, in its order."""
    data = yaml.safe_load(FILE.read_text("utf-8"))
    return tuple(_call(each, data["units"]) for each in data["calls"])


def _call(each: Mapping[str, Any], units: Mapping[str, Any]) -> Call:
    return Call(
        each["call"],
        units[each["unit"]],
        tuple(frozenset(look["as"]) for look in each["looks"]),
        tuple(look["look"] for look in each["looks"]),
        tuple(map(_unwanted, each["not-among"])),
    )


def _unwanted(each: Mapping[str, Any]) -> Unwanted:
    said = each.get("is", {})
    kinds = (frozenset(said.get(kind, ())) for kind in ("tests", "needs", "states"))
    after = frozenset(each.get("unless-after", ()))
    return Unwanted(each["what"], *kinds, after, each.get("danger", False))


class OrderedVisit(ConstantVisit):
    """A visit that keeps in which order things are looked at, each once.

    What is computed counts for its inputs. A step or a STOP counts only where the mechanic has it
    among his looks.
    """

    def __init__(self, reasoner: Reasoner, call: Call, mode: Mode, words: str = "") -> None:
        super().__init__(reasoner, call.unit, call.complaint, mode, words=words)
        self._steps = frozenset().union(*call.looks)
        self._order: dict[str, None] = {}

    @property
    def order(self) -> tuple[str, ...]:
        return tuple(self._order)

    def reply(self, prompt: Prompt) -> Reply | None:
        for name in self._looks(prompt):
            self._order.setdefault(name)
        return None if len(self._order) >= MOST else super().reply(prompt)

    def _looks(self, prompt: Prompt) -> Iterator[str]:
        if isinstance(prompt, AskTest):
            test, aim = prompt.decision.test, prompt.decision.aim
            assert test is not None
            yield aim[0] if aim is not None and test.kind == "input" else test.id
        elif isinstance(prompt, DoStep):
            step = prompt.decision.step
            assert step is not None
            yield from {step.id} & self._steps
        elif isinstance(prompt, AtStop):
            yield from {prompt.fired.hazard.id} & self._steps


def order_on(reasoner: Reasoner, call: Call, mode: Mode) -> tuple[str, ...]:
    """The first looks of a visit on this call, in their order."""
    visit = OrderedVisit(reasoner, call, mode)
    visit.drive()
    return visit.order
