"""One unit's equipment facts and plate values, read from what people typed about it."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import field
from difflib import get_close_matches

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import EquipmentFact, FactsNeeded, Knowledge, PlateValue
from troubleshoot.outside.numbers import whole_number
from troubleshoot.quantities.plate_volts import PlateVolts, plate_volts
from troubleshoot.quantities.typed import Expected, NotUnderstood, read
from troubleshoot.reasoning.unit.places import Layout, Place, PlaceNotUnderstood, parse_place

MOST_OF_A_KIND = 8
NAMEPLATE_VOLTS = "nameplate-volts"
ENDS = (-math.inf, math.inf)
"""Near these lie the lower and the upper end of what a plate gives as a range."""
_OF_A_SUPPLY = frozenset(
    ("v", "volt", "volts", "vac", "ac", "ph", "phase", "hz", "60", "1", "3", "single", "three")
)
_VOLTS = re.compile("[1-6][0-9]{2}")
_SIGNED = re.compile(r"[-+\u2212]\s*[0-9]")


@frozen
class Refusal:
    """One thing that was not understood: where, what is wrong, what would do."""

    key: str
    problem: str
    instead: str


class InputRefused(ValueError):
    """Something typed or written was not understood; nothing of it was taken."""

    def __init__(self, refusals: tuple[Refusal, ...]) -> None:
        super().__init__("; ".join(f"{r.key}: {r.problem}; {r.instead}" for r in refusals))
        self.refusals = refusals


@frozen
class Unit:
    """What is known of one unit. `plate` holds nameplate and own-record values by place; `tops`
    the upper end of those that the plate gives as a range, of which `plate` has the lower.
    """

    facts: Mapping[str, str] = field(default_factory=dict)
    layout: Layout = field(default_factory=lambda: Layout(()))
    plate: Mapping[tuple[str, Place | None], float] = field(default_factory=dict)
    tops: Mapping[tuple[str, Place | None], float] = field(default_factory=dict)

    def plate_value(self, name: str, place: Place | None, near: float = -math.inf) -> float | None:
        """The value for a place, or the one that serves all places; of a range the nearest."""
        key = (name, place) if (name, place) in self.plate else (name, None)
        value = self.plate.get(key)
        return None if value is None else min(max(value, near), self.tops.get(key, value))

    def allows(self, needed: FactsNeeded) -> bool:
        """Whether the facts can hold: an unknown fact rules nothing out."""
        return not needed or all(
            self.facts.get(fact, words[0]) in words for fact, words in needed.items()
        )

    def proves(self, needed: FactsNeeded, place: Place | None = None) -> bool:
        """Whether the facts do hold: an unknown fact does not. Knows "known" / "not-known"."""
        return not needed or all(self._holds(fact, words, place) for fact, words in needed.items())

    def _holds(self, fact: str, words: tuple[str, ...], place: Place | None) -> bool:
        if words in (("known",), ("not-known",)):
            known = fact in self.facts or self.plate_value(fact, place) is not None
            return known == (words == ("known",))
        return self.facts.get(fact) in words


def beyond(knowledge: Knowledge, unit: Unit) -> tuple[str, ...]:
    """What is told of each fact of a unit that the rules know nothing of."""
    return tuple(
        fact.beyond[value]
        for fact in knowledge.facts.values()
        if (value := unit.facts.get(fact.id, "")) in fact.beyond
    )


def suggest(word: str, choices: object) -> str:
    """A sentence that names the nearest choices, or all of a short list."""
    names = sorted(str(choice) for choice in choices)  # type: ignore[attr-defined]
    near = get_close_matches(word, names, n=3, cutoff=0.6)
    if near:
        return "did you mean " + " or ".join(near) + "?"
    if 0 < len(names) <= 12:
        return "one of " + ", ".join(names)
    return "see the rule base for the names it knows"


def read_unit(
    knowledge: Knowledge,
    unit: Mapping[str, object],
    own_record: Mapping[str, object] | None = None,
    at_least: Mapping[str, int] | None = None,
) -> Unit:
    """Read facts and plate values; raises InputRefused with every problem found.

    `at_least` widens a count that the facts leave open, because a reading names such a place.
    """
    reader = _UnitReader(knowledge, at_least or {})
    for key, value in unit.items():
        reader.take(str(key), value)
    reader.take_supply(unit.get(NAMEPLATE_VOLTS))
    reader.settle_layout()
    for key, value in unit.items():
        if str(key) in knowledge.plate_values:
            reader.take_plate(f"unit.{key}", knowledge.plate_values[str(key)], value)
    for key, value in (own_record or {}).items():
        reader.take_own_record(str(key), value)
    if reader.refusals:
        raise InputRefused(tuple(reader.refusals))
    return Unit(reader.facts, reader.layout, reader.plate, reader.tops)


def meant(fact: EquipmentFact, said: str) -> str | None:
    """The value of a fact that a person's words name; None where they name none, or several.

    Words count as a whole. Beside a number the rest of a supply may stand: "208V 3ph".
    """
    if said in fact.values:
        return said
    tokens = tokens_of(said)
    found = set()
    for value in fact.values:
        for words in (value, *fact.words.get(value, ())):
            wanted = tokens_of(words)
            if wanted == tokens or (wanted[0] <= "9" and _amid(tokens, wanted)):
                found.add(value)
    return found.pop() if len(found) == 1 else None


def tokens_of(text: str) -> list[str]:
    """Runs of letters and runs of digits, in small letters."""
    return re.findall(r"[a-z]+|[0-9]+", text.lower())


def _amid(tokens: list[str], wanted: list[str]) -> bool:
    """Whether the words stand among others that only describe a supply."""
    size = len(wanted)
    for n in range(len(tokens) - size + 1):
        if tokens[n : n + size] == wanted:
            rest = tokens[:n] + tokens[n + size :]
            return all(token in _OF_A_SUPPLY or _VOLTS.fullmatch(token) for token in rest)
    return False


def _stamped_volts(said: object) -> PlateVolts | None:
    """The volts of a plate as they are stamped; None where they are said in another way."""
    try:
        return plate_volts(str(said))
    except NotUnderstood:
        return None  # told where the value itself is taken


class _UnitReader:
    """Collects facts, counts, plate values and every refusal of one unit."""

    def __init__(self, knowledge: Knowledge, at_least: Mapping[str, int]) -> None:
        self.knowledge = knowledge
        self.at_least = at_least
        self.facts: dict[str, str] = {}
        self.counts: dict[str, int] = {}
        self.plate: dict[tuple[str, Place | None], float] = {}
        self.tops: dict[tuple[str, Place | None], float] = {}
        self.refusals: list[Refusal] = []
        self.layout = Layout(())

    def refuse(self, key: str, problem: str, instead: str) -> None:
        self.refusals.append(Refusal(key, problem, instead))

    def take(self, key: str, value: object) -> None:
        fact = self.knowledge.facts.get(key)
        if fact is None:
            if key not in self.knowledge.plate_values:
                names = [*self.knowledge.facts, *self.knowledge.plate_values]
                self.refuse(
                    f"unit.{key}", "not an equipment fact or plate value", suggest(key, names)
                )
            return
        word = str(value).strip()
        number = whole_number(word) if fact.counts else None
        is_signed = bool(fact.counts and _SIGNED.match(word))
        if is_signed or number is not None:
            if number is None or not 1 <= number <= MOST_OF_A_KIND:
                self.refuse(
                    f"unit.{key}",
                    f"{word} is not a number of them a unit has",
                    f"a number from 1 to {MOST_OF_A_KIND}",
                )
                return
            assert fact.counts is not None
            self.counts[fact.counts] = number
            word = fact.values[0] if number == 1 else fact.values[-1]
        value_meant = meant(fact, word)
        if value_meant is None:
            values = ", ".join(map(self.knowledge.spoken, fact.values))
            self.refuse(f"unit.{key}", f'"{word}" is no answer here', f"one of {values}")
            return
        self.facts[key] = value_meant

    def take_supply(self, stamped: object) -> None:
        """What stamped volts say besides, where nobody has said it: 460/3/60, 208/230."""
        volts = _stamped_volts(stamped)
        if volts is None:
            return
        phases = {1: "single", 3: "three"}.get(volts.phases or 0, "")
        for name, said in (("supply-phase", phases), ("line-volts-class", f"{volts.low_v:g}")):
            fact = self.knowledge.facts.get(name)
            if fact is not None and (value := meant(fact, said)) is not None:
                self.facts.setdefault(name, value)

    def settle_layout(self) -> None:
        """Add what the facts imply, then count the places of each kind."""
        for implication in self.knowledge.implications:
            if Unit(self.facts).proves(implication.when):
                for fact, word in implication.then.items():
                    self.facts.setdefault(fact, word)
        for counted in self.knowledge.facts.values():
            if counted.counts and counted.counts not in self.counts:
                stated = self.facts.get(counted.id)
                named = self.at_least.get(counted.counts, 1)
                several = max(2, named) if stated == counted.values[-1] else named
                self.counts[counted.counts] = 1 if stated == counted.values[0] else several
        circuits = self.counts.setdefault("circuit", self.at_least.get("circuit", 1))
        fans = self.counts.setdefault("condenser-fan", self.at_least.get("condenser-fan", 1))
        self.counts.setdefault("heat-stage", max(2, self.at_least.get("heat-stage", 1)))
        self.counts["compressor"] = self.counts["contactor"] = circuits
        self.counts["compressor-capacitor"] = self._unless("compressor-phase", "three", circuits)
        self.counts["condenser-fan-capacitor"] = self._unless("condenser-fan-phase", "three", fans)
        motor = self.facts.get("blower-motor", "single-phase-capacitor")
        self.counts["blower-capacitor"] = int(motor == "single-phase-capacitor")
        own = self.facts.get("fans-serve") == "own-circuit" and fans == circuits
        self.layout = Layout(tuple(sorted(self.counts.items())), "own-circuit" if own else "all")

    def _unless(self, fact: str, word: str, count: int) -> int:
        return 0 if self.facts.get(fact) == word else count

    def take_plate(self, key: str, plate: PlateValue, value: object) -> None:
        if isinstance(value, Mapping) and "value" not in value:
            for words, each in value.items():
                try:
                    places = parse_place(str(words), plate.per, self.layout)
                except PlaceNotUnderstood as error:
                    self.refuse(f"{key}.{words}", error.problem, error.instead)
                    continue
                for place in places:
                    self._keep(f"{key}.{words}", plate, place, each)
            return
        self._keep(key, plate, None, value)

    def take_own_record(self, key: str, value: object) -> None:
        """Own-record values by their own name, or by the quantity's name without "own-"."""
        plate = self.knowledge.plate_values.get(f"own-{key}") or self.knowledge.plate_values.get(
            key
        )
        if plate is not None:
            self.take_plate(f"own-record.{key}", plate, value)
        elif key in self.knowledge.quantities:
            quantity = self.knowledge.quantities[key]
            kept = PlateValue(
                f"own-{key}", quantity.unit, "own-record", quantity.meaning, quantity.per
            )
            self.take_plate(f"own-record.{key}", kept, value)
        else:
            names = [*self.knowledge.plate_values, *self.knowledge.quantities]
            self.refuse(f"own-record.{key}", "not a value this tool keeps", suggest(key, names))

    def _keep(self, key: str, plate: PlateValue, place: Place | None, value: object) -> None:
        text = (
            f"{value.get('value')} {value.get('unit', plate.unit)}"
            if isinstance(value, Mapping)
            else str(value)
        )
        try:
            if plate.id == NAMEPLATE_VOLTS and (volts := plate_volts(text)) is not None:
                self.plate[(plate.id, place)] = volts.low_v
                self.tops[(plate.id, place)] = volts.high_v
                return
            typed = read(text, Expected(plate.unit))
        except NotUnderstood as error:
            self.refuse(key, error.why, error.instead)
            return
        number = typed.values[0].value
        self.plate[(plate.id, place)] = abs(number) if plate.sign_left_out else number
