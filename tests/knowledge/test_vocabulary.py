"""The closed lists of words that rule files may use, against the code that knows them."""

from __future__ import annotations

from troubleshoot.knowledge.checks.grade_sums import RECKONED
from troubleshoot.knowledge.forms import vocabulary as words
from troubleshoot.reasoning.formulas import FORMULAS
from troubleshoot.reasoning.grades import PROBABILITY
from troubleshoot.reasoning.legs import REDUCERS
from troubleshoot.reasoning.places import PLACE_KINDS
from troubleshoot.safety.profiles import PROFILES


def test_every_formula_that_rules_may_name_is_there_and_no_other() -> None:
    assert set(words.FORMULAS) == set(FORMULAS)


def test_every_reducer_of_legs_is_there() -> None:
    assert set(words.LEG_REDUCERS) == {*REDUCERS, "farthest"}


def test_places_and_profiles_are_the_same_everywhere() -> None:
    assert set(words.PLACE_KINDS) == set(PLACE_KINDS)
    assert set(words.PROFILES) >= set(PROFILES)


def test_grades_are_checked_with_the_numbers_they_are_reckoned_with() -> None:
    assert RECKONED == PROBABILITY
