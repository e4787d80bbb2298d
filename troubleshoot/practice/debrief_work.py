"""How the work of a play went, beside the expert's: time, worth of tests, guesses, slips, the way.

Tests that were worth as much stand in one line, and so do moves of the expert with one reason.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.spoken import spoken
from troubleshoot.practice.debrief_first import how_missed
from troubleshoot.practice.expecting import Expected
from troubleshoot.practice.expert import ExpertPath
from troubleshoot.practice.played import Done
from troubleshoot.practice.scoring import LEFT_COSTS, Score
from troubleshoot.practice.session import HINT_MINUTES, Session
from troubleshoot.practice.slips import Slip
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.visit.telling.wording import counted

WORTH: Final = (
    (0.6, "a great deal"),
    (0.25, "much"),
    (0.08, "something"),
    (0.02, "little"),
    (0.0, "next to nothing"),
)
"""Expected gain in bits, from the highest down, in words (common practice, no source)."""
FIRST_SHOWN: Final = 4
LAST_SHOWN: Final = 3
"""So many lines of the expert's way are told from its beginning, and from its end."""


def work_done(session: Session, score: Score, expected: Sequence[Expected]) -> Iterator[str]:
    """Minutes and tests beside the expert's, what each test was worth, guesses, and slips."""
    yield (
        f"You: {score.minutes} min, {counted(score.tests, 'test', 'tests')}. "
        f"Expert: {score.expert_minutes} min, {counted(score.expert_tests, 'test', 'tests')}."
    )
    if score.lost:
        yield f"Points lost: {', '.join(f'{what} {points}' for what, points in score.lost)}."
    if session.exposed_minutes:
        yield f"Near line volts: {session.exposed_minutes:.0f} min."
    if score.hints:
        yield f"Hints: {score.hints}, {score.hints * HINT_MINUTES:.0f} min of the total."
    yield from _called_back(session)
    if score.verdict not in ("shown", "left") and session.left_open:
        left = "; ".join(session.left_open)
        yield f"You left the unit with: {left}. It is put back first ({LEFT_COSTS} points)."
    yield from _worth_of_tests(session)
    yield from _guesses(expected)
    yield from _deeds(session)
    yield from _slips(session.slips)


def _called_back(session: Session) -> Iterator[str]:
    """Whether somebody who was about to reach in was stopped."""
    who = session.scenario.reaching_in
    if who and session.called_back:
        yield f"You stopped {who} before hands went in: right."
    elif who:
        yield f"You let {who} reach in: stop comes first, before any test."


def worth(gain: float) -> str:
    """An expected gain in words."""
    return next(words for least, words in WORTH if gain >= least)


def _worth_of_tests(session: Session) -> Iterator[str]:
    """What each test could have changed in the ranking when it was taken, the most first."""
    taken = [done for done in session.done if done.gain is not None]
    if taken:
        yield "What your tests could have changed:"
    for _, words in WORTH:
        names = [_named(session, done) for done in taken if worth(done.gain or 0.0) == words]
        if names:
            yield f"  {words}: {'; '.join(_each_once(names))}"


def _named(session: Session, done: Done) -> str:
    at = done.at if isinstance(done.at, Place) else None
    where = session.scenario.unit.layout.shown(done.test.per, at)
    return f"{done.test.name} at {where}" if where else done.test.name


def _each_once(lines: Iterable[str]) -> Iterator[str]:
    """Each line once, in order of its first time, with how often it came."""
    for line, times in Counter(lines).items():
        yield line if times == 1 else f"{line} ({times} times)"


def _guesses(expected: Sequence[Expected]) -> Iterator[str]:
    said = [each for each in expected if each.nearness != "not-said"]
    if said:
        close = sum(each.nearness == "close" for each in said)
        yield f"What a sound unit reads: you knew {close} of {len(said)}."
    yield from _each_once(
        f"  {each.test.name}: you said {each.said}; it is {each.band}"
        for each in said
        if each.nearness != "close"
    )


def _deeds(session: Session) -> Iterator[str]:
    """What was done to the unit, with what it met and what it cost."""
    if session.deeds:
        yield "What you did to the unit:"
    for done in session.deeds:
        met = "it put right what was wrong" if done.met else "nothing was wrong there"
        if done.deed.makes:
            met = "by feel, which makes a fault or hides one"
        guess = "; on a guess" if done.guessed else ""
        yield f"  {done.deed.said} ({spoken(done.deed.part_cost)}): {met}{guess}."


def _slips(slips: Sequence[Slip]) -> Iterator[str]:
    for grave, head in (
        (True, "Stopped, it could have hurt someone:"),
        (False, "Stopped, it would have spoilt the work:"),
    ):
        chosen = [slip for slip in slips if slip.grave == grave]
        if chosen:
            yield head
        yield from _each_once(f"  {slip.tried}, {how_missed(slip)}" for slip in chosen)


def experts_way(knowledge: Knowledge, expert: ExpertPath) -> Iterator[str]:
    """The expert's tests with their reasons, how it ended, and that the unit is put back."""
    steps = sum(move.is_step for move in expert.moves)
    yield f"The expert's way, with {counted(steps, 'safety step', 'safety steps')} between:"
    lines = [
        (len(names), f"{'; '.join(_each_once(names))}{f': {reason}' if reason else ''}")
        for reason, moves in groupby(expert.tests, key=lambda move: move.reason)
        if (names := [knowledge.tests[move.test].name for move in moves])
    ]
    left_out = range(FIRST_SHOWN, len(lines) - LAST_SHOWN)
    for number, (_, line) in enumerate(lines):
        if number not in left_out or len(left_out) == 1:
            yield f"  {line}"
        elif number == left_out.start:
            between = sum(tests for tests, _ in lines[left_out.start : left_out.stop])
            yield f"  ... {counted(between, 'test', 'tests')} more ..."
    ending = {
        "named": "and the cause is named",
        "stopped": "and a STOP ends it",
        "nothing-wrong": "and nothing is wrong",
    }.get(expert.ending, "and no test pays any more")
    yield f"  {ending}"
    if expert.back:
        back = counted(len(expert.back), "safety step", "safety steps")
        yield f"  and the unit is put back: {back}, {expert.back_minutes:.0f} min"
