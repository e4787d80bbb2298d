"""What a mechanic put right in the cards of cooling and power: what a reading means, and where a
stopped circuit leads. Trade judgement (common practice, no source) unless a source is named."""

from __future__ import annotations

from typing import Any

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.visit.cases.assessment import candidates_for
from troubleshoot.visit.cases.file import read_case

VALVE: dict[str, Any] = {
    "refrigerant": "R-410A", "metering": "txv", "circuits": 1, "heat": "gas",
    "supply-phase": "three", "compressor-phase": "three", "compressor-type": "scroll",
    "compressor-rla": "24 A", "stated-subcooling": "10 F", "nameplate-volts": "208 V",
}  # fmt: skip
WARM = {"outdoor-temperature": "90 F", "minutes-running": "25 min"}
GAUGES = {"suction-pressure", "head-pressure", "superheat", "subcooling", "discharge-temperature"}


def concluded(
    knowledge: Knowledge,
    complaint: str,
    read: dict[str, str],
    day: dict[str, str] = WARM,
    **more: str,
) -> Conclusions:
    """A case: numbers by their text, all else by its outcome."""
    readings = [
        {"test": test, ("text" if any(map(str.isdigit, said)) else "outcome"): said}
        for test, said in read.items()
    ]
    case = {"unit": VALVE | more, "complaint": complaint, "conditions": day, "readings": readings}
    return Reasoner(knowledge).conclude(read_case(knowledge, case))


def chance(found: Conclusions, fault: str) -> float:
    return next(cause.probability for cause in found.causes if cause.fault.id == fault)


def seen(found: Conclusions, test: str) -> tuple[str, ...]:
    return next(reading.seen for reading in found.readings if reading.test == test)


def proposed(found: Conclusions) -> set[str]:
    return {candidate.test.id for candidate in candidates_for(found)}


AIRS = {"return-air-temperature": "80 F", "supply-air-temperature": "66.5 F"}


@pytest.mark.parametrize(
    ("wet_bulb", "outcome"), [("71 F", "normal"), ("60 F", "low"), (None, "low")]
)
def test_a_split_is_held_to_the_wet_bulb_of_the_return(
    wet_bulb: str | None, outcome: str, shipped: Knowledge
) -> None:
    """California Title 24, table RA3.2-3, from memory: 14.5 F at 80/71, 20.5 F at 80/60."""
    airs = AIRS | ({"return-wet-bulb": wet_bulb} if wet_bulb else {})
    assert seen(concluded(shipped, "weak-cooling", airs), "air-temperature-split") == (outcome,)


@pytest.mark.parametrize(
    ("amps", "outcome"), [("12.9/13.0/13.1 A", "borderline"), ("10.1/10.2/10.0 A", "low")]
)
def test_a_scroll_at_half_of_its_rated_amps_is_not_weak(
    amps: str, outcome: str, shipped: Knowledge
) -> None:
    day = {"outdoor-temperature": "83 F", "minutes-running": "25 min"}
    found = concluded(shipped, "weak-cooling", {"compressor-amps": amps}, day)
    assert seen(found, "compressor-amps") == (outcome,)


@pytest.mark.parametrize(
    ("amps", "outcome"), [("118/117/119 A", "locked-rotor"), ("62/61/62 A", "high")]
)
def test_locked_rotor_is_held_to_the_plate(amps: str, outcome: str, shipped: Knowledge) -> None:
    """Regression: three times RLA was locked rotor, whatever LRA the plate named."""
    plate = {"compressor-rla": "20 A", "compressor-lra": "130 A"}
    found = concluded(shipped, "no-cooling", {"compressor-amps": amps}, **plate)
    assert seen(found, "compressor-amps") == (outcome,)


def test_liquid_pins_the_standing_pressure(shipped: Knowledge) -> None:
    """Too much of one refrigerant stands where the weather puts it; only another gas adds to it."""
    read = {"head-pressure": "445 psig", "subcooling": "19 F", "standing-pressure": "296 psig"}
    found = concluded(shipped, "failed-after-other-work", read)
    assert chance(found, "air-in-refrigerant") > 5 * chance(found, "overcharge")


def test_a_starved_valve_with_its_subcooling_is_not_short_of_charge(shipped: Knowledge) -> None:
    read = {"suction-pressure": "78 psig", "superheat": "42 F", "subcooling": "11 F"}
    found = concluded(shipped, "weak-cooling", read | {"return-air-temperature": "78 F"})
    assert chance(found, "txv-underfeeding") > 2 * chance(found, "low-charge-from-leak")


@pytest.mark.parametrize(
    ("read", "day"),
    [
        ({"ice-on-coil": "iced"}, WARM),
        ({"cooling-call": "present"}, {"outdoor-temperature": "48 F"}),
        ({"condenser-fan-turning": "stopped"}, WARM),
        ({"standing-pressure": "30 psig"}, WARM),
    ],
)
def test_what_could_not_count_is_not_proposed(
    read: dict[str, str], day: dict[str, str], shipped: Knowledge
) -> None:
    assert proposed(concluded(shipped, "weak-cooling", {})) & GAUGES
    assert not proposed(concluded(shipped, "weak-cooling", read, day)) & GAUGES


