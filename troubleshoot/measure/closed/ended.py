"""What closed visits ended in, read off their journals: the cause, and what was read before it.

A visit counts where a call brought it, and the complaint went with its last repair: what was put
right last is what it ended in. A round counts not: its findings are of several causes, and each
search takes apart what the others found.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Final, Literal

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Complaint, Fault, Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.evidence.hypotheses import Hypotheses, Hypothesis
from troubleshoot.reasoning.evidence.reading_evidence import share_of
from troubleshoot.visit.events import replay
from troubleshoot.visit.kept.journal import JournalError
from troubleshoot.visit.kept.names import kept_visits
from troubleshoot.visit.kept.reading import read_visit
from troubleshoot.visit.kept.understanding import understood
from troubleshoot.visit.state import VisitState
from troubleshoot.visit.telling.whole_visit import case_at_call

Ending = Literal["in a cause", "not closed", "on a round", "without a cause", "unreadable"]
ENDINGS: Final[Mapping[Ending, str]] = {
    "not closed": "not closed",
    "on a round": "rounds, or without a call",
    "without a cause": "in which no repair of a cause took the complaint away",
    "unreadable": "that cannot be read",
}
"""Why a visit does not count, as people are told."""


@frozen
class EndedIn:
    """A visit that ended in a cause.

    `hypotheses`: the causes that its unit could have; `truth`: that cause, where the readings fit
    it best; `seen`: what each test that speaks about it there came to, from before its repair.
    """

    visit: str
    call: Complaint
    hypotheses: Hypotheses
    truth: Hypothesis
    seen: Mapping[str, tuple[str, ...]]

    @property
    def fault(self) -> Fault:
        return self.truth.fault


@frozen
class Closed:
    """How one visit ended. `ended`: with what, where that is a cause; `problem`: why unreadable."""

    ending: Ending
    ended: EndedIn | None = None
    problem: str = ""


def closed_visits(knowledge: Knowledge, folder: Path) -> Iterator[Closed]:
    """How each visit of a folder ended, the latest first."""
    reasoner = Reasoner(knowledge)
    for path in kept_visits(folder):
        try:
            events = understood(knowledge, read_visit(path).events).events
        except JournalError as error:
            yield Closed("unreadable", problem=str(error))
        else:
            yield _closed(reasoner, path.stem, replay(knowledge, events))


def _closed(reasoner: Reasoner, visit: str, state: VisitState) -> Closed:
    if state.ended != "closed":
        return Closed("not closed")
    call = reasoner.knowledge.complaints.get(state.complaint or "")
    if call is None or state.routine or state.round is not None:
        return Closed("on a round")
    if not state.cured or not state.repairs:
        return Closed("without a cause")
    got = reasoner.conclude(case_at_call(state))
    truth = _where_it_was(got, state.repairs[-1].fault)
    if truth is None:
        return Closed("without a cause")
    return Closed("in a cause", EndedIn(visit, call, got.hypotheses, truth, _seen(got, truth)))


def _where_it_was(got: Conclusions, fault: str) -> Hypothesis | None:
    """The cause that was repaired, where and as which picture it is likeliest; None for no cause.

    A repair has no place of its own in a journal.
    """
    own = [each for each in got.ranking.hypotheses if each.hypothesis.fault.id == fault]
    best = max(own, key=lambda each: each.probability, default=None)
    return None if best is None else best.hypothesis


def _seen(got: Conclusions, truth: Hypothesis) -> dict[str, tuple[str, ...]]:
    """What each test came to that speaks about this cause; none that reads otherwise elsewhere."""
    told: dict[str, set[tuple[str, ...]]] = {}
    for one in got.seen:
        if one.reading.seen and share_of(got.hypotheses, truth, one) == 1:
            told.setdefault(one.reading.test, set()).add(one.reading.seen)
    return {test: next(iter(seen)) for test, seen in told.items() if len(seen) == 1}
