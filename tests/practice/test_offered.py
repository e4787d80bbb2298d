"""What is offered at a call: near misses, which follow from the call and never from the truth."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.practice.playing import scenario_named
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.loading import scenario_paths
from troubleshoot.practice.offered import MOST_OFFERED, Part, near_miss, offers, text_of

PARTS: tuple[Part, ...] = ("repair", "proof")


@pytest.mark.parametrize("name", sorted(scenario_paths()))
def test_the_right_one_stands_among_near_misses(name: str, shipped: Knowledge) -> None:
    scenario = scenario_named(shipped, name)
    for true in scenario.truth.faults:
        called = shipped.faults[true.fault]
        for part in PARTS:
            offered = offers(shipped, scenario, called, part)
            assert len(offered) == MOST_OFFERED
            assert len({offer.text for offer in offered}) == len(offered)
            (own,) = [offer for offer in offered if offer.fault == called.id]
            assert own.text == text_of(called, part)
        repairs = offers(shipped, scenario, called, "repair")
        assert any(
            near_miss(shipped, called, each.fault) for each in repairs if each.fault != called.id
        )


def test_the_offers_are_the_same_whatever_is_true(shipped: Knowledge) -> None:
    scenario = scenario_named(shipped, "quarry-road")
    other = scenario_named(shipped, "mill-lane").truth
    for called in ("overcharge", "low-charge-from-leak", "filters-loaded"):
        for part in PARTS:
            fault = shipped.faults[called]
            there = offers(shipped, scenario, fault, part)
            assert there == offers(shipped, replace(scenario, truth=other), fault, part)


def test_nothing_is_offered_that_asks_for_the_same(shipped: Knowledge) -> None:
    """A hood in place and a hood on would be told apart by nobody."""
    scenario = scenario_named(shipped, "long-meadow")
    offered = offers(shipped, scenario, shipped.faults["vent-blocked"], "proof")
    assert "flue-hood-missing-or-wind" not in {offer.fault for offer in offered}


def test_what_is_offered_is_of_what_the_unit_has(shipped: Knowledge) -> None:
    for name in scenario_paths():
        scenario = scenario_named(shipped, name)
        for fault in ("filters-loaded", "supply-voltage-high", "thermostat-wrong-setup"):
            for offer in offers(shipped, scenario, shipped.faults[fault], "repair"):
                wanted = shipped.faults[offer.fault].exists_when
                assert offer.fault == fault or scenario.unit.allows(wanted)


def test_a_near_miss_says_how_it_is_near(shipped: Knowledge) -> None:
    true = shipped.faults["condenser-fan-capacitor-weak"]
    assert near_miss(shipped, true, "one-condenser-fan-out").endswith("which can come of it")
    alike = near_miss(shipped, true, "condenser-fan-no-supply")
    assert alike.endswith("which is easily taken for it")
    assert near_miss(shipped, true, "gas-valve-failed") == ""


def test_what_may_be_called_for_too_is_no_near_miss(shipped: Knowledge) -> None:
    """Nitrogen that holds proves a leak shut wherever it was."""
    for name in scenario_paths():
        scenario = scenario_named(shipped, name)
        for true in scenario.truth.faults:
            called = shipped.faults[true.fault]
            for part in PARTS:
                offered = {offer.fault for offer in offers(shipped, scenario, called, part)}
                assert not offered & {*called.behind}
