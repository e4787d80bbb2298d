"""How far a reading may be off, and when a second reading agrees with the first.

A meter's specification is +/- (percent of the reading + counts of the last digit), and for
gauges and probes a fixed part. Counts are worth the resolution of the range in use, which is the
last digit that was shown, never that of the meter's best range.
"""

import math
from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import Final, NamedTuple

from troubleshoot.frozen import frozen

COMMON_PRACTICE: Final = "common practice, no source"

_PAIR_FACTOR: Final = 2.8
"""ISO 5725-6: two readings of one thing differ by more than 2.8 standard deviations 1 in 20."""


@frozen
class Instrument:
    """What is known of an instrument's accuracy, until the register knows the real one.

    `percent` is of the reading, `counts` of the last digit, `fixed` in `unit`. The standard
    deviation of a repeated reading is `repeat_percent` of it and `repeat_counts`, independent of
    each other. `source` tells where the accuracy comes from. `shows` is the last digit that it
    commonly shows (common practice, no source); zero where no digit is counted.
    """

    id: str
    unit: str
    percent: float
    counts: float
    fixed: float = 0.0
    repeat_percent: float = 0.5
    repeat_counts: float = 1.0
    source: str = COMMON_PRACTICE
    shows: float = 0.0


class Limits(NamedTuple):
    """A reading's error limit and the interval around it, in the reading's unit."""

    error: float
    low: float
    high: float


class AsTyped(NamedTuple):
    """Standard uncertainty of a typed number: the meter's own, and that of the typing."""

    meter: float
    rounding: float


class Repeated(NamedTuple):
    """Mean and standard deviation of repeated readings, in their unit."""

    mean: float
    standard_deviation: float


_PROBE_SOURCE: Final = "California Title 24 (2008), Residential Appendix RA3.2.2.2.1"
_GAUGE_SOURCE: Final = "California Title 24 (2013), Residential Appendix RA3.2.2.2"
_OXYGEN_SOURCE: Final = "METAS instruction of January 2004, as quoted"
_MEASURED_MANY_WAYS: Final = frozenset({"percent"})

_LIST: Final = (
    Instrument("voltmeter", "V", 1.0, 3, repeat_percent=0.2, shows=0.1),
    Instrument("clamp-ammeter", "A", 2.0, 5, shows=0.1),
    Instrument("microammeter", "uA", 1.0, 2, shows=0.1),
    Instrument("ohmmeter", "ohm", 1.0, 3, repeat_percent=0.3, shows=0.1),
    Instrument("insulation-tester", "Mohm", 30.0, 0, repeat_percent=5.0, source="IEC 61557-2, 6.2"),
    Instrument("capacitance-meter", "uF", 1.0, 2, repeat_percent=0.3, shows=0.1),
    Instrument("power-meter", "kW", 3.0, 5, repeat_percent=1.0, shows=0.1),
    Instrument("high-side-gauge", "psig", 0.0, 0, fixed=7.0, source=_GAUGE_SOURCE),
    Instrument("low-side-gauge", "psig", 0.0, 0, fixed=3.5, source=_GAUGE_SOURCE),
    Instrument("vacuum-gauge", "micron", 10.0, 1, repeat_percent=3.0, shows=1.0),
    Instrument("manometer", "in-wc", 1.5, 1, fixed=0.01, shows=0.01),
    Instrument("thermometer", "F", 0.1, 0, fixed=1.3, source=_PROBE_SOURCE),
    Instrument("clamp-probe", "F", 0.1, 0, fixed=1.3, source=_PROBE_SOURCE),
    Instrument("psychrometer", "F", 0.0, 0, fixed=1.0),
    Instrument("infrared-thermometer", "F", 2.0, 0, fixed=2.0, repeat_percent=1.0),
    Instrument("paired-probes", "F-diff", 0.0, 1, fixed=1.0, shows=0.1),
    Instrument("hygrometer", "percent", 0.0, 0, fixed=3.0),
    Instrument("oxygen-analyser", "percent", 0.0, 0, fixed=0.4, source=_OXYGEN_SOURCE),
    Instrument("carbon-monoxide-analyser", "ppm", 5.0, 0, fixed=10.0, repeat_percent=2.0),
    Instrument("carbon-monoxide-monitor", "ppm", 5.0, 0, fixed=3.0, repeat_percent=2.0),
    Instrument("combustible-gas-detector", "percent-LEL", 10.0, 0, fixed=3.0, repeat_percent=2.0),
    Instrument("refrigerant-detector", "percent-LFL", 10.0, 0, fixed=3.0, repeat_percent=2.0),
    Instrument("flow-hood", "cfm", 5.0, 5, repeat_percent=2.0, shows=1.0),
    Instrument("anemometer", "ft/min", 5.0, 5, repeat_percent=3.0, shows=1.0),
    Instrument("tachometer", "rpm", 0.1, 1, repeat_percent=0.1, shows=1.0),
    Instrument("stopwatch", "s", 0.0, 0, fixed=0.5, repeat_percent=0.0),
    Instrument("rule", "in", 0.0, 1, repeat_percent=0.0, shows=0.1),
    Instrument("charging-scale", "lb", 0.5, 1, repeat_percent=0.1, shows=0.1),
)

