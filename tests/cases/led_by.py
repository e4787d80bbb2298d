"""What a case is led to, as `assess` takes it: its causes in order, and the tests after it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.visit.cases.assessment import candidates_for
from troubleshoot.visit.cases.file import read_case


@frozen
class Led:
    """The causes by id with their chances, the likeliest first, and the tests that come next."""

    causes: Mapping[str, float]
    tests: Sequence[str]

    @property
    def first(self) -> str:
        return next(iter(self.causes))

    @property
    def next(self) -> str:
        return self.tests[0]


def led_by(
    knowledge: Knowledge, complaint: str, unit: Mapping[str, Any], read: Mapping[str, str]
) -> Led:
    """A file of a complaint, a unit and what was read: test or "test, place" -> outcome or text."""
    readings = []
    for where, said in read.items():
        test, _, at = where.partition(", ")
        told = "outcome" if said in {o.id for o in knowledge.tests[test].outcomes} else "text"
        readings.append({"test": test, told: said} | ({"at": at} if at else {}))
    plain = {"unit": dict(unit), "complaint": complaint, "readings": readings}
    found = Reasoner(knowledge).conclude(read_case(knowledge, plain))
    causes: dict[str, float] = {}
    for cause in found.causes:
        causes.setdefault(cause.fault.id, cause.probability)
    return Led(causes, [candidate.test.id for candidate in candidates_for(found)])
