"""The path of a visit: what was read in its order, where each answer led, where others would have.

Every answer is reckoned as it came, with all before it and none after. So is each outcome that did
not come, as if it alone had come in its place.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.readings.classify import outcomes_here
from troubleshoot.reasoning.unit.places import spoken, with_place
from troubleshoot.visit.telling.wording import percent

NOTHING: Final = "no cause stands out"
STANDS_OUT: Final = 0.05
"""A likeliest cause under this is one of many."""


@frozen
class Branch:
    """One way on from a test: what it showed, or would have, and what leads then.

    `chance`: of the cause that leads; empty where none stands out, and of a STOP.
    """

    showed: str
    leads: str
    chance: str = ""
    is_stop: bool = False

    @property
    def told(self) -> str:
        """What leads, its chance first: a long name may be cut."""
        return f"{self.chance} {self.leads}".lstrip()


@frozen
class Turn:
    """One test of the path: what it came to, and its other outcomes by what they lead to."""

    name: str
    taken: Branch
    others: tuple[Branch, ...]


@frozen
class Path:
    """A visit as a tree of one trunk. `begins`: what leads on the call alone."""

    title: str
    call: str
    begins: str
    turns: tuple[Turn, ...]


def path_of(knowledge: Knowledge, case: Case, title: str) -> Path:
    """The path of a case: its answers in the order in which they were given; no safety steps."""
    reasoner = Reasoner(knowledge)
    call = knowledge.complaints.get(case.complaint or "")
    said = f'"{call.says}"' if call is not None else "no call is told"
    start = _leads(reasoner, replace(case, answers=(), repaired=()), "")
    return Path(title, said, start.told, tuple(_turns(reasoner, case)))


def _turns(reasoner: Reasoner, case: Case) -> Iterator[Turn]:
    for number, answer in enumerate(case.answers):
        test = reasoner.knowledge.tests[answer.test]
        if test.kind == "step":
            continue
        before = replace(
            case, answers=case.answers[:number], repaired=case.repaired[: answer.repairs]
        )
        taken, seen = _taken(reasoner, before, test, answer)
        here = [each.id for each in outcomes_here(test, case.unit) if each.id not in seen]
        others = [_other(reasoner, before, test, answer, outcome) for outcome in here]
        name = with_place(test.name, spoken(None if answer.shared else answer.places[0]))
        yield Turn(name, taken, tuple(_together(others)) if seen else ())


def _taken(
    reasoner: Reasoner, before: Case, test: Test, answer: Answer
) -> tuple[Branch, tuple[str, ...]]:
    """Where an answer led, and the outcomes that it came to."""
    case = replace(before, answers=(*before.answers, answer))
    read = [each for each in reasoner.conclude(case).readings if each.test == test.id]
    seen = read[-1].seen if read else ()
    told = " and ".join(map(test.spoken, seen))
    showed = f"{answer.text}: {told}" if answer.text and told else told or answer.text or ""
    return _leads(reasoner, case, showed), seen


def _other(reasoner: Reasoner, before: Case, test: Test, answer: Answer, outcome: str) -> Branch:
    instead = replace(answer, outcomes=(outcome,), text=None)
    case = replace(before, answers=(*before.answers, instead))
    return _leads(reasoner, case, test.spoken(outcome))


def _leads(reasoner: Reasoner, case: Case, showed: str) -> Branch:
    """What leads in a case: a STOP that stands before any cause."""
    got = reasoner.conclude(case)
    stop = _stop(got)
    if stop:
        return Branch(showed, f"STOP: {stop}", is_stop=True)
    if not got.causes or got.causes[0].probability < STANDS_OUT:
        return Branch(showed, NOTHING)
    first = got.causes[0]
    name = with_place(first.fault.name, spoken(first.at))
    return Branch(showed, name, percent(first.probability))


def _stop(got: Conclusions) -> str:
    """The gravest hazard that was found and stops the work; empty where there is none."""
    return next((each.hazard.spoken for each in got.hazards if each.stops), "")


def _together(branches: list[Branch]) -> Iterator[Branch]:
    """Outcomes that lead to the same, as one branch; the chance is that of the first."""
    ways: dict[str, list[Branch]] = {}
    for branch in branches:
        ways.setdefault(branch.leads, []).append(branch)
    for same in ways.values():
        yield replace(same[0], showed=" or ".join(each.showed for each in same))
