"""Expected values: held to published charging tables, and to the directions of physics."""

from __future__ import annotations

from collections.abc import Mapping

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.checks.reference_entries import entries
from troubleshoot.quantities.air import target_temperature_split
from troubleshoot.quantities.expected import DEVICES, REFRIGERANTS, Conditions, expected
from troubleshoot.quantities.ranges import OutOfRange
from troubleshoot.quantities.saturation import dew_pressure
from troubleshoot.quantities.span import Span
from troubleshoot.quantities.units import STANDARD_ATMOSPHERE_PSIA

KINDS = [(refrigerant, device) for refrigerant in REFRIGERANTS for device in DEVICES]
kinds = pytest.mark.parametrize(("refrigerant", "device"), KINDS)
weather = st.tuples(st.floats(55, 115), st.floats(57, 73), st.floats(3, 21))


def at(
    refrigerant: str, device: str, outdoor: float, dry: float, wet: float | None
) -> Mapping[str, Span]:
    return expected(Conditions(refrigerant, device, outdoor, dry, wet), rla=20.0, tons=5.0)


def test_published_packaged_units_read_what_is_expected() -> None:
    """Source: COA-002, an installation manual's table of six R-410A packaged units at 95, 80/67."""
    published = entries()["COA-002"].expected
    found = at("R-410A", "txv", 95, 80, 67)
    for name, quantity in (
        ("suction_psig", "suction-pressure"),
        ("liquid_psig", "head-pressure"),
        ("over_ambient_degF", "condensing-over-ambient"),
    ):
        assert all(value in found[quantity] for value in published[name]), quantity


def test_an_older_unit_runs_as_the_trade_expects() -> None:
    """Source: COA-001, a trade article: standard-efficiency units at 95 F outdoors, 75 F of return:
    30 F over outdoor air, evaporating at 40 F."""
    published = entries()["COA-001"].expected
    found = at("R-22", "fixed-orifice", 95, 75, 62)
    assert published["over_ambient_degF"] in found["condensing-over-ambient"]
    suction = dew_pressure("R-22", published["evaporating_degF"]) - STANDARD_ATMOSPHERE_PSIA
    assert suction in found["suction-pressure"]


@pytest.mark.parametrize("outdoor", [65, 70, 75, 90, 100])
def test_makers_charging_tables_lie_in_the_expected_superheat(outdoor: int) -> None:
    """Source: TSH-OEM rows, the charging table of two makers' manuals for fixed-orifice units.

    The tables are of R-22. Return air at 80 F: the table does not say its own.
    """
    row = entries()[f"TSH-OEM-{outdoor:03d}"].expected
    met = {wet: target for wet, target in row.items() if 59 <= wet <= 73}
    assert met
    for wet, target in met.items():
        assert target in at("R-22", "fixed-orifice", outdoor, 80, wet)["superheat"], wet


@pytest.mark.parametrize("refrigerant", ["R-32", "R-410A", "R-454B"])
def test_on_newer_refrigerants_the_tables_hold_in_ordinary_air(refrigerant: str) -> None:
    """The same rows to a wet bulb of 68 F; in moister air the model feeds these more than R-22."""
    for outdoor in (65, 70, 75, 90, 100):
        for wet, target in entries()[f"TSH-OEM-{outdoor:03d}"].expected.items():
            if 60 <= wet <= 68:
                found = at(refrigerant, "fixed-orifice", outdoor, 80, wet)["superheat"]
                assert target in found, (outdoor, wet)


@kinds
@pytest.mark.parametrize(("dry", "wet"), [(72, 60), (75, 63), (78, 65), (80, 67)])
def test_the_published_split_lies_in_the_expected_one(
    refrigerant: str, device: str, dry: float, wet: float
) -> None:
    """Source: California Energy Commission, RA3, Table RA3.2-3 (from memory), at 95 F outdoors."""
    assert target_temperature_split(dry, wet) in at(refrigerant, device, 95, dry, wet)["air-split"]


@kinds
@pytest.mark.parametrize("outdoor", [70, 80, 90, 100])
def test_usual_subcooling_and_a_valves_superheat_are_expected(
    refrigerant: str, device: str, outdoor: float
) -> None:
    """10 F where the plate is silent; a valve holds 10 to 15 F (common practice, no source)."""
    found = at(refrigerant, device, outdoor, 78, 65)
    assert 10.0 in found["subcooling"]
    if device == "txv":
        assert all(each in found["superheat"] for each in (10.0, 15.0))


