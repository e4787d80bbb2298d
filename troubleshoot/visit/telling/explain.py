"""Why: why this question, why this cause, why not that one, and what an answer would change.

Explanations are data first; lines are made of the same weights that the ranking used.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace

from troubleshoot.knowledge.model import Test
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.evidence.grades import band
from troubleshoot.reasoning.evidence.ranking import Cause
from troubleshoot.reasoning.evidence.weighing import COMPLAINT, Weight
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.visit.telling.wording import at_place, percent

_STRENGTHS = ((2.0, "strongly"), (0.8, "clearly"), (0.25, "a little"), (0.0, "hardly"))
FOR_AND_AGAINST = 6


def strength(weight: float) -> str:
    """A weight of evidence in words: how far it moves the odds, in two figures."""
    word = next(word for least, word in _STRENGTHS if abs(weight) >= least)
    times = float(f"{math.exp(abs(weight)):.1e}")
    return f"{word} ({'x' if weight > 0 else '/'}{times:.{1 if times < 10 else 0}f})"


def because(conclusions: Conclusions, cause: Cause) -> Iterator[str]:
    """The findings for and against one cause, the weightiest first."""
    yield f"{cause.fault.name}{at_place(conclusions, cause)}: {percent(cause.probability)}"
    if not cause.weights:
        yield "  nothing found yet speaks for or against it; it is listed for how common it is"
    for weight in cause.weights[:FOR_AND_AGAINST]:
        found = said_findings(conclusions, weight)
        yield (f"  {'for' if weight.weight > 0 else 'against'} {strength(weight.weight)}: {found}")


def said_findings(conclusions: Conclusions, weight: Weight) -> str:
    """The findings of one weight in words."""
    return " and ".join(_said(conclusions, test, place) for test, place in weight.tests)


def _said(conclusions: Conclusions, test: str, place: Place | None) -> str:
    knowledge = conclusions.hypotheses.knowledge
    if test == COMPLAINT:
        complaint = knowledge.complaints[conclusions.case.complaint or ""]
        return f'the complaint "{complaint.says}"'
    reading = next((r for r in conclusions.readings if (r.test, r.at) == (test, place)), None)
    known = knowledge.tests[test]
    where = conclusions.case.unit.layout.shown(known.per, place)
    seen = ", ".join(map(known.spoken, reading.seen)) if reading else "not answered"
    typed = f" ({reading.text})" if reading and reading.text else ""
    return f"{known.name}{f' at {where}' if where else ''}: {seen}{typed}"


def why_not(conclusions: Conclusions, fault_id: str) -> Iterator[str]:
    """Why a cause is not on top: it cannot exist here, it has been repaired, or what speaks
    against it and what of its usual signs has not been looked at."""
    knowledge = conclusions.hypotheses.knowledge
    fault = knowledge.faults[fault_id]
    if fault_id in conclusions.case.repaired:
        yield f"{fault.name}: already repaired on this visit"
        return
    cause = next((c for c in conclusions.causes if c.fault.id == fault_id), None)
    if cause is None:
        needs = "; ".join(f"{f}: {' or '.join(w)}" for f, w in fault.exists_when.items())
        kind = "it is an effect, not a cause" if fault.is_effect else f"it needs {needs}"
        yield f"{fault.name}: not on this unit's list; {kind}"
        return
    yield from because(conclusions, cause)
    answered = {r.test for r in conclusions.readings}
    for item in fault.evidence:
        for finding in item.findings:
            if finding.test not in answered and item.grade in ("almost-always", "often"):
                test = knowledge.tests[finding.test]
                outcomes = " or ".join(map(test.spoken, finding.outcomes))
                share = band(item.grade)
                yield f"  not looked at yet: {test.name}: {outcomes} ({share} of such faults)"


def what_if(
    reasoner: Reasoner, conclusions: Conclusions, test: Test, at: Place | None, outcome: str
) -> Iterator[str]:
    """How the leading causes would stand after an answer that has not been given."""
    supposed = Answer(test.id, (outcome,), places=(at,))
    case = replace(conclusions.case, answers=(*conclusions.case.answers, supposed))
    after = reasoner.conclude(case)
    now = {(c.fault.id, c.at): c.probability for c in conclusions.causes}
    yield f"if {test.name} is {test.spoken(outcome)}:"
    for cause in after.causes[:4]:
        before = percent(now.get((cause.fault.id, cause.at), 0.0))
        where = at_place(after, cause)
        yield f"  {percent(cause.probability):>9} (now {before}) {cause.fault.name}{where}"
