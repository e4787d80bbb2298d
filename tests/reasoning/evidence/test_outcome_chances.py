"""Rows: what the grade words mean for one test, rule by rule."""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.building import evidence, test_of
from troubleshoot.knowledge.model import Test
from troubleshoot.knowledge.vocabulary import PROBABILITY, Choose, Grade
from troubleshoot.reasoning.evidence.outcome_chances import (
    NONE_OF_THEM,
    Cell,
    Signs,
    background,
    cells_of,
    pattern_row,
    report_column,
    reported,
    row,
    sign_row,
)

PICK = test_of("amps", "low", "high")
LADDER = test_of("charge", "low", "zero", "high", severity=(("low", "zero"), ("high",)))
SIGNS = test_of("face", "dirty", "bent", choose="several")


def made(test: Test, grades: dict[str, list[dict[str, object]]]) -> dict[str, float]:
    outcomes = [o.id for o in test.outcomes]
    return dict(row(test, cells_of(test, evidence(grades), outcomes), background(test, outcomes)))  # type: ignore[arg-type]


def signs_of(test: Test, cells: Sequence[Cell], outcomes: Sequence[str]) -> Signs:
    return sign_row(test, cells, background(test, outcomes))


def test_background_gives_the_healthy_outcome_nine_tenths_and_the_rest_even() -> None:
    assert background(PICK, ["normal", "low", "high"]) == pytest.approx(
        {"normal": 0.9, "low": 0.05, "high": 0.05}
    )


def test_background_without_a_healthy_outcome_is_even() -> None:
    test = test_of("when", "mornings", "rain", healthy=None)
    assert background(test, ["mornings", "rain"]) == {"mornings": 0.5, "rain": 0.5}


def test_a_test_may_state_its_own_background() -> None:
    test = test_of("amps", "low", "high", background={"low": 0.3})
    q = background(test, ["normal", "low", "high"])
    assert q["low"] == 0.3 and math.isclose(sum(q.values()), 1.0)
    assert q["normal"] == pytest.approx(0.7 * 0.9)


def test_an_unmentioned_test_has_exactly_the_background() -> None:
    assert made(PICK, {}) == dict(background(PICK, ["normal", "low", "high"]))


def test_a_grade_on_a_set_is_the_total_of_the_set_split_as_the_background() -> None:
    test = test_of("amps", "low", "high", background={"low": 0.08, "high": 0.02})
    made_row = made(test, {"often": [{"amps": ["low", "high"]}]})
    assert made_row["low"] + made_row["high"] == pytest.approx(PROBABILITY["often"])
    assert made_row["low"] / made_row["high"] == pytest.approx(4.0)


@pytest.mark.parametrize("grade", ["sometimes", "often", "almost-always"])
def test_a_grade_on_the_healthy_outcome_never_counts_against_the_fault(grade: str) -> None:
    made_row = made(PICK, {grade: [{"amps": "normal"}]})
    assert made_row["normal"] == pytest.approx(max(PROBABILITY[grade], 0.9))  # type: ignore[index]


@pytest.mark.parametrize("grade", ["seldom", "never"])
def test_seldom_and_never_lower_the_healthy_outcome(grade: str) -> None:
    assert made(PICK, {grade: [{"amps": "normal"}]})["normal"] == pytest.approx(
        PROBABILITY[grade]  # type: ignore[index]
    )


def test_a_grade_on_the_milder_belongs_to_the_worse_as_well() -> None:
    made_row = made(LADDER, {"often": [{"charge": "low"}]})
    assert made_row["low"] + made_row["zero"] == pytest.approx(PROBABILITY["often"])
    assert made_row["high"] < PROBABILITY["seldom"]


def test_a_graded_worse_outcome_keeps_its_own_grade() -> None:
    made_row = made(LADDER, {"often": [{"charge": "low"}], "seldom": [{"charge": "zero"}]})
    assert made_row["low"] == pytest.approx(PROBABILITY["often"])
    assert made_row["zero"] == pytest.approx(PROBABILITY["seldom"])


def test_a_milder_grade_reaches_up_to_the_next_graded_outcome_and_no_further() -> None:
    ladder = test_of("leak", "some", "more", "most", severity=(("some", "more", "most"),))
    made_row = made(ladder, {"often": [{"leak": "some"}], "seldom": [{"leak": "most"}]})
    assert made_row["some"] + made_row["more"] == pytest.approx(PROBABILITY["often"])
    assert made_row["most"] == pytest.approx(PROBABILITY["seldom"])


