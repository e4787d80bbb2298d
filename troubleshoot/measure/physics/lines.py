"""The figures as lines of tables."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from statistics import fmean, median

from troubleshoot.measure.physics.cases import EVERYTHING, GAPS
from troubleshoot.measure.physics.contradicted import Contradicted
from troubleshoot.measure.physics.judged import Judged, OfTwo, figures
from troubleshoot.measure.physics.visits import Visited

Said = Mapping[str, Sequence[Judged]]


def single_lines(by_rules: Said, by_trees: Said) -> Iterator[str]:
    """One fault or none: each way of reading, the rules and beside them the forest."""
    faulty = sum(bool(one.truth) for one in by_rules[EVERYTHING])
    yield f"### One fault ({faulty} units) or none"
    yield ""
    yield (
        "| read | by | right first | in three | calibration error (luck alone) "
        "| wrong when it says 0.9 or more | sound units accused |"
    )
    yield "| --- | --- | --- | --- | --- | --- | --- |"
    for way in by_rules:
        for who, said in (("rules", by_rules[way]), ("forest", by_trees[way])):
            f = figures(said)
            yield (
                f"| {way} | {who} | {f.first:.2f} | {f.three:.2f} "
                f"| {f.calibration:.3f} ({f.by_luck:.3f}) "
                f"| {f.sure_and_wrong} of {f.sure} | {f.accused} of {f.sound} |"
            )
    yield ""


def two_lines(found: Mapping[tuple[str, str], OfTwo], units: int) -> Iterator[str]:
    """Two faults at once; once the one that leads is repaired, the other by the same readings."""
    yield f"### Two faults ({units} units)"
    yield ""
    yield (
        "| read | by | one of the two first | both in five "
        "| after its repair the other first | in three |"
    )
    yield "| --- | --- | --- | --- | --- | --- |"
    for (way, who), f in found.items():
        other = f"{f.other_first:.2f} | {f.other_in_three:.2f}" if who == "rules" else "- | -"
        yield f"| {way} | {who} | {f.one_first:.2f} | {f.both_in_five:.2f} | {other} |"
    yield ""


def visit_lines(visited: Sequence[Visited]) -> Iterator[str]:
    """Whole visits, called for and on a round, to units with one fault; the sound ones beside."""
    on_call = [v for v in visited if not v.on_round]
    on_round = [v for v in visited if v.on_round]
    kinds = [kind for kind in (on_call, on_round) if any(v.said.truth for v in kind)]
    names = ["called for" if kind is on_call else "on a PM" for kind in kinds]
    yield f"| whole visits | {' | '.join(names)} |"
    yield "| --- |" + " --- |" * len(kinds)
    for row in zip(*(_of_visits(kind) for kind in kinds), strict=True):
        yield f"| {row[0][0]} | {' | '.join(shown for _, shown in row)} |"
    yield ""


def _of_visits(visited: Sequence[Visited]) -> Iterator[tuple[str, str]]:
    faulty = [v for v in visited if v.said.truth]
    called = [v.said for v in faulty if not v.stopped]
    f = figures([*called, *(v.said for v in visited if not v.said.truth)])
    yield "units with a fault", f"{len(faulty)}"
    yield "minutes, mean", f"{fmean(v.minutes for v in faulty):.0f}"
    yield "minutes, median", f"{median(v.minutes for v in faulty):.0f}"
    yield "tests, mean", f"{fmean(v.tests for v in faulty):.1f}"
    yield "ended by a STOP", f"{1 - len(called) / len(faulty):.0%}"
    yield "first call wrong", f"{1 - f.first:.0%}"
    yield "the fault not in three", f"{1 - f.three:.0%}"
    yield "wrong when it says 0.9 or more", f"{f.sure_and_wrong} of {f.sure}"
    yield "calibration error (luck alone)", f"{f.calibration:.3f} ({f.by_luck:.3f})"
    yield "sound units accused", f"{f.accused} of {f.sound}"


def card_lines(by_rules: Said, by_trees: Said, visited: Sequence[Visited]) -> Iterator[str]:
    """By fault, how many of its units are called right, and what else leads most often."""
    columns = [by_rules[EVERYTHING], by_trees[EVERYTHING], by_rules[GAPS], by_trees[GAPS]]
    columns.append([v.said for v in visited])
    yield (
        "| fault | units | everything, rules | forest | a quarter left out, rules | forest "
        "| whole visits | leads instead, a quarter left out |"
    )
    yield "| --- | --- | --- | --- | --- | --- | --- | --- |"
    for card in sorted({card for one in by_rules[GAPS] for card in one.truth}):
        here = [[one for one in said if card in one.truth] for said in columns]
        right = " | ".join(str(sum(one.right for one in said)) for said in here)
        yield f"| {card} | {len(here[0])} | {right} | {_instead(here[2])} |"
    yield ""


def call_lines(by_rules: Said) -> Iterator[str]:
    """By call, how many of its units the rules call right."""
    yield "| call | units | everything | a quarter left out | leads instead, a quarter left out |"
    yield "| --- | --- | --- | --- | --- |"
    for call in sorted({one.call for one in by_rules[GAPS] if one.truth}):
        full, gaps = (
            [one for one in by_rules[way] if one.truth and one.call == call]
            for way in (EVERYTHING, GAPS)
        )
        right = f"{sum(one.right for one in full)} | {sum(one.right for one in gaps)}"
        yield f"| {call} | {len(full)} | {right} | {_instead(gaps)} |"
    yield ""


def contradicted_lines(found: Iterable[Contradicted]) -> Iterator[str]:
    """The findings of units with a fault that its card gives no chance."""
    lines = [
        f"| {c.what.card} | {c.what.test}: {c.what.outcome} | {c.units} of {c.of} |" for c in found
    ]
    yield f"### Findings that a card gives no chance and its fault shows: {len(lines)}"
    if lines:
        yield ""
        yield "| card | finding | units |"
        yield "| --- | --- | --- |"
        yield from lines


def _instead(said: Sequence[Judged]) -> str:
    """What leads most often where it should not."""
    others = [one.causes[0] for one in said if not one.right]
    return max(sorted(set(others)), key=others.count) if others else ""
