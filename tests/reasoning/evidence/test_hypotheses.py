"""Which hypotheses live on a unit, their priors, and the layers of a card."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tests.building import base, evidence, fault, finding, picture, test_of, unit_of
from tests.building import given as given_that
from troubleshoot.knowledge.model import Evidence, Fault, Knowledge, Outcome, Picture
from troubleshoot.reasoning.evidence.hypotheses import FaultPicture, Hypotheses, hypotheses_for
from troubleshoot.reasoning.evidence.outcome_chances import NONE_OF_THEM
from troubleshoot.reasoning.unit.places import Place

TESTS = [test_of(name, "low", "high") for name in "abcde"]
TXV = {"metering": ("txv",)}


def live(knowledge: Knowledge, **facts: Any) -> Hypotheses:
    return hypotheses_for(knowledge, unit_of(knowledge, **facts))


def only(card: Fault, **facts: Any) -> tuple[Hypotheses, FaultPicture]:
    found = live(base(TESTS, [card]), **facts)
    return found, found.causes[0].picture


def row(card: Fault, test: str, **facts: Any) -> dict[str, float]:
    found, drawn = only(card, **facts)
    made = found.row(drawn, test)
    assert not hasattr(made, "signs")
    return dict(made)


def either(grade: str, **findings: str) -> tuple[Evidence, ...]:
    return (Evidence(grade, tuple(finding(t, o) for t, o in findings.items())),)  # type: ignore[arg-type]


def test_a_fault_is_shared_over_the_places_where_it_can_be() -> None:
    knowledge = base(faults=[fault("pole", per="contactor"), fault("supply")])
    one, two = live(knowledge, circuits="one"), live(knowledge, circuits=2)
    assert [(h.fault.id, h.at, h.prior) for h in one.causes] == [
        ("pole", Place("contactor", 1), 5), ("supply", None, 5),
    ]  # fmt: skip
    assert [(h.at, h.prior) for h in two.causes if h.fault.id == "pole"] == [
        (Place("contactor", 1), 2.5), (Place("contactor", 2), 2.5),
    ]  # fmt: skip


def test_its_pictures_share_it_as_well() -> None:
    card = fault("low", pictures=(picture("mild", {}), picture("severe", {})))
    found = live(base(faults=[card]))
    assert [(h.picture.name, h.prior) for h in found.causes] == [("mild", 2.5), ("severe", 2.5)]


def test_pictures_that_this_unit_cannot_show_are_left_out() -> None:
    card = fault("low", pictures=(picture("any", {}), picture("valve", {}, when=TXV)))
    knowledge = base(faults=[card])
    assert [h.picture.name for h in live(knowledge, metering="txv").causes] == ["any", "valve"]
    assert [h.picture.name for h in live(knowledge, metering="fixed-orifice").causes] == ["any"]
    assert [h.picture.name for h in live(knowledge).causes] == ["any"]


def test_what_cannot_exist_here_is_off_the_list_and_the_unknown_is_not() -> None:
    knowledge = base(
        [replace(TESTS[0], exists_when=TXV), TESTS[1]],
        [fault("valve", exists_when=TXV), fault("section", per="condenser-fan-capacitor")],
    )
    assert [h.fault.id for h in live(knowledge).causes] == ["valve", "section"]
    orifice = live(knowledge, metering="fixed-orifice", condenser_fan_phase="three")
    assert orifice.causes == () and list(orifice.tests) == ["b"]


def test_effects_stand_apart_from_causes() -> None:
    knowledge = base(faults=[fault("iced", is_effect=True), fault("dirty")])
    found = live(knowledge)
    assert [h.fault.id for h in found.causes] == ["dirty"]
    assert [h.fault.id for h in found.effects] == ["iced"]


def test_an_override_replaces_the_grades_of_the_outcomes_it_names() -> None:
    layer = picture("", {"never": [{"a": "low"}]}, when=TXV)
    card = fault("f", {"often": [{"a": ["low"]}, {"b": "high"}], "seldom": [{"a": "high"}]},
                 overrides=(layer,))  # fmt: skip
    assert row(card, "a")["low"] == pytest.approx(0.73)
    assert row(card, "a", metering="txv")["low"] == pytest.approx(0.05 / 10)
    assert row(card, "a", metering="txv")["high"] == pytest.approx(0.14)
    assert row(card, "b", metering="txv") == pytest.approx(row(card, "b"))


def test_a_picture_speaks_over_the_card_and_the_override() -> None:
    layer = picture("", {"never": [{"a": "low"}]}, when=TXV)
    severe = picture("severe", {"almost-always": [{"a": "low"}]})
    card = fault("f", {"often": [{"a": "low"}]}, overrides=(layer,), pictures=(severe,))
    assert row(card, "a", metering="txv")["low"] == pytest.approx(0.92)


def test_a_given_of_an_upper_layer_replaces_one_about_the_same_tests() -> None:
    below = (given_that("b", "high", "never", a="high"),)
    above = Picture("", (), (given_that("b", "high", "almost-always", a="high"),), TXV)
    card = fault("f", {"often": [{"a": "high"}]}, given=below, overrides=(above,))
    high = {"low": 0.0, "normal": 0.0, "high": 1.0}
    for facts, chance in (({}, 0.02), ({"metering": "txv"}, 0.92)):
        _, drawn = only(card, **facts)
        (group,) = drawn.groups
        assert group.row_given("b", {"a": high})["high"] == pytest.approx(chance)


def test_outcomes_this_unit_cannot_show_take_no_part() -> None:
    hot = Outcome("hot", exists_when=TXV)
    test = replace(TESTS[0], outcomes=(*TESTS[0].outcomes, hot))
    # "Either a is hot, or b is low": without the outcome "hot" it is a plain grade on b.
    card = replace(fault("f"), evidence=either("often", a="hot", b="low"))
    knowledge = base([test, *TESTS[1:]], [card])
    valve, orifice = live(knowledge, metering="txv"), live(knowledge, metering="fixed-orifice")
    assert [set(g.tests) for g in valve.causes[0].picture.groups] == [{"a", "b"}]
    assert orifice.causes[0].picture.groups == ()
    assert dict(orifice.row(orifice.causes[0].picture, "b"))["low"] == pytest.approx(0.73)  # type: ignore[arg-type]
    gone = base([test], [replace(card, evidence=either("often", a="hot"))])
    assert live(gone, metering="fixed-orifice").causes[0].picture.cells == {}


def test_a_test_belongs_to_one_group_and_no_group_has_more_than_four() -> None:
    chain = tuple(
        given_that(second, "high", grade, **{first: "high"})
        for first, second, grade in (("a", "b", "often"), ("b", "c", "often"), ("c", "d", "often"),
                                     ("d", "e", "almost-always"))
    )  # fmt: skip
    _, drawn = only(fault("f", given=chain))
    members = [test for group in drawn.groups for test in group.tests]
    assert len(members) == len(set(members)) and all(len(g.tests) <= 4 for g in drawn.groups)
    # The strongest statement is always kept.
    assert any({"d", "e"} <= set(group.tests) for group in drawn.groups)


def test_of_statements_that_contradict_one_another_the_strongest_is_kept() -> None:
    """Regression: a visit on the rules of a site that said so ended in a traceback."""
    contradicting = (given_that("b", "low", "often", a="high"),
                     given_that("b", "high", "almost-always", a="high"))  # fmt: skip
    itself = given_that("a", "high", "often", a="high")
    high = {"low": 0.0, "normal": 0.0, "high": 1.0}
    for given in (contradicting, contradicting[::-1], (*contradicting, itself)):
        _, drawn = only(fault("f", {"often": [{"a": "high"}]}, given=given))
        (group,) = drawn.groups
        assert group.row_given("b", {"a": high})["high"] == pytest.approx(0.92)


def test_a_test_of_signs_joins_a_group_by_each_sign_alone_or_none() -> None:
    signs = test_of("face", "dirty", "bent", choose="several")
    card = fault("f", {"often": [{"face": "dirty"}]},
                 given=(given_that("a", "high", "often", face="normal"),))  # fmt: skip
    found = live(base([signs, *TESTS], [card]))
    (group,) = found.causes[0].picture.groups
    none = {NONE_OF_THEM: 1.0, "dirty": 0.0, "bent": 0.0}
    assert group.row_given("a", {"face": none})["high"] == pytest.approx(0.73)


def test_rows_are_made_once_and_the_background_is_shared() -> None:
    found, drawn = only(fault("f", {"often": [{"a": "low"}]}))
    assert found.row(drawn, "a") is found.row(drawn, "a")
    assert found.background("b") is found.background("b")
    assert found.row(drawn, "b") == found.background("b") == found.usual("b")


def test_evidence_from_tests_that_do_not_exist_here_is_dropped() -> None:
    absent = replace(TESTS[0], exists_when=TXV)
    card = replace(fault("f"), evidence=evidence({"often": [{"a": "low"}, {"b": "low"}]}))
    found = live(base([absent, *TESTS[1:]], [card]), metering="fixed-orifice")
    assert list(found.causes[0].picture.cells) == ["b"]
