"""Cases of somebody who saw no card, judged: how often the truth leads, and how sure that was."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import yaml

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.visit.cases.file import read_case

NAMED = 0.5
"""Where nothing is wrong, no fault leads with as much."""
BINS = 10


@frozen
class Judged:
    """One case: its truth, what was told with its chances, whether it leads, or is among three.

    With two faults either may lead; one whose truth is an effect is right where that was seen.
    """

    name: str
    truth: tuple[str, ...]
    told: tuple[tuple[str, float], ...]
    first: bool
    in_three: bool

    @property
    def chance(self) -> float:
        """Of what leads."""
        return self.told[0][1] if self.told else 0.0


def judged(knowledge: Knowledge, folder: Path) -> tuple[Judged, ...]:
    """Every case of a folder. Raises InputRefused where one cannot be read."""
    reasoner = Reasoner(knowledge)
    return tuple(_judge(knowledge, reasoner, path) for path in sorted(folder.glob("**/*.yaml")))


def _judge(knowledge: Knowledge, reasoner: Reasoner, path: Path) -> Judged:
    plain = yaml.safe_load(path.read_text("utf-8"))
    found = reasoner.conclude(read_case(knowledge, plain["case"]))
    truth = tuple(plain["truth"])
    told = tuple((cause.fault.id, cause.probability) for cause in found.causes)
    leading, chance = told[0] if told else ("", 0.0)
    seen = any(effect.fault.id in truth for effect in found.effects)
    first = leading in truth or seen if truth else chance < NAMED
    among = first or any(fault in truth for fault, _ in told[:3])
    return Judged(path.stem, truth, told, first, among)


def calibration(cases: Sequence[Judged]) -> float:
    """The mean distance of what was claimed from what came true, weighted by how many."""
    bins: dict[int, list[Judged]] = {}
    for case in cases:
        bins.setdefault(min(int(case.chance * BINS), BINS - 1), []).append(case)
    away = (abs(sum(case.chance - case.first for case in held)) for held in bins.values())
    return sum(away) / len(cases)
