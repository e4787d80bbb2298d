"""How each reference value on instruments and decision rules is computed."""

import math
from collections.abc import Callable, Mapping
from typing import Any

from tests.checks.reference_entries import Entry, compute
from troubleshoot.quantities import conformance
from troubleshoot.quantities.instruments import Instrument, standard_uncertainty

VERDICTS = {
    "pass": "within",
    "conditional pass": "too close to call with this meter",
    "conditional fail": "too close to call with this meter",
    "fail": "outside",
}
"""The statements of ILAC-G8 in our words: what is conditional is too close to call."""


def reading_limits(entry: Entry) -> Mapping[str, float]:
    found = compute(
        "reading-limits",
        reading=entry.typed("reading"),
        percent=entry.typed("percent"),
        counts=entry.typed("counts"),
        resolution=entry.typed("resolution"),
    )
    return {"error_limit": found["error"], "low": found["low"], "high": found["high"]}


def counts_by_range(entry: Entry) -> Mapping[str, float]:
    return {
        f"on_{volts}_range": compute(
            "reading-limits",
            reading=entry.typed("reading"),
            percent=entry.typed("percent"),
            counts=entry.typed("counts"),
            resolution=entry.typed(f"resolution_{volts}_range"),
        )["error"]
        for volts in ("600V", "60V")
    }


def rectangular(entry: Entry) -> float:
    meter = Instrument("reference", "V", 0.0, 0, fixed=entry.number("limit"))
    return standard_uncertainty(0.0, meter, 0.1)


def normal_quantile(entry: Entry) -> float:
    """Return how many u below a limit a reading conforms with the entry's probability."""
    low, high = 0.0, 6.0
    while high - low > 1e-9:
        middle = (low + high) / 2
        found = conformance.conformance(-middle, 1.0, high=0.0).probability
        low, high = (middle, high) if found < entry.number("probability") else (low, middle)
    return low


def global_risk(entry: Entry) -> float:
    return float(
        compute(
            "false-accept-risk",
            in_tolerance_probability=entry.typed("itp"),
            sigma_ratio=entry.typed("sigma_ratio"),
        )["risk"]
    )


def both_risks(entry: Entry) -> Mapping[str, float]:
    sigmas = entry.number("limit") / entry.number("process_sigma")
    inside = math.erf(sigmas / math.sqrt(2))
    ratio = entry.number("process_sigma") / entry.number("test_sigma")
    false_accept = conformance.false_accept_risk(inside, ratio)
    read_within = math.erf(sigmas / math.sqrt(2 * (1 + ratio**-2)))
    return {
        "false_accept": false_accept,
        "false_reject": inside - (read_within - false_accept),
    }


def specific_risk(entry: Entry) -> float:
    found = compute(
        "conformance",
        reading=entry.typed("value"),
        u=entry.typed("u"),
        low_limit=entry.typed("low"),
        high_limit=entry.typed("high"),
    )
    return 1 - float(found["probability"])


def risk_at_the_limit(_entry: Entry) -> Mapping[str, float]:
    found = compute("conformance", reading="95", u="1", high_limit="95")
    return {"simple": 1 - found["probability"]}


def verdict(entry: Entry) -> str:
    found = compute(
        "conformance",
        reading=entry.typed("reading"),
        u=str(entry.number("U") / 2),
        high_limit=entry.typed("limit"),
    )["verdict"]
    assert found == VERDICTS[entry.expected]
    return str(entry.expected)


CHECKS: Mapping[str, Callable[[Entry], Any]] = {
    **dict.fromkeys((f"MTR-{number:03}" for number in range(2, 7)), reading_limits),
    "MTR-009": counts_by_range,
    "MTR-010": rectangular,
    **dict.fromkeys(("DR-004", "DR-006"), normal_quantile),
    **dict.fromkeys(("DR-013", "DR-014", "DR-016", "DR-017"), global_risk),
    "DR-018": both_risks,
    "DR-020": specific_risk,
    "DR-022": risk_at_the_limit,
    **dict.fromkeys(("DR-023", "DR-024", "DR-025"), verdict),
}
"""The reference entry and what computes it."""
