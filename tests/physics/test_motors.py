"""Motors on bad supply and on bad capacitors, against standards and textbook circuits."""

from __future__ import annotations

import pytest

pytest.importorskip("scipy", reason="the optional extra physics is not installed")

from tests.checks.reference_entries import allowed, entries
from troubleshoot.physics.airside import AirPath, Hindered, blow
from troubleshoot.physics.capacitor_motor import COMPRESSOR, FAN, rated, starting_torque, turn
from troubleshoot.physics.three_phase import components, draw, impedance, on_two_legs, winding_rise
from troubleshoot.quantities.supply import unbalance


@pytest.mark.parametrize("entry", ["UNB-008", "UNB-010"])
def test_sequences_are_those_of_the_standard(entry: str) -> None:
    """Source: IEC 61000-4-30, the unbalance of three line volts by their fourth powers."""
    said = entries()[entry]
    volts = tuple(said.number(name) for name in ("v_ab", "v_bc", "v_ca"))
    positive, negative = components(volts)  # type: ignore[arg-type]
    found = 100 * abs(negative) / abs(positive)
    assert found == pytest.approx(said.expected, abs=allowed(said.tolerance, None, said.expected))


def test_volts_alike_are_all_positive_sequence() -> None:
    positive, negative = components((1.0, 1.0, 1.0))
    assert abs(positive) == pytest.approx(1.0) and abs(negative) == pytest.approx(0.0, abs=1e-12)


def test_pairs_that_close_no_triangle_are_refused() -> None:
    with pytest.raises(ValueError, match="triangle"):
        components((1.0, 0.2, 0.3))


def test_amps_differ_several_times_more_than_volts() -> None:
    """Source: UNB-025, MG 1 commentary: 6 to 10 times; 3 % of volts, 18 to 30 of amps, +-3."""
    said = entries()["UNB-025"].expected
    volts = (1.03, 0.985, 0.985)
    assert unbalance(*volts).percent == pytest.approx(3.0)
    amps = draw(1.0, volts).amps
    mean = sum(amps) / 3
    off = 100 * max(abs(a - mean) for a in amps) / mean
    assert said["min"] - 3 <= off <= said["max"] + 3


def test_unbalance_heats_as_the_rule_says() -> None:
    """Source: UNB-024: twice the square of the unbalance in percent: 18 % at 3 %.

    How a winding shares its heat with the others was chosen so; that it is near nought at 1 % and
    grows with the square was not.
    """
    rise = {
        u: winding_rise(draw(1.0, (1 + u / 100, 1 - u / 200, 1 - u / 200)).amps)
        for u in (1, 2, 3, 5)
    }
    assert 100 * (rise[3] - 1) == pytest.approx(entries()["UNB-024"].expected, abs=2)
    assert rise[1] < 1.07 and 1.25 < rise[5] < 1.6


def test_low_volts_raise_amps_under_load() -> None:
    """Direction: MG 1 12.44; a tenth less volts, about a tenth more amps at full load."""
    assert draw(1.0, (0.9, 0.9, 0.9)).amps[0] == pytest.approx(1.1, abs=0.04)


def test_locked_rotor_takes_about_six_times_full_load() -> None:
    """Source: LRA-001, electrical glossary: 7, +-2."""
    said = entries()["LRA-001"]
    locked = abs(impedance(0.027)) / abs(impedance(1.0))
    assert locked == pytest.approx(said.expected["typical"], abs=2)


@pytest.mark.parametrize("load", [0.5, 0.6, 0.7])
def test_on_two_legs_the_others_carry_more_than_their_share(load: float) -> None:
    """Source: PHL-003: root of three at equal power; real motors 1.7 to 2."""
    factor = on_two_legs(load).amps[1] / draw(load, (1.0, 1.0, 1.0)).amps[1]
    assert entries()["PHL-003"].expected * 0.95 <= factor <= 2.05
    assert on_two_legs(load).amps[0] == 0.0


def test_a_bad_contact_takes_amps_from_its_own_leg() -> None:
    """Direction: less volts on one leg, less amps in it, more in another (circuit theory)."""
    amps = draw(0.75, (1.0, 1.0, 1.0), (0.02, 0.0, 0.0)).amps
    sound = draw(0.75, (1.0, 1.0, 1.0)).amps
    assert amps[0] < sound[0] < max(amps)


