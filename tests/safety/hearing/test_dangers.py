"""A danger in somebody's own words is a hazard: the one whose words were typed, or any."""

from __future__ import annotations

import pytest

from tests.building import base
from troubleshoot.knowledge.model import Hazard, Knowledge, Stop
from troubleshoot.safety.hearing.dangers import spoken_of
from troubleshoot.safety.hearing.reporting import reported


def hazard(name: str, *words: str, stop: bool = True) -> Hazard:
    halt = Stop("whole-job", name) if stop else None
    return Hazard(name, "DANGER", "keep off", (), halt, words=words)


def meant(knowledge: Knowledge, typed: str) -> list[str]:
    return [hazard.id for hazard in reported(knowledge, typed)]


KNOWN = base(
    hazards=[
        hazard("gas-odour", "gas smell", "smell gas", "rotten eggs"),
        hazard("fire", "fire", "burning smell", "smoke from the unit"),
        hazard("shock", "somebody got a shock"),
        hazard("slippery", "slippery roof", stop=False),
        hazard("danger-reported", "danger", "something bad"),
    ]
)


@pytest.mark.parametrize(
    ("typed", "named"),
    [
        ("I smell gas", "gas-odour"),
        ("smelling of gases here", "gas-odour"),
        ("rotten eggs", "gas-odour"),
        ("it smells of rotten egg", "gas-odour"),
        ("a burning smell", "fire"),
        ("smoke", "danger-reported"),
        ("FIRE!", "fire"),
        ("he got a shock", "shock"),
        ("he was shocked", "danger-reported"),
        ("something else", "danger-reported"),
        ("slippery", "danger-reported"),
        ("roof", "danger-reported"),
        ("zebra", "danger-reported"),
        ("", "danger-reported"),
        ("the", "danger-reported"),
    ],
)
def test_a_report_is_the_hazard_most_of_whose_words_were_typed(typed: str, named: str) -> None:
    assert [hazard.id for hazard in reported(KNOWN, typed)] == [named]


def test_a_word_that_few_use_tells_more_than_one_that_many_use() -> None:
    knowledge = base(
        hazards=[
            hazard("wide", "loose panel noise"),
            hazard("other", "panel noise here"),
            hazard("rare", "noise acid"),
            hazard("danger-reported"),
        ]
    )
    assert meant(knowledge, "acid noise") == ["rare"]
    assert meant(knowledge, "acid panel noise") == ["rare"]


def test_a_hazard_without_words_or_without_a_stop_is_never_meant() -> None:
    knowledge = base(hazards=[hazard("mute"), hazard("soft", "acid", stop=False),
                              hazard("danger-reported")])  # fmt: skip
    assert meant(knowledge, "acid") == ["danger-reported"]
    assert spoken_of(knowledge, "acid") == ()


@pytest.mark.parametrize(
    ("typed", "named"),
    [
        ("there is a gas smell", "gas-odour"),
        ("gas and then a smell", "gas-odour"),
        ("smoke coming from the unit", "fire"),
        ("fire", "fire"),
        ("on fire", "fire"),
        ("the fire panel", None),
        ("gas", None),
        ("eggs rotten", None),
        ("no gas smell", None),
        ("there's not a gas smell", None),
        ("don't smell gas", None),
        ("never smell gas", None),
        ("without gas smell", None),
        ("nothing runs, gas smell", "gas-odour"),
        ("danger", "danger-reported"),
        ("something bad", "danger-reported"),
        ("it is something bad indeed", "danger-reported"),
        ("slippery roof", None),
        ("", None),
    ],
)
def test_at_a_question_only_a_whole_phrase_that_nothing_denies_is_a_danger(
    typed: str, named: str | None
) -> None:
    found = [hazard.id for hazard in spoken_of(KNOWN, typed)]
    assert found == ([] if named is None else [named])


@pytest.mark.parametrize(
    ("typed", "phrase"),
    [
        ("sparks", "spark"), ("sparking", "spark"), ("sparked", "spark"), ("matches", "match"),
        ("smoke", "smok"), ("smoking", "smok"), ("gas", "gas"), ("ice", "ice"), ("bee", "bee"),
        ("king", "king"), ("red", "red"), ("it is", "it is"), ("won't", "wont"),
    ],
)  # fmt: skip
def test_endings_do_not_matter_and_short_words_have_none(typed: str, phrase: str) -> None:
    knowledge = base(hazards=[hazard("meant", phrase), hazard("danger-reported")])
    assert spoken_of(knowledge, typed) == (knowledge.hazards["meant"],)


@pytest.mark.parametrize(
    ("typed", "phrase"), [("k", "king"), ("r", "red"), ("be", "bee"), ("ic", "ice")]
)
def test_a_stem_is_not_cut_to_nothing(typed: str, phrase: str) -> None:
    knowledge = base(hazards=[hazard("meant", phrase), hazard("danger-reported")])
    assert spoken_of(knowledge, typed) == ()


FILLING = [
    "a",
    "an",
    "and",
    "at",
    "i",
    "in",
    "is",
    "it",
    "my",
    "of",
    "or",
    "the",
    "there",
    "we",
]


@pytest.mark.parametrize("word", FILLING)
def test_filling_words_are_passed_over(word: str) -> None:
    knowledge = base(hazards=[hazard("meant", "acid"), hazard("danger-reported")])
    assert spoken_of(knowledge, f"{word} acid") == (knowledge.hazards["meant"],)


