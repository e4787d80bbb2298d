"""Places: what is spoken, what is understood, and what a finding speaks about."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.building import base, case, fault, test_of, unit_of
from troubleshoot.knowledge.vocabulary import PLACE_KINDS
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.unit.places import (
    Layout,
    Place,
    PlaceNotUnderstood,
    parse_place,
)

KNOWLEDGE = base()
TWIN = unit_of(KNOWLEDGE, circuits=2, condenser_fans=2, fans_serve="own-circuit").layout
SHARED = unit_of(KNOWLEDGE, circuits=2, condenser_fans=2, fans_serve="all").layout
ONE = unit_of(KNOWLEDGE, circuits="one", condenser_fans="one").layout


@pytest.mark.parametrize(
    ("text", "kind", "expected"),
    [
        ("circuit 2", "circuit", "circuit 2"),
        ("Circuit B", "circuit", "circuit 2"),
        ("contactor a", "contactor", "contactor 1"),
        ("condenser fan 1", "condenser-fan", "condenser fan 1"),
        ("capacitor condenser fan 1", "capacitor", "capacitor condenser fan 1"),
        ("condenser fan 2", "capacitor", "capacitor condenser fan 2"),
        ("condenser fan 2 capacitor", "capacitor", "capacitor condenser fan 2"),
        ("capacitor compressor 2", "capacitor", "capacitor compressor 2"),
        ("capacitor blower", "capacitor", "capacitor blower"),
        ("blower", "capacitor", "capacitor blower"),
        ("circuit 2", "compressor", "compressor 2"),
        ("circuit 2", "contactor", "contactor 2"),
        ("circuit 1", "condenser-fan", "condenser fan 1"),
        ("heat stage 2", "heat-stage", "heat stage 2"),
    ],
)
def test_words_are_understood(text: str, kind: str, expected: str) -> None:
    if text == "blower":
        with pytest.raises(PlaceNotUnderstood):
            parse_place(text, kind, TWIN)
    else:
        assert [str(p) for p in parse_place(text, kind, TWIN)] == [expected]


@pytest.mark.parametrize("text", ["circuit 3", "attic", "", "circuit 2 and 3", "compressor \x00"])
def test_other_words_are_refused_with_what_would_do(text: str) -> None:
    with pytest.raises(PlaceNotUnderstood) as refused:
        parse_place(text, "circuit", TWIN)
    assert refused.value.instead == 'say "circuit 1" or "circuit 2"'


@given(st.text(max_size=30), st.sampled_from(PLACE_KINDS))
def test_no_text_does_anything_but_name_places_or_be_refused(text: str, kind: str) -> None:
    try:
        found = parse_place(text, kind, TWIN)
    except PlaceNotUnderstood:
        return
    assert found and set(found) <= set(TWIN.places(kind))


@given(st.sampled_from(PLACE_KINDS), st.data())
def test_every_place_is_understood_as_it_is_spoken(kind: str, data: st.DataObject) -> None:
    place = data.draw(st.sampled_from([p for p in TWIN.places(kind) if p is not None]))
    assert parse_place(str(place), kind, TWIN) == (place,)


def test_one_of_a_kind_is_never_shown() -> None:
    assert ONE.shown("circuit", Place("circuit", 1)) is None
    assert TWIN.shown("circuit", Place("circuit", 1)) == "circuit 1"
    assert ONE.shown("capacitor", Place("compressor-capacitor", 1)) == "capacitor compressor 1"


def test_a_burnt_pole_on_contactor_2_never_condemns_compressor_1() -> None:
    assert not TWIN.speaks_about(Place("contactor", 2), Place("compressor", 1))
    assert TWIN.speaks_about(Place("contactor", 2), Place("compressor", 2))


def test_the_fan_section_of_a_dual_capacitor_never_accuses_the_compressors() -> None:
    fan_section = Place("condenser-fan-capacitor", 1)
    assert not ONE.speaks_about(fan_section, Place("compressor-capacitor", 1))
    assert not ONE.speaks_about(fan_section, Place("compressor", 1))
    assert ONE.speaks_about(fan_section, Place("condenser-fan", 1))


def test_supply_and_controls_speak_about_everything_and_everything_about_them() -> None:
    for kind in PLACE_KINDS:
        for place in TWIN.places(kind):
            assert TWIN.speaks_about(None, place) and TWIN.speaks_about(place, None)


def test_fans_that_serve_all_circuits_speak_about_each() -> None:
    fan = Place("condenser-fan", 2)
    assert SHARED.speaks_about(fan, Place("circuit", 1))
    assert not TWIN.speaks_about(fan, Place("circuit", 1))
    assert not SHARED.speaks_about(fan, Place("condenser-fan", 1))


def test_the_blower_s_capacitor_is_spoken_of_by_the_air_it_moves_and_by_no_motor() -> None:
    section = Place("blower-capacitor", 1)
    for kind in ("circuit", "heat-stage"):
        assert TWIN.speaks_about(Place(kind, 2), section)
    for kind in ("compressor", "contactor", "condenser-fan", "compressor-capacitor"):
        assert not TWIN.speaks_about(Place(kind, 1), section)
    assert TWIN.speaks_about(section, section) and TWIN.speaks_about(None, section)


def test_what_concerns_the_whole_unit_concerns_every_circuit() -> None:
    assert TWIN.circuits_of(None) == {1, 2} == TWIN.circuits_of(Place("heat-stage", 1))
    assert TWIN.circuits_of(Place("contactor", 2)) == {2}


@pytest.mark.parametrize("layout", [TWIN, SHARED, ONE])
def test_twins_never_speak_about_each_other(layout: Layout) -> None:
    for kind in PLACE_KINDS:
        places = [p for p in layout.places(kind) if p is not None]
        for one in places:
            for other in places:
                if one != other:
                    assert not layout.speaks_about(one, other)


def test_a_reading_of_which_the_place_is_open_is_shared_over_all() -> None:
    knowledge = base(
        [test_of("t", "low", per="circuit")],
        [fault("a", {"often": [{"t": "low"}]}, per="circuit"), fault("b")],
    )
    unit = unit_of(knowledge, circuits=2)
    reasoner = Reasoner(knowledge)
    both = tuple(unit.layout.places("circuit"))

    def chances(answer: Answer) -> dict[str, float]:
        found = reasoner.conclude(case(knowledge, answer, unit=unit))
        return {f"{c.fault.id} {c.at}": c.probability for c in found.causes}

    open_ = chances(Answer("t", ("low",), places=both, shared=True))
    placed = chances(Answer("t", ("low",), places=(Place("circuit", 1),)))
    assert open_["a circuit 1"] == pytest.approx(open_["a circuit 2"])
    assert placed["a circuit 2"] < open_["a circuit 2"] < placed["a circuit 1"]

    def blurred(p: float) -> float:
        return 0.98 * p + 0.02 * (1 - p)

    ratio = blurred(0.73) / blurred(0.1)
    prior_a, prior_b = 0.5, 1.0  # one fault at two places shares its prior
    expected = prior_a * (0.5 * ratio + 0.5) / prior_b
    assert open_["a circuit 1"] / open_["b None"] == pytest.approx(expected)


def test_evidence_keeps_its_place() -> None:
    knowledge = base(
        [test_of("poles", "burnt", per="contactor")],
        [fault("pole", {"almost-always": [{"poles": "burnt"}]}, per="contactor")],
    )
    unit = unit_of(knowledge, circuits=2)
    answer = Answer("poles", ("burnt",), places=(Place("contactor", 2),))
    found = Reasoner(knowledge).conclude(case(knowledge, answer, unit=unit))
    assert str(found.causes[0].at) == "contactor 2"
    assert found.causes[0].probability > 5 * found.causes[1].probability
