"""What a sound unit reads is a matter of the rules: it agrees with itself, and follows an edit."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from troubleshoot.knowledge.load import load_rules, shipped_folder
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.physics import physical_problems
from troubleshoot.practice.sound import SoundUnit
from troubleshoot.practice.texts import sound_text
from troubleshoot.reasoning.readings.values import Value, Values
from troubleshoot.reasoning.unit.equipment import Unit, read_unit
from troubleshoot.reasoning.unit.places import Place

Typed = dict[tuple[str, Place | None], Value]


def unit_called(knowledge: Knowledge, name: str) -> Unit:
    typical = knowledge.typical_units[name]
    return read_unit(knowledge, typical.unit, typical.own_record)


def sound_on(knowledge: Knowledge, unit: Unit, outdoor: float) -> SoundUnit:
    day: Typed = {("outdoor-temperature", None): Value(outdoor)}
    return SoundUnit(unit, Values(knowledge, unit, day), frozenset({"outdoor-temperature"}))


def all_readings(knowledge: Knowledge, sound: SoundUnit) -> Typed:
    """Everything that can be read on a sound unit, at every place."""
    found: Typed = {}
    for name in knowledge.sound:
        quantity = knowledge.quantities.get(name)
        for place in sound.unit.layout.places(quantity.per) if quantity else ():
            number = sound.number(name, place)
            if number is not None:
                found[(name, place)] = Value(number)
    return found


@settings(max_examples=60, deadline=None)
@given(outdoor=st.floats(65, 110), choice=st.integers(0, 99))
def test_a_sound_unit_on_a_cooling_day_breaks_no_relation(
    shipped: Knowledge, outdoor: float, choice: int
) -> None:
    names = sorted(shipped.typical_units)
    unit = unit_called(shipped, names[choice % len(names)])
    readings = all_readings(shipped, sound_on(shipped, unit, outdoor))
    assert len(readings) > 40
    assert list(physical_problems(shipped, Values(shipped, unit, readings))) == []


@pytest.mark.parametrize(
    ("unit", "quantity", "place", "number"),
    [
        ("light-single-phase", "capacitance", Place("compressor-capacitor", 1), 39.6),
        ("light-single-phase", "return-air-temperature", None, 75.0),
        ("light-single-phase", "compressor-amps", Place("compressor", 1), 16.35),
        ("light-single-phase", "condensing-temperature", Place("circuit", 1), 116.0),
        ("middling-two-circuits", "liquid-line-temperature", Place("circuit", 2), 106.0),
        ("middling-two-circuits", "mixed-air-temperature", None, 79.0),
        ("middling-two-circuits", "supply-air-temperature", None, 60.0),
        ("middling-two-circuits", "gas-inlet-pressure", None, 7.25),
        ("middling-two-circuits", "heating-supply-temperature", None, 120.0),
        ("middling-two-circuits", "meter-time", None, 61.8),
        ("measured-one-circuit", "compressor-amps", Place("compressor", 1), None),
        ("measured-one-circuit", "gas-inlet-pressure", None, 7.0),
    ],
)
def test_it_reads_what_the_rules_say_at_95_outdoors(
    shipped: Knowledge, unit: str, quantity: str, place: Place | None, number: float | None
) -> None:
    read = sound_on(shipped, unit_called(shipped, unit), 95.0).number(quantity, place)
    assert read == (None if number is None else pytest.approx(number))


@pytest.mark.parametrize(
    ("test", "place", "text"),
    [
        ("flame-current", None, "3.2 uA"),
        ("draft-at-pressure-switch", None, "1.05 in wc"),
        ("contactor-coil-volts", Place("contactor", 1), "25.4 V"),
        ("line-volts-running", None, "465/466/464 V"),
        ("compressor-amps", Place("compressor", 1), "6.7/6.6/6.7 A"),
        ("compressor-windings", Place("compressor", 1), "2.31/2.33/2.30 ohm"),
    ],
)
def test_three_legs_are_read_only_where_there_are_three(
    shipped: Knowledge, test: str, place: Place | None, text: str
) -> None:
    sound = sound_on(shipped, unit_called(shipped, "middling-two-circuits"), 95.0)
    assert sound_text(shipped, sound, shipped.tests[test], place) == text


def test_a_senior_changes_what_is_sound_without_a_programmer(tmp_path: Path) -> None:
    folder = tmp_path / "rules"
    shutil.copytree(shipped_folder(), folder)
    file = folder / "sound-unit.yaml"
    text = file.read_text("utf-8")
    assert text.count("{id: valve-volts, reads: {is: 25.2}}") == 1
    file.write_text(text.replace("reads: {is: 25.2}", "reads: {is: 26.1}"), "utf-8")
    changed = load_rules(folder, cache=tmp_path / "cache")
    sound = sound_on(changed, unit_called(changed, "light-single-phase"), 95.0)
    assert sound.number("valve-volts", None) == 26.1
