"""A compressor that was heard to hum is not called again to hear it: what is read dead comes first.

It draws its locked-rotor current as long as it hums, five to seven times what it runs with
(NEMA MG 1, from memory), and its windings burn within seconds; a leg, a contact or a capacitor is
what most often fails (common practice, no source).
"""

from __future__ import annotations

from typing import Final

import pytest

from tests.bench.visits import Call, Held
from tests.practice.playing import reasoner_of
from troubleshoot.dialogue.prompts import AtStop, Prompt
from troubleshoot.dialogue.talk import Reply
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.evidence.said_along import heard
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.steps import PANELS_OFF_ENERGISED, RESTART
from troubleshoot.visit.events import Started

UNIT: Final = {
    "line-volts-class": "208-to-240-volt", "refrigerant": "R-410A", "metering": "txv",
    "circuits": 1, "condenser-fans": 1, "heat": "electric", "service-ports": "outside",
    "blower-motor": "single-phase-capacitor", "variable-speed-drive": "not-fitted",
    "duct-smoke-detector": "not-fitted", "contactor-opens": "every-leg",
}  # fmt: skip
SINGLE: Final = {**UNIT, "supply-phase": "single", "compressor-phase": "single"}
THREE: Final = {**UNIT, "supply-phase": "three", "compressor-phase": "three"}
CAPACITOR: Final = {"capacitance-out-of-circuit at capacitor compressor 1": "very-low"}
CONTACTS: Final = {"contactor-contacts": "pole-burnt-away"}
START: Final = "compressor-start-attempt compressor 1"


class Hums(Held):
    """A visit to a call that was told in words, up to the first STOP that halts it."""

    def __init__(
        self, reasoner: Reasoner, unit: dict[str, object], odd: dict[str, str], words: str
    ) -> None:
        super().__init__(reasoner, Call("hums", "no-cooling", unit, odd))
        self.book.add(Started(unit=unit, complaint="no-cooling", words=words))

    def reply(self, prompt: Prompt) -> Reply | None:
        assert not isinstance(prompt, AtStop)
        return super().reply(prompt)


@pytest.mark.parametrize("words", ["comp hums", "it just hums and trips", "compressor grunts"])
@pytest.mark.parametrize(
    ("unit", "odd", "repaired"),
    [
        (SINGLE, CAPACITOR, "compressor-run-capacitor-weak"),
        (THREE, CONTACTS, "contactor-pole-burnt-away"),
    ],
)
def test_what_is_read_dead_comes_before_any_start(
    unit: dict[str, object], odd: dict[str, str], repaired: str, words: str
) -> None:
    """Regression: eight prompts after "comp hums" it was called once more, the panel open live."""
    visit = Hums(reasoner_of(load_shipped()), unit, odd, words)
    visit.drive()
    found = [said.fault for said in visit.state.repairs] or [
        cause.fault.id for cause in visit.concluded().causes
    ]
    assert found[0] == repaired
    assert_read_dead_first(visit.said)


def test_one_try_is_left_once_all_of_it_was_read_sound() -> None:
    visit = Hums(reasoner_of(load_shipped()), THREE, {}, "comp hums")
    visit.drive()
    assert_read_dead_first(visit.said)
    assert visit.said.index("line-volts-idle") < visit.said.index(START)


@pytest.mark.parametrize(
    ("words", "is_heard"),
    [
        ("no cooling, comp hums", True),
        ("compressor hums and kicks off after a few seconds, they keep turning it on", True),
        ("dies every afternoon, compressor hums and quits", True),
        ("breaker trips when the compressor tries to start", True),
        ("cond fan hums and wont turn", False),
        ("compressor does not hum", False),
        ("the contactor hums and chatters", False),
        ("no cooling", False),
    ],
)
def test_what_is_heard_is_heard_whatever_the_call_is_about(words: str, is_heard: bool) -> None:
    told = {finding.test for finding in heard(load_shipped(), words)}
    assert told == ({"compressor-start-attempt"} if is_heard else set())


def test_a_start_that_was_read_since_counts_instead() -> None:
    """At the circuit where it was read: of the other nobody knows more than was heard."""
    reasoner = reasoner_of(load_shipped())
    unit = read_unit(reasoner.knowledge, {**THREE, "circuits": 2})

    def at(answers: tuple[Answer, ...]) -> set[int]:
        case = Case(unit, "no-cooling", answers, words="compressor hums")
        hazards = reasoner.conclude(case).hazards
        return {
            n for fired in hazards if fired.hazard.id == "compressor-hums" for n in fired.circuits
        }

    starts = Answer("compressor-start-attempt", ("starts",), places=(Place("compressor", 1),))
    assert at(()) == {1, 2} and at((starts,)) == {2}


def assert_read_dead_first(said: list[str]) -> None:
    """Legs, contacts and windings come before any start, and before a panel is opened live."""
    dead = ("contactor-contacts contactor 1", "fuse-continuity", "compressor-windings compressor 1")
    live = [START, f"[{PANELS_OFF_ENERGISED}]", f"[{RESTART}]"]
    first = min((said.index(each) for each in live if each in said), default=len(said))
    assert max(said.index(each) for each in dead if each in said) < first
    assert dead[0] in said[:first]
