"""What has come of the points of a round so far: sound, not sound, not judged, or not taken."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final, Literal

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.readings import Reading
from troubleshoot.reasoning.readings.withdrawal import ASKED_ANEW
from troubleshoot.safety.declared import sound_outcomes
from troubleshoot.safety.stops.record import Spot
from troubleshoot.visit.round.points import PointHere, points_here
from troubleshoot.visit.state import VisitState

Result = Literal["sound", "abnormal", "not-judged", "not-taken"]
_NOTHING_TOLD: Final = frozenset(
    {"cannot-judge", "no-reference", "no-second-instrument", "nothing-to-compare"}
)
"""Outcomes that say only why a look tells nothing: no cause is sought of them, nor kept."""
PointResult = Literal["sound", "in-part", "abnormal", "not-judged", "not-taken"]


@frozen
class SpotFound:
    """One test of a point at its place: the reading that counts, or why there is none."""

    spot: Spot
    result: Result
    reading: Reading | None = None
    why: str = ""


@frozen
class PointFound:
    """A point with what came of each of its tests.

    It is sound where all of it was taken and is; where some of it was not, it is so in part.
    """

    here: PointHere
    spots: tuple[SpotFound, ...]

    @property
    def result(self) -> PointResult:
        """The worst that was found; what was not taken does not hide what was."""
        found = {each.result for each in self.spots}
        if "abnormal" in found or "not-judged" in found:
            return "abnormal" if "abnormal" in found else "not-judged"
        if "sound" not in found:
            return "not-taken"
        return "sound" if self.is_whole else "in-part"

    @property
    def is_whole(self) -> bool:
        """Whether everything of it was taken."""
        return all(each.result != "not-taken" for each in self.spots)


def unsound(knowledge: Knowledge, state: VisitState, conclusions: Conclusions) -> tuple[Spot, ...]:
    """The findings of the round that count and are not sound, in the order of its points."""
    if state.round is None:
        return ()
    read = latest(conclusions)
    points = points_here(knowledge, state.unit, state.round.season)
    spots = dict.fromkeys(spot for here in points for spot in here.spots)
    return tuple(
        spot for spot in spots if spot in read and _result(knowledge, read[spot]) == "abnormal"
    )


def points_found(
    knowledge: Knowledge,
    state: VisitState,
    conclusions: Conclusions,
    why_not: Callable[[Spot], str],
) -> tuple[PointFound, ...]:
    """All points of the round as they stand; `why_not` says why a test was not taken."""
    if state.round is None:
        return ()
    read = latest(conclusions)
    points = points_here(knowledge, state.unit, state.round.season)

    def found(spot: Spot) -> SpotFound:
        reading = read.get(spot)
        if reading is None:
            return SpotFound(spot, "not-taken", why=why_not(spot))
        return SpotFound(spot, _result(knowledge, reading), reading, reading.why_invalid)

    return tuple(PointFound(here, tuple(map(found, here.spots))) for here in points)


def latest(conclusions: Conclusions) -> dict[Spot, Reading]:
    """The reading of each test and place that counts, or else the one that does not."""
    return {
        (r.test, r.at): r for r in reversed(conclusions.readings) if r.why_invalid not in ASKED_ANEW
    }


def _result(knowledge: Knowledge, reading: Reading) -> Result:
    test = knowledge.tests[reading.test]
    if not reading.valid or not reading.seen or not test.healthy:
        return "not-judged"
    if sound_outcomes(test).issuperset(reading.seen):
        return "sound"
    return "not-judged" if _NOTHING_TOLD.issuperset(reading.seen) else "abnormal"
