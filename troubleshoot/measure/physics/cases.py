"""A drawn unit examined: the call, everything read and seen on it, and what is left out of that."""

from __future__ import annotations

import random
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from types import MappingProxyType
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.measure.physics.calls import call
from troubleshoot.measure.physics.draws import Drawn
from troubleshoot.measure.physics.sights import Row, sights
from troubleshoot.physics.instruments import cooling_values, heating_values, typed
from troubleshoot.physics.plate import DRAFT_SET_POINT, own_record, plate_facts
from troubleshoot.physics.unit import cool, heat
from troubleshoot.reasoning.readings.answers import Case
from troubleshoot.visit.cases.file import read_case

Keeps = Callable[[Row, random.Random], bool]
EVERYTHING: Final = "everything"
GAPS: Final = "a quarter left out"
WAYS: Final[Mapping[str, Keeps]] = MappingProxyType({
    EVERYTHING: lambda *_: True,
    GAPS: lambda _, dice: dice.random() < 0.75,
    "half left out": lambda _, dice: dice.random() < 0.5,
    "no sights": lambda row, _: "text" in row,
})  # fmt: skip
"""What of all that can be read is read, by chance or by kind."""
FIRES_ONLY: Final = frozenset({
    "heating-supply-temperature",
    "gas-manifold-pressure",
    "flue-oxygen",
    "flue-carbon-monoxide",
    "flame-current",
    "gas-inlet-pressure-all-firing",
    "meter-time",
})  # fmt: skip
"""What is read on a flame only."""


@frozen
class Examined:
    """A drawn unit, the call that brought somebody to it, all that can be read and seen on it.

    `by_chance`: what decides of gaps in it, so that each way leaves out the same at every run.
    """

    drawn: Drawn
    call: str
    rows: tuple[Row, ...]
    by_chance: str

    def read(self, way: str) -> tuple[Row, ...]:
        """What is read one way."""
        dice = random.Random(f"{self.by_chance} {way}")
        return tuple(row for row in self.rows if WAYS[way](row, dice))


def examined(drawn: Iterable[tuple[Drawn, random.Random]]) -> Iterator[Examined]:
    """Each drawn unit with its call and its readings, instruments erring by its dice."""
    for unit, dice in drawn:
        complaint, rows = _on_heat(unit, dice) if unit.mode == "heating" else _on_cool(unit, dice)
        yield Examined(unit, complaint, tuple(rows), f"{dice.random()}")


def _on_heat(drawn: Drawn, dice: random.Random) -> tuple[str, list[Row]]:
    fired, _ = heat(drawn.plate, drawn.faults, drawn.day)
    values = heating_values(drawn.plate, drawn.faults, drawn.day)
    lit = fired.draft >= DRAFT_SET_POINT
    rows = [typed(v, dice) for v in values if lit or v.test not in FIRES_ONLY]
    return call(drawn, None, fired, dice), [*rows, *sights(drawn, None, fired)]


def _on_cool(drawn: Drawn, dice: random.Random) -> tuple[str, list[Row]]:
    made = cool(drawn.plate, drawn.faults, drawn.day)
    rows = [typed(v, dice) for v in cooling_values(drawn.plate, drawn.faults, drawn.day)]
    return call(drawn, made, None, dice), [*rows, *sights(drawn, made, None)]


def plain_case(
    unit: Examined, rows: Sequence[Row], repaired: Sequence[str] = ()
) -> dict[str, object]:
    """The case as a file has it, with these readings. `repaired`: faults put right in vain."""
    day = unit.drawn.day
    return {
        "unit": plate_facts(unit.drawn.plate),
        "own-record": own_record(),
        "conditions": {"outdoor-temperature": f"{day.outdoor:.1f} F", "minutes-running": 25},
        "complaint": unit.call,
        "repaired": list(repaired),
        "readings": [row for row in rows if row["test"] != "outdoor-temperature"],
    }


def case_of(
    knowledge: Knowledge, unit: Examined, rows: Sequence[Row], repaired: Sequence[str] = ()
) -> Case:
    """The same, read as any file. Raises InputRefused where the rules do not know a word of it."""
    return read_case(knowledge, plain_case(unit, rows, repaired))
