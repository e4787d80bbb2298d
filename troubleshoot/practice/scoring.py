"""What a play was worth: right, partly or wrong, and points out of a hundred.

Points are for the record only; common practice, no source. A right call before anything was read is
a guess, and worth no more than one that is partly right. Whatever could have hurt someone fails the
play, however right its answer.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final, Literal

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.expert import ExpertPath
from troubleshoot.practice.scenario import Scenario, TrueFault
from troubleshoot.practice.session import Session

Verdict = Literal["right", "partly", "wrong"]

CAUSE_POINTS: Final = {"right": 60, "partly": 30, "wrong": 0}
BEHIND_POINTS: Final = 5
REPAIR_POINTS: Final = 10
PROOF_POINTS: Final = 10
ECONOMY_POINTS: Final = 15
HINT_COSTS: Final = 3


@frozen
class Call:
    """What the apprentice commits to. `repair` and `proof`: the faults whose cards they are from.

    Without causes: nothing is wrong. `behind` without names: nothing lies behind it. None stands
    for what was not said. After a STOP nothing more has to be called.
    """

    causes: tuple[TrueFault, ...] = ()
    behind: tuple[str, ...] | None = None
    repair: str | None = None
    proof: str | None = None


@frozen
class Score:
    """The verdict and what it is made of; `points` is 0 for a failed play.

    `guessed`: right, but called before any test.
    """

    verdict: Verdict
    failed: bool
    guessed: bool
    points: int
    minutes: int
    tests: int
    expert_minutes: int
    expert_tests: int
    hints: int
    behind_right: bool | None
    repair_right: bool | None
    proof_right: bool | None


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
    true = {fault.fault for fault in scenario.truth.faults}
    asked_more = bool(call.causes) and not obeyed
    behind = _behind_right(scenario, call) if asked_more else None
    repair = call.repair in true if asked_more else None
    proof = call.proof in true if asked_more else None
    tests = sum(done.gain is not None for done in session.done)
    guessed = verdict == "right" and tests == 0 and not obeyed
    points = CAUSE_POINTS["partly" if guessed else verdict]
    if not asked_more and verdict == "right" and not guessed:
        points += BEHIND_POINTS + REPAIR_POINTS + PROOF_POINTS
    points += BEHIND_POINTS * bool(behind) + REPAIR_POINTS * bool(repair)
    points += PROOF_POINTS * bool(proof)
    if verdict == "right" and not guessed:
        points += economy(session.minutes, expert.minutes)
    points = max(0, points - HINT_COSTS * session.hints)
    return Score(
        verdict=verdict,
        failed=session.failed,
        guessed=guessed,
        points=0 if session.failed else points,
        minutes=round(session.minutes),
        tests=tests,
        expert_minutes=round(expert.minutes),
        expert_tests=len(expert.tests),
        hints=session.hints,
        behind_right=behind,
        repair_right=repair,
        proof_right=proof,
    )


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
