"""The peer: trained on other draws, told nothing of the rules."""

from __future__ import annotations

import pytest

pytest.importorskip("scipy", reason="the optional extra physics is not installed")
pytest.importorskip("sklearn", reason="the optional extra physics is not installed")

from troubleshoot.measure.physics import forest
from troubleshoot.measure.physics.cases import EVERYTHING, examined
from troubleshoot.measure.physics.draws import ROUND, singles
from troubleshoot.measure.physics.forest import Forest, training_set

FEW = ((), ("filters-loaded",), ("overcharge",), ("vent-blocked",), ("supply-voltage-low",))


def test_it_learns_no_unit_that_it_is_judged_by(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(forest, "ROUNDS", 1)
    others, own = training_set(1), tuple(examined(singles(len(ROUND), "1")))
    assert len(others) == len(own)
    assert not {str(unit.rows) for unit in others} & {str(unit.rows) for unit in own}


def test_it_knows_what_it_has_seen_and_says_the_same_again() -> None:
    """Of four kinds of fault and none, on the units that it was trained on."""
    units = list(examined(each for each in singles(2 * len(ROUND), "2") if each[0].cards in FEW))
    said = list(Forest(units, EVERYTHING, 1).judge(units))
    assert all(one.right for one in said if one.truth)
    assert all(0 <= one.chance <= one.among_faults <= 1 for one in said)
    assert said == list(Forest(units, EVERYTHING, 1).judge(units))
