"""Which answers of a file call up a hazard: they speak before anything is led to."""

from __future__ import annotations

from dataclasses import replace

from troubleshoot.frozen import frozen
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.stops.standing import tests_behind
from troubleshoot.visit.hearing.metered import TOO_LITTLE


@frozen
class Alarming:
    """The answers of a case that call up a hazard, in the file's order.

    `first`: those of a STOP wider than one step, or of a DANGER; nothing is led to before them.
    `others`: those that no visit may end without.
    """

    first: tuple[Answer, ...] = ()
    others: tuple[Answer, ...] = ()


def alarming(reasoner: Reasoner, case: Case) -> Alarming:
    """The answers of a case by whose tests a hazard is found.

    Of such a test every answer counts, since a later one may show that it is sound again; but one
    that would take a STOP away speaks for nothing, since no file lifts any, and a safety step that
    went well belongs where the work asks for it.
    """
    grave: set[str] = set()
    tests: set[str] = set()
    stopped: set[str] = set()
    lifting: list[Answer] = []
    for number, answer in enumerate(case.answers, 1):
        now = reasoner.conclude(replace(case, answers=case.answers[:number]))
        speaking: set[str] = set()
        for fired in now.hazards:
            if fired.found:
                behind = tests_behind(now, fired)
                speaking |= behind
                halts = fired in now.standing_stops
                if halts or fired.hazard.signal == "DANGER":
                    grave |= behind
                if halts:
                    stopped |= behind
        tests |= speaking
        if answer.test in stopped - speaking:
            lifting.append(answer)
    told = tuple(
        a
        for a in case.answers
        if a.test in tests and not _went_well(a) and not any(a is each for each in lifting)
    )
    return Alarming(
        tuple(a for a in told if a.test in grave), tuple(a for a in told if a.test not in grave)
    )


def _went_well(answer: Answer) -> bool:
    """Whether a safety step was confirmed; one read off a meter is told by its number alone.

    One that says too little to be confirmed tells nothing either.
    """
    if answer.test not in CONFIRMED or answer.valid is False:
        return answer.why_invalid in TOO_LITTLE
    return answer.outcomes == (CONFIRMED[answer.test],)
