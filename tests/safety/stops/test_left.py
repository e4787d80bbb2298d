"""What an earlier visit left off stays off until it is read sound wherever it was left."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.building import base, measured
from tests.safety.stops.test_bans import FAN, LOOK, ONE, ROOM, TWO, bad_at, concluded, hazard
from troubleshoot.knowledge.model import Hazard, Quantity, Read
from troubleshoot.reasoning.conclusions import FiredHazard
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.safety.stops.left import LEFT, is_over, with_left_before
from troubleshoot.safety.stops.record import LeftOn
from troubleshoot.visit.state import VisitState

VOLTS = measured("volts", {"normal": {"at_most": 5}}, reads=(Read("volts"),))
BITE, OTHER = hazard(), Hazard("burn", "WARNING", "keep off")
KNOWN = base(
    [LOOK, ROOM, FAN, VOLTS],
    hazards=[BITE, OTHER],
    quantities=[Quantity("volts", "V", "volts")],
)
AT_TWO = LeftOn("bite", (2,), ("look",))
AT_BOTH = LeftOn("bite", (1, 2), ("look",))
NOWHERE = LeftOn("bite", (), ("look",))


def look(*places: object, outcome: str = "normal", **more: object) -> list[Answer]:
    return [Answer("look", (outcome,), places=(at,), **more) for at in places]  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("left", "answers", "over"),
    [
        (AT_TWO, [], False),
        (AT_TWO, look(TWO), True),
        (AT_TWO, look(ONE), False),
        (AT_TWO, look(ONE, TWO), True),
        (AT_TWO, look(None), True),
        (AT_TWO, look(TWO, outcome="bad"), False),
        (AT_TWO, look(TWO, valid=False), False),
        (AT_TWO, [Answer("room", ("normal",))], False),
        (replace(AT_TWO, tests=("room", "look")), [Answer("room", ("normal",))], True),
        (replace(AT_TWO, tests=("room",)), [Answer("room", ("bad",))], False),
        (AT_BOTH, look(TWO), False),
        (AT_BOTH, look(ONE, TWO), True),
        (NOWHERE, [], False),
        (NOWHERE, look(ONE), True),
        (replace(AT_TWO, tests=("volts",)), [Answer("volts", (), "3 V")], True),
        (replace(AT_TWO, tests=("volts",)), [Answer("volts", (), "900 V")], False),
    ],
)
def test_only_its_own_test_read_sound_wherever_it_was_left_ends_it(
    left: LeftOn, answers: list[Answer], over: bool
) -> None:
    assert is_over(concluded(KNOWN, *answers), left) is over


@pytest.mark.parametrize(
    ("fired", "over"),
    [
        (FiredHazard(BITE, (2,), ("possible:look:bad",), found=True), False),
        (FiredHazard(BITE, (1, 2), ("possible:look:bad",), found=True), False),
        (FiredHazard(BITE, (1,), ("possible:look:bad",), found=True), True),
        (FiredHazard(BITE, (2,), ("fault:f",), found=False), True),
        (FiredHazard(OTHER, (2,), ("possible:room:bad",), found=True), True),
        (FiredHazard(BITE, (2,), (LEFT, f"{LEFT}:look"), found=True), True),
    ],
    ids=["there", "there too", "elsewhere", "only likely", "another danger", "as it was left"],
)
def test_what_is_found_there_again_is_not_over_though_it_was_read_sound(
    fired: FiredHazard, over: bool
) -> None:
    sound = concluded(KNOWN, *look(TWO))
    assert is_over(replace(sound, hazards=(fired,)), AT_TWO) is over


def left_on(*left: LeftOn, answers: list[Answer]) -> tuple[FiredHazard, ...]:
    """The dangers of a visit to a unit on which these were left off."""
    return with_left_before(KNOWN, VisitState(left_on=left), concluded(KNOWN, *answers)).hazards


def test_what_was_left_off_stands_where_it_was_left_until_it_is_over() -> None:
    stands = FiredHazard(BITE, (2,), (LEFT, f"{LEFT}:look"), found=True)
    assert left_on(answers=[]) == ()
    assert left_on(AT_TWO, answers=[]) == (stands,)
    assert left_on(AT_TWO, answers=look(TWO)) == ()
    assert left_on(AT_TWO, replace(AT_BOTH, hazard="burn"), answers=[]) == (
        stands,
        FiredHazard(OTHER, (1, 2), (LEFT, f"{LEFT}:look"), found=True),
    )


@pytest.mark.parametrize(
    ("scope", "stops"),
    [("this-step", True), ("until-made-safe", True), ("whole-job", False), (None, False)],
)
def test_what_stopped_the_whole_job_was_lifted_and_now_only_keeps_off_what_it_did(
    scope: str | None, stops: bool
) -> None:
    """Its repair was not proved: it stops nobody from reading it."""
    bite = hazard(scope=scope)
    known = base([LOOK, ROOM], hazards=[bite])
    after = with_left_before(known, VisitState(left_on=(AT_TWO,)), concluded(known))
    assert [each.hazard.stop for each in after.hazards] == [bite.stop if stops else None]


def test_a_danger_that_the_rules_do_not_name_any_more_was_told_of_and_that_is_all() -> None:
    assert left_on(replace(AT_TWO, hazard="gone-by-now"), answers=[]) == ()


def test_what_is_found_elsewhere_too_stands_at_both_by_its_finding() -> None:
    (found,) = left_on(AT_TWO, answers=bad_at(ONE))
    assert (found.circuits, found.because) == ((1, 2), ("possible:look:bad",))
    (found,) = left_on(AT_TWO, answers=bad_at(TWO))
    assert (found.circuits, found.found) == ((2,), True)


def test_what_is_only_likely_now_stands_as_it_was_left() -> None:
    likely = FiredHazard(BITE, (1,), ("fault:f",), found=False)
    guessed = replace(concluded(KNOWN), hazards=(likely,))
    after = with_left_before(KNOWN, VisitState(left_on=(AT_TWO,)), guessed)
    assert after.hazards == (FiredHazard(BITE, (2,), (LEFT, f"{LEFT}:look"), found=True),)
