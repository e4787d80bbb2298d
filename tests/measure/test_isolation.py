"""How finely faults are told apart (IEEE 1522), on bases small enough to see."""

from __future__ import annotations

from tests.building import base, fault, test_of, unit_of
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.measure.isolation import Isolation, isolation
from troubleshoot.reasoning.conclude import Reasoner


def isolated(knowledge: Knowledge) -> Isolation:
    return isolation(Reasoner(knowledge), unit_of(knowledge))


def test_faults_with_signs_of_their_own_are_isolated_to_one() -> None:
    tests = [test_of("t", "low"), test_of("u", "low")]
    cards = [fault(name, {"almost-always": [{test: "low"}]}) for name, test in ("at", "bu")]
    found = isolated(base(tests, cards))
    assert (found.faults, found.to_one, found.to_three, found.ambiguities) == (2, 1.0, 1.0, ())


def test_faults_that_show_the_same_are_a_group_that_no_test_splits() -> None:
    alike = {"almost-always": [{"t": "low"}]}
    found = isolated(base([test_of("t", "low")], [fault("a", alike), fault("b", alike)]))
    assert (found.to_one, found.to_three) == (0.0, 1.0)
    assert {a.fault for a in found.ambiguities} == {"a", "b"}
    assert all(a.split_by is None for a in found.ambiguities)


def test_an_outcome_whose_name_is_none_isolates_like_any_other() -> None:
    """Regression: it was once answered as sound."""
    tests = [test_of("volts", "low", "none")]
    cards = [
        fault("open", {"almost-always": [{"volts": "none"}]}),
        fault("weak", {"almost-always": [{"volts": "low"}]}),
    ]
    assert isolated(base(tests, cards)).to_one == 1.0