@pytest.mark.parametrize(
    ("typed", "named"),
    [
        ("acid", "short"),
        ("pump leaks", "long"),
        ("gas pump noise", "three"),
        ("noise", "danger-reported"),
        ("noise gas rattle drum whistle", "danger-reported"),
    ],
)
def test_more_of_a_phrase_and_more_words_of_it_are_nearer(typed: str, named: str) -> None:
    knowledge = base(
        hazards=[
            hazard("long", "acid pump leaks out"),
            hazard("short", "acid"),
            hazard("three", "pump noise gas"),
            hazard("danger-reported"),
        ]
    )
    assert meant(knowledge, typed) == [named]


def test_filling_words_alone_are_words_too() -> None:
    knowledge = base(hazards=[hazard("meant", "in it"), hazard("danger-reported")])
    assert spoken_of(knowledge, "in it") == (knowledge.hazards["meant"],)
    assert reported(knowledge, "in it") == (knowledge.hazards["meant"],)


def test_of_two_phrases_alike_the_rarer_word_decides() -> None:
    words = {"first": "panel loose", "rare": "acid drip", "many": "panel off"}
    named = [hazard(name, phrase) for name, phrase in words.items()]
    knowledge = base(hazards=[*named, hazard("danger-reported")])
    assert meant(knowledge, "panel acid drip hum") == ["rare"]


@pytest.mark.parametrize(("typed", "phrase"), [("cares", "car"), ("buses", "bus"), ("ice", "icy")])
def test_an_ending_goes_where_three_letters_stay(typed: str, phrase: str) -> None:
    knowledge = base(hazards=[hazard("meant", phrase), hazard("danger-reported")])
    assert bool(spoken_of(knowledge, typed)) is (phrase != "icy")


@pytest.mark.parametrize(
    ("typed", "named"),
    [
        ("wind and gas smell", "gas-odour"),
        ("skylight broken and gas smell", "gas-odour"),
        ("there is a smell of gas", "gas-odour"),
        ("the ladder slipped", "ladder-and-hatch"),
    ],
)
def test_saying_more_never_makes_a_danger_less(typed: str, named: str, shipped: Knowledge) -> None:
    """Regression: a gas smell told beside a lesser danger was taken as the lesser, and lifted."""
    assert meant(shipped, typed)[0] == named


@pytest.mark.parametrize("typed", ["hes wedged by the curb", "ladder", "he went sideways",
                                   "not well at all", "it hops about on the roof"])  # fmt: skip
def test_what_is_unknown_is_the_danger_that_stands_for_all_others(
    typed: str, shipped: Knowledge
) -> None:
    """Regression: it was the nearest hazard, as a rule a lesser one, by a single common word."""
    assert meant(shipped, typed) == ["danger-reported"]


SPRAY = base(
    hazards=[
        hazard("skin", "liquid ... on my hand"),
        hazard("escaping", "liquid is spraying"),
        hazard("danger-reported"),
    ]
)


@pytest.mark.parametrize(
    ("typed", "named"),
    [
        ("liquid on my hand", ["skin"]),
        ("liquid is dripping from the service port on my finger", ["skin"]),
        ("liquid is spraying on my hand", ["skin", "escaping"]),
        ("liquid one two three four five six on my hand", []),
        ("liquid but none of it on my hand", []),
        ("liquid is not on my hand", []),
        ("no liquid on my hand", []),
        ("liquid, on my hand", []),
        ("on my hand is liquid", []),
    ],
)
def test_a_gap_takes_a_few_words_that_deny_nothing(typed: str, named: list[str]) -> None:
    """What is said within it stays a danger of its own."""
    assert [hazard.id for hazard in spoken_of(SPRAY, typed)] == named


@pytest.mark.parametrize(
    ("typed", "named"),
    [("smoke and nobody is here", True), ("fire, nobody around", True), ("nobody sees fire", False),
     ("fire? none", False), ("fire is gone", False)],
)  # fmt: skip
def test_that_nobody_is_here_denies_nothing(typed: str, named: bool, shipped: Knowledge) -> None:
    """Regression: "the ladder fell and nobody is around" was no danger."""
    heard = [hazard.id for hazard in spoken_of(shipped, typed)]
    assert ("smoke-or-heat-now" in heard) is named


@pytest.mark.parametrize(
    "typed",
    ["boom on the power line, truck is live and smoking", "the lift hit the power line, sparks"],
)
def test_where_one_has_orders_of_its_own_what_it_stands_for_is_not_told_besides(
    typed: str, shipped: Knowledge
) -> None:
    """Stay on a machine at a line: off it, as smoke and live metal are told, may kill."""
    assert [hazard.id for hazard in spoken_of(shipped, typed)] == ["machine-on-a-line"]


def test_an_alarm_of_the_sensor_tells_of_no_confined_space(shipped: Knowledge) -> None:
    """Regression: the STOP of a place nobody had reported stood beside it."""
    hazard = shipped.hazards["confined-space"]
    assert all(trigger.complaint is None for trigger in hazard.triggers)


@pytest.mark.parametrize("typed", ["refrigerant is spraying on my hand", "freon in my eyes"])
def test_refrigerant_on_skin_is_told_of_first(typed: str, shipped: Knowledge) -> None:
    first = reported(shipped, typed)[0]
    orders = first.what_to_do.lower()
    assert first.id == "refrigerant-on-skin" and orders.startswith("get out of the spray")
    assert all(word in orders for word in ("lukewarm water", "no rubbing", "doctor", "eyes:"))
