"""When a part was changed by what visits knew of it: another plate value, another kind of motor.

A repair tells it too; but a capacitor of another rating is another capacitor, whoever put it in.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.unit.equipment import InputRefused, Unit, read_unit
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.visit.state import VisitState

AS_READ: Final = 0.02
"""Share by which a plate may be read otherwise and still be the same (common practice, no
source)."""
_NAMEPLATE: Final = "nameplate"
_BLOWER: Final = ("blower-motor", "blower-drive", "blower-fla")
MOTOR_OF: Final[Mapping[str, tuple[str, ...]]] = MappingProxyType(
    {
        "blower-amps": _BLOWER,
        "blower-rpm": _BLOWER,
        "condenser-fan-amps": ("condenser-fan-phase", "condenser-fan-fla"),
        "compressor-amps": ("compressor-phase", "compressor-type", "compressor-rla"),
    }
)
"""What tells one motor from another, by the quantity that is read on it."""

Parts = Mapping[str, str | float]
"""What is known of the parts that a test reads: facts in words, plate values in their units."""


def known_then(knowledge: Knowledge, state: VisitState) -> Unit:
    """The unit by what a visit was told, and by the register as it stood then."""
    record = state.on_record
    try:
        return read_unit(knowledge, {**record.afresh, **record.trusted, **state.unit_data})
    except InputRefused:  # they speak of places that the other has not
        return state.unit


def parts_of(knowledge: Knowledge, unit: Unit, test: Test, at: Place | None) -> Parts:
    """What is known of the parts by which a test is judged at a place, or that give it at all."""
    found: dict[str, str | float] = {}
    for name in dict.fromkeys(_named(knowledge, test)):
        if name in knowledge.facts:
            if name in unit.facts:
                found[name] = unit.facts[name]
            continue
        value = unit.plate_value(name, at)
        if value is not None:
            found[name] = value
    return found


def _named(knowledge: Knowledge, test: Test) -> Iterator[str]:
    """The facts and plate values that a test, its outcomes and the alarms on it speak of."""
    quantities = {each.quantity for each in test.reads}
    names = [*test.exists_when, *(name for q in quantities for name in MOTOR_OF.get(q, ()))]
    for outcome in test.outcomes:
        names += outcome.exists_when
        for line in outcome.limits:
            quantities.update(bound.quantity for bound in line.bounds)
            names += line.when
            for bound in line.bounds:
                names += (*bound.when, bound.relative_to or "")
    alarms = (each for each in knowledge.drift_alarms.values() if each.quantity in quantities)
    names += [each.relative_to or "" for each in alarms]
    yield from (name for name in names if _is_of_a_part(knowledge, name))


def _is_of_a_part(knowledge: Knowledge, name: str) -> bool:
    plate = knowledge.plate_values.get(name)
    return name in knowledge.facts or (plate is not None and plate.origin == _NAMEPLATE)


def is_another(before: Parts, now: Parts) -> bool:
    """Whether a part is another than before: what only one of the two knows tells nothing."""
    return any(name in before and _differs(before[name], value) for name, value in now.items())


def _differs(before: str | float, now: str | float) -> bool:
    if isinstance(before, float) and isinstance(now, float):
        return not math.isclose(before, now, rel_tol=AS_READ)
    return before != now
