"""Several dangers in one breath: which are told of, and which are only part of a longer one."""

from __future__ import annotations

import pytest

from tests.building import base
from tests.safety.hearing.invented import ANY, job, lesser
from troubleshoot.knowledge.model import Hazard
from troubleshoot.safety.hearing.dangers import cried, is_unnamed, named, spoken_of
from troubleshoot.safety.hearing.reporting import reported

SMELL, OIL = job("smell", "gas smell"), job("oil", "oil smell")
NINE, SEVENTY = lesser("nine", "co 9"), job("seventy", "co 70")


@pytest.mark.parametrize(
    ("hazards", "typed", "found"),
    [
        ([SMELL, job("wires", "hot wire sparks")], "gas smell, hot wire sparks", "smell wires"),
        ([SMELL, job("drip", "oil drips down")], "gas smell and oil drips down", "smell drip"),
        ([OIL, job("burnt", "burning oil smell")], "there is a burning oil smell", "burnt"),
        ([OIL, job("paint", "oil smell of paint")], "it is an oil smell of paint", "paint"),
        ([OIL, job("paint", "oily oil smell of paint")], "oily oil smell of paint", "paint"),
        ([NINE, SEVENTY], "we have a co of 12 in here", "nine"),
        ([NINE, SEVENTY], "we have a co of 80 in here", "seventy"),
        ([NINE, SEVENTY], "co 12 in here, co 80 in there", "nine seventy"),
    ],
)
def test_only_what_is_all_said_by_a_longer_one_in_the_same_breath_is_left_out(
    hazards: list[Hazard], typed: str, found: str
) -> None:
    knowledge = base(hazards=[*hazards, ANY])
    for hear in (named, spoken_of, reported):
        assert {hazard.id for hazard in hear(knowledge, typed)} == {*found.split()}


@pytest.mark.parametrize(
    ("word", "longer", "found"),
    [
        (job("short", "smoke"), lesser("long", "smoke in duct"), "short long"),
        (job("short", "smoke"), job("long", "smoke in duct"), "long"),
        (lesser("short", "smoke"), job("long", "smoke in duct"), "long"),
        (job("short", "acid"), lesser("long", "acid in duct"), "long"),
        (job("short", "smoke smell"), lesser("long", "smoke smell in duct"), "long"),
        (job("short", "smoke smell"), job("long", "smoke smell in duct"), "long"),
    ],
)
def test_smoke_is_smoke_whatever_lesser_danger_is_said_of_it(
    word: Hazard, longer: Hazard, found: str
) -> None:
    knowledge = base(hazards=[word, longer, ANY])
    typed = f"there is {word.words[0]} in the duct"
    assert {hazard.id for hazard in named(knowledge, typed)} == {*found.split()}


@pytest.mark.parametrize(
    ("word", "said"),
    [
        ("fire", "is on fire"), ("smoke", "is smoking"), ("burning", "is burning"),
        ("arcing", "arcs"), ("sparks", "is sparking"), ("explosion", "exploded"),
    ],
)  # fmt: skip
def test_what_burns_is_a_danger_said_of_a_thing_and_beside_other_things(
    word: str, said: str
) -> None:
    knowledge = base(hazards=[job("meant", word), ANY])
    for typed in (said, f"the compressor {said}", f"the compressor {said}, no cooling since noon"):
        assert [hazard.id for hazard in spoken_of(knowledge, typed)] == ["meant"], typed
    assert spoken_of(knowledge, f"the film shows a town that {said}") == ()


@pytest.mark.parametrize(
    ("typed", "is_heard"),
    [("acid", True), ("there is acid here", True), ("acid compressor", False),
     ("acid, no cooling since noon", False)],
)  # fmt: skip
def test_any_other_single_word_is_one_only_where_it_is_all_that_is_said(
    typed: str, is_heard: bool
) -> None:
    knowledge = base(hazards=[job("meant", "acid"), ANY])
    assert bool(spoken_of(knowledge, typed)) is is_heard


@pytest.mark.parametrize(
    ("typed", "found"),
    [
        ("sick and dizzy", "sick dizzy"),
        ("sick", "sick"),
        ("gas smell makes me sick and dizzy", "smell"),
        ("smoke report, gas smell", "smell"),
        ("gas smell, smoke report", "smell"),
        ("gas smell, smoke", "smell smoke"),
    ],
)
def test_single_words_stand_beside_more_dangers_of_the_same_breath_alone(
    typed: str, found: str
) -> None:
    """What is said in another sentence does not make a smoke report smoke."""
    knowledge = base(
        hazards=[SMELL, job("sick", "sick"), job("dizzy", "dizzy"), job("smoke", "smoke"), ANY]
    )
    assert {hazard.id for hazard in spoken_of(knowledge, typed)} == {*found.split()}


@pytest.mark.parametrize(
    ("typed", "is_heard"),
    [
        ("gas smell", True),
        ("gas smell union tightened", True),
        ("tightened union, gas smell", True),
        ("gas smell union tightened yesterday", False),
        ("tightened union yesterday, gas smell", False),
    ],
)
def test_a_cry_is_where_half_of_what_tells_is_the_danger(typed: str, is_heard: bool) -> None:
    knowledge = base(hazards=[SMELL, ANY])
    assert [hazard.id for hazard in cried(knowledge, typed)] == ["smell"] * is_heard


@pytest.mark.parametrize(
    ("typed", "unnamed"),
    [("", True), ("danger", True), ("danger, gas smell", False), ("gas smell", False),
     ("no danger", False), ("the union", False)],
)  # fmt: skip
def test_a_call_is_unnamed_where_nothing_is_said_but_that_there_is_a_danger(
    typed: str, unnamed: bool
) -> None:
    assert is_unnamed(base(hazards=[SMELL, ANY]), typed) is unnamed


@pytest.mark.parametrize(
    ("phrase", "typed", "is_heard"),
    [
        ("50 volts on cabinet", "60 volts on the cabinet", True),
        ("50 volts on cabinet", "40 volts on the cabinet", False),
        ("head over 600", "head is over 650", True),
        ("head over 600", "head is over 550", False),
        ("smoke everywhere", "smoke everywhere, unit is dead", True),
        ("smoke everywhere", "smoke everywhere panel is dead", True),
        ("smoke", "smoke detector is dead", False),
        ("no lock", "there is no lock at the disconnect", True),
        ("no lock", "no lock was wanted for the walk", False),
        ("gas smell", "gas smell was there when the walk began", True),
        ("flue co over 400", "flue co over 450", True),
        ("co over 400", "co over 450 in the flue", False),
    ],
)
def test_a_phrase_is_said_with_its_number_or_more_and_of_the_matter_itself(
    phrase: str, typed: str, is_heard: bool
) -> None:
    knowledge = base(hazards=[job("meant", phrase), job("other", "head gasket", "smoke ring"), ANY])
    assert [hazard.id for hazard in spoken_of(knowledge, typed)] == ["meant"] * is_heard