@kinds
def test_amps_are_those_of_a_sound_compressor_and_never_past_its_plate(
    refrigerant: str, device: str
) -> None:
    """70 to 90 % of rated-load amps at the rated point (common practice, no source)."""
    rated = at(refrigerant, device, 95, 80, 67)["compressor-amps"]
    assert all(amps in rated for amps in (14.5, 17.5))
    assert at(refrigerant, device, 115, 90, 73)["compressor-amps"].high <= 20.0


def middle(span: Span) -> float:
    return (span.low + span.high) / 2


@kinds
@given(weather, st.floats(5, 20))
def test_hotter_weather_raises_head_and_amps(
    refrigerant: str, device: str, air: tuple[float, float, float], hotter: float
) -> None:
    outdoor, wet, over = air
    cool = at(refrigerant, device, min(outdoor, 115 - hotter), wet + over, wet)
    hot = at(refrigerant, device, min(outdoor, 115 - hotter) + hotter, wet + over, wet)
    for name in ("head-pressure", "compressor-amps"):
        assert middle(hot[name]) > middle(cool[name]), name
    if device == "fixed-orifice":
        assert middle(hot["superheat"]) <= middle(cool["superheat"]) + 1
    assert middle(hot["suction-pressure"]) >= middle(cool["suction-pressure"]) - 1


@kinds
@given(weather)
def test_wetter_air_raises_suction_and_narrows_the_split(
    refrigerant: str, device: str, air: tuple[float, float, float]
) -> None:
    """At one dry bulb; on an orifice it raises the superheat too, as charging tables have it."""
    outdoor, wet, over = air
    wet, over = min(wet, 69.0), max(over, 7.0)
    dry = wet + over
    drier, wetter = (at(refrigerant, device, outdoor, dry, each) for each in (wet, wet + 4))
    assert middle(wetter["suction-pressure"]) >= middle(drier["suction-pressure"]) - 1
    assert middle(wetter["air-split"]) < middle(drier["air-split"])
    if device == "fixed-orifice":
        assert middle(wetter["superheat"]) >= middle(drier["superheat"]) - 1


@kinds
@given(st.floats(55, 115), st.floats(70, 80), st.floats(9, 16))
def test_a_wet_bulb_that_was_not_read_leaves_room_for_every_one_that_rooms_have(
    refrigerant: str, device: str, outdoor: float, dry: float, over: float
) -> None:
    """Even the mean of any of them: the range at each end holds its own mean."""
    wet = max(dry - over, 57.0)
    unread = at(refrigerant, device, outdoor, dry, None)
    for name, span in at(refrigerant, device, outdoor, dry, wet).items():
        assert unread[name].low - 1 <= middle(span) <= unread[name].high + 1, name


@pytest.mark.parametrize(
    ("conditions", "key", "words"),
    [
        (Conditions("R-410A", "txv", 54, 75, 63), "outdoor-dry-bulb", "at least 55 F"),
        (Conditions("R-410A", "txv", 116, 75, 63), "outdoor-dry-bulb", "at most 115 F"),
        (Conditions("R-410A", "txv", 90, 75, 56), "return-wet-bulb", "at least 57 F"),
        (Conditions("R-410A", "txv", 90, 80, 74), "return-wet-bulb", "at most 73 F"),
        (Conditions("R-410A", "txv", 90, 64, 63), "return-dry-bulb", "at least 66 F"),
        (Conditions("R-410A", "txv", 90, 65, None), "return-dry-bulb", "at least 66 F"),
        (Conditions("R-410A", "txv", float("nan"), 75, 63), "outdoor-dry-bulb", "missing"),
        (Conditions("R-407C", "txv", 90, 75, 63), "refrigerant", "R-22, R-32, R-410A, R-454B"),
        (Conditions("R-410A", "capillary", 90, 75, 63), "refrigerant", "fixed-orifice or txv"),
        (Conditions("R-9", "txv", 90, 75, 63), "refrigerant", "no saturation table"),
    ],
)
def test_outside_its_table_it_refuses_in_one_sentence(
    conditions: Conditions, key: str, words: str
) -> None:
    with pytest.raises(OutOfRange, match=words) as refused:
        expected(conditions)
    assert refused.value.key == key


def test_without_the_plates_values_there_are_no_amps_and_no_whole_airflow() -> None:
    found = expected(Conditions("R-410A", "txv", 90, 75, 63))
    assert not found.keys() & {"compressor-amps", "airflow"}
    assert found["airflow-per-ton"] == Span(350, 430)


@pytest.mark.parametrize(("rla", "tons"), [(0.0, 5.0), (-8.9, 5.0), (8.9, 0.0)])
def test_a_plate_that_cannot_be_is_refused(rla: float, tons: float) -> None:
    with pytest.raises(OutOfRange, match="above 0"):
        expected(Conditions("R-410A", "txv", 90, 75, 63), rla, tons)
