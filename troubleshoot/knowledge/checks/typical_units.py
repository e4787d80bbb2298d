"""A typical unit that cannot be read.

What: the file of a unit is not named as its id; a fact has a word that it cannot have; a plate
value has no number in its own kind of unit.
Why: no case could be drawn on it, and the apprentice would be the first to know.
Fix: write the word or the number as it stands on a plate: 8.9 A, 10 ton, 0.65 in wc.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Final

from troubleshoot.knowledge.model import EquipmentFact, TypicalUnit
from troubleshoot.knowledge.problems import Problem, did_you_mean
from troubleshoot.knowledge.rule_base import RuleBase, Steps
from troubleshoot.outside.numbers import whole_number
from troubleshoot.quantities.typed import Expected, NotUnderstood, read

ID: Final = "typical-units"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every word and number of a unit that nobody could read."""
    for unit in base.knowledge.typical_units.values():
        entry = ("typical unit", unit.id)
        _, name = base.definitions.of("typical unit")[unit.id].file.name.split("/")
        if name != f"{unit.id}.yaml":
            what = f"the unit {unit.id} stands in {name}"
            yield base.problem(ID, entry, ("unit",), what, f"name the file {unit.id}.yaml")
        for steps, what, instead in (*_facts(base, unit), *_plates(base, unit)):
            yield base.problem(ID, entry, steps, what, instead)


def _facts(base: RuleBase, unit: TypicalUnit) -> Iterator[tuple[Steps, str, str]]:
    for name, value in unit.unit.items():
        fact = base.knowledge.facts.get(name)
        if fact is not None and not _is_word(fact, str(value)):
            what = f"{value} is no value of {name}"
            yield ("facts", name), what, did_you_mean(str(value), fact.values)


def _is_word(fact: EquipmentFact, word: str) -> bool:
    return word in fact.values or (fact.counts is not None and whole_number(word) is not None)


def _plates(base: RuleBase, unit: TypicalUnit) -> Iterator[tuple[Steps, str, str]]:
    for key, values in (("plate", unit.unit), ("own-record", unit.own_record)):
        for name, value in values.items():
            plate = base.knowledge.plate_values.get(name)
            for text in _texts(value) if plate is not None else ():
                assert plate is not None
                try:
                    read(text, Expected(plate.unit))
                except NotUnderstood as error:
                    yield (key, name), f"{name} {text}: {error.why}", error.instead


def _texts(value: object) -> Iterator[str]:
    """One number, or one for each place."""
    each = value.values() if isinstance(value, Mapping) else (value,)
    yield from (str(text) for text in each)