INSTRUMENTS: Final[Mapping[str, Instrument]] = MappingProxyType({one.id: one for one in _LIST})
"""Instruments by id, with the accuracy taken for one that the register does not know."""


def default_instrument(unit_id: str) -> Instrument | None:
    """Return the usual instrument for readings in `unit_id`, or None where there is none.

    A rule that knows better (low side, psychrometer) names its instrument.
    """
    if unit_id in _MEASURED_MANY_WAYS:
        return None
    return next((one for one in _LIST if one.unit == unit_id), None)


def reading_limits(
    reading: float, percent: float, counts: float, resolution: float, fixed: float = 0.0
) -> Limits:
    """Return the error limit of `reading` and the lowest and highest value behind it.

    `resolution` (one step of the last digit) and `fixed` are in the unit of `reading`. Raises
    ValueError for a reading that is not finite: over range has no error limit.
    """
    if not math.isfinite(reading):
        raise ValueError("A reading over range has no error limit; judge it without one.")
    error = abs(reading) * percent / 100.0 + counts * resolution + fixed
    return Limits(error, reading - error, reading + error)


def standard_uncertainty(value: float, instrument: Instrument, resolution: float) -> float:
    """Return the standard uncertainty of `value`, which is in the instrument's unit.

    A specification gives limits and nothing about what lies between them, so every value between
    is taken as equally likely: error / sqrt(3), a Type B evaluation (JCGM 100, 4.3.7).
    """
    limits = reading_limits(
        value, instrument.percent, instrument.counts, resolution, instrument.fixed
    )
    return limits.error / math.sqrt(3.0)


def uncertainty_as_typed(value: float, instrument: Instrument, last_digit: float) -> AsTyped:
    """Return the standard uncertainty of `value`, which was typed to its `last_digit`.

    A number that ends before the digits that the meter shows was rounded, or its noughts were left
    off: people write 10 for 10.0. The meter is none the worse for it. The rounding is half of the
    last digit typed, even between (JCGM 100, F.2.2.1).
    """
    if not 0.0 < instrument.shows < last_digit:
        return AsTyped(standard_uncertainty(value, instrument, last_digit), 0.0)
    own = standard_uncertainty(value, instrument, instrument.shows)
    return AsTyped(own, last_digit / math.sqrt(12.0))


def repeatability_limit(value: float, instrument: Instrument, resolution: float) -> float:
    """Return by how much two readings near `value` may differ and still agree.

    Only what varies from one reading to the next counts; an error of the meter's calibration is
    in both. Source: ISO 5725-6, 2.8 repeatability standard deviations.
    """
    of_reading = abs(value) * instrument.repeat_percent / 100.0
    return _PAIR_FACTOR * math.hypot(of_reading, instrument.repeat_counts * resolution)


def agree(first: float, second: float, instrument: Instrument, resolution: float) -> bool:
    """Say whether a second reading bears the first out, by what this instrument repeats to.

    Readings over range agree with each other and with nothing else.
    """
    if math.isinf(first) or math.isinf(second):
        return first == second
    limit = repeatability_limit((first + second) / 2.0, instrument, resolution)
    return abs(first - second) <= limit


def repeatability(values: Sequence[float]) -> Repeated:
    """Return mean and standard deviation (n - 1) of readings of one thing, JCGM 100, 4.2.

    Raises ValueError for fewer than two readings.
    """
    if len(values) < 2:
        raise ValueError("One reading does not show how well a meter repeats; take two or more.")
    mean = math.fsum(values) / len(values)
    squares = math.fsum((value - mean) ** 2 for value in values)
    return Repeated(mean, math.sqrt(squares / (len(values) - 1)))
