"""The three lines that a debrief opens with: the result, why, and one thing to do otherwise.

Who reads no further on a phone has what counts: of all that went wrong the one that cost most.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.practice.debrief_verdict import said
from troubleshoot.practice.lessons import decided
from troubleshoot.practice.reasoned import rivals
from troubleshoot.practice.scenario import TrueFault
from troubleshoot.practice.scoring import Call, Loss, Score
from troubleshoot.practice.session import Session
from troubleshoot.practice.slips import Slip, grave_kinds
from troubleshoot.reasoning.evidence.ranking import Cause
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.visit.telling.wording import counted

HEADS: Final = {
    "right": "Right.",
    "partly": "Partly right.",
    "wrong": "Wrong.",
    "shown": "Shown, as you asked.",
}
RIVALS_SAID: Final = 2
WORTH_SAYING: Final = 4
"""Points. Who lost fewer by time alone has nothing to do otherwise."""
INSTEAD: Final[Mapping[Loss, str]] = MappingProxyType(
    {
        "the unit left open": "put the unit back before the call.",
        "done on a guess": "read what sets a cause apart before anything is done for it.",
        "the cause behind": "ask what brought it about, and name what a reading shows.",
        "the repair": "repair the fault itself, not what is like it or comes of it.",
        "the proof": "prove it by what read wrong, the way it was read.",
        "hints": "say what you would look at before you ask for a hint.",
        "time": "take first what tells most for its minutes.",
    }
)


@frozen
class _Lesson:
    """Why a play is worth what it is, and what to do otherwise."""

    why: str
    otherwise: str


def first_lines(
    session: Session, call: Call, score: Score, deciding: Cause | None
) -> tuple[str, str, str]:
    """Result, why, and next time. `deciding`: the true cause, weighed by all that it shows."""
    lesson = next(_lessons(session, call, score, deciding))
    return _result(score), f"Why: {lesson.why}", f"Next time: {lesson.otherwise}"


def _result(score: Score) -> str:
    head = "Right, but a guess that came off." if score.came_off else HEADS[score.verdict]
    if score.failed:
        return f"FAILED ON SAFETY, whatever the answer ({head.rstrip('.').lower()}). 0 points."
    return f"{head} {score.points} points of 100."


def _lessons(
    session: Session, call: Call, score: Score, deciding: Cause | None
) -> Iterator[_Lesson]:
    """What there is to say, what weighs most first."""
    yield from _of_slips(session, score)
    truth = session.scenario.truth
    take = _untaken(session, deciding)
    if truth.stop is not None and session.stopped is None and score.verdict != "shown":
        why = "a STOP ended this job, and you went on."
        yield _Lesson(why, "type stop as soon as one stands, before all else.")
    if score.verdict == "shown":
        yield _Lesson("you asked for the answer.", take or "call what you have, and say a guess.")
    if score.verdict in ("wrong", "partly"):
        yield _Lesson(_why_wrong(session, call, score, bool(take)), take or _hold(truth.faults))
    if score.came_off:
        yield _Lesson(_left_standing(session, call), take or "read before you call.")
    yield _of_losses(session, score)


def _of_slips(session: Session, score: Score) -> Iterator[_Lesson]:
    """What could have hurt someone: of the kind that was tried again, else the first."""
    kinds = grave_kinds(session.slips)
    grave = [slip for slip in session.slips if slip.grave]
    if not grave:
        return
    slip = max(grave, key=lambda each: kinds[each.kind])
    if score.failed:
        came = "tried again after it had been explained."
    else:
        each = "" if len(kinds) == 1 else f", {len(kinds)} times, once for each kind"
        came = f"half the points{each}. The same again fails a play."
    yield _Lesson(f"{slip.tried}, {how_missed(slip)}: {came}", _order(slip))


def _order(slip: Slip) -> str:
    if slip.past_stop:
        return "type stop as soon as a STOP stands, before all else."
    return f"first {slip.gravest}, then {slip.tried}."


def how_missed(slip: Slip) -> str:
    """What a slip went without."""
    return "past a STOP" if slip.past_stop else f"without {slip.gravest or slip.missing[0]}"


def _untaken(session: Session, deciding: Cause | None) -> str:
    """The test to take that speaks most for what is true and was not taken; "" without one."""
    taken = {done.test.id for done in session.done}
    tests = session.knowledge.tests
    for weight in sorted(deciding.weights if deciding else (), key=lambda each: -each.weight):
        for name, _ in weight.tests:
            if weight.weight > 0 and name in tests and name not in {*taken, *CONFIRMED}:
                return f"take {tests[name].name} before the call."
    return ""


def _why_wrong(session: Session, call: Call, score: Score, could_read: bool) -> str:
    truth = session.scenario.truth
    true = {fault.fault for fault in truth.faults}
    called = {cause.fault for cause in call.causes}
    if truth.nothing_wrong:
        return "every reading lies where a sound unit's does."
    if called and called == true:
        return "the right cause, at the wrong place."
    if called & true:
        return "one of the causes, not all of them alone."
    if called & set(truth.behind):
        return "what lies behind it was called, not the fault itself."
    if could_read:
        return "what tells it from your call had not been read."
    if score.verdict == "partly":
        return "it is easily taken for what you called, and a reading tells them apart."
    return "what you had read spoke against your call."


def _hold(truth: tuple[TrueFault, ...]) -> str:
    if not truth:
        return "call nothing where nothing reads unsound."
    return "hold each unsound reading against a call before you make it."


def _left_standing(session: Session, call: Call) -> str:
    """Which rivals nothing that was read sets apart from the call."""
    beside = rivals(session.conclusions, call.causes)
    names = [said(session, TrueFault(cause.fault.id, cause.at)) for cause in beside]
    if not names:
        return "nothing that you had read spoke for it."
    more = f", and {len(names) - RIVALS_SAID} more" if len(names) > RIVALS_SAID else ""
    return f"what you had read left standing {'; '.join(names[:RIVALS_SAID])}{more}."


def _of_losses(session: Session, score: Score) -> _Lesson:
    """Of a right call: what cost most, or that there is nothing to better."""
    dearest = max(score.lost, key=lambda each: each[1], default=None)
    moment = decided(session)
    if session.stopped is not None:
        why = "a STOP ended this job, and you stopped."
    elif moment is not None:
        why = f"{moment.done.test.name} set it apart, at {moment.minutes:.0f} min."
    else:
        why = "what you had read set it apart."
    if dearest is None or dearest[1] < WORTH_SAYING:
        return _Lesson(why, "the same again.")
    what, points = dearest
    return _Lesson(why, f"{INSTEAD[what]} ({counted(points, 'point', 'points')})")
