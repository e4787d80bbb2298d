"""What a card costs: the same visits with it and without."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.measure.cost_of_card import cost_of_card, without

CARD = "contactor-coil-open"


def test_nothing_names_a_card_that_is_not_there(shipped: Knowledge) -> None:
    left = without(shipped, shipped.faults[CARD])
    assert CARD not in left.faults and CARD in shipped.faults
    for fault in left.faults.values():
        assert CARD not in (*fault.behind, *fault.look_alikes)
    assert not any(CARD in call.brought_by for call in left.complaints.values())


def test_a_card_costs_little_and_finds_its_own_fault(shipped: Knowledge) -> None:
    card = replace(shipped.faults[CARD], calls={"no-cooling": "often"})
    found = list(cost_of_card(shipped, card, 1, 1))
    assert {each.call.id for each in found} == {"no-cooling"}
    for each in found:
        assert each.visits == 1 and each.better + each.worse <= 2 * each.changed
    assert sum(each.own_right for each in found) >= 1


@pytest.mark.parametrize("name", ["gremlins", "compressor-slugged"])
def test_what_is_no_cause_is_told(name: str, command: Callable[..., tuple[int, str, str]]) -> None:
    code, _, failed = command("rules", "measure", "--cost", name)
    assert code == 2 and "is no cause of the rules" in failed
