"""From a number to an outcome word, and how sure: the limits of a test applied to known values.

Where one quantity decides, the reading is soft evidence near a limit: the chance of each outcome
is the part of the reading's normal distribution that falls in that outcome's band (uncertainty
from the meter, and from the digits left off where it was typed). Where two or three quantities or
several legs decide, the class is hard. The words shown to people follow the guard band of
JCGM 106 / ISO 14253-1.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Outcome, Test
from troubleshoot.quantities.conformance import conformance, normal_below
from troubleshoot.reasoning.readings.limits import (
    Here,
    cuts_on,
    deciding_quantities,
    limits_here,
    outcome_at,
    signs_at,
)
from troubleshoot.reasoning.readings.values import Value, Values
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.places import Place

WITHOUT_ITS_DECIMALS = "too close to call without its decimals"
"""The verdict where the meter would decide, had the number not been rounded."""

COVERAGE = 2.0
"""Standard uncertainties from a number to its ends: about 95 in a hundred (JCGM 100, 6.3.3)."""

POSSIBLE = 0.02
"""The chance above which an outcome may be what was read."""

FAR = 1e12
"""Beyond any value a mechanic meets; stands for infinity so that arithmetic stays finite."""


@frozen
class Classified:
    """The outcome a number falls in, the chance of each outcome, and the verdict in words.

    `seen`: the outcome, or of a test of signs every sign whose limits hold. `verdict` is "within",
    "outside" or too close to call (with this meter, or without its decimals) against the healthy
    band; `low` and `high` are that band in the deciding quantity's unit, where there is one.
    `by_meter`: every outcome that the number as typed may be by the meter's own accuracy, none
    milder than what was seen. `at_ends`: every outcome at either end of what the meter may have
    read, where several numbers decide too.
    """

    outcome: str
    seen: tuple[str, ...]
    chances: Mapping[str, float]
    quantity: str
    value: float
    u: float
    verdict: str
    low: float | None
    high: float | None
    by_meter: frozenset[str]
    at_ends: frozenset[str] = frozenset()


def outcomes_here(test: Test, unit: Unit) -> tuple[Outcome, ...]:
    """The outcomes this equipment can show."""
    return tuple(o for o in test.outcomes if unit.allows(o.exists_when))


def classify(test: Test, place: Place | None, values: Values) -> Classified | None:
    """The outcome of a test from known values; nothing where they do not decide it."""
    outcomes = [o for o in outcomes_here(test, values.unit) if o.limits]
    if not outcomes:
        return None
    here = limits_here(outcomes, place, values)
    names = deciding_quantities(here)
    present = {name: values.get(name, place) for name in names}
    numbers = {name: value.number for name, value in present.items() if value is not None}
    outcome = outcome_at(here, numbers, place, values)
    if outcome is None:
        return None
    seen: tuple[str, ...] = (outcome,)
    if test.choose == "several":
        seen = signs_at(here, test.healthy, numbers, place, values) or seen
        outcome = seen[0]
    measured = [
        n for n in names if (v := present[n]) is not None and not _is_plate(n, place, v, values)
    ]
    read = {one.quantity for one in test.reads}
    main = next((n for n in measured if n in read), measured[0] if measured else names[0])
    value = present[main]
    if value is None:
        return None
    exact = value.number == 0 or math.isinf(value.number)
    soft = len(measured) == 1 and value.soft and value.whole_u > 0 and not exact
    by_meter = frozenset(seen)
    at_ends = {
        end
        for name in measured
        if name in read and (one := present[name]) is not None and one.typed
        for end in _at_ends(here, name, one, numbers, place, values)
    }
    if not soft:
        chances: Mapping[str, float] = dict.fromkeys(seen, 1.0)
        low = high = None
        verdict = _hard_verdict(test, outcome)
        if len(measured) == 1 and not exact:
            low, high = _healthy_band(
                test, _bands(outcomes, here, main, numbers, place, values), value.number
            )
    else:
        bands = _bands(outcomes, here, main, numbers, place, values)
        chances = _chances(bands, value.number, value.whole_u) or {outcome: 1.0}
        if value.u > 0:
            own = _chances(bands, value.number, value.u)
            near = {each for each, chance in own.items() if chance > POSSIBLE}
            by_meter |= near - _milder(test, seen)
        low, high = _healthy_band(test, bands, value.number)
        verdict = _verdict(test, outcome, value, low, high)
    return Classified(
        outcome, seen, chances, main, value.number, value.whole_u, verdict, low, high, by_meter,
        frozenset(at_ends),
    )  # fmt: skip


def _at_ends(
    here: Here,
    name: str,
    value: Value,
    numbers: Mapping[str, float],
    place: Place | None,
    values: Values,
) -> Iterator[str]:
    """The outcomes at both ends of what the meter may have read, the other numbers as they are."""
    if value.number == 0 or math.isinf(value.number):
        return
    for end in (value.number - COVERAGE * value.u, value.number + COVERAGE * value.u):
        outcome = outcome_at(here, {**numbers, name: end}, place, values)
        if outcome is not None:
            yield outcome


def _milder(test: Test, seen: tuple[str, ...]) -> frozenset[str]:
    """The outcomes than which what was seen is worse: it says all that they would."""
    return frozenset(
        outcome
        for chain in test.severity
        for worse in {*seen} & {*chain}
        for outcome in chain[: chain.index(worse)]
    )


def _is_plate(name: str, place: Place | None, value: Value, values: Values) -> bool:
    return not value.typed and values.plate_value(name, place) is not None


@frozen
class _Band:
    low: float
    high: float
    outcome: str | None


def _bands(
    outcomes: Sequence[Outcome],
    here: Here,
    main: str,
    numbers: Mapping[str, float],
    place: Place | None,
    values: Values,
) -> tuple[_Band, ...]:
    """The line of real numbers cut at every limit on `main`, with the outcome of each piece."""
    cuts = sorted({c for c in cuts_on(outcomes, main, place, values) if abs(c) < FAR})
    edges = [-FAR, *cuts, FAR]
    bands: list[_Band] = []
    for low, high in pairwise(edges):
        middle = _middle(low, high)
        at = outcome_at(here, {**numbers, main: middle}, place, values)
        if bands and bands[-1].outcome == at:
            bands[-1] = _Band(bands[-1].low, high, at)
        else:
            bands.append(_Band(low, high, at))
    return tuple(bands)


def _middle(low: float, high: float) -> float:
    if low == -FAR and high == FAR:
        return 0.0
    if low == -FAR:
        return high - 1.0 - abs(high)
    if high == FAR:
        return low + 1.0 + abs(low)
    return (low + high) / 2


def _chances(bands: tuple[_Band, ...], x: float, u: float) -> Mapping[str, float]:
    """The part of a normal distribution around x in each outcome's bands, scaled to 1.

    Empty where the only outcome near is a single point on the line of numbers.
    """
    parts: dict[str, float] = {}
    for band in bands:
        if band.outcome is not None:
            part = normal_below((band.high - x) / u) - normal_below((band.low - x) / u)
            parts[band.outcome] = parts.get(band.outcome, 0.0) + part
    total = math.fsum(parts.values())
    return {outcome: part / total for outcome, part in parts.items() if part > 0 and total > 0}


def _healthy_band(
    test: Test, bands: tuple[_Band, ...], x: float
) -> tuple[float | None, float | None]:
    """The healthy band that holds x, or the one nearest to it; healthy neighbours are one."""
    healthy: list[_Band] = []
    for band in bands:
        if band.outcome in test.healthy:
            beside = bool(healthy) and healthy[-1].high == band.low
            low = healthy.pop().low if beside else band.low
            healthy.append(_Band(low, band.high, band.outcome))
    if not healthy:
        return None, None
    nearest = min(healthy, key=lambda b: max(b.low - x, x - b.high, 0.0))
    return (
        None if nearest.low == -FAR else nearest.low,
        None if nearest.high == FAR else nearest.high,
    )


def _hard_verdict(test: Test, outcome: str) -> str:
    return "within" if outcome in test.healthy else "outside"


def _verdict(test: Test, outcome: str, value: Value, low: float | None, high: float | None) -> str:
    if low is None and high is None:
        return _hard_verdict(test, outcome)
    own = conformance(value.number, value.u, low=low, high=high).verdict
    whole = conformance(value.number, value.whole_u, low=low, high=high).verdict
    return own if own == whole else WITHOUT_ITS_DECIMALS


DECIDES: Final = 0.5
"""A rounding of at least so much of the meter's own doubt is worth a digit more."""


def limit_in_rounding(
    test: Test, place: Place | None, values: Values
) -> tuple[float, float, float] | None:
    """From where to where a number may lie for its rounding alone, and the limit between.

    Nothing where it was typed as the meter shows it, where no limit lies there, or where the meter
    itself leaves more open than the digits that were left off.
    """
    name = test.reads[0].quantity
    value = values.get(name, place)
    if value is None or not value.soft or value.rounding == 0 or value.number == 0:
        return None
    if value.rounding < DECIDES * value.u:
        return None
    outcomes = [o for o in outcomes_here(test, values.unit) if o.limits]
    here = limits_here(outcomes, place, values)
    names = deciding_quantities(here)
    known = {each: at.number for each in names if (at := values.get(each, place)) is not None}
    if name not in known:
        return None
    half = value.rounding * math.sqrt(12.0) / 2
    low, high = value.number - half, value.number + half
    bands = _bands(outcomes, here, name, known, place, values)
    between = (
        below.high
        for below, above in pairwise(bands)
        if low < below.high < high and None not in (below.outcome, above.outcome)
    )
    limit = next(between, None)
    return None if limit is None else (low, high, limit)
