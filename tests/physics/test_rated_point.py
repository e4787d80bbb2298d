"""A sound unit: the rated point, other weather, and the balances that no unit can escape."""

from __future__ import annotations

from itertools import pairwise

import pytest

pytest.importorskip("scipy", reason="the optional extra physics is not installed")


from tests.checks.reference_entries import entries
from tests.physics.units import FIXED, VALVE, of_circuit, on_a_day
from troubleshoot.frozen import changed
from troubleshoot.physics.circuit import SUCTION_GAIN, run
from troubleshoot.physics.compressor import SHELL_LOSS
from troubleshoot.physics.knobs import Day, Faults
from troubleshoot.physics.sizing import RATED_AIR, RATED_OUTDOOR_C, Nameplate, built
from troubleshoot.physics.unit import cool

REFRIGERANTS = ("R-410A", "R-22", "R-32", "R-454B")


@pytest.mark.parametrize("metering", ["txv", "fixed-orifice"])
@pytest.mark.parametrize("refrigerant", REFRIGERANTS)
@pytest.mark.parametrize(("tons", "circuits"), [(3.0, 1), (7.5, 1), (10.0, 2), (25.0, 2)])
def test_the_rated_point_comes_out(
    refrigerant: str, metering: str, tons: float, circuits: int
) -> None:
    """The plate's tons at the conditions of AHRI 210/240 and 340/360; EER among real units'.

    EER 9.7 to 12: least efficiencies of federal rules for such units, 10 CFR 431.97, have run from
    8.9 to 11.2 (from memory, so the band is wide).
    """
    plate = Nameplate(refrigerant, tons, circuits, metering)  # type: ignore[arg-type]
    made = cool(plate, Faults(), Day())
    assert made.cooling / 3516.85 == pytest.approx(tons, rel=0.01)
    assert 9.7 < made.eer < 12.5


def test_pressures_lie_among_published_packaged_units() -> None:
    """Source: COA-002, an installation manual's table of six R-410A packaged units at 95, 80/67."""
    published = entries()["COA-002"].expected
    found = of_circuit(VALVE)
    for own, name in (
        (found.suction, "suction_psig"),
        (found.head, "liquid_psig"),
        (found.condensing - 95, "over_ambient_degF"),
    ):
        low, high = min(published[name]), max(published[name])
        assert low - 5 <= own <= high + 5, name


def test_an_older_unit_lies_at_the_design_point_of_the_trade() -> None:
    """Source: COA-001, a trade article: 125 F condensing, 400 cfm a ton, 40 F at 75 F of return.

    Its 40 F belong to 75 F of return air, dry: at 80/67 the coil is some 4 to 6 F warmer.
    """
    published = entries()["COA-001"].expected
    found = of_circuit(FIXED)
    assert found.condensing == pytest.approx(published["condensing_degF"], abs=5)
    cooler = on_a_day(FIXED, 95, 75, 62)
    assert cooler.evaporating == pytest.approx(published["evaporating_degF"], abs=5)


@pytest.mark.parametrize("plate", [FIXED, VALVE], ids=["fixed", "valve"])
def test_the_air_changes_as_much_as_mechanics_expect(plate: Nameplate) -> None:
    """Condenser 12 to 22 F, evaporator 16 to 22 F on a wet coil (common practice, no source)."""
    found = of_circuit(plate)
    assert 12 < found.condenser_rise < 22
    assert 16 < found.air_drop < 22


@pytest.mark.parametrize("plate", [FIXED, VALVE], ids=["fixed", "valve"])
def test_nothing_is_lost_between_the_coils(plate: Nameplate) -> None:
    """First law: what the condenser gives off is what came in; all of the charge is somewhere."""
    circuit = built(plate)
    for charge in (0.6, 0.8, 1.0, 1.2):
        now = run(
            changed(circuit, charge=charge * circuit.charge),
            RATED_AIR,
            RATED_OUTDOOR_C,
            (9.0, 46.0),
        )
        taken = now.evaporated.heat + (1 - SHELL_LOSS) * now.compressed.power
        taken += now.compressed.flow * SUCTION_GAIN
        assert now.condensed.heat == pytest.approx(taken, rel=1e-3)
        assert now.charge == pytest.approx(charge * circuit.charge, rel=1e-4)
        air = circuit.evaporator.air * (RATED_AIR.enthalpy - now.evaporated.air.enthalpy)
        assert air == pytest.approx(now.evaporated.heat, rel=0.02)


@pytest.mark.parametrize("plate", [FIXED, VALVE], ids=["fixed", "valve"])
def test_hotter_weather_raises_head_and_power_and_costs_capacity(plate: Nameplate) -> None:
    """Direction; size by makers' expanded tables: about 1 % of capacity in 1 to 2 F (memory)."""
    days = [on_a_day(plate, outdoor, 80, 67) for outdoor in (75, 85, 95, 105, 115)]
    for cooler, hotter in pairwise(days):
        assert hotter.head > cooler.head + 25 and hotter.suction > cooler.suction
        assert hotter.power > 1.06 * cooler.power
        assert 0.90 < hotter.capacity / cooler.capacity < 0.985


@pytest.mark.parametrize("plate", [FIXED, VALVE], ids=["fixed", "valve"])
def test_wetter_air_raises_suction_and_capacity_and_narrows_the_split(plate: Nameplate) -> None:
    """Direction: more of the heat is water's (ASHRAE Handbook; any wet coil)."""
    days = [on_a_day(plate, 95, 80, wet) for wet in (59, 63, 67, 71)]
    for drier, wetter in pairwise(days):
        assert wetter.suction > drier.suction and wetter.capacity > drier.capacity
        assert wetter.air_drop < drier.air_drop
