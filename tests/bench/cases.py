"""Cases of somebody who saw no card, judged: python tests/bench/cases.py FOLDER

Prints each case whose truth is not first, then how often it was first and among three, how often a
cause held at 0.9 or more was wrong, and the calibration error of the leading cause in ten bins. A
case with two faults is right where either leads, one with none where no fault leads at 0.5, and
one whose truth is an effect where that was seen.
"""

from __future__ import annotations

import argparse
from pathlib import Path

import yaml

from troubleshoot.knowledge.load import load_shipped
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.unit.equipment import InputRefused
from troubleshoot.visit.cases.file import read_case

SURE, NAMED = 0.9, 0.5
BINS = 10


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("folder", type=Path)
    knowledge = load_shipped()
    reasoner = Reasoner(knowledge)
    judged: list[tuple[float, bool]] = []
    among = read = 0
    for path in sorted(parser.parse_args().folder.glob("**/*.yaml")):
        told = yaml.safe_load(path.read_text("utf-8"))
        try:
            case = read_case(knowledge, told["case"])
        except InputRefused as error:
            print(f"{path.stem}: not read: {error}")
            continue
        read += 1
        truth = told["truth"]
        found = reasoner.conclude(case)
        ranked = [(cause.fault.id, cause.probability) for cause in found.causes]
        leading, chance = ranked[0] if ranked else ("", 0.0)
        seen = any(effect.fault.id in truth for effect in found.effects)
        right = leading in truth or seen if truth else chance < NAMED
        three = right or any(fault in truth for fault, _ in ranked[:3])
        among += three
        judged.append((chance, right))
        if not right:
            told_as = "; ".join(f"{fault} {share:.0%}" for fault, share in ranked[:4])
            print(f"{path.stem}: {', '.join(truth) or 'nothing wrong'}; told: {told_as}")
    sure = [right for chance, right in judged if chance >= SURE]
    print(
        f"{read} cases: first {sum(r for _, r in judged) / read:.3f}, in three {among / read:.3f}"
    )
    print(f"at {SURE} or more {len(sure)}, wrong of these {len(sure) - sum(sure)}")
    print(f"calibration error {calibration(judged):.3f}")


def calibration(judged: list[tuple[float, bool]]) -> float:
    """The mean distance of what was claimed from what came true, weighted by how many."""
    bins: dict[int, list[tuple[float, bool]]] = {}
    for chance, right in judged:
        bins.setdefault(min(int(chance * BINS), BINS - 1), []).append((chance, right))
    away = (abs(sum(c - r for c, r in held)) for held in bins.values())
    return sum(away) / len(judged)


if __name__ == "__main__":
    main()