@pytest.mark.parametrize("grade", list(PROBABILITY))
def test_every_grade_on_the_milder_is_one_on_milder_or_worse(grade: Grade) -> None:
    made_row = made(LADDER, {grade: [{"charge": "low"}]})
    usual = background(LADDER, ["normal", "low", "zero", "high"])
    rarest = (usual["low"] + usual["zero"]) / 10
    expected = min(0.02, rarest) if grade == "never" else PROBABILITY[grade]
    assert made_row["low"] + made_row["zero"] == pytest.approx(expected)


def test_a_grade_on_the_healthy_outcome_never_reaches_a_bad_one() -> None:
    odd = test_of("charge", "low", severity=(("normal", "low"),))
    assert made(odd, {"seldom": [{"charge": "normal"}]})["normal"] == pytest.approx(0.14)


def test_a_grade_on_the_worse_says_nothing_of_the_milder() -> None:
    made_row = made(LADDER, {"often": [{"charge": "zero"}]})
    assert made_row["zero"] == pytest.approx(PROBABILITY["often"])
    assert made_row["low"] < PROBABILITY["seldom"]


def test_what_is_left_follows_the_background() -> None:
    made_row = made(LADDER, {"often": [{"charge": "high"}]})
    q = background(LADDER, ["normal", "low", "zero", "high"])
    for outcome in ("normal", "low", "zero"):
        assert made_row[outcome] == pytest.approx(0.27 * q[outcome] / (1 - q["high"]))


def test_a_stated_background_still_adds_up_where_outcomes_do_not_exist_here() -> None:
    test = test_of("when", "am", "pm", "rain", healthy=None,
                   background={"am": 0.5, "pm": 0.3, "rain": 0.2})  # fmt: skip
    assert background(test, ["am", "rain"]) == pytest.approx({"am": 5 / 7, "rain": 2 / 7})


def test_a_stated_background_that_leaves_nothing_still_leaves_a_little() -> None:
    test = test_of("when", "am", "pm", "rain", healthy=None, background={"am": 0.6, "pm": 0.4})
    q = background(test, ["am", "pm", "rain"])
    assert math.fsum(q.values()) == pytest.approx(1.0) and 0 < q["rain"] < 0.05


def test_grades_that_add_up_past_the_most_are_scaled() -> None:
    made_row = made(PICK, {"almost-always": [{"amps": "low"}], "often": [{"amps": "high"}]})
    assert made_row["low"] + made_row["high"] == pytest.approx(0.98)
    assert made_row["low"] / made_row["high"] == pytest.approx(0.92 / 0.73)


def test_outcomes_this_equipment_cannot_show_are_dropped_first() -> None:
    found = cells_of(PICK, evidence({"often": [{"amps": ["low", "high"]}]}), ["normal", "low"])
    assert found == [(frozenset({"low"}), PROBABILITY["often"])]


GRADE = st.sampled_from(list(PROBABILITY))


@given(st.dictionaries(st.sampled_from(["normal", "low", "zero", "high"]), GRADE, max_size=4))
def test_every_row_is_a_distribution_without_zeros(grades: dict[str, str]) -> None:
    stated: dict[str, list[dict[str, object]]] = {}
    for outcome, grade in grades.items():
        stated.setdefault(grade, []).append({"charge": outcome})
    made_row = made(LADDER, stated)
    assert math.isclose(math.fsum(made_row.values()), 1.0)
    assert all(p > 0 for p in made_row.values()) or len(grades) == 4


def all_sets(signs: Signs) -> dict[frozenset[str], float]:
    names = list(signs.signs)
    subsets = itertools.chain.from_iterable(
        itertools.combinations(names, n) for n in range(len(names) + 1)
    )
    return {frozenset(s): signs.chance(frozenset(s)) for s in subsets}


def test_signs_unseen_leave_the_healthy_outcome_its_share() -> None:
    usual = signs_of(SIGNS, [], ["normal", "dirty", "bent"])
    assert usual.none == pytest.approx(0.9)
    assert math.fsum(all_sets(usual).values()) == pytest.approx(1.0)


