"""Sixty readings of a stranger who had not seen the program, and what is made of each.

`readings_read_out.tsv`: what was said, the test at whose question, and what it means: tests (or
values of the plate) with their numbers, `none` where the rules hold nothing of the kind.
"""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.quantities.spoken_numbers import in_figures
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.reasoning.readings.measuring import read_text
from troubleshoot.reasoning.unit.equipment import Unit, read_unit
from troubleshoot.visit.hearing.read_out import Line, ReadOut, read_out

LINES = [
    tuple(line.split("\t"))
    for line in Path(__file__).with_name("readings_read_out.tsv").read_text("utf-8").splitlines()
]
UNIT = {
    "heat": "gas", "circuits": 1, "line-volts-class": "208-to-240-volt", "refrigerant": "R-410A",
    "metering": "txv",
}  # fmt: skip
HEAT = {"heat-temperature-rise", "heating-supply-temperature"}
"""What the dialogue never means where the unit is called to cool."""
NOT_READ = {"gas drops from 7 to 3 when it fires"}


@pytest.fixture(scope="module")
def unit(shipped: Knowledge) -> Unit:
    return read_unit(shipped, UNIT)


def numbers(knowledge: Knowledge, test: Test, text: str) -> tuple[float, ...]:
    return tuple(leg.value for leg in read_text(test, text, knowledge).values)


def heard(knowledge: Knowledge, unit: Unit, asked: Test, said: str) -> Line:
    """What a line comes to at a question: the answer to it, or readings by their words."""
    text = in_figures(said)
    try:
        read_text(asked, text, knowledge)
    except NotUnderstood:
        return read_out(knowledge, unit, said, asked)
    return Line((ReadOut("", text, (asked,), (None,)),))


def judged(knowledge: Knowledge, unit: Unit, said: str, asked: str, means: str) -> str:
    """taken, asked, refused, or wrong."""
    line = heard(knowledge, unit, knowledge.tests[asked], said)
    told = [] if means == "none" else [part.split("=") for part in means.split("; ")]
    wanted = [(name, value) for name, value in told if name in knowledge.tests]
    plates = [value for name, value in told if name in knowledge.plate_values]
    if not line.readings:
        return "taken" if not wanted else "refused"
    if len(line.readings) != len(wanted):
        return "wrong"
    sure = not line.unread
    for one, (name, value) in zip(line.readings, wanted, strict=True):
        test = knowledge.tests[name]
        if test not in one.tests or numbers(knowledge, test, one.text) != numbers(
            knowledge, test, value
        ):
            return "wrong"
        others = {each.id for each in one.tests} - {name} - (set() if asked in HEAT else HEAT)
        sure = sure and (not others or name == asked)
    said_of_plates = " ".join(one.plate for one in line.readings).replace("to", " ").split()
    if not set(plates) <= set(said_of_plates):
        return "wrong"
    return "taken" if sure else "asked"


@pytest.mark.parametrize(("said", "asked", "means"), LINES)
def test_a_stranger_is_understood_or_asked_and_never_taken_wrongly(
    shipped: Knowledge, unit: Unit, said: str, asked: str, means: str
) -> None:
    expected = {"refused"} if said in NOT_READ else {"taken", "asked"}
    assert judged(shipped, unit, said, asked, means) in expected


def test_most_are_taken_without_a_question(shipped: Knowledge, unit: Unit) -> None:
    counted = Counter(judged(shipped, unit, *line) for line in LINES)
    assert counted["taken"] >= 46, counted


def test_each_short_word_finds_its_test(shipped: Knowledge, unit: Unit) -> None:
    """With a number of its own unit behind it or before it."""
    missed = []
    for test in shipped.tests.values():
        for short in test.short_words:
            if not unit.allows(test.exists_when) or short.over or short.out:
                continue
            for word in short.words:
                for number in ("12", "45", "0.5", "300", "2"):
                    value = f"{number} {typed_unit(shipped, test)}"
                    if found_in(shipped, unit, test, (f"{word} {value}", f"{value} {word}")):
                        break
                else:
                    missed.append((test.id, word))
    assert missed == []


def typed_unit(knowledge: Knowledge, test: Test) -> str:
    unit = test.reads[0].unit or knowledge.quantities[test.reads[0].quantity].unit
    return {"F-diff": "F", "in-wc": "in wc", "percent": "%", "C-diff": "C"}.get(unit, unit)


def found_in(knowledge: Knowledge, unit: Unit, test: Test, lines: tuple[str, ...]) -> bool:
    for line in lines:
        found = read_out(knowledge, unit, line)
        if found.unread or not any(test in one.tests for one in found.readings):
            return False
    return True


@given(st.text(max_size=60))
def test_any_line_is_read_or_left(shipped: Knowledge, unit: Unit, typed: str) -> None:
    found = read_out(shipped, unit, typed)
    assert all(one.tests and one.text for one in found.readings)


WORDS = ["suction", "head", "128", "340 psi", "c1", "circuit 2", "over", "sl", "62", "rated 45",
         "gas", "not", "both sides", "in", "out", "and"]  # fmt: skip


@given(st.lists(st.sampled_from(WORDS), max_size=8).map(" ".join))
def test_no_word_is_lost(shipped: Knowledge, unit: Unit, typed: str) -> None:
    """What says neither a reading nor nothing is named as not understood."""
    found = read_out(shipped, unit, typed)
    if found.readings:
        told = " ".join(found.unread)
        assert ("not" in typed.split()) == ("not" in told.split())
        assert ("gas" in typed.split()) == ("gas" in told.split())


