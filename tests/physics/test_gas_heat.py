"""The heat section, against stoichiometry, orifice flow and the program's own combustion room."""

from __future__ import annotations

from itertools import pairwise

import pytest

pytest.importorskip("scipy", reason="the optional extra physics is not installed")


from tests.checks.reference_entries import entries
from troubleshoot.frozen import changed
from troubleshoot.physics.gas_heat import Fired, GasFaults, GasSection, dry_flue_gas, fire
from troubleshoot.quantities import combustion

SECTION, SOUND, CFM, AIR = GasSection(), GasFaults(), 1900.0, 60.0


def fired(**wrong: float) -> Fired:
    return fire(SECTION, changed(SOUND, **wrong), CFM, AIR)


@pytest.mark.parametrize("entry", ["GAS-027", "GAS-028", "GAS-029", "GAS-030"])
def test_dry_flue_gas_is_stoichiometry(entry: str) -> None:
    """Source: CH4 + 2 (O2 + 3.76 N2), dry, by excess air."""
    said = entries()[entry]
    oxygen, dioxide = dry_flue_gas(said.number("excess_air") / 100)
    assert oxygen == pytest.approx(said.expected["o2_percent"], abs=0.1)
    assert dioxide == pytest.approx(said.expected["co2_percent"], abs=0.1)


def test_a_sound_section_reads_as_sound_ones_do() -> None:
    """Band: 4 to 9 % oxygen, stack 325 to 500 F over the air (common practice, no source);
    carbon monoxide far under the 400 ppm free of air of ANSI Z21 (GAS-026)."""
    now = fired()
    assert now.manifold == pytest.approx(3.5) and now.input == pytest.approx(SECTION.input)
    assert 4 < now.oxygen < 9 and 325 < now.stack - AIR < 500
    limit = entries()["GAS-026"].expected["vented_heating"]
    assert combustion.co_air_free(now.carbon_monoxide, now.oxygen) < limit / 4
    assert 30 < now.rise < 60


@pytest.mark.parametrize("wrong", [{}, {"manifold": 4.4}, {"manifold": 2.4}, {"soot": 0.25}])
def test_heat_to_the_air_is_what_the_flue_does_not_carry_off(wrong: dict[str, float]) -> None:
    """Source: the program's stack-loss efficiency (NIST heats), reckoned apart from this."""
    now = fired(**wrong)
    by_flue = combustion.combustion_efficiency(now.stack, AIR, now.oxygen).higher
    assert 100 * now.rise * 1.08 * CFM / now.input == pytest.approx(by_flue, abs=1.5)
    assert combustion.excess_air(now.oxygen, "methane") == pytest.approx(now.excess_air, abs=2)


def test_input_goes_with_the_root_of_manifold_pressure_and_the_orifices_area() -> None:
    """Source: flow through an orifice, as the National Fuel Gas Code's annex sizes it."""
    assert fired(manifold=1.75).input == pytest.approx(SECTION.input * 0.5**0.5, rel=1e-3)
    assert fired(orifice=1.1).input == pytest.approx(SECTION.input * 1.21, rel=1e-3)
    assert fired(heat_content=950.0).input == pytest.approx(SECTION.input * 950 / 1030, rel=1e-3)


def test_a_pipe_too_small_droops_only_when_all_fires() -> None:
    now = fired(pipe_drop=4.0)
    assert now.inlet < SOUND.inlet - 2.5 and now.manifold < 3.2 and now.input < 0.95 * SECTION.input
    assert now.oxygen > fired().oxygen


def test_more_gas_on_the_same_air_runs_short_of_oxygen() -> None:
    """Direction: stoichiometry; carbon monoxide soars where air runs out (any combustion text)."""
    rich = [fired(orifice=size) for size in (1.0, 1.08, 1.16, 1.24)]
    assert all(a.oxygen > b.oxygen for a, b in pairwise(rich))
    assert all(a.stack < b.stack for a, b in pairwise(rich))
    limit = entries()["GAS-026"].expected["vented_heating"]
    assert rich[0].carbon_monoxide < 50 and rich[-1].carbon_monoxide > limit


def test_a_blocked_flue_takes_the_draft_and_the_air() -> None:
    blocked = [fired(flue_blocked=share) for share in (0.0, 0.4, 0.6, 0.75)]
    for opener, shutter in pairwise(blocked):
        assert shutter.draft < opener.draft and shutter.oxygen < opener.oxygen
        assert shutter.carbon_monoxide > opener.carbon_monoxide
    assert blocked[0].draft > 0.6 > blocked[-1].draft, "the pressure switch would open"


def test_soot_heats_the_stack_and_costs_rise() -> None:
    clean, sooted = fired(), fired(soot=0.35)
    assert sooted.stack > clean.stack + 100 and sooted.rise < clean.rise - 2
    assert sooted.oxygen == pytest.approx(clean.oxygen)


def test_half_the_airflow_doubles_the_rise() -> None:
    """Source: heat balance, 1.08 cfm F."""
    assert fire(SECTION, SOUND, CFM / 2, AIR).rise == pytest.approx(2 * fired().rise)


def test_a_coated_rod_reads_low_in_a_good_flame() -> None:
    """Band: GAS-036: 1.8 uA and more is usual, 1.0 the least."""
    said = entries()["GAS-036"].expected
    low, high = said["typical_uA"]
    assert low <= fired().flame_current <= high
    assert fired(rod=0.2).flame_current < said["minimum_uA"]
    assert fired(rod=0.2).oxygen == fired().oxygen
