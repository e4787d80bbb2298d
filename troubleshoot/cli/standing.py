"""STOPs that stand over a unit from earlier visits: they meet whoever names it next."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from troubleshoot.cli.screens import show_stop
from troubleshoot.cli.terminal import Terminal
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.standing_visits import Standing, same_unit, standing_visits, stops_unit
from troubleshoot.visit.unreadable import Unreadable


def met_by(knowledge: Knowledge, terminal: Terminal, path: Path, unit: str) -> Standing | None:
    """The STOP of another visit to the unit of the visit at `path`, told; none where there is none.

    A visit may have been begun before that STOP, or be named after its unit only later.
    """
    others = filter(stops_unit, standing_visits(knowledge, path.parent, but=path.stem))
    standing = next((s for s in others if same_unit(s.unit, unit)), None)
    return None if standing is None else told(terminal, standing)


def tell_unreadable(terminal: Terminal, standing: Iterable[Standing]) -> None:
    """Tell of every visit that cannot be read, by its name: a STOP may stand over it."""
    for each in standing:
        if isinstance(each, Unreadable):
            _say_unreadable(terminal, each)


def meet_standing(terminal: Terminal, found: Iterable[Standing], unit: str) -> Standing | None:
    """The STOP that stands over this unit, told; none where it is another unit's or there is none.

    A name may be mistyped and a visit may have none, so whoever begins is shown what stands.
    """
    standing = tuple(filter(stops_unit, found))
    for each in standing:
        if same_unit(each.unit, unit):
            return told(terminal, each)
    if not standing:
        return None
    terminal.say("A STOP stands over:")
    for number, each in enumerate(standing, start=1):
        terminal.say(f"{number} {each.unit or 'a unit without a name'}: {each.reason}", 2)
    while True:
        typed = terminal.ask("Is this one of them? Its number, or n >").lower()
        if typed in ("n", "no"):
            return None
        for number, each in enumerate(standing, start=1):
            if typed == str(number) or same_unit(each.unit, typed):
                return told(terminal, each)


def goes_on(standing: Standing) -> bool:
    """Whether the visit of a STOP is gone on with: not where it was handed over or is damaged."""
    return not isinstance(standing, Unreadable) and not standing.over


def told(terminal: Terminal, standing: Standing) -> Standing:
    """Tell of a STOP that stands over a unit from an earlier visit, and how that visit goes on."""
    if isinstance(standing, Unreadable):
        terminal.say("DANGER - STOP", strong=True)
        _say_unreadable(terminal, standing)
        return standing
    show_stop(terminal, standing.fired, standing.tag)
    if standing.over:
        terminal.say(
            f"Visit {standing.visit} was handed over at this STOP. Once it has been made safe it "
            f"goes on by: troubleshoot reopen {standing.visit}"
        )
    else:
        terminal.say(f"Going on with visit {standing.visit}, where it stands.")
    return standing


def show_standing_visits(terminal: Terminal, standing: Iterable[Standing]) -> None:
    """Every STOP that stands over a unit, before anything else, where nothing is asked."""
    for each in standing:
        head, *more = each.lines
        terminal.say(head, strong=True)
        terminal.say_all(f"  {line}" for line in more)
        terminal.say()


def _say_unreadable(terminal: Terminal, standing: Unreadable) -> None:
    head, *more = standing.lines
    terminal.say(head, strong=True)
    terminal.say_all(f"  {line}" for line in more)
