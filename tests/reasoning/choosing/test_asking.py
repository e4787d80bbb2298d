"""What has to be asked so that a test becomes known."""

from __future__ import annotations

from dataclasses import replace

from tests.building import base, unit_of
from troubleshoot.knowledge.model import (
    Bound,
    Derivation,
    Knowledge,
    LimitLine,
    Outcome,
    PlateValue,
    Quantity,
    Read,
    Test,
)
from troubleshoot.reasoning.choosing.asking import Asking
from troubleshoot.reasoning.readings.values import Value, Values


def input_of(name: str) -> Test:
    return Test(name, name, "area", "input", (), reads=(Read(name),))


def judged(name: str, *bounds: Bound, reads: tuple[Read, ...] = ()) -> Test:
    lines = tuple(LimitLine((bound,), when=bound.when) for bound in bounds)
    return Test(name, name, "area", "computed", (Outcome("high", limits=lines),), reads=reads)


QUANTITIES = [
    Quantity("line", "F", "line"),
    Quantity("outdoor", "F", "outdoors"),
    Quantity("wet-bulb", "F", "return wet bulb"),
    Quantity("approach", "F-diff", "approach",
             computed=(Derivation("difference", ("line", "outdoor")),)),
    Quantity("target", "F-diff", "target",
             computed=(Derivation("target-superheat", ("wet-bulb", "outdoor")),)),
    Quantity("evaporating", "F", "dew point",
             computed=(Derivation("dew-temperature", ("metering", "line")),)),
    Quantity("split", "F-diff", "split",
             computed=(Derivation("difference", ("wet-bulb", "line")),
                       Derivation("difference", ("outdoor", "line")))),
    Quantity("orphan", "F", "nothing gives it"),
]  # fmt: skip
INPUTS = [input_of(name) for name in ("line", "outdoor", "wet-bulb")]


def asked(
    test: Test,
    *known: str,
    plate: float | None = None,
    skipped: tuple[str, ...] = (),
    **facts: str,
) -> tuple[str, ...]:
    knowledge: Knowledge = base(
        [*INPUTS, test], quantities=QUANTITIES,
        plates=[PlateValue("design", "F-diff", "nameplate", "design")],
    )  # fmt: skip
    unit = unit_of(knowledge, **facts)
    if plate is not None:
        unit = replace(unit, plate={("design", None): plate})
    values = Values(knowledge, unit, {(name, None): Value(80) for name in known})
    asking = Asking(knowledge, unit, knowledge.tests.values(), skipped)
    return tuple(t.id for t in asking.asks(test, None, values))


def test_a_test_that_is_asked_is_asked_itself() -> None:
    assert asked(input_of("line")) == ("line",)
    look = Test("look", "look", "area", "look", (Outcome("bad"),))
    assert asked(look) == ("look",)


def test_a_computed_test_asks_for_the_inputs_not_yet_known() -> None:
    approach = judged("approach", Bound("approach", above=20))
    assert asked(approach) == ("line", "outdoor")
    assert asked(approach, "outdoor") == ("line",)


def test_what_a_limit_is_relative_to_has_to_be_known_too() -> None:
    against = Bound("approach", relative_to="target", compared_as="difference", above=5)
    assert asked(judged("approach", against)) == ("line", "outdoor", "wet-bulb")
    plate = Bound("approach", relative_to="design", compared_as="difference", above=5)
    assert asked(judged("approach", plate), plate=15.0) == ("line", "outdoor")
    assert asked(judged("approach", plate)) == ()


def test_a_line_that_cannot_be_judged_does_not_stand_in_the_way_of_one_that_can() -> None:
    plate = Bound("approach", relative_to="design", compared_as="difference", above=5)
    assert asked(judged("approach", plate, Bound("approach", above=30))) == ("line", "outdoor")


def test_lines_of_other_equipment_ask_for_nothing() -> None:
    valve = Bound("target", above=5, when={"metering": ("txv",)})
    plain = Bound("approach", above=30)
    test = judged("approach", plain, valve)
    assert asked(test, metering="fixed-orifice") == ("line", "outdoor")
    assert asked(test, metering="txv") == ("line", "outdoor", "wet-bulb")


def test_what_nothing_can_give_is_not_asked_for_unless_it_may_be_typed() -> None:
    orphan = judged("orphan", Bound("orphan", above=5))
    assert asked(orphan) == ()
    typed = judged("orphan", Bound("orphan", above=5), reads=(Read("orphan"),))
    assert asked(typed) == ("orphan",)


def test_an_equipment_fact_has_to_be_known_and_is_not_asked_as_a_test() -> None:
    test = judged("evaporating", Bound("evaporating", below=32))
    assert asked(test) == ()
    assert asked(test, metering="txv") == ("line",)


SPLIT = judged("split", Bound("split", above=20), reads=(Read("split"),))


def test_where_an_input_is_skipped_another_derivation_does_without_it() -> None:
    """Regression: with no mixed-air reading to be had, the return was never asked for."""
    assert asked(SPLIT) == ("wet-bulb", "line")
    assert asked(SPLIT, skipped=("wet-bulb",)) == ("outdoor", "line")
    assert asked(SPLIT, "outdoor", skipped=("wet-bulb",)) == ("line",)


def test_where_no_derivation_does_without_a_skipped_input_nothing_is_asked() -> None:
    assert asked(SPLIT, skipped=("line",)) == ()
    assert asked(SPLIT, skipped=("wet-bulb", "outdoor")) == ()


def test_a_measurement_that_others_give_has_ways_round_it() -> None:
    drop = Test("split", "split", "area", "measurement", (), reads=(Read("split"),))
    knowledge = base([*INPUTS, drop], quantities=QUANTITIES)
    unit = unit_of(knowledge)
    asking = Asking(knowledge, unit, knowledge.tests.values(), ("wet-bulb",))
    values = Values(knowledge, unit, {("line", None): Value(80)})
    assert [[t.id for t in way] for way in asking.ways(drop, None, values)] == [["outdoor"]]
    assert list(asking.ways(INPUTS[0], None, values)) == []
