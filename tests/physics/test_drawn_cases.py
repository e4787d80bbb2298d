"""The bench's draws: known to the rule base, and read by the program without a word refused."""

from __future__ import annotations

import pytest

pytest.importorskip("scipy", reason="the optional extra physics is not installed")

from tests.bench.physics_cases import Ranked, calibration_error, case_of, drawn_cases, rows_of
from tests.bench.physics_draws import COOLING, HEATING
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.cases.file import read_case


def test_every_card_drawn_is_one_of_the_rule_base(shipped: Knowledge) -> None:
    assert set(COOLING) | set(HEATING) <= set(shipped.faults)


def test_every_drawn_case_is_understood_whole(shipped: Knowledge) -> None:
    cards = set()
    for drawn, dice in drawn_cases(len(COOLING) + len(HEATING) + 3, seed=7):
        complaint, rows = rows_of(drawn, dice)
        case = read_case(shipped, case_of(drawn, complaint, rows))
        assert case.complaint in shipped.complaints
        assert len(case.answers) > 10, drawn.card
        cards.add(drawn.card)
    assert cards == {"", *COOLING, *HEATING}


def test_calibration_is_the_distance_of_what_is_said_from_what_comes_true() -> None:
    """By hand: four said at 0.75 of which three come true, one at 0.2 that does not."""
    said = [Ranked("a", "", place, "a", 0.75) for place in (1, 1, 1, 2)]
    assert calibration_error(said) == pytest.approx(0.0)
    assert calibration_error([*said, Ranked("a", "", 0, "b", 0.2)]) == pytest.approx(0.04)