@pytest.mark.parametrize(
    "typed", ["supply should be 58", "head 340 target", "sh 25 is what it ought to be"]
)
def test_what_should_be_is_no_reading(typed: str, shipped: Knowledge, unit: Unit) -> None:
    """Regression: supply should be 58 was kept as the mixed air."""
    line = read_out(shipped, unit, typed)
    assert not line.readings and "no reading" in line.why


TWO = {**UNIT, "circuits": 2}


def told(line: Line) -> list[str]:
    """Each reading of a line in words, its place before them."""
    return [" ".join(filter(None, (one.at, one.words, one.text))) for one in line.readings]


@pytest.mark.parametrize(
    ("said", "means"),
    [
        ("return 79 outdoor 95 c1 128 over 385 c2 82 over 290",
         ["return 79", "outdoor 95", "c1 suction 128", "c1 head 385", "c2 suction 82",
          "c2 head 290"]),
        ("return 79 c1 suction 128 head 385 c2 suction 82 head 290",
         ["return 79", "c1 suction 128", "c1 head 385", "c2 suction 82", "c2 head 290"]),
        ("suction 128 head 385 c1 suction 82 head 290 c2",
         ["c1 suction 128", "c1 head 385", "c2 suction 82", "c2 head 290"]),
        ("c1: 130 over 385, sh 11, sc 11",
         ["c1 suction 130", "c1 head 385", "c1 sh 11", "c1 sc 11"]),
        ("c1 128/385 c2 82/290", ["c1 suction 128", "c1 head 385", "c2 suction 82", "c2 head 290"]),
        ("suction 128 c1, head 340", ["c1 suction 128", "head 340"]),
        ("82 over 290, sh 34 sc 2", ["suction 82", "head 290", "sh 34", "sc 2"]),
        ("75 in 57 out, sh 12", ["return 75", "sup 57", "sh 12"]),
        ("91 liq 59 sl", ["liq 91", "sl 59"]),
        (".85 across coil", ["across coil .85"]),
        (".5 static", ["static .5"]),
        ("-0.30 at switch", ["at switch -0.30"]),
    ],
)  # fmt: skip
def test_a_place_speaks_for_what_it_stands_with_and_a_number_for_its_name(
    shipped: Knowledge, said: str, means: list[str]
) -> None:
    """Regression: a place took all that came before it, and a point at the beginning was lost."""
    line = read_out(shipped, read_unit(shipped, TWO), said, shipped.tests["suction-pressure"])
    assert told(line) == means and not line.unread


def test_a_number_before_its_name_is_not_given_to_the_one_before(shipped: Knowledge) -> None:
    said = "-0.30 at switch, -0.95 at inducer"
    line = read_out(shipped, read_unit(shipped, TWO), said, shipped.tests["suction-pressure"])
    assert told(line) == ["at switch -0.30"] and "-0.95" in line.unread


@pytest.mark.parametrize("said", ["co2 sensor reads 80", "CO2 900", "co2 is at 1100 in the room"])
def test_another_gas_is_no_reading_of_carbon_monoxide(
    said: str, shipped: Knowledge, unit: Unit
) -> None:
    """Regression: CO2 was understood as CO of 2 ppm."""
    assert read_out(shipped, unit, said).readings == ()
    assert read_out(shipped, unit, "co 25").readings[0].words.lower() == "co"


@pytest.mark.parametrize(
    ("asked", "said", "taken"),
    [
        ("thermostat-cable-ohms", "R to C 0.4 ohm, cable pinched at the curb", "0.4 ohm"),
        ("thermostat-cable-ohms", "r to c reads 2.2 kohm, splice", "2.2 kohm"),
        ("thermostat-cable-ohms", "transformer 0.4 ohm; cold", "0.4 ohm"),
        ("capacitance-out-of-circuit", "new cap reads 10.1", "10.1"),
        ("capacitance-out-of-circuit", "the new one reads 9.8", "9.8"),
    ],
)
def test_a_number_with_its_unit_is_of_the_test_that_reads_it(
    asked: str, said: str, taken: str, shipped: Knowledge, unit: Unit
) -> None:
    """Regression: ohms told with a comma behind them were heard as volts of the transformer."""
    (one,) = read_out(shipped, unit, said, shipped.tests[asked]).readings
    assert (one.text, [test.id for test in one.tests]) == (taken, [asked])


PLATES = [
    "208/3/60", "480/3/60", "208-230/3/60", "240/1/60", "575/3/60 Hz", "400/3/50",
]  # fmt: skip


@pytest.mark.parametrize("plate", PLATES)
@pytest.mark.parametrize("name", ["line-volts-idle", "line-volts-running", "verified-dead"])
def test_volts_phases_and_hertz_are_a_data_plate_and_no_legs(
    name: str, plate: str, shipped: Knowledge, unit: Unit
) -> None:
    """Regression: a plate that was told stopped the motors for a leg that is lost."""
    with pytest.raises(NotUnderstood, match="data plate"):
        read_text(shipped.tests[name], plate, shipped)
    for said in (f"unit line volts {plate}", f"line volts {plate}", f"line voltage is {plate}"):
        assert not read_out(shipped, unit, said, shipped.tests[name]).readings
    for said in (f"plate says {plate}", f"volts on the plate {plate}", f"name plate {plate}"):
        asked = shipped.tests["contactor-coil-volts"]
        assert not read_out(shipped, unit, said, asked).readings


@pytest.mark.parametrize("legs", ["208/0/209", "208/3/209", "208/60/3", "480/0/0"])
def test_legs_of_which_one_is_gone_are_still_read(legs: str, shipped: Knowledge) -> None:
    assert len(read_text(shipped.tests["line-volts-idle"], legs, shipped).values) == 3
