"""What a play was worth: right, partly or wrong, reasoned or not, and points out of a hundred.

Points are for the record only; common practice, no source. A call counts in full only where what
was read before it separates it from its rivals; a guess that came off is worth half. What could
have hurt someone halves the points, once for each kind, and fails the play when it is tried again,
however right its answer. To save time is worth something beside a reasoned call only.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final, Literal

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.expert import ExpertPath
from troubleshoot.practice.reasoned import is_reasoned
from troubleshoot.practice.scenario import Scenario, TrueFault
from troubleshoot.practice.session import Session
from troubleshoot.practice.slips import grave_kinds

Verdict = Literal["right", "partly", "wrong", "shown", "left"]
"""What a call was; shown where the answer was asked for, left where the play was broken off."""
Sureness = Literal["sure", "likely", "guess", ""]
Loss = Literal[
    "the unit left open",
    "done on a guess",
    "the repair",
    "the proof",
    "the cause behind",
    "time",
    "hints",
]
"""What a right and reasoned call can lose points by."""

CAUSE_POINTS: Final = {"right": 60, "partly": 30}
BEHIND_POINTS: Final = 5
"""Wrongly said it costs as much: that nothing lies behind is true of most, and no guess pays."""
REPAIR_POINTS: Final = 10
PROOF_POINTS: Final = 10
ECONOMY_POINTS: Final = 15
HINT_COSTS: Final = 3
PART_COSTS: Final = 10
"""For each thing done to the unit on a guess, whatever the part costs."""
UNREAD_DIVISOR: Final = 6
"""Of a call that came off without a single reading: a guess of the caller's words."""
LEFT_COSTS: Final = 20
"""For a unit that is not put back: locked out, panels off, the fire panel still on test."""


@frozen
class Call:
    """What the apprentice commits to. `repair` and `proof`: the faults whose cards they are from.

    Without causes: nothing is wrong. `behind` without names: nothing lies behind it. None stands
    for what was not said. After a STOP nothing more has to be called. `sure`: how sure they say
    they are.
    """

    causes: tuple[TrueFault, ...] = ()
    behind: tuple[str, ...] | None = None
    repair: str | None = None
    proof: str | None = None
    sure: Sureness = ""


@frozen
class Score:
    """The verdict and what it is made of; `points` is 0 for a failed play.

    `reasoned`: what was read separates the call from its rivals. What was not called is not.
    `parts`: things done to the unit on a guess. `shown_before`: the answer had been shown under
    another name, which leaves half. `lost`: of a call that is right and reasoned, what it lost
    points by, before first slips halve what is left.
    """

    verdict: Verdict
    failed: bool
    reasoned: bool
    points: int
    minutes: int
    tests: int
    expert_minutes: int
    expert_tests: int
    hints: int
    behind_right: bool | None
    repair_right: bool | None
    proof_right: bool | None
    sure: Sureness = ""
    parts: int = 0
    shown_before: bool = False
    lost: tuple[tuple[Loss, int], ...] = ()

    @property
    def came_off(self) -> bool:
        """Whether the call is right, and nothing that was read separates it."""
        return self.verdict == "right" and not self.reasoned


def verdict_on(knowledge: Knowledge, scenario: Scenario, call: Call, obeyed: bool) -> Verdict:
    """Whether a call is right.

    Where the truth is a STOP, obeying it is right. Partly: some of the faults, the right one at
    another place, one that lies behind, or one easily taken for it.
    """
    truth = scenario.truth
    if truth.stop is not None and obeyed:
        return "right"
    if truth.nothing_wrong:
        return "wrong" if call.causes else "right"
    true = {fault.fault for fault in truth.faults}
    called = {cause.fault for cause in call.causes}
    if called == true and all(_same_place(cause, truth.faults) for cause in call.causes):
        return "right" if truth.stop is None else "partly"
    if called & true or called & set(truth.behind):
        return "partly"
    alike = {name for fault in true for name in knowledge.faults[fault].look_alikes}
    return "partly" if called and called <= alike else "wrong"


def _same_place(cause: TrueFault, truths: Sequence[TrueFault]) -> bool:
    """Whether a cause is called where it is; a truth without a place is everywhere."""
    return any(t.fault == cause.fault and t.at in (None, cause.at) for t in truths)


