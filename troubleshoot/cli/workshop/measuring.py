"""`rules measure`: how well the rules tell faults apart."""

from __future__ import annotations

import random
from collections.abc import Iterator
from importlib.util import find_spec
from pathlib import Path
from typing import TYPE_CHECKING, Final

import click

from troubleshoot.cli.door import tell
from troubleshoot.cli.failures import USAGE, Failure
from troubleshoot.cli.rule_base import rules_in_force, takes_rules
from troubleshoot.outside.numbers import whole_number

if TYPE_CHECKING:
    from troubleshoot.knowledge.model import Knowledge
    from troubleshoot.measure.sensitivity import Sensitivity

MOST_GRADES: Final = 20
NEEDED_BY_PHYSICS: Final = ("scipy", "sklearn")


def _visits_or_folder(context: click.Context, option: click.Parameter, typed: str) -> int | Path:
    """How many visits are simulated; what is no number is a folder of visits that were held."""
    number = whole_number(typed)
    if number == 0:
        raise click.BadParameter("at least one visit is simulated", context, option)
    return Path(typed) if number is None else number


@click.command("measure", short_help="How well the rules tell faults apart.")
@click.option(
    "--visits",
    default="200",
    show_default=True,
    metavar="NUMBER|FOLDER",
    callback=_visits_or_folder,
    help="Simulated visits a unit; or the folder of kept ones: what they ended in, beside cards.",
)
@click.option("--subsets", default=20, show_default=True, help="Subsets solved exactly, a unit.")
@click.option("--seed", default=1, show_default=True, help="Same seed, same figures.")
@click.option(
    "--physics",
    is_flag=True,
    help="Visit units that obey physics instead, one visit each, beside a trained forest.",
)
@click.option(
    "--cost",
    metavar="FAULT",
    help="What one card costs and brings instead: --visits on each call of it.",
)
@click.option(
    "--sensitivity",
    metavar="GRADES",
    type=click.IntRange(min=1),
    help="Move so many grades one word, by lot: which changes calls or minutes most in --visits.",
)
@takes_rules
def measure_command(
    visits: int | Path,
    subsets: int,
    seed: int,
    physics: bool,
    cost: str | None,
    sensitivity: int | None,
) -> None:
    """Measure how well the rules tell faults apart: isolation, simulated visits, the optimum.

    With --physics by readings that physics makes, right and wrong calls by fault, and every finding
    that a card contradicts. With --visits FOLDER by kept visits that were closed: which word of a
    card they gainsay; nothing is changed.
    """
    if isinstance(visits, Path):
        if physics or cost is not None or sensitivity is not None:
            raise click.UsageError("--visits FOLDER goes by itself: the others simulate visits.")
        lines = _by_kept(visits)
    elif sensitivity is not None:
        lines = _sensitivity(sensitivity, visits, seed)
    elif cost is not None:
        lines = _cost_of(cost, visits, seed)
    else:
        lines = _by_physics(visits, seed) if physics else _by_themselves(visits, subsets, seed)
    for line in lines:
        tell(line)


def _by_kept(folder: Path) -> Iterator[str]:
    """The cards beside what kept visits ended in. Raises Failure."""
    from troubleshoot.cli.workshop.closed_visits import closed_lines

    yield from closed_lines(rules_in_force(), folder)


def _by_themselves(visits: int, subsets: int, seed: int) -> Iterator[str]:
    """The figures on units drawn from the rules' own tables."""
    from troubleshoot.measure.table import measure

    yield from measure(rules_in_force(), visits, subsets, seed)


def _by_physics(visits: int, seed: int) -> Iterator[str]:
    """The figures on units that obey physics. Raises Failure without the optional extra."""
    if any(find_spec(package) is None for package in NEEDED_BY_PHYSICS):
        raise Failure(["--physics needs more packages: pip install 'troubleshoot[physics]'"], USAGE)
    from troubleshoot.measure.physics.table import measure_by_physics

    yield from measure_by_physics(rules_in_force(), visits, seed)


def _sensitivity(grades: int, visits: int, seed: int) -> Iterator[str]:
    """What grades drawn by lot change, moved one word, those that change most first."""
    from troubleshoot.measure.sensitivity import all_grades, sensitivity

    knowledge = rules_in_force()
    known = all_grades(knowledge)
    drawn = random.Random(seed).sample(known, min(grades, len(known)))
    found = []
    for number, each in enumerate(sensitivity(knowledge, drawn, visits, seed), start=1):
        found.append(each)
        tell(f"{number} of {len(drawn)}: {each.grade.fault.id}", err=True)
    found.sort(key=lambda each: (-each.changed, -abs(each.minutes), each.grade.fault.id))
    yield (
        f"{len(drawn)} of {len(known)} grades, drawn by lot (seed {seed}), each moved one word and "
        f"visited {visits} times both ways: {sum(each.changed > 0 for each in found)} change a "
        f"first call, {sum(each.minutes != 0 for each in found)} the minutes."
    )
    for each in found[:MOST_GRADES]:
        if each.changed or each.minutes:
            yield _moved_line(knowledge, each)


def _moved_line(knowledge: Knowledge, each: Sensitivity) -> str:
    from troubleshoot.cli.workshop.card_said import said_finding
    from troubleshoot.knowledge.spoken import spoken

    grade = each.grade
    said = said_finding(knowledge, grade.item.findings[0])
    return (
        f"{grade.fault.id}: {said}, {spoken(grade.item.grade)} made {spoken(grade.becomes)}: "
        f"{each.changed} of {each.visits} first calls are others, {each.better} of them right now, "
        f"{each.worse} were right; {_longer(each.minutes)} on the mean"
    )


def _longer(minutes: float) -> str:
    return f"{abs(minutes):.1f} min {'longer' if minutes >= 0 else 'shorter'}"


def _cost_of(name: str, visits: int, seed: int) -> Iterator[str]:
    """What one card costs and brings, a line for each call and kind of unit."""
    from troubleshoot.measure.cost_of_card import cost_of_card

    knowledge = rules_in_force()
    card = knowledge.faults.get(name)
    if card is None or card.is_effect:
        raise Failure([f"{name} is no cause of the rules; see: troubleshoot rules find"], USAGE)
    found = list(cost_of_card(knowledge, card, visits, seed))
    for each in found:
        yield f"{each.call.says} ({each.about}):"
        yield (
            f"  a visit to another fault: {_longer(each.minutes)} on the mean; "
            f"{each.changed} of {each.visits} first calls are others, {each.better} of them right "
            f"now, {each.worse} were right"
        )
        yield f"  a visit to this one: the first call is right in {each.own_right} of {each.visits}"
    if not found:
        yield f"No unit that is measured on can have {card.name}, or no call of it is another's."
