"""Assessing a case at once: all readings taken, causes ranked, nothing asked."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from typing import Any

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.choosing.asking import Asking
from troubleshoot.reasoning.choosing.looked_at_first import rules_first
from troubleshoot.reasoning.choosing.next_test import Candidate
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.answers import Case
from troubleshoot.reasoning.unit.places import Place, spoken, with_place
from troubleshoot.safety.needs import needs_of
from troubleshoot.safety.stops.standing import Forbidden
from troubleshoot.safety.unit_at_work import unit_at_work
from troubleshoot.visit.cases.edge import edge_is_open, protection_first
from troubleshoot.visit.cases.kept_off import runs_what_is_kept_off
from troubleshoot.visit.cases.nothing_lifts import conclude_file
from troubleshoot.visit.cases.rows import READ_BESIDE_STOP, row_in_words, rows_of
from troubleshoot.visit.cases.spoken import dangers_told
from troubleshoot.visit.telling.account import (
    WOULD_SEPARATE,
    Plain,
    account,
    ending_of,
    place_shown,
    shown_causes,
)
from troubleshoot.visit.telling.as_read import read_otherwise
from troubleshoot.visit.telling.wording import (
    OUTSIDE_WHAT_THE_RULES_KNOW,
    cause_line,
    effect_line,
    not_judged_line,
)

_TYPICAL_SWITCH = {"any": 0.0, "running": 0.0, "running-open": 5.0, "energised-open": 8.0}
_LOCKED_OUT_SWITCH = 15.0
"""Minutes to reach a work state from a unit as found (common practice, no source)."""


def typical_switch(test: Test, place: Place | None) -> float:
    """Minutes to reach a test's work state from a unit as it is found."""
    return _TYPICAL_SWITCH.get(test.work_state, _LOCKED_OUT_SWITCH)


def candidates_for(conclusions: Conclusions) -> tuple[Candidate, ...]:
    """Tests that would still separate the causes, best first, from a unit as it is found.

    What a rule would look at first comes before the rest, as it does on a visit.

    None that a standing hazard forbids or that runs what it keeps off, nor one that needs such a
    test; nothing on the roof while nothing protects at its edge.
    """
    asking = Asking(
        conclusions.hypotheses.knowledge,
        conclusions.case.unit,
        conclusions.hypotheses.tests.values(),
    )
    done = frozenset((r.test, r.at) for r in conclusions.readings) | conclusions.case.skipped
    forbidden = Forbidden(conclusions)
    at_work = unit_at_work(conclusions.case.unit)
    off_the_roof = edge_is_open(conclusions)
    runs = runs_what_is_kept_off(conclusions)

    def unfit(test: Test, place: Place | None) -> bool:
        if off_the_roof and needs_of(test, spoken(place), at_work).roof:
            return True
        return forbidden.by(test, place) is not None or runs(test, place)

    def asks(test: Test, place: Place | None) -> tuple[Test, ...]:
        asked = asking.asks(test, place, conclusions.values)
        return () if any(unfit(each, place) for each in (test, *asked)) else asked

    found = conclusions.candidates(done, asks, typical_switch)
    layout = conclusions.case.unit.layout
    return rules_first(conclusions.procedures, found, layout, conclusions.readings)


def assessed(reasoner: Reasoner, case: Case) -> Conclusions:
    """Everything that follows from a case as it is handed in, its words heard as well."""
    told = tuple(hazard.id for hazard, _ in dangers_told(reasoner.knowledge, case))
    return conclude_file(reasoner, replace(case, stops=told))


def assess_case(knowledge: Knowledge, case: Case) -> tuple[Plain, tuple[str, ...]]:
    """The account of a case for scripts, and the same in lines for people."""
    reasoner = Reasoner(knowledge)
    conclusions = assessed(reasoner, case)
    ending = ending_of(conclusions)
    candidates = candidates_for(conclusions) if ending == "shortlist" else ()
    rows = rows_of(reasoner, case, case.answers)
    plain = account(
        conclusions,
        ending=ending,
        asked=rows,
        candidates=candidates,
        minutes=math.fsum(knowledge.tests[str(row["test"])].minutes for row in rows),
    )
    first = [step.id for step in protection_first(conclusions)]
    return {**plain, "before_anything": first}, tuple(_lines(conclusions, plain, candidates, rows))


def _lines(
    conclusions: Conclusions,
    plain: Mapping[str, Any],
    candidates: tuple[Candidate, ...],
    rows: Sequence[Plain],
) -> Iterator[str]:
    for caution in plain["cautions"]:  # what stands first, then what a likely fault calls up
        yield from caution["says"]
        yield ""
    if conclusions.standing_stops and rows:
        yield f"{READ_BESIDE_STOP}:"
        for row in rows:
            yield f"  {row_in_words(conclusions.hypotheses.knowledge, row)}"
    for reading in conclusions.readings:
        test = conclusions.hypotheses.knowledge.tests[reading.test]
        if told := read_otherwise(conclusions.hypotheses.knowledge, test, reading.text or ""):
            yield f"{test.name}: {told}"
    if conclusions.beyond:
        yield from (*conclusions.beyond, OUTSIDE_WHAT_THE_RULES_KNOW)
        return
    none = "Nothing was read, and nothing is judged. The commonest causes:"
    sound = "Nothing wrong on these readings. Next likeliest:"
    yield {
        "named": "The cause:",
        "shortlist": "Not settled. The likeliest causes:",
        "nothing-wrong": sound if conclusions.readings else none,
        "outside": "These readings fit nothing in the rule base well. Nearest:",
        "stopped": "The diagnosis stops here. On these readings the causes are:",
    }[plain["ending"]]
    for cause in shown_causes(conclusions)[:6]:
        yield "  " + cause_line(conclusions, cause)
    for effect in conclusions.effects:
        yield "  " + effect_line(conclusions, effect)
    for reading in conclusions.unexplained:
        test = conclusions.hypotheses.knowledge.tests[reading.test]
        yield f"  not explained: {test.name}: {', '.join(map(test.spoken, reading.seen))}"
    for row in plain["not_judged"]:
        yield f"  not judged: {not_judged_line(conclusions.hypotheses.knowledge, row)}"
    for step in protection_first(conclusions):
        yield f"Before anything at the unit: {step.name}."
    if candidates:
        yield "These would tell them apart:"
        for candidate in candidates[:WOULD_SEPARATE]:
            minutes = round(candidate.minutes + candidate.switch_minutes)
            place = place_shown(conclusions, candidate.test.per, candidate.at)
            yield f"  {with_place(candidate.test.name, place)} (about {minutes} min)"