@pytest.mark.parametrize("motor", [FAN, COMPRESSOR], ids=["fan", "compressor"])
def test_starting_torque_goes_with_capacitance_and_with_volts_squared(motor: object) -> None:
    """Source: Fitzgerald, Kingsley and Umans, Electric Machinery: one winding alone starts nothing;
    amps in the start winding, and so torque, go with a small capacitor's size."""
    torque = [starting_torque(motor, share) for share in (0.0, 0.05, 0.1, 0.2)]  # type: ignore[arg-type]
    assert torque[0] == pytest.approx(0.0, abs=1e-12)
    assert torque[2] == pytest.approx(2 * torque[1], rel=0.05)
    assert torque[3] == pytest.approx(4 * torque[1], rel=0.12)
    full, less = (starting_torque(motor, 1.0, volts) for volts in (1.0, 0.9))  # type: ignore[arg-type]
    assert less == pytest.approx(0.81 * full, rel=1e-9)


def test_a_fan_on_half_its_capacitor_still_turns_nearly_as_fast() -> None:
    """Direction: as fans are found (common practice): slower, hotter, hard to start, then not."""
    whole, half, dead = (turn(FAN, share, 1.0) for share in (1.0, 0.5, 0.0))
    assert whole.speed == pytest.approx(1.0, abs=0.01)
    assert 0.9 < half.speed < whole.speed and half.drawn.amps > 1.05 * whole.drawn.amps
    assert not dead.turns and dead.drawn.amps > 2 * rated(FAN).amps


def test_the_capacitors_microfarads_come_out_of_its_amps_and_volts() -> None:
    """Source: CAP-001, circuit theory: amps over volts is its susceptance at any load."""
    for share in (1.0, 0.7, 0.4):
        drawn = turn(FAN, share, 1.0).drawn
        assert drawn.start_amps / drawn.capacitor_volts == pytest.approx(share / FAN.capacitor)


def test_a_compressor_needs_its_capacitor_to_start_and_draws_more_without() -> None:
    """Direction: as single-phase compressors are found (common practice)."""
    whole, weak, dead = (turn(COMPRESSOR, s, 1.0, 0.8, grows=0.0) for s in (1.0, 0.5, 0.1))
    assert whole.turns and weak.turns and not dead.turns
    assert weak.drawn.amps > 1.05 * whole.drawn.amps and dead.drawn.amps > 3 * whole.drawn.amps
    low = turn(COMPRESSOR, 0.6, 0.7, 0.8, grows=0.0)
    assert not low.turns, "a weak capacitor and low volts together"


@pytest.mark.parametrize("entry", ["MOT-009", "MOT-010", "MOT-011"])
def test_a_blower_follows_the_fan_laws(entry: str) -> None:
    """Source: ASHRAE Handbook, HVAC Systems and Equipment, fan laws."""
    said, path = entries()[entry], AirPath(2000.0)
    made = blow(path, Hindered(), said.number("speed_ratio"))
    assert made.cfm / 2000 == pytest.approx(said.expected["flow_ratio"])
    assert made.external / path.external == pytest.approx(said.expected["pressure_ratio"])
    assert made.power == pytest.approx(said.expected["power_ratio"])


def test_what_stands_in_the_airs_way_shows_in_its_own_drop() -> None:
    """Direction: a loaded filter takes flow and static from the duct, a shut damper adds to it;
    a forward-curved wheel takes less power when it moves less (ASHRAE Handbook, Fans)."""
    path = AirPath(2000.0)
    sound = blow(path, Hindered(), 1.0)
    loaded, shut, open_duct = (
        blow(path, h, 1.0) for h in (Hindered(filter=5), Hindered(duct=3), Hindered(duct=0.3))
    )
    assert loaded.filter > 3 * sound.filter and loaded.external < sound.external
    assert shut.external > 1.3 * sound.external and shut.filter < sound.filter
    assert open_duct.cfm > sound.cfm and open_duct.power > sound.power > shut.power
    assert loaded.cfm < sound.cfm and loaded.power < sound.power
