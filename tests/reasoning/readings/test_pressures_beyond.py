"""A pressure that no sound circuit comes near weighs on the worse side, whatever is in it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.doubted import doubted
from troubleshoot.visit.cases.file import read_case

STANDS = "safety-does-not-open"


@pytest.fixture(scope="module")
def concluded(shipped: Knowledge) -> Callable[..., Conclusions]:
    reasoner = Reasoner(shipped)

    def conclude(test: str, text: str, **unit: Any) -> Conclusions:
        case = {
            "complaint": "fails-hot-afternoons",
            "unit": {"circuits": "one", **unit},
            "conditions": {"outdoor-temperature": "94 F", "minutes-running": "20 min"},
            "readings": [{"test": test, "at": "circuit 1", "text": text}],
        }
        return reasoner.conclude(read_case(shipped, case))

    return conclude


def seen(found: Conclusions, test: str) -> tuple[str, ...]:
    return next(reading.seen for reading in found.readings if reading.test == test)


def stands(found: Conclusions) -> bool:
    return any(fired.hazard.id == STANDS for fired in found.standing_stops)


@pytest.mark.parametrize("unit", [{}, {"refrigerant": "R-410A"}, {"refrigerant": "R-454B"}])
@pytest.mark.parametrize("text", ["690 psig", "750 psig", "1500 psig", "52 bar"])
def test_more_head_than_any_switch_lets_stand_is_high_and_stops(
    unit: dict[str, str], text: str, concluded: Callable[..., Conclusions]
) -> None:
    """Regression: 690 psig with no refrigerant on the plate, and 750 with one, said nothing."""
    found = concluded("head-pressure", text, **unit)
    assert seen(found, "head-pressure") == ("high",)
    assert stands(found)


@pytest.mark.parametrize("unit", [{}, {"refrigerant": "R-410A"}, {"refrigerant": "other"}])
@pytest.mark.parametrize("text", ["320 psig", "600 psig"])
def test_less_head_stops_nothing(
    unit: dict[str, str], text: str, concluded: Callable[..., Conclusions]
) -> None:
    assert not stands(concluded("head-pressure", text, **unit))


def test_the_band_on_the_switch_comes_before_a_rule_of_thumb(
    concluded: Callable[..., Conclusions],
) -> None:
    band = {"high-pressure-switch-band-high": "420 psig"}
    assert stands(concluded("head-pressure", "460 psig", refrigerant="R-22", **band))
    assert not stands(concluded("head-pressure", "405 psig", refrigerant="R-22", **band))


def test_suction_in_a_vacuum_is_more_than_low(concluded: Callable[..., Conclusions]) -> None:
    found = concluded("suction-pressure", "-5 psig", refrigerant="R-410A")
    assert seen(found, "suction-pressure") == ("in-vacuum",)


@pytest.mark.parametrize(
    ("test", "text", "why"),
    [
        ("head-pressure", "690", "690 psig is odd: head pressure is hardly ever over 670."),
        ("head-pressure", "52 bar", "over 670"),
        ("outdoor-temperature", "94 C", "over 130"),
        ("outdoor-temperature", "-60 F", "hardly ever under -40."),
        ("line-volts-idle", "480/700/480", "over 660"),
    ],
)  # fmt: skip
def test_what_is_hardly_ever_read_is_doubted(
    test: str, text: str, why: str, shipped: Knowledge
) -> None:
    said = doubted(shipped, shipped.tests[test], text)
    assert said is not None and why in said


@pytest.mark.parametrize(
    ("test", "text"),
    [
        ("head-pressure", "450 psig"), ("head-pressure", "high"), ("outdoor-temperature", "35 C"),
        ("line-volts-idle", "482/479/480"), ("line-volts-idle", "0 V"),
    ],
)  # fmt: skip
def test_what_units_show_is_not_doubted(test: str, text: str, shipped: Knowledge) -> None:
    assert doubted(shipped, shipped.tests[test], text) is None


def test_what_is_doubted_lies_within_what_can_be(shipped: Knowledge) -> None:
    doubts = [q for q in shipped.quantities.values() if q.doubted_beyond is not None]
    assert {"head-pressure", "suction-pressure", "line-volts"} <= {q.id for q in doubts}
    for quantity in doubts:
        assert quantity.can_be is not None and quantity.doubted_beyond is not None
        least, most = quantity.can_be
        low, high = quantity.doubted_beyond
        assert least <= low < high <= most
