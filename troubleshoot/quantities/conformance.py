"""Is a reading within its limits, outside, or too close to call with this meter?

The limits are guarded on both sides by the expanded uncertainty, so that "within" and "outside"
are each wrong in at most one case of forty: JCGM 106, ISO 14253-1, ILAC-G8 4.2.3 with w = U.
"""

import math
from collections.abc import Callable
from typing import Final, Literal, NamedTuple

Verdict = Literal["within", "outside", "too close to call with this meter"]

COVERAGE_FACTOR: Final = 2.0
"""Expanded uncertainty over standard uncertainty, for about 95 % coverage (ISO 14253-1)."""

_FAR_OUT: Final = 9.0
"""Standard deviations beyond which a normal density adds nothing to a risk."""
_STEPS: Final = 2000


class Conformance(NamedTuple):
    """Probability that the true value is within the limits, and the verdict in words."""

    probability: float
    verdict: Verdict


def conformance(
    reading: float, u: float, low: float | None = None, high: float | None = None
) -> Conformance:
    """Judge `reading` with standard uncertainty `u` against one limit or two, all in one unit.

    A reading on the guarded limit itself is within. With u = 0 (over range, a count) the limits
    decide alone. Raises ValueError without a limit, with crossed limits or with an impossible u.
    """
    if low is None and high is None:
        raise ValueError("Nothing to judge by; give a low limit, a high limit, or both.")
    if low is not None and high is not None and not low <= high:
        raise ValueError(f"The low limit {low} is above the high limit {high}.")
    if not 0.0 <= u < math.inf:
        raise ValueError(f"A standard uncertainty is zero or more, not {u}.")
    to_low = math.inf if low is None else reading - low
    to_high = math.inf if high is None else high - reading
    margin = min(to_low, to_high)
    if u == 0.0 or math.isinf(reading):
        return Conformance(1.0 if margin >= 0.0 else 0.0, _verdict(margin, 0.0))
    probability = normal_below(to_high / u) - normal_below(-to_low / u)
    return Conformance(probability, _verdict(margin, COVERAGE_FACTOR * u))


def false_accept_risk(in_tolerance_probability: float, sigma_ratio: float) -> float:
    """Return how often a thing is out of tolerance and yet read within it (simple acceptance).

    The things' values are normal about the middle of two-sided limits, and a share of
    `in_tolerance_probability` (0 to 1) lies within. `sigma_ratio` is their standard deviation
    over the meter's. Returns a share, 0 to 1. Source: JCGM 106, clause 9 (global risk).
    """
    limit = _limit_in_sigmas(in_tolerance_probability, sigma_ratio)
    reach = min(_FAR_OUT, _FAR_OUT / sigma_ratio)

    def out_but_accepted(value: float) -> float:
        return _density(value) * _accepted(value, limit, sigma_ratio)

    return 2.0 * _integral(out_but_accepted, limit, limit + reach)


def _verdict(margin: float, guard: float) -> Verdict:
    """Return the verdict for a reading that is `margin` inside the nearest limit."""
    if margin >= guard:
        return "within"
    if margin < -guard:
        return "outside"
    return "too close to call with this meter"


def normal_below(sigmas: float) -> float:
    """Return the share of a normal distribution below `sigmas` standard deviations."""
    return 0.5 * math.erfc(-sigmas / math.sqrt(2.0))


def _density(sigmas: float) -> float:
    return math.exp(-0.5 * sigmas * sigmas) / math.sqrt(2.0 * math.pi)


def _accepted(value: float, limit: float, sigma_ratio: float) -> float:
    """Return the probability that a meter reads `value` between -limit and +limit."""
    return normal_below((limit - value) * sigma_ratio) - normal_below(
        (-limit - value) * sigma_ratio
    )


def _limit_in_sigmas(in_tolerance_probability: float, sigma_ratio: float) -> float:
    """Return the limit within which that share of a normal distribution lies, by bisection."""
    if not 0.0 < in_tolerance_probability < 1.0:
        raise ValueError("The share in tolerance lies between 0 and 1.")
    if not 0.0 < sigma_ratio < math.inf:
        raise ValueError("The ratio of standard deviations is above zero and finite.")
    inner, outer = 0.0, _FAR_OUT
    while True:
        middle = 0.5 * (inner + outer)
        if middle in (inner, outer):
            return middle
        if math.erf(middle / math.sqrt(2.0)) < in_tolerance_probability:
            inner = middle
        else:
            outer = middle


def _integral(function: Callable[[float], float], start: float, end: float) -> float:
    """Integrate by Simpson's rule; the integrands here are smooth over the whole interval."""
    step = (end - start) / _STEPS
    inner = math.fsum(
        function(start + index * step) * (4.0 if index % 2 else 2.0) for index in range(1, _STEPS)
    )
    return (function(start) + inner + function(end)) * step / 3.0
