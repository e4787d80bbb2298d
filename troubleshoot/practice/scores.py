"""What plays amount to: the first play of a scenario counts, later ones are practice."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.practice.scenario import Scenario
from troubleshoot.practice.scoring import Score

NOBODY: Final = "apprentice"
"""Whose record it is where no name is given."""


@frozen
class Play:
    """One play as it stands in the record.

    `verdict`: right, partly or wrong; shown where the apprentice gave up, left where they broke off
    after something had been done. `sure`: sure, likely or guess, as said with the call; may be "".
    `parts`: things done to the unit on a guess. `shown_before`: its answer had been shown in this
    data folder under another name.
    """

    date: str
    apprentice: str
    scenario: str
    subsystem: str
    difficulty: int
    verdict: str
    failed: bool
    points: int
    minutes: int
    tests: int
    expert_minutes: int
    expert_tests: int
    hints: int
    guesses_close: int
    guesses: int
    reasoned: bool
    sure: str
    parts: int
    shown_before: bool


@frozen
class Progress:
    """How one subsystem stands: plays, the mean of the first play of each scenario, failures."""

    subsystem: str
    plays: int
    scenarios: int
    mean: float
    failures: int


def play_of(
    scenario: Scenario, score: Score, apprentice: str, date: str, guesses: Sequence[bool]
) -> Play:
    """A play for the record. `guesses`: for each guess at a sound reading, whether it was close."""
    return Play(
        date,
        apprentice,
        scenario.id,
        scenario.subsystem,
        scenario.difficulty,
        score.verdict,
        score.failed,
        score.points,
        score.minutes,
        score.tests,
        score.expert_minutes,
        score.expert_tests,
        score.hints,
        sum(guesses),
        len(guesses),
        score.reasoned,
        score.sure,
        score.parts,
        score.shown_before,
    )


def shows_for_little(play: Play, scenario: str) -> bool:
    """Whether a play of a scenario had its answer told for little work.

    It was asked for, or called with nothing to bear it out after half the expert's tests at most:
    wrong or right, the debrief says which.
    """
    little = not play.reasoned and play.tests * 2 <= play.expert_tests
    called = play.verdict in ("right", "partly", "wrong")
    return play.scenario == scenario and (play.verdict == "shown" or (called and little))


def counting(plays: Iterable[Play]) -> Iterator[tuple[Play, bool]]:
    """Each play, and whether it counts: the first of its scenario does."""
    known: set[str] = set()
    for play in plays:
        yield play, play.scenario not in known
        known.add(play.scenario)


def first_of(plays: Iterable[Play]) -> Mapping[str, Play]:
    """Scenario -> its first play, the one that counts."""
    return {play.scenario: play for play, counts in counting(plays) if counts}


def progress(plays: Sequence[Play]) -> tuple[Progress, ...]:
    """How each subsystem stands, by its name; a case that was only left is not told of."""
    plays = tuple(_ended(plays))
    first = first_of(plays)
    found = []
    for subsystem in sorted({play.subsystem for play in plays}):
        own = [play for play in plays if play.subsystem == subsystem]
        points = [play.points for play in first.values() if play.subsystem == subsystem]
        mean = sum(points) / len(points)
        failures = sum(play.failed for play in own)
        found.append(Progress(subsystem, len(own), len(points), mean, failures))
    return tuple(found)


def _ended(plays: Sequence[Play]) -> Iterator[Play]:
    """The plays of every case that was ended once: what its unit has may be known by then."""
    ended = {play.scenario for play in plays if play.verdict != "left"}
    yield from (play for play in plays if play.scenario in ended)


@frozen
class Calibration:
    """How often an apprentice was sure of a call and right or wrong, and in doubt and right."""

    sure_right: int
    sure_wrong: int
    doubtful_right: int


def calibration(plays: Iterable[Play]) -> Calibration:
    """How sureness and truth went together in the plays that count; what was not said is left out.

    A call that is partly right was wrong where one was sure of it; one that is right and that
    nothing read before it bears out is a guess, whatever was said.
    """
    said = [play for play in first_of(plays).values() if play.sure]
    guessed = [play for play in said if play.verdict == "right" and not play.reasoned]
    sure = [play.verdict == "right" for play in said if play.sure == "sure" and play not in guessed]
    doubtful = sum(play.sure != "sure" and play.verdict == "right" for play in said)
    return Calibration(sum(sure), len(sure) - sum(sure), doubtful)
