"""What a mechanic types on a phone is taken: the heat beside the call, a list, looks, gauges."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.visits import ALL, events_of


def test_the_heat_beside_the_call_and_a_list_with_one_strange_word(
    data: Path, tmp_path: Path
) -> None:
    """Regression: the heat was asked again, and a line with one word nobody knew was dropped."""
    with Person(data, clock=Clock(tmp_path), columns=40, lines=20) as person:
        said = " ".join(person.types("RTU-7", "no heat, 208/3/60, natural gas").split())
        assert "heat: gas" in said and "fuel: natural gas" in said
        said = " ".join(person.types(ALL, "hsi, inducer, big blower wheel, r410").split())
        assert 'Not understood, and kept as a note: "big blower wheel"' in said
        assert "ignition: hot surface" in said and "refrigerant: R-410A" in said
    assert "big blower wheel" in events_of(data)


def test_a_look_is_answered_as_people_talk(data: Path, tmp_path: Path) -> None:
    """Regression: hums but dont turn was no answer."""
    with Person(data, clock=Clock(tmp_path), columns=40, lines=20) as person:
        person.types("RTU-7", "not cooling, 208/3/60, gas, r410a, txv, one circuit, one fan", ALL)
        person.types("do condenser fan turning")
        person.types_until(
            "Test: Condenser fan turning",
            [("Step: Roof", "20 ft safe"), ("Test: ", "s"), ("Tell the people", "told"),
             ("fire panel", "on test"), ("(1", ""), ("Combustible-gas", "none")],
        )  # fmt: skip
        assert "Condenser fan run capacitor" in person.types("hums but dont turn")
    assert '"stopped"' in events_of(data)


def test_gas_among_the_facts_of_a_call_may_be_a_danger(data: Path, tmp_path: Path) -> None:
    with Person(data, clock=Clock(tmp_path), columns=40, lines=20) as person:
        assert "STOP" in person.types("RTU-7", "no heat, 208/3/60, gas, everywhere")


def test_a_burner_that_goes_out_and_how_it_is_lit_stop_nothing(data: Path, tmp_path: Path) -> None:
    """Regression: spark was an arc and gas was smelled, in the commonest heat call."""
    said = "burner goes out, R-410A, 208/3/60, gas, natural gas, induced, spark, no smoke detector"
    with Person(data, clock=Clock(tmp_path), columns=40, lines=20) as person:
        shown = " ".join(person.types("RTU-7", said).split())
        assert "STOP" not in shown and "in danger now" not in shown
        assert "ignition: spark" in shown and "fuel: natural gas" in shown


@pytest.mark.parametrize(
    ("said", "hazard"),
    [
        ("lights flicker when the compressor starts", "motor-on-bad-supply"),
        ("burning smell first day of heat every fall, dust", "smoke-or-heat-now"),
    ],
)
def test_an_inrush_and_the_dust_of_each_autumn_are_asked_about(
    said: str, hazard: str, data: Path, tmp_path: Path
) -> None:
    """Regression: both stopped, though neither need stand; who says so still stops."""
    with Person(data, clock=Clock(tmp_path)) as person:
        asked = person.types("RTU-7", said)
        assert "STOP" not in asked and asked.rstrip().endswith("in danger now? (y/n)")
        assert "STOP" in person.types("y")
    assert f'"hazard": "{hazard}"' in events_of(data)


def test_the_people_agreed_to_a_time_and_the_filters_are_of_last_month(
    data: Path, tmp_path: Path
) -> None:
    """Regression: of the first it was asked whether somebody is in danger; the other was none."""
    with Person(data, clock=Clock(tmp_path), columns=40, lines=20) as person:
        person.types("RTU-7", "weak air, 208/1/60, gas, R-410A, no smoke detector", ALL)
        assert "Step: Roof" in person.types("told em, ok for an hr")
        assert "told em, ok for an hr" in events_of(data)
        person.types("safe", "clean", "stopped", "locked")
        assert "Test: Filters" in person.last
        assert "Test: Filters" not in person.types("clean, new ones last month")
        assert events_of(data).count('"clean"') == 2


def test_one_clause_of_a_line_in_the_rooms_is_asked_about(data: Path, tmp_path: Path) -> None:
    """Regression: "stat" was a reading's name, and the line had to begin with a number."""
    line = "stat is calling, set 72 reads 79, all correct"
    with Person(data, clock=Clock(tmp_path), columns=40, lines=20) as person:
        person.types("RTU-7", "not cooling", ALL)
        assert "Test: Setpoint" in person.last
        said = " ".join(person.types(line).split())
        assert f'You typed "{line}". Is "all correct" meant? (y/n)' in said
        assert "Test: Setpoint" not in person.types("y")
    assert line in events_of(data) and '"correct"' in events_of(data)
