"""Every word that rule files may use has something behind it in the code that reckons with it."""

from __future__ import annotations

from typing import get_args

from troubleshoot.knowledge.vocabulary import PLACE_KINDS, FormulaName, LegReducer, Profile
from troubleshoot.reasoning.readings.formulas import FORMULAS
from troubleshoot.reasoning.readings.legs import REDUCERS
from troubleshoot.reasoning.unit.places import SPOKEN_KINDS
from troubleshoot.safety.profiles import PROFILES


def test_every_formula_that_rules_may_name_is_there_and_no_other() -> None:
    assert set(get_args(FormulaName)) == set(FORMULAS)


def test_every_reducer_of_legs_is_there() -> None:
    assert set(get_args(LegReducer)) == {*REDUCERS, "farthest"}


def test_every_kind_of_place_can_be_spoken_of() -> None:
    assert set(PLACE_KINDS) == {*SPOKEN_KINDS, "capacitor"}


def test_what_people_say_they_are_is_among_who_may_do_work() -> None:
    assert set(PROFILES) <= set(get_args(Profile))
