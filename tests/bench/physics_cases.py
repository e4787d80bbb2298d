"""Cases from physics through the reasoning: python tests/bench/physics_cases.py --cases N --seed S

Draws units, weather, a fault card with a severity (or nothing wrong), reads them with instruments
that err, and ranks the causes as `assess` does. Prints how often the true card is first and among
three, the calibration of the leading chance, and how often a cause said at 0.9 is wrong: with gaps
(each reading left out by chance), with everything read, and with no sights; then by call and card.
Nothing of the rule base is used to draw; the cards were not made from it.
"""

from __future__ import annotations

import argparse
import random
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from tests.bench.physics_draws import COOLING, HEATING, Drawn, Mode, a_case
from tests.bench.physics_sights import Row, call, sights
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.physics.instruments import (
    cooling_values,
    heating_values,
    typed,
)
from troubleshoot.physics.plate import DRAFT_SET_POINT, own_record, plate_facts
from troubleshoot.physics.unit import cool, heat
from troubleshoot.reasoning.choosing.next_test import NAMED
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.visit.cases.file import read_case

BINS = 10
Keeps = Callable[[Row, random.Random], bool]
WAYS: dict[str, Keeps] = {
    "a quarter left out": lambda _, dice: dice.random() < 0.75,
    "half left out": lambda _, dice: dice.random() < 0.5,
    "everything read": lambda *_: True,
    "no sights": lambda row, _: "text" in row,
}
FIRES_ONLY = {
    "heating-supply-temperature",
    "gas-manifold-pressure",
    "flue-oxygen",
    "flue-carbon-monoxide",
    "flame-current",
    "gas-inlet-pressure-all-firing",
    "meter-time",
}
"""What is read on a flame only."""


@dataclass(frozen=True)
class Ranked:
    """The place of the true card among the causes (0: not there), the leading card and chance."""

    card: str
    complaint: str
    place: int
    leading: str
    chance: float

    @property
    def right(self) -> bool:
        return self.place == 1


def rows_of(drawn: Drawn, dice: random.Random) -> tuple[str, list[Row]]:
    """The call, and all that can be read and seen."""
    if drawn.mode == "heating":
        fired, _ = heat(drawn.plate, drawn.faults, drawn.day)
        values = heating_values(drawn.plate, drawn.faults, drawn.day)
        lit = fired.draft >= DRAFT_SET_POINT
        rows = [typed(v, dice) for v in values if lit or v.test not in FIRES_ONLY]
        return call(drawn, None, fired, dice), [*rows, *sights(drawn, None, fired)]
    made = cool(drawn.plate, drawn.faults, drawn.day)
    rows = [typed(v, dice) for v in cooling_values(drawn.plate, drawn.faults, drawn.day)]
    return call(drawn, made, None, dice), [*rows, *sights(drawn, made, None)]


def case_of(drawn: Drawn, complaint: str, rows: Sequence[Row]) -> dict[str, object]:
    """The case as a file has it."""
    return {
        "unit": plate_facts(drawn.plate),
        "own-record": own_record(),
        "conditions": {
            "outdoor-temperature": f"{drawn.day.outdoor:.1f} F",
            "minutes-running": 25,
        },
        "complaint": complaint,
        "readings": [row for row in rows if row["test"] != "outdoor-temperature"],
    }


def ranked(reasoner: Reasoner, drawn: Drawn, complaint: str, rows: Sequence[Row]) -> Ranked:
    """The causes of these readings."""
    case = read_case(reasoner.knowledge, case_of(drawn, complaint, rows))
    causes = reasoner.conclude(case).causes
    names = list(dict.fromkeys(cause.fault.id for cause in causes))
    place = names.index(drawn.card) + 1 if drawn.card in names else 0
    return Ranked(drawn.card, complaint, place, names[0], causes[0].probability)


def drawn_cases(cases: int, seed: int) -> Iterator[tuple[Drawn, random.Random]]:
    """Each card in its turn, one case in fifteen with nothing wrong."""
    cards: list[tuple[str, Mode]] = [(card, "cooling") for card in COOLING]
    cards += [(card, "heating") for card in HEATING]
    cards += [("", "cooling"), ("", "cooling"), ("", "heating")]
    for number in range(cases):
        dice = random.Random(f"{seed} {number}")
        yield a_case(dice, *cards[number % len(cards)]), dice


def calibration_error(found: Sequence[Ranked]) -> float:
    """Mean distance of the leading chance from how often it is right, by bins of the chance."""
    off = 0.0
    for number in range(BINS):
        inside = [r for r in found if min(int(r.chance * BINS), BINS - 1) == number]
        off += abs(sum(r.right for r in inside) - sum(r.chance for r in inside))
    return off / len(found)


def line(way: str, found: Sequence[Ranked]) -> str:
    """One way's figures, cases with nothing wrong apart."""
    faulty = [r for r in found if r.card]
    sound = [r for r in found if not r.card]
    sure = [r for r in faulty if r.chance >= NAMED]
    wrong = sum(not r.right for r in sure)
    first = sum(r.right for r in faulty) / len(faulty)
    three = sum(1 <= r.place <= 3 for r in faulty) / len(faulty)
    accused = sum(r.chance >= NAMED for r in sound)
    return (
        f"| {way} | {len(faulty)} | {first:.2f} | {three:.2f} | {calibration_error(faulty):.3f} "
        f"| {wrong}/{len(sure)} | {accused}/{len(sound)} |"
    )


def by(found: Sequence[Ranked], key: str) -> Iterator[str]:
    """Each card, or each call: cases, first, in three, and what led instead most often."""
    for name in sorted({getattr(r, key) for r in found if r.card}):
        own = [r for r in found if r.card and getattr(r, key) == name]
        others = [r.leading for r in own if not r.right]
        instead = max(sorted(set(others)), key=others.count) if others else ""
        first, three = sum(r.right for r in own), sum(1 <= r.place <= 3 for r in own)
        yield f"| {name} | {len(own)} | {first} | {three} | {instead} |"


def main() -> None:
    """Draw, rank, print."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--cases", type=int, default=390)
    parser.add_argument("--seed", type=int, default=1)
    given = parser.parse_args()
    reasoner = Reasoner(load_shipped())
    found: dict[str, list[Ranked]] = {way: [] for way in WAYS}
    for drawn, dice in drawn_cases(given.cases, given.seed):
        complaint, rows = rows_of(drawn, dice)
        for way, keeps in WAYS.items():
            kept = [row for row in rows if keeps(row, dice)]
            found[way].append(ranked(reasoner, drawn, complaint, kept))
    print("| read | cases | first | in three | calibration | wrong at 0.9 | accused though sound |")
    print("| --- | --- | --- | --- | --- | --- | --- |")
    for way, ranks in found.items():
        print(line(way, ranks))
    for key in ("complaint", "card"):
        for way in ("a quarter left out", "everything read"):
            print(f"\n## By {key}, {way}\n\n| {key} | cases | first | in three | leads instead |")
            print("| --- | --- | --- | --- | --- |")
            print("\n".join(by(found[way], key)))


if __name__ == "__main__":
    main()
