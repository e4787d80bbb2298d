"""`rules measure`: how well the rules tell faults apart."""

from __future__ import annotations

from collections.abc import Iterator
from importlib.util import find_spec
from typing import Final

import click

from troubleshoot.cli.door import tell
from troubleshoot.cli.failures import USAGE, Failure
from troubleshoot.cli.rule_base import rules_in_force, takes_rules

NEEDED_BY_PHYSICS: Final = ("scipy", "sklearn")


@click.command("measure", short_help="How well the rules tell faults apart.")
@click.option(
    "--visits",
    default=200,
    show_default=True,
    type=click.IntRange(min=1),
    help="Simulated visits a unit.",
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
@takes_rules
def measure_command(visits: int, subsets: int, seed: int, physics: bool, cost: str | None) -> None:
    """Measure how well the rules tell faults apart: isolation, simulated visits, the optimum.

    With --physics by readings that physics makes, right and wrong calls by fault, and every finding
    that a card contradicts.
    """
    if cost is not None:
        lines = _cost_of(cost, visits, seed)
    else:
        lines = _by_physics(visits, seed) if physics else _by_themselves(visits, subsets, seed)
    for line in lines:
        tell(line)


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


def _cost_of(name: str, visits: int, seed: int) -> Iterator[str]:
    """What one card costs and brings, a line for each call and kind of unit."""
    from troubleshoot.measure.cost_of_card import cost_of_card

    knowledge = rules_in_force()
    card = knowledge.faults.get(name)
    if card is None or card.is_effect:
        raise Failure([f"{name} is no cause of the rules; see: troubleshoot rules find"], USAGE)
    found = list(cost_of_card(knowledge, card, visits, seed))
    for each in found:
        longer = f"{abs(each.minutes):.1f} min {'longer' if each.minutes >= 0 else 'shorter'}"
        yield f"{each.call.says} ({each.about}):"
        yield (
            f"  a visit to another fault: {longer} on the mean; {each.changed} of {each.visits} "
            f"first calls are others, {each.better} of them right now, {each.worse} were right"
        )
        yield f"  a visit to this one: the first call is right in {each.own_right} of {each.visits}"
    if not found:
        yield f"No unit that is measured on can have {card.name}, or no call of it is another's."
