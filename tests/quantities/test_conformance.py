"""Verdicts and risks against the examples of the guides on conformity."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.quantities.conformance import (
    COVERAGE_FACTOR,
    conformance,
    false_accept_risk,
)

TOO_CLOSE = "too close to call with this meter"
values = st.floats(min_value=-1e4, max_value=1e4)
doubts = st.floats(min_value=0.0, max_value=100.0)


# ILAC-G8:09/2019, 4.2.3 with w = U: upper limit 95, U = 2, so u = 1. Its conditional pass and
# conditional fail are both "too close to call".
@pytest.mark.parametrize(
    ("reading", "verdict"),
    [
        (92.0, "within"),
        (93.0, "within"),
        (93.4, TOO_CLOSE),
        (95.0, TOO_CLOSE),
        (96.0, TOO_CLOSE),
        (97.0, TOO_CLOSE),
        (97.1, "outside"),
    ],
)
def test_the_limit_is_guarded_by_the_expanded_uncertainty(reading: float, verdict: str) -> None:
    assert conformance(reading, 1.0, high=95.0).verdict == verdict


# Rated 40 uF +/-6 %: 37.6 to 42.4. The verdict follows from the guard band, by hand.
@pytest.mark.parametrize(
    ("reading", "verdict"),
    [(37.0, "outside"), (37.9, TOO_CLOSE), (38.2, "within"), (42.0, TOO_CLOSE), (43.0, "outside")],
)
def test_a_capacitor_is_judged_with_the_doubt_of_its_meter(reading: float, verdict: str) -> None:
    assert conformance(reading, 0.25, low=37.6, high=42.4).verdict == verdict


# Specific risk, JCGM 106:2012 clause 7: 10.5 with u = 0.4 between 9 and 11 fails with 0.1057.
def test_the_probability_of_conformity_is_that_of_the_normal_distribution() -> None:
    probability = conformance(10.5, 0.4, low=9.0, high=11.0).probability
    assert 1.0 - probability == pytest.approx(0.1057, abs=0.0002)


# Normal quantiles, JCGM 106:2012 clause 7, computed with a reference library.
@pytest.mark.parametrize(("sigmas", "probability"), [(1.96, 0.975), (3.0902, 0.999)])
def test_the_probability_follows_the_normal_quantiles(sigmas: float, probability: float) -> None:
    assert conformance(-sigmas, 1.0, high=0.0).probability == pytest.approx(probability, abs=1e-4)


# ILAC-G8:09/2019 Table 1: at worst 50 % false accept on the bare limit, 2.5 % with w = U.
def test_the_worst_false_accept_is_half_on_the_limit_and_under_2_5_percent_when_guarded() -> None:
    assert 1.0 - conformance(95.0, 1.0, high=95.0).probability == pytest.approx(0.5)
    worst_within = conformance(95.0 - COVERAGE_FACTOR, 1.0, high=95.0)
    assert worst_within.verdict == "within"
    assert 1.0 - worst_within.probability <= 0.025


# JCGM 106:2012, 9.5.4: ball bearings, gamma distributed (shape 4, scale 0.25 um), limit 2 um,
# u = 0.25 um; 4.24 % are out, 0.8 % are out and accepted, 0.1 % with the acceptance limit 1.6718.
@pytest.mark.parametrize(
    ("acceptance_limit", "risk", "tolerance"),
    [(math.inf, 0.0424, 0.0005), (2.0, 0.008, 0.0002), (1.6718, 0.001, 0.00002)],
)
def test_accepted_bearings_carry_the_published_risk(
    acceptance_limit: float, risk: float, tolerance: float
) -> None:
    def bearings(size: float) -> float:
        return size**3 * math.exp(-size / 0.25) / (math.gamma(4) * 0.25**4)

    step = 0.001
    sizes = [2.0 + (index + 0.5) * step for index in range(8000)]
    found = step * math.fsum(
        bearings(size) * conformance(size, 0.25, high=acceptance_limit).probability
        for size in sizes
    )
    assert found == pytest.approx(risk, abs=tolerance)


# NCSLI RP-19 (draft), table for two-sided limits and a sigma ratio of 4, as quoted; per cent.
@pytest.mark.parametrize(
    ("in_tolerance", "percent"), [(0.7, 3.9223), (0.8, 2.8558), (0.95, 0.871), (0.99, 0.1999)]
)
def test_the_false_accept_risk_is_that_of_the_published_table(
    in_tolerance: float, percent: float
) -> None:
    assert 100.0 * false_accept_risk(in_tolerance, 4.0) == pytest.approx(percent, abs=0.0005)


# Deaver, guard-banding paper (NCSL): process sigma 4, test sigma 1, limits +/-8.
def test_the_risks_are_those_of_the_guard_banding_paper() -> None:
    in_tolerance = math.erf(2.0 / math.sqrt(2.0))
    assert false_accept_risk(in_tolerance, 4.0) == pytest.approx(0.008, abs=0.0005)
    read_within = math.erf(8.0 / math.sqrt(2.0 * (4.0**2 + 1.0**2)))
    good_and_read_within = read_within - false_accept_risk(in_tolerance, 4.0)
    assert in_tolerance - good_and_read_within == pytest.approx(0.015, abs=0.0005)


@pytest.mark.parametrize(
    ("in_tolerance", "sigma_ratio"), [(0.0, 4.0), (1.0, 4.0), (0.9, 0.0), (0.9, math.inf)]
)
def test_a_risk_needs_a_share_and_a_ratio_that_can_be(
    in_tolerance: float, sigma_ratio: float
) -> None:
    with pytest.raises(ValueError, match=r"share in tolerance|ratio of standard deviations"):
        false_accept_risk(in_tolerance, sigma_ratio)


@given(values, doubts, values, values)
def test_a_verdict_is_never_against_the_odds(
    reading: float, u: float, one: float, other: float
) -> None:
    judged = conformance(reading, u, low=min(one, other), high=max(one, other))
    assert 0.0 <= judged.probability <= 1.0
    if judged.verdict == "within":
        assert judged.probability >= 0.95
    if judged.verdict == "outside":
        assert judged.probability <= 0.025


@given(values, st.floats(min_value=0.01, max_value=100.0), values)
def test_a_low_limit_mirrors_a_high_limit(reading: float, u: float, limit: float) -> None:
    below = conformance(reading, u, high=limit)
    above = conformance(-reading, u, low=-limit)
    assert below.verdict == above.verdict
    assert below.probability == pytest.approx(above.probability)


@given(values, values)
def test_without_doubt_the_limit_alone_decides(reading: float, limit: float) -> None:
    judged = conformance(reading, 0.0, high=limit)
    assert judged == ((1.0, "within") if reading <= limit else (0.0, "outside"))


def test_limits_closer_than_the_doubt_are_never_held_for_sure() -> None:
    assert conformance(5.0, 1.0, low=4.0, high=6.0).verdict == TOO_CLOSE


def test_a_reading_over_range_is_above_every_limit() -> None:
    assert conformance(math.inf, 0.0, low=1.0) == (1.0, "within")
    assert conformance(math.inf, 0.0, high=1e9) == (0.0, "outside")


@pytest.mark.parametrize(
    ("u", "low", "high", "why"),
    [
        (1.0, None, None, "give a low limit"),
        (1.0, 2.0, 1.0, "above the high limit"),
        (1.0, math.nan, 1.0, "above the high limit"),
        (-1.0, 1.0, None, "zero or more"),
        (math.inf, 1.0, None, "zero or more"),
        (math.nan, 1.0, None, "zero or more"),
    ],
)
def test_a_judgement_without_sense_is_refused(
    u: float, low: float | None, high: float | None, why: str
) -> None:
    with pytest.raises(ValueError, match=why):
        conformance(1.0, u, low=low, high=high)