def score_of(session: Session, call: Call, expert: ExpertPath) -> Score:
    """The score of a finished play."""
    scenario = session.scenario
    obeyed = session.stopped is not None
    verdict = verdict_on(session.knowledge, scenario, call, obeyed)
    reasoned = obeyed or _is_reasoned(session, call)
    true = {fault.fault for fault in scenario.truth.faults}
    asked_more = bool(call.causes) and not obeyed
    behind = _behind_right(scenario, call) if asked_more else None
    repair = call.repair in true if asked_more else None
    proof = call.proof in true if asked_more else None
    points = CAUSE_POINTS.get(verdict, 0)
    if not asked_more and verdict == "right":
        points += BEHIND_POINTS + REPAIR_POINTS + PROOF_POINTS
    points += REPAIR_POINTS * bool(repair)
    if behind is not None and call.behind is not None:
        points += BEHIND_POINTS if behind else -BEHIND_POINTS
    points += PROOF_POINTS * bool(proof)
    if not reasoned:
        points //= 2 if read_anything(session) else UNREAD_DIVISOR
    elif verdict == "right":
        points += economy(session.minutes, expert.whole_minutes)
    points -= HINT_COSTS * session.hints + PART_COSTS * parts_on_a_guess(session)
    points -= LEFT_COSTS * bool(session.left_open)
    points = max(0, points) >> len(grave_kinds(session.slips))
    score = replace(
        without_call(session, expert, verdict),
        reasoned=reasoned,
        points=0 if session.failed else points,
        behind_right=behind,
        repair_right=repair,
        proof_right=proof,
        sure=call.sure,
    )
    if not reasoned or verdict != "right":
        return score
    return replace(score, lost=tuple(_lost(session, call, score, expert)))


def _lost(
    session: Session, call: Call, score: Score, expert: ExpertPath
) -> Iterator[tuple[Loss, int]]:
    """What a right and reasoned call lost points by; to a hundred it makes what is left."""
    said = 2 if call.behind is not None else 1
    lost: dict[Loss, int] = {
        "the unit left open": LEFT_COSTS * bool(session.left_open),
        "done on a guess": PART_COSTS * score.parts,
        "the repair": REPAIR_POINTS * (score.repair_right is False),
        "the proof": PROOF_POINTS * (score.proof_right is False),
        "the cause behind": BEHIND_POINTS * said * (score.behind_right is False),
        "time": ECONOMY_POINTS - economy(session.minutes, expert.whole_minutes),
        "hints": HINT_COSTS * session.hints,
    }
    yield from ((what, points) for what, points in lost.items() if points)


def once_shown(score: Score) -> Score:
    """The score of a play whose answer had been shown under another name: half."""
    return replace(score, points=score.points // 2, shown_before=True)


def without_call(session: Session, expert: ExpertPath | None, verdict: Verdict) -> Score:
    """A play as far as it came, worth no points: what was paid, beside the expert's.

    Without the expert's, which takes a moment to find, that counts as nothing.
    """
    return Score(
        verdict=verdict,
        failed=session.failed,
        reasoned=False,
        points=0,
        minutes=round(session.minutes),
        tests=sum(done.gain is not None for done in session.done),
        expert_minutes=round(expert.whole_minutes) if expert else 0,
        expert_tests=len(expert.tests) if expert else 0,
        hints=session.hints,
        behind_right=None,
        repair_right=None,
        proof_right=None,
        parts=parts_on_a_guess(session),
    )


def read_anything(session: Session) -> bool:
    """Whether any test was taken, beside the safety steps."""
    return any(done.gain is not None for done in session.done)


def parts_on_a_guess(session: Session) -> int:
    """How many things were done to the unit that no reading had called for."""
    return sum(done.guessed for done in session.deeds)


def _is_reasoned(session: Session, call: Call) -> bool:
    """As it stands at the call, or as it stood before anything was done to the unit."""
    reasoner = session.decider.reasoner
    moments = (session.conclusions, *session.before_deeds)
    true = session.scenario.truth.faults
    return any(is_reasoned(reasoner, session.start, now, call.causes, true) for now in moments)


def economy(minutes: float, expert_minutes: float) -> int:
    """All points for the expert's time or less, none for three times as long."""
    over = minutes / max(expert_minutes, 1.0) - 1
    return round(ECONOMY_POINTS * min(1.0, max(0.0, 1 - over / 2)))


def _behind_right(scenario: Scenario, call: Call) -> bool:
    """Nothing behind is right where nothing is; otherwise one of the true ones has to be named."""
    if call.behind is None:
        return False
    wanted = set(scenario.truth.behind)
    return bool(wanted & set(call.behind)) if wanted else not call.behind
