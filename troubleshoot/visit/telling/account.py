"""The account of a case or a visit as plain data: the contract that scripts rely on."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from troubleshoot.knowledge.model import Hazard, Knowledge, Test
from troubleshoot.reasoning.chaining.clearing import is_of_a_repair
from troubleshoot.reasoning.choosing.next_test import Candidate
from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
from troubleshoot.reasoning.evidence.ranking import Cause
from troubleshoot.reasoning.readings.not_judged import NotJudged
from troubleshoot.reasoning.readings.readings import Reading
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.hazard_words import once_gone, said_standing
from troubleshoot.safety.stops.standing import Forbidden, standing_hazards
from troubleshoot.visit.hearing.proofs_wanted import proofs_on
from troubleshoot.visit.telling.wording import LIKELY

SCHEMA = 1
FILE, TECHNICIAN, NOBODY = "file", "technician", "nobody"
"""Who says that a thing was done or read, in each row of `asked`."""
NOT_EXAMINED = "not-examined"
"""The ending of a file that answers nothing: no finding calls the unit sound."""
NOT_IN_THE_FILE = "not in the file; taken as done for this account"
LEAST_SHOWN = 0.001
MOST_CAUSES = 12
WORTH_LISTING = 0.03
MOST_LISTED = 4
LEADING = 3
"""Causes of a shortlist of which it is told who may repair them."""
WOULD_SEPARATE = 5

Plain = dict[str, object]


def ending_of(conclusions: Conclusions) -> str:
    """How a case ends on what is known: stopped, named, nothing-wrong, outside or shortlist."""
    ranking = conclusions.ranking
    top = conclusions.causes[0].probability if conclusions.causes else 0.0
    if conclusions.stop is not None:
        return "stopped"
    if conclusions.beyond:
        return "outside"
    if conclusions.named is not None:
        return "named"
    if ranking.nothing_wrong >= max(top, ranking.outside, 0.5):
        return "nothing-wrong"
    if ranking.outside >= max(top, 0.5):
        return "outside"
    return "shortlist"


def account(
    conclusions: Conclusions,
    *,
    ending: str | None = None,
    stop: FiredHazard | None = None,
    asked: Sequence[Plain] = (),
    cautions: Iterable[Plain] = (),
    minutes: float = 0.0,
    candidates: Sequence[Candidate] = (),
) -> Plain:
    """The whole account; probabilities have four decimals."""
    ending = ending or ending_of(conclusions)
    return {
        "schema": SCHEMA,
        "ending": ending,
        "complaint": conclusions.case.complaint,
        "causes": [cause_account(conclusions, c) for c in shown_causes(conclusions)],
        "effects": [cause_account(conclusions, c) for c in conclusions.effects],
        "outside": round(conclusions.ranking.outside, 4),
        "beyond": list(conclusions.beyond),
        "nothing_wrong": round(conclusions.ranking.nothing_wrong, 4),
        "asked": list(asked),
        "computed": [_computed(conclusions, r) for r in conclusions.readings if r.computed],
        "cautions": [*_hazards(conclusions), *cautions],
        "stop": stop_account(stop or next(iter(conclusions.standing_stops), None)),
        "standing_stops": [stop_account(each) for each in _stops(conclusions)],
        "unexplained": [_unexplained(conclusions, r) for r in conclusions.unexplained],
        "not_judged": [_not_judged(conclusions, each) for each in conclusions.not_judged],
        "proofs": [line for c in _accepted(conclusions) for line in _proofs(conclusions, c)],
        "behind": [fault.id for fault in conclusions.behind],
        "minutes": round(minutes),
        "would_separate": would_separate(conclusions, ending, candidates),
    }


def shown_causes(conclusions: Conclusions) -> list[Cause]:
    """The causes worth listing."""
    likely = [c for c in conclusions.causes if c.probability >= LEAST_SHOWN]
    return likely[:MOST_CAUSES]


def listed_causes(conclusions: Conclusions) -> list[Cause]:
    """The causes that a screen lists, the likeliest first."""
    return [c for c in shown_causes(conclusions) if c.probability >= WORTH_LISTING][:MOST_LISTED]


def cause_to_repair(conclusions: Conclusions) -> Cause | None:
    """The cause whose repair is told: the one named, or a likely one alone on a shortlist."""
    if conclusions.named is not None:
        return conclusions.named
    listed = listed_causes(conclusions)
    is_alone = len(listed) == 1 and ending_of(conclusions) == "shortlist"
    return listed[0] if is_alone and listed[0].probability >= LIKELY else None


def causes_to_repair(conclusions: Conclusions) -> tuple[Cause, ...]:
    """The causes of which an ending tells who may repair, and what has to stand before it.

    That whose repair is told; else the leading ones, since any of them may be put right from there.
    """
    accused = cause_to_repair(conclusions)
    if accused is not None:
        return (accused,)
    is_open = ending_of(conclusions) in ("shortlist", "outside") and not conclusions.beyond
    return (*listed_causes(conclusions)[:LEADING],) if is_open else ()


def _accepted(conclusions: Conclusions) -> list[Cause]:
    named = conclusions.named
    return [named] if named is not None else []


def place_shown(conclusions: Conclusions, kind: str | None, place: Place | None) -> str | None:
    return conclusions.case.unit.layout.shown(kind, place)


def cause_account(conclusions: Conclusions, cause: Cause) -> Plain:
    """A cause, where it is, and its chance."""
    return {
        "id": cause.fault.id,
        "at": place_shown(conclusions, cause.fault.per, cause.at),
        "name": cause.fault.name,
        "probability": round(cause.probability, 4),
    }


def _test(conclusions: Conclusions, name: str) -> Test:
    return conclusions.hypotheses.knowledge.tests[name]


def taken(conclusions: Conclusions, reading: Reading) -> Plain:
    """A reading as it was handed in, with what was made of it."""
    test = _test(conclusions, reading.test)
    return {
        "test": reading.test,
        "at": place_shown(conclusions, test.per, reading.at),
        "outcome": ", ".join(reading.seen) or None,
        "text": reading.text,
        "valid": reading.valid,
        "said_by": FILE,
        "time": None,
        "minutes": round(test.minutes, 1),
        "work_state": test.work_state,
    }


def _computed(conclusions: Conclusions, reading: Reading) -> Plain:
    knowledge = conclusions.hypotheses.knowledge
    found = reading.classified
    test = _test(conclusions, reading.test)
    return {
        "test": reading.test,
        "at": place_shown(conclusions, test.per, reading.at),
        "value": None if found is None else round(found.value, 4),
        "unit": None if found is None else unit_shown(knowledge, found.quantity),
        "outcome": reading.seen[0] if reading.seen else None,
        "verdict": None if found is None else found.verdict,
    }


def unit_shown(knowledge: Knowledge, quantity: str) -> str:
    """The unit as scripts see it: a difference of temperatures is in F."""
    return knowledge.quantities[quantity].unit.removesuffix("-diff")


def _unexplained(conclusions: Conclusions, reading: Reading) -> Plain:
    test = _test(conclusions, reading.test)
    return {
        "test": reading.test,
        "at": place_shown(conclusions, test.per, reading.at),
        "outcome": ", ".join(reading.seen),
        "text": reading.text,
    }


def _not_judged(conclusions: Conclusions, each: NotJudged) -> Plain:
    """A reading that came to nothing, and what is missing to judge it."""
    test = _test(conclusions, each.reading.test)
    return {
        "test": test.id,
        "at": place_shown(conclusions, test.per, each.reading.at),
        "text": each.reading.text,
        "missing": list(each.missing),
    }


def _hazards(conclusions: Conclusions) -> Iterator[Plain]:
    """What stands, the gravest first; then what the unit's kind or a likely fault calls up.

    Each with its whole text: a name alone warns nobody. Under a STOP for the whole job nobody
    repairs, and what a likely fault calls up is of its repair: it would only hide the STOP.
    """
    shown = set()
    for standing in standing_hazards(conclusions):
        shown.add(standing.hazard.id)
        row = _caution(standing.hazard, standing.where)
        yield {**row, "stands": True, "says": list(standing.lines)}
    for fired in conclusions.hazards:
        is_beside = conclusions.stop is not None and is_of_a_repair(fired.because)
        if fired.hazard.id not in shown and not is_beside:
            row = _caution(fired.hazard, None)
            yield {**row, "stands": False, "says": list(said_standing(fired.hazard, stops=False))}


def _stops(conclusions: Conclusions) -> list[FiredHazard]:
    """Every STOP that stands, the widest first; one for a single step is the last."""
    halting = conclusions.standing_stops
    return [*halting, *(f for f in conclusions.hazards if f.stops and f not in halting)]


def _caution(hazard: Hazard, at: str | None) -> Plain:
    return {"id": hazard.id, "signal": hazard.signal, "at": at, "before": None}


def _proofs(conclusions: Conclusions, cause: Cause) -> Iterator[str]:
    """The proofs of a repair; what a hazard forbids now waits until it is gone."""
    forbidden = Forbidden(conclusions)
    for proof in proofs_on(conclusions.hypotheses.knowledge, conclusions.case.unit, cause.fault):
        test = None if proof.finding is None else _test(conclusions, proof.finding.test)
        hazard = None if test is None else forbidden.by(test, cause.at)
        yield proof.text if hazard is None else f"{proof.text} ({once_gone(hazard)})"


def stop_account(fired: FiredHazard | None) -> Plain | None:
    """A standing STOP with its scope, or nothing."""
    if fired is None or fired.hazard.stop is None:
        return None
    return {
        "id": fired.hazard.id,
        "scope": fired.hazard.stop.scope,
        "what_to_do": fired.hazard.what_to_do,
        "defer_to": fired.hazard.defer_to,
    }


def would_separate(
    conclusions: Conclusions, ending: str, candidates: Sequence[Candidate]
) -> list[Mapping[str, object]]:
    """The tests that would still tell the causes apart, and what they cost; none after a STOP."""
    if ending not in ("shortlist", "outside", "left"):
        return []
    return [
        {
            "test": c.test.id,
            "at": place_shown(conclusions, c.test.per, c.at),
            "minutes": round(c.minutes + c.switch_minutes),
            "work_state": c.test.work_state,
        }
        for c in candidates[:WOULD_SEPARATE]
    ]