@given(st.sampled_from(["dirty", "bent"]), GRADE, st.none() | GRADE)
def test_a_row_of_signs_is_a_distribution_over_sets(
    sign: str, grade: str, healthy: str | None
) -> None:
    stated: dict[str, list[dict[str, object]]] = {grade: [{"face": sign}]}
    if healthy is not None:
        stated.setdefault(healthy, []).append({"face": "normal"})
    outcomes = ["normal", "dirty", "bent"]
    cells = cells_of(SIGNS, evidence(stated), outcomes)  # type: ignore[arg-type]
    assert math.fsum(all_sets(signs_of(SIGNS, cells, outcomes)).values()) == pytest.approx(1.0)


def test_a_grade_on_several_signs_is_the_chance_of_at_least_one() -> None:
    outcomes = ["normal", "dirty", "bent"]
    cells = cells_of(SIGNS, evidence({"often": [{"face": ["dirty", "bent"]}]}), outcomes)
    signs = signs_of(SIGNS, cells, outcomes)
    assert 1 - math.prod(1 - p for p in signs.signs.values()) == pytest.approx(PROBABILITY["often"])


def test_a_hard_report_and_the_limit_of_a_soft_one_are_the_same() -> None:
    row_ = {"a": 0.7, "b": 0.2, "c": 0.1}
    hard = report_column(row_, {"a": 1.0}, 0.03)
    assert hard == pytest.approx({"a": 0.97, "b": 0.015, "c": 0.015})
    soft = report_column(row_, {"a": 0.5, "b": 0.5}, 0.03)
    # (1 - e') x part + e' / K with e' = e K / (K - 1): on the diagonal a hard report has 1 - e.
    e = 0.03 * 3 / 2
    assert soft == pytest.approx({"a": (1 - e) / 2 + e / 3, "b": (1 - e) / 2 + e / 3, "c": e / 3})


def test_no_slip_writes_down_what_defines_its_fault() -> None:
    row_ = {"a": 0.899, "b": 0.1, "jumper": 0.0005, "c": 0.0005}
    report = report_column(row_, {"jumper": 1.0}, 0.03, row_)
    assert report == pytest.approx({"a": 0.0005, "b": 0.0005, "jumper": 0.97, "c": 0.0005})
    assert report_column(row_, {"b": 1.0}, 0.03, row_)["a"] == pytest.approx(0.01)


def test_never_clean_nor_cracked_speaks_of_both() -> None:
    outcomes = ["normal", "dirty", "bent"]
    cells = cells_of(SIGNS, evidence({"never": [{"face": ["normal", "bent"]}]}), outcomes)
    usual = signs_of(SIGNS, (), outcomes)
    signs = signs_of(SIGNS, cells, outcomes)
    assert signs.none == PROBABILITY["never"]
    assert signs.signs["bent"] < usual.signs["bent"]


def test_a_report_may_be_wrong_any_way_alike() -> None:
    blurred = reported({"a": 0.7, "b": 0.2, "c": 0.1}, 0.06)
    assert blurred["a"] == pytest.approx(0.94 * 0.7 + 0.03 * 0.3)
    assert math.fsum(blurred.values()) == pytest.approx(1.0)


def test_a_sign_may_be_called_none_beside_none_of_the_signs() -> None:
    test = test_of("amps", "none", "low", choose="several")
    made = signs_of(test, [(frozenset({"none"}), 0.92)], ["normal", "none", "low"])
    patterns = pattern_row(made)
    assert math.fsum(patterns.values()) == pytest.approx(1.0)
    assert patterns["none"] > 0.8 > patterns[NONE_OF_THEM]


@pytest.mark.parametrize("choose", ["one", "several"])
def test_never_speaks_against_a_fault_even_of_what_is_rare_anyway(choose: Choose) -> None:
    """Regression: "never" once made an outcome seen in one sound unit of 250 likelier."""
    test = test_of("amps", "welded", "low", choose=choose, background={"welded": 0.004})
    cells = [(frozenset({"welded"}), PROBABILITY["never"])]
    outcomes = ["normal", "welded", "low"]
    if choose == "several":
        made, usual = signs_of(test, cells, outcomes).signs, background(test, outcomes)
    else:
        usual = background(test, outcomes)
        made = row(test, cells, usual)
    assert made["welded"] == pytest.approx(usual["welded"] / 10)