def test_drop_and_static_read_through_ice_say_nothing(shipped: Knowledge) -> None:
    read = {"ice-on-coil": "iced", "external-static": "high", "evaporator-pressure-drop": "high"}
    valid = {r.test: r.valid for r in concluded(shipped, "ice-on-pipes-or-coil", read).readings}
    assert valid == {
        "ice-on-coil": True, "external-static": False, "evaporator-pressure-drop": False
    }  # fmt: skip


def test_warm_return_air_speaks_against_return_air_too_cold(shipped: Knowledge) -> None:
    day = {"outdoor-temperature": "48 F"}
    ice = {"ice-on-coil": "iced"}
    warm = concluded(shipped, "ice-on-pipes-or-coil", ice | {"return-air-temperature": "74 F"}, day)
    cold = concluded(shipped, "ice-on-pipes-or-coil", ice | {"return-air-temperature": "64 F"}, day)
    fault = "return-air-cold-or-low-load"
    assert cold.causes[0].fault.id == fault
    assert chance(warm, fault) < 0.05


def test_a_dead_circuit_is_not_sent_to_spin_its_fan(shipped: Knowledge) -> None:
    """Regression: a fan that stood because nothing called it led to lock-out and a hand-spin."""
    dead = {"condenser-fan-turning": "stopped", "contactor-pull-in": "does-not-pull-in"}
    assert candidates_for(concluded(shipped, "no-cooling", dead))[0].test.id != (
        "condenser-fan-hand-spin"
    )
    one = concluded(shipped, "no-cooling", {"condenser-fan-turning": "nothing-runs"})
    assert candidates_for(one)[0].test.id != "condenser-fan-hand-spin"
    called = concluded(shipped, "no-cooling", {"condenser-fan-turning": "stopped"})
    assert candidates_for(called)[0].test.id == "condenser-fan-hand-spin"


def test_in_and_silent_leads_to_the_shell(shipped: Knowledge) -> None:
    """A minute's reading before a winding is called open (trade press: 30 % no defect found)."""
    read = {"contactor-pull-in": "pulls-in", "compressor-start-attempt": "silent"}
    one = {"supply-phase": "single", "compressor-phase": "single"}
    read |= {"compressor-amps": "zero", "condenser-fan-turning": "normal"}
    found = concluded(shipped, "no-cooling", read, **one)
    assert candidates_for(found)[0].test.id == "compressor-shell-heat"
    hot = concluded(shipped, "no-cooling", read | {"compressor-shell-heat": "178 F"}, **one)
    assert "compressor-overload-open-when-hot" in {each.fault.id for each in hot.effects}
    assert chance(hot, "compressor-winding-open") < 0.05 < chance(found, "compressor-winding-open")


def test_a_low_pressure_switch_open_leads_to_the_gauges(shipped: Knowledge) -> None:
    found = concluded(shipped, "no-cooling", {"safety-string-walk": "low-pressure-open"})
    assert candidates_for(found)[0].test.id == "standing-pressure"
    assert found.causes[0].fault.id == "low-charge-from-leak"
    full = {"safety-string-walk": "low-pressure-open", "standing-pressure": "274 psig"}
    assert concluded(shipped, "no-cooling", full).causes[0].fault.id == "low-pressure-switch-faulty"


@pytest.mark.parametrize("test", ["superheat", "subcooling"])
def test_a_pipe_past_saturation_is_read_again(test: str, shipped: Knowledge) -> None:
    """Regression: -8 F was "liquid is coming back", and no liquid at all at the condenser."""
    assert seen(concluded(shipped, "weak-cooling", {test: "-8 F"}), test) == ("read-again",)


def test_a_liquid_line_colder_than_its_air_is_read_again(shipped: Knowledge) -> None:
    """Regression: 365 psig, 110 F condensing, over a pipe at 82 F on a 90 F day read very high."""
    read = {"head-pressure": "365 psig", "liquid-line-temperature": "82 F"}
    found = concluded(shipped, "weak-cooling", read)
    assert seen(found, "liquid-over-ambient") == ("under-ambient",)
    assert candidates_for(found)[0].test.id == "repeat-reading"


def test_the_approach_weighs_nothing_beside_the_subcooling(shipped: Knowledge) -> None:
    """It is condensing over ambient less subcooling: two of the three hold the third."""
    line = {"liquid-line-temperature": "112 F"}
    alone = concluded(shipped, "weak-cooling", line)
    beside = concluded(shipped, "weak-cooling", line | {"head-pressure": "385 psig"})
    counts = [
        next(r.valid for r in found.readings if r.test == "liquid-over-ambient")
        for found in (alone, beside)
    ]
    assert counts == [True, False]


@pytest.mark.parametrize("complaint", ["no-cooling", "weak-cooling", "ice-on-pipes-or-coil"])
def test_no_burner_is_read_on_a_call_for_cooling(complaint: str, shipped: Knowledge) -> None:
    """Regression: spark and glow were asked in July, to tell whether there was power."""
    found = concluded(shipped, complaint, {}, fuel="natural-gas")
    subsystems = {candidate.test.subsystem for candidate in candidates_for(found)}
    assert subsystems.isdisjoint({"gas", "ignition", "combustion", "electric-heat"})
    assert "heating-call" not in proposed(found)
