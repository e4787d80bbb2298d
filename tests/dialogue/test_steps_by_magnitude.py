"""A number confirms a step by its size, in the unit that the step reads, and by nothing less."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.dialogue.test_metered_in_words import BY_HIGHEST, step
from troubleshoot.dialogue.by_word import NotAnAnswer
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.quantities.typed_units import is_unit
from troubleshoot.quantities.units import UNITS
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.readings.readings import take_readings
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.safety.declared import CONFIRMED, STEPS
from troubleshoot.safety.steps import ROOF
from troubleshoot.visit.events import StepDone
from troubleshoot.visit.hearing.metered import NO_END, as_a_file_counts

SHIPPED = load_shipped()
READ_IN = {name: SHIPPED.quantities[SHIPPED.tests[name].reads[0].quantity].unit for name in STEPS
           if SHIPPED.tests[name].reads}  # fmt: skip
SIGNED = ("capacitor-discharge", "drive-discharge")
NUMBERS = st.one_of(st.integers(-600, 600).map(str), st.floats(-20, 20).map("{:.2f}".format))
SPELT = {
    "current": ("A", "a", "amps", "Amp", "aac", "mA", "uA", "\u00b5A"), "length": ("in", "ft"),
    "resistance": ("ohms", "\u03a9", "\u2126", "k", "kohm", "Meg"), "time": ("s", "h", "min"),
    "capacitance": ("uF", "\u00b5F", "mfd"), "voltage": ("V", "v", "vac", "mV"),
    "temperature": ("F", "C", "\u00b0F"), "relative": ("%", "x", "rh"),
}  # fmt: skip
"""Ways of writing a unit, beside those of the list, by what they are units of."""
SPELLINGS = sorted(
    {(one.kind, text) for one in UNITS.values() for text in (one.id, one.spoken) if text}
    | {(kind, text) for kind, texts in SPELT.items() for text in texts}
)


def tried(name: str, typed: str) -> StepDone | None:
    try:
        return step(SHIPPED, name, typed)
    except NotAnAnswer:
        return None


SAID_FOR_SHORT = {("combustible-gas-sweep", "%"), ("combustible-gas-sweep", "percent")}
"""A detector of combustible gas reads in percent of the lower explosive limit."""


@given(
    name=st.sampled_from(sorted(READ_IN)),
    number=NUMBERS,
    unit=st.sampled_from(SPELLINGS),
    between=st.sampled_from(["", " "]),
    words=st.sampled_from(
        ["{}", "got {}", "{} on the meter", "it reads {}", "{} now", "{} on all three", "safe {}",
         "all {}", "{} safe", "the meter shows {}"]
    ),
)  # fmt: skip
def test_a_number_of_another_dimension_confirms_nothing(
    name: str, number: str, unit: tuple[str, str], between: str, words: str
) -> None:
    """Regression: "0 A" was taken for 0 volts, the A for an article, and its unit was lost."""
    kind, spelt = unit
    if kind == UNITS[READ_IN[name]].kind or (name, spelt) in SAID_FOR_SHORT:
        return
    event = tried(name, words.format(f"{number}{between}{spelt}"))
    assert event is None or CONFIRMED[name] not in event.outcomes


@given(
    name=st.sampled_from(SIGNED),
    volts=st.floats(10.5, 1400).map("{:.1f}".format),
    others=st.integers(0, 2),
    sign=st.sampled_from(["", "-", "+"]),
)
def test_a_number_past_the_limit_confirms_nothing_with_either_sign(
    name: str, volts: str, others: int, sign: str
) -> None:
    """Regression: -340 V, which is 340 V with the leads swapped, counted as discharged."""
    typed = f"{sign}{volts}{'/1' * others} V"
    event, unsigned = tried(name, typed), tried(name, f"{volts} V")
    assert event is not None and unsigned is not None
    assert event.outcomes == unsigned.outcomes != (CONFIRMED[name],)
    assert event.text == typed
    for sentence in (f"it reads {typed}", f"{typed} on the bus"):
        told = tried(name, sentence)
        assert told is None or told.outcomes == unsigned.outcomes
    for said in ((), (CONFIRMED[name],)):
        assert not confirmed_in_a_file(name, said, typed)


def confirmed_in_a_file(name: str, said: tuple[str, ...], text: str) -> bool:
    told = as_a_file_counts(SHIPPED, Unit(), Answer(name, said, text, (None,)))
    reading = take_readings(SHIPPED, Case(Unit(), answers=(told,)))[0][0]
    assert reading.text == text
    return reading.valid and reading.possible == {CONFIRMED[name]}


@given(name=st.sampled_from(SIGNED), volts=st.floats(-9, 9))
def test_a_number_below_the_limit_confirms_with_either_sign_and_keeps_it(
    name: str, volts: float
) -> None:
    typed = f"{volts:.1f} V"
    event = tried(name, typed)
    assert event is not None
    assert (event.outcomes, event.text) == ((CONFIRMED[name],), typed)


@pytest.mark.parametrize(
    ("name", "typed"),
    [
        *((name, typed) for name in BY_HIGHEST for typed in ("> 0", "over 2", ">= 0", "2+")),
        *((name, "< -1") for name in SIGNED),
        (ROOF, "< 20 ft"), (ROOF, "less than 15 ft"),
    ],
)  # fmt: skip
def test_what_leaves_open_how_far_it_goes_confirms_nothing(name: str, typed: str) -> None:
    """Regression: "> 2 V" counted as discharged, and "< 20 ft safe" as far from the edge."""
    word = " safe" if name == ROOF else ""
    event = tried(name, f"{typed}{word}")
    assert event is None or CONFIRMED[name] not in event.outcomes
    assert not confirmed_in_a_file(name, (CONFIRMED[name],), typed)


def test_why_it_confirms_nothing_is_said() -> None:
    with pytest.raises(
        NotAnAnswer, match="> 2 V proves nothing: the number leaves open how far it goes"
    ):
        step(SHIPPED, "drive-discharge", "> 2 V")
    told = as_a_file_counts(SHIPPED, Unit(), Answer("drive-discharge", (), "> 2 V", (None,)))
    assert (told.valid, told.why_invalid) == (False, NO_END)


def test_no_condition_beside_a_reading_takes_its_place() -> None:
    """Regression: in a file `conditions: {drive-bus-volts: 0 V}` stood for the 300 V read."""
    answer = Answer("drive-discharge", (), "300 V", (None,), conditions={"drive-bus-volts": "0 V"})
    reading = take_readings(SHIPPED, Case(Unit(), answers=(answer,)))[0][0]
    assert reading.possible == {"holds-charge"}


def test_a_sound_limit_on_the_safe_side_is_no_number_on_a_meter(shipped: Knowledge) -> None:
    with pytest.raises(NotAnAnswer):
        step(shipped, "drive-discharge", "< 2 V")
    assert step(shipped, "drive-discharge", "> 300 V").outcomes == ("holds-charge",)


@pytest.mark.parametrize("typed", ["15 A", "15 a", "20 s", "safe 15 A", "15 ft all but safe"])
def test_the_roof_wants_feet_and_words_that_are_not_turned_round(
    typed: str, shipped: Knowledge
) -> None:
    with pytest.raises(NotAnAnswer):
        step(shipped, ROOF, typed)


@pytest.mark.parametrize(
    "typed",
    [
        "no reading, 0",
        "0 on a",
        "A 0",
        "got 0 \u03bcA",
        "got 0 \u03a9",
        "0 in",
        "0 v a",
        "0 in on the meter",
    ],
)
def test_a_sound_number_is_not_read_out_of_other_things(typed: str, shipped: Knowledge) -> None:
    with pytest.raises(NotAnAnswer):
        step(shipped, "verified-dead", typed)


def test_a_live_leg_is_heard_though_inches_are_spelt_so(shipped: Knowledge) -> None:
    assert step(shipped, "verified-dead", "277 in one leg").outcomes == ("live",)
    assert is_unit("in")
