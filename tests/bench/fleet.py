"""An invented fleet that ages by physics, and what the same crew reads on it visit after visit.

The crew keeps its meters: an error of calibration is the same on every visit, and what differs from
one reading to the next is what an instrument repeats to (`quantities.instruments`). Weather, rooms
and the load of the filters differ from visit to visit, as they do.
"""

from __future__ import annotations

import random
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import date
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.measure.physics.draws import a_plate
from troubleshoot.physics.instruments import METERS, Value, cooling_values, heating_values
from troubleshoot.physics.knobs import AirFaults, Day, Faults
from troubleshoot.physics.sizing import Nameplate
from troubleshoot.quantities.instruments import INSTRUMENTS

READ_COOLING: Final = frozenset({
    "outdoor-temperature", "return-air-temperature", "return-wet-bulb", "supply-air-temperature",
    "external-static", "filter-pressure-drop", "blower-amps", "transformer-secondary-volts",
    "suction-pressure", "suction-line-temperature", "head-pressure", "liquid-line-temperature",
    "compressor-amps", "condenser-fan-amps", "capacitance-out-of-circuit",
})  # fmt: skip
READ_HEATING: Final = frozenset({
    "return-air-temperature", "heating-supply-temperature", "gas-inlet-pressure-all-firing",
    "gas-manifold-pressure", "flame-current", "external-static", "filter-pressure-drop",
})  # fmt: skip
_REPEATS: Final[Mapping[str, str]] = {
    "psig": "high-side-gauge", "F": "clamp-probe", "A": "clamp-ammeter", "V": "voltmeter",
    "in wc": "manometer", "uF": "capacitance-meter", "uA": "microammeter",
}  # fmt: skip
"""The instrument whose repeatability holds for a reading in this unit."""
OF_CALIBRATION: Final = 0.6
"""Share of a meter's limits of error that is of its calibration (common practice, no source)."""


@frozen
class Visit:
    """One visit to one unit: the day, which season's numbers, and each reading as typed."""

    day: date
    season: str
    readings: Mapping[str, str]


@frozen
class Drift:
    """What changes on a unit: `knob` of `part`, at each visit of its season in turn."""

    part: str
    knob: str
    at_visits: tuple[float, ...]


class Crew:
    """Reads what there is with its own meters; the same seed errs alike."""

    def __init__(self, seed: str) -> None:
        self._dice = random.Random(f"{seed} readings")
        own = random.Random(f"{seed} meters")
        self._off = {unit: own.uniform(-1, 1) * OF_CALIBRATION for unit in sorted(METERS)}

    def reads(self, value: Value) -> str:
        """A reading as it is typed."""
        meter = METERS[value.unit]
        kept = INSTRUMENTS[_REPEATS[value.unit]]
        last_digit = 10.0**-meter.digits
        shown = []
        for number in value.numbers:
            error = self._off[value.unit] * (meter.share * abs(number) + meter.fixed)
            spread = kept.repeat_percent / 100 * abs(number) + kept.repeat_counts * last_digit
            shown.append(f"{number + error + self._dice.gauss(0, spread):.{meter.digits}f}")
        return f"{'/'.join(shown)} {value.unit}"


def days(years: Sequence[int], dice: random.Random) -> Iterator[tuple[date, str]]:
    """The visits of these years: before the summer, within it, and before the winter."""
    for year in years:
        yield date(year, 5, dice.randint(2, 28)), "spring"
        yield date(year, 7, dice.randint(2, 28)), "summer"
        yield date(year, 10, dice.randint(2, 28)), "fall"


def visits(
    plate: Nameplate, years: Sequence[int], crew: Crew, dice: random.Random, drift: Drift | None
) -> Iterator[Visit]:
    """Every visit to one unit. `drift` goes by its visits for heat where it is of gas."""
    counts = {"heat": 0, "cool": 0}
    for day, season in days(years, dice):
        mode = "heat" if season == "fall" else "cool"
        of_gas = drift is not None and drift.part == "gas"
        mine = drift if of_gas == (mode == "heat") else None
        faults = _faults(mine, counts[mode], dice)
        counts[mode] += 1
        weather = _weather(season, dice)
        if mode == "heat":
            values = heating_values(plate, faults, weather)
        else:
            values = cooling_values(plate, faults, weather)
        wanted = READ_HEATING if mode == "heat" else READ_COOLING
        read = {
            f"{value.test} at {value.at}" if value.at else value.test: crew.reads(value)
            for value in values
            if value.test in wanted
        }
        if mode == "heat":
            read["outdoor-temperature"] = crew.reads(
                Value("outdoor-temperature", "", (weather.outdoor,), "F")
            )
        yield Visit(day, season, read)


def _faults(drift: Drift | None, number: int, dice: random.Random) -> Faults:
    """A sound unit with its filters as they come, and what drifts as far as it has come."""
    faults = Faults(circuit=1, air=AirFaults(filter=dice.uniform(1.0, 2.0)))
    if drift is None:
        return faults
    part = replace(getattr(faults, drift.part), **{drift.knob: drift.at_visits[number]})
    changed: dict[str, object] = {drift.part: part}
    return replace(faults, **changed)


def _weather(season: str, dice: random.Random) -> Day:
    if season == "fall":
        return Day(dice.uniform(40, 58), dice.uniform(66, 70), 54)
    wet = dice.uniform(60, 66)
    outdoor = dice.uniform(72, 88) if season == "spring" else dice.uniform(84, 100)
    return Day(outdoor, wet + dice.uniform(10, 13), wet)


def plates(units: int, seed: str) -> tuple[Nameplate, ...]:
    """So many units, of any size and age."""
    dice = random.Random(f"{seed} plates")
    return tuple(a_plate(dice) for _ in range(units))
