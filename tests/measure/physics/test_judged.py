"""What is said of drawn units, counted by hand."""

from __future__ import annotations

import pytest

pytest.importorskip("scipy", reason="the optional extra physics is not installed")

from troubleshoot.measure.physics.judged import Judged, figures, of_two


def said(truth: str, *causes: str, chance: float = 0.5) -> Judged:
    return Judged(tuple(truth.split()), "hot", causes, chance, chance)


def test_calibration_is_the_distance_of_what_is_said_from_what_comes_true() -> None:
    """Four said at 0.75 of which three come true, one at 0.2 that does not."""
    four = [said("a", first, "a", chance=0.75) for first in ("a", "a", "a", "b")]
    assert figures(four).calibration == pytest.approx(0.0)
    assert figures([*four, said("a", "b", chance=0.2)]).calibration == pytest.approx(0.04)


def test_shares_are_of_units_with_a_fault_and_accusations_of_those_without() -> None:
    found = figures([
        said("a", "a", "b", "c", "d", chance=0.95),
        said("d", "a", "b", "c", "d", chance=0.92),
        said("c", "a", "b", "c", "d"),
        said("b", "a", "b", "c", "d"),
        said("", "a", "b", chance=0.97),
        said("", "a", "b"),
    ])  # fmt: skip
    assert (found.first, found.three) == (0.25, 0.75)
    assert (found.sure, found.sure_and_wrong, found.sound, found.accused) == (2, 1, 2, 1)


def test_of_two_faults_either_may_lead_and_the_other_is_to_follow() -> None:
    both = [
        said("a b", "b", "c", "d", "e", "a"),
        said("a b", "a", "c", "d", "e", "f", "b"),
        said("a b", "c", "a", "b"),
    ]
    after = [said("a", "c", "a"), said("b", "b", "c")]
    found = of_two(both, after)
    assert (found.one_first, found.both_in_five) == (2 / 3, 2 / 3)
    assert (found.other_first, found.other_in_three) == (0.5, 1.0)


def test_of_no_units_no_share_holds() -> None:
    assert of_two([said("a b", "c")], []).other_first == 0.0
    assert figures([said("", "a")]).first == 0.0
