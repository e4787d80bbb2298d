"""The peer: a forest of decision trees, trained on other draws that were read the same way.

It gets what a case file holds (plate, call, readings) and nothing of the rules; it is told which
faults there are, how often each is drawn, and how the meters err, as no rule base ever is.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence

import numpy
from sklearn.ensemble import RandomForestClassifier

from troubleshoot.measure.physics.cases import Examined, examined
from troubleshoot.measure.physics.draws import ROUND, singles
from troubleshoot.measure.physics.judged import Judged
from troubleshoot.physics.plate import plate_facts

TREES = 200
ROUNDS = 40
"""How often each card is drawn to train on."""
NOTHING_WRONG = ""

Features = Mapping[str, float | str]
"""By what was read, told or called: a number, or a word."""


def training_set(seed: int) -> tuple[Examined, ...]:
    """Units drawn by another seed than those that are judged."""
    return tuple(examined(singles(ROUNDS * len(ROUND), f"{seed} to train on")))


class Forest:
    """Trees that tell the cards apart by what is read one way."""

    def __init__(self, trained_on: Sequence[Examined], way: str, seed: int) -> None:
        self.way = way
        known = [_features(unit, way) for unit in trained_on]
        self.columns = sorted(
            {_column(name, what) for each in known for name, what in each.items()}
        )
        self.trees = RandomForestClassifier(TREES, random_state=seed, n_jobs=1)
        self.trees.fit(self._table(known), [_card(unit) for unit in trained_on])

    def judge(self, units: Sequence[Examined]) -> Iterator[Judged]:
        """What the trees say of each unit: the share of them that vote for a card."""
        table = self._table([_features(unit, self.way) for unit in units])
        for unit, votes in zip(units, self.trees.predict_proba(table), strict=True):
            chances = {str(c): float(p) for c, p in zip(self.trees.classes_, votes, strict=True)}
            sound = chances.pop(NOTHING_WRONG, 0.0)
            names = sorted(chances, key=lambda card: (-chances[card], card))
            first = chances[names[0]]
            among = first / (1.0 - sound) if sound < 1.0 else 0.0
            yield Judged(unit.drawn.cards, unit.call, tuple(names), first, among)

    def _table(self, known: Iterable[Features]) -> numpy.ndarray:
        """A row a unit; what was not read is left open."""
        rows = [[_cell(each.get(name), word) for name, word in self.columns] for each in known]
        return numpy.array(rows, dtype=numpy.float32)


def _card(unit: Examined) -> str:
    return unit.drawn.cards[0] if unit.drawn.cards else NOTHING_WRONG


def _features(unit: Examined, way: str) -> Features:
    """What was read one way, a leg at a time; the plate and the call."""
    found: dict[str, float | str] = {"call": unit.call}
    for row in unit.read(way):
        name = f"{row['test']} {row.get('at', '')}"
        if "text" not in row:
            found[name] = row["outcome"]
            continue
        for leg, number in enumerate(row["text"].split()[0].split("/")):
            found[f"{name} {leg}"] = float(number)
    for fact, value in plate_facts(unit.drawn.plate).items():
        if not isinstance(value, Mapping):
            found[fact] = _number_or_word(str(value))
    return found


def _number_or_word(value: str) -> float | str:
    try:
        return float(value.split()[0])
    except ValueError:
        return value


def _column(name: str, what: float | str) -> tuple[str, str]:
    """A number has one column, a word one for each that was heard."""
    return (name, what) if isinstance(what, str) else (name, "")


def _cell(what: float | str | None, word: str) -> float:
    if what is None:
        return math.nan
    return float(what == word) if isinstance(what, str) else what
