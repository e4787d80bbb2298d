"""From answers to readings: places, repeats, validity, tests that become known by themselves."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.building import base, case, fault, measured, test_of, unit_of
from troubleshoot.knowledge.model import Bound, Derivation, LimitLine, Outcome, Quantity, Read, Test
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.readings.readings import Reading, report_error, take_readings
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.places import Place

BANDS = {"low": {"below": 5}, "normal": {"at_least": 5, "at_most": 10}, "high": {"above": 10}}
AMPS = measured("amps", BANDS, reads=(Read("amps"),), per="compressor")
LINE = Test("line", "line", "area", "input", (), reads=(Read("line"),), per="circuit")
OUTDOOR = Test("outdoor", "outdoor", "area", "input", (), reads=(Read("outdoor"),))
APPROACH = Test(
    "approach", "approach", "area", "computed",
    (
        Outcome("normal", limits=(LimitLine((Bound("approach", below=20),)),)),
        Outcome("high", limits=(LimitLine((Bound("approach", at_least=20),)),)),
    ),
    healthy=("normal",), per="circuit",
)  # fmt: skip
LOOK = test_of("look", "bad", per="circuit")
KNOWLEDGE = base(
    [AMPS, LINE, OUTDOOR, APPROACH, LOOK],
    [fault("f")],
    quantities=[
        Quantity("amps", "A", "amps", per="compressor"),
        Quantity("line", "F", "line", per="circuit"),
        Quantity("outdoor", "F", "outdoors", weather=True),
        Quantity("approach", "F-diff", "line over outdoor", per="circuit",
                 computed=(Derivation("difference", ("line", "outdoor")),)),
    ],
)  # fmt: skip
TWIN = unit_of(KNOWLEDGE, circuits=2)
ONE, TWO = Place("compressor", 1), Place("compressor", 2)
BOTH: tuple[Place | None, ...] = (ONE, TWO)


def taken(*answers: Answer, unit: Unit = TWIN, **more: object) -> list[Reading]:
    return list(take_readings(KNOWLEDGE, case(KNOWLEDGE, *answers, unit=unit, **more))[0])


def test_report_errors_are_those_of_question_meter_and_look() -> None:
    # 0.06, 0.03 and 0.02: common practice, no source.
    kinds = {kind: report_error(test_of("t", kind=kind)) for kind in
             ("question", "measurement", "computed", "look")}  # fmt: skip
    assert kinds == {"question": 0.06, "measurement": 0.03, "computed": 0.03, "look": 0.02}


def test_one_reading_may_serve_several_places() -> None:
    found = taken(Answer("amps", text="12 A", places=BOTH))
    assert [(r.at, r.seen, r.among) for r in found] == [
        (ONE, ("high",), ()), (TWO, ("high",), ()),
    ]  # fmt: skip


def test_a_reading_whose_place_is_open_is_one_reading_that_knows_where_it_may_belong() -> None:
    (found,) = taken(Answer("amps", text="12 A", places=BOTH, shared=True))
    assert found.at is None and found.among == BOTH and found.seen == ("high",)


def test_a_stated_word_wins_over_the_number_beside_it() -> None:
    (found,) = taken(Answer("amps", ("normal",), "12 A", (ONE,)))
    assert found.seen == ("normal",) and found.chances == {"normal": 1.0}


def test_a_repeated_reading_is_judged_by_its_own_number() -> None:
    first, second = (
        Answer("amps", text="12 A", places=(ONE,)),
        Answer("amps", text="7 A", places=(ONE,)),
    )
    (found,) = taken(first, second)
    assert found.seen == ("normal",)
    assert [max(chances, key=lambda o: chances[o]) for chances in found.before] == ["high"]
    (turned,) = taken(second, first)
    assert turned.seen == ("high",)


def test_a_reading_after_a_repair_stands_alone() -> None:
    first = Answer("look", ("bad",), places=(Place("circuit", 1),))
    second = Answer("look", ("normal",), places=(Place("circuit", 1),), repairs=1)
    (found,) = taken(first, second)
    assert found.seen == ("normal",) and found.before == ()


def test_an_invalid_reading_does_not_push_out_one_that_counts_and_is_not_lost() -> None:
    good = Answer("look", ("normal",), places=(Place("circuit", 1),))
    bad = Answer("look", ("bad",), places=(Place("circuit", 1),), valid=False)
    found = taken(good, bad)
    assert [(r.seen, r.valid) for r in found] == [(("normal",), True), (("bad",), False)]
    assert "bad" in found[1].possible
    # A fresh reading that counts settles the matter.
    assert [(r.seen, r.valid) for r in taken(bad, good)] == [(("normal",), True)]
    assert [(r.seen, r.valid) for r in taken(good, bad, good)] == [(("normal",), True)]


def test_an_invalid_number_is_classified_but_gives_no_value() -> None:
    answers = (
        Answer("outdoor", text="90 F"),
        Answer("line", text="150 F", places=(Place("circuit", 1),), valid=False),
        Answer("amps", text="12 A", places=(ONE,), valid=False, why_invalid="wrong lead"),
    )
    found = {r.test: r for r in taken(*answers)}
    assert found["amps"].seen == ("high",) and not found["amps"].valid
    assert found["amps"].why_invalid == "wrong lead"
    assert "approach" not in found


def test_a_computed_test_becomes_known_where_its_inputs_are() -> None:
    answers = (Answer("outdoor", text="90 F"), Answer("line", text="115 F",
               places=(Place("circuit", 2),)))  # fmt: skip
    computed = [r for r in taken(*answers) if r.computed]
    assert [(r.test, r.at, r.seen) for r in computed] == [
        ("approach", Place("circuit", 2), ("high",))
    ]


def test_a_stated_outcome_stands_in_for_the_computed_one() -> None:
    answers = (
        Answer("outdoor", text="90 F"),
        Answer("line", text="115 F", places=(Place("circuit", 2),)),
        Answer("approach", ("normal",), places=(Place("circuit", 2),)),
    )
    found = [r for r in taken(*answers) if r.test == "approach"]
    assert [(r.seen, r.computed) for r in found] == [(("normal",), False)]


def test_a_stated_outcome_that_does_not_count_gives_way_to_the_computed_one() -> None:
    """Regression: a superheat said to be invalid kept the later pressures from giving one.

    It stays beside it, for what it may mean for safety.
    """
    wrong = Answer("approach", ("normal",), places=(Place("circuit", 2),), valid=False)
    inputs = (
        Answer("outdoor", text="90 F"),
        Answer("line", text="115 F", places=(Place("circuit", 2),)),
    )
    for answers in ((wrong, *inputs), (*inputs, wrong)):
        found = [r for r in taken(*answers) if r.test == "approach"]
        assert {(r.seen, r.computed, r.valid) for r in found} == {
            (("high",), True, True),
            (("normal",), False, False),
        }
        assert len(found) == 2


def test_the_case_s_conditions_are_values_like_any_other() -> None:
    answer = Answer("line", text="115 F", places=(Place("circuit", 1),))
    found = taken(answer, conditions={"outdoor": "90 F"})
    assert [r.seen for r in found if r.computed] == [("high",)]


def test_an_input_is_a_reading_without_an_outcome() -> None:
    (found,) = taken(Answer("outdoor", text="90 F"))
    assert found.seen == () and found.chances == {} and found.valid


def test_a_reading_is_judged_by_the_conditions_it_was_taken_under() -> None:
    limit = LimitLine((Bound("head", relative_to="outdoor", compared_as="difference", above=30),))
    head = Test("head", "head", "area", "measurement",
                (Outcome("high", limits=(limit,)), Outcome("normal", limits=(LimitLine(
                    (Bound("head", relative_to="outdoor", compared_as="difference",
                           at_most=30),)),))),
                healthy=("normal",), reads=(Read("head"),))  # fmt: skip
    know = base(
        [head], quantities=[Quantity("head", "F", "head"), Quantity("outdoor", "F", "outdoors")]
    )

    def seen(**own: str) -> tuple[str, ...]:
        answer = Answer("head", text="120 F", conditions=own)
        return take_readings(know, case(know, answer, conditions={"outdoor": "95 F"}))[0][0].seen

    assert seen() == ("normal",)
    assert seen(outdoor="80 F") == ("high",)


@given(st.floats(4, 6).map(lambda x: round(x, 2)))
def test_the_worse_side_of_a_reading_near_its_limit_is_possible(amps: float) -> None:
    (found,) = taken(Answer("amps", text=f"{amps:.2f} +/- 0.5 A", places=(ONE,)))
    u = 0.5 / 3**0.5
    low_is_near = amps - 5 < 2.05 * u
    assert ("low" in found.possible) == (amps < 5 or found.chances.get("low", 0) > 0.02)
    if amps < 5:
        assert found.seen == ("low",)
    elif not low_is_near:
        assert found.possible == {"normal"}


@pytest.mark.parametrize("text", ["lots", "12 psig", ""])
def test_text_that_is_no_reading_of_the_test_says_nothing(text: str) -> None:
    (found,) = taken(Answer("amps", text=text, places=(ONE,)))
    assert found.seen == () and found.classified is None


CIRCUIT = (Place("circuit", 1),)
HOT = Answer("line", text="115 F", places=CIRCUIT)


def approaches(*answers: Answer) -> list[tuple[tuple[str, ...], bool]]:
    found = [r for r in taken(*answers, unit=unit_of(KNOWLEDGE)) if r.test == "approach"]
    return [(r.seen, r.after_repair) for r in found]


def test_nothing_is_computed_from_readings_on_both_sides_of_a_repair() -> None:
    """Regression: a new head pressure was paired with the liquid line of before the repair."""
    room = base(
        [LINE, replace(OUTDOOR, id="room"), APPROACH], [fault("f")],
        quantities=[*(replace(q, weather=False) for q in KNOWLEDGE.quantities.values())],
    )  # fmt: skip
    old = Answer("room", text="90 F")

    def known(*answers: Answer) -> list[tuple[tuple[str, ...], bool]]:
        found, _ = take_readings(room, case(room, *answers, unit=unit_of(room)))
        return [(r.seen, r.after_repair) for r in found if r.test == "approach"]

    assert known(old, HOT) == [(("high",), False)]
    cool = replace(HOT, text="95 F", repairs=1)
    assert known(old, HOT, cool) == [(("high",), False)]
    assert known(old, HOT, cool, replace(old, repairs=1)) == [(("normal",), True)]
    # Nor on both sides of the second repair.
    warm = replace(HOT, text="130 F", repairs=2)
    assert known(old, HOT, cool, replace(old, repairs=1), warm) == [(("normal",), True)]


def test_the_weather_is_the_same_after_a_repair() -> None:
    cool = replace(HOT, text="95 F", repairs=1)
    assert approaches(Answer("outdoor", text="90 F"), HOT, cool) == [(("normal",), True)]
