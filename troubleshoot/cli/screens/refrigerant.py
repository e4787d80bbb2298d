"""How the refrigerant of units looks in plain lines, and as JSON."""

from __future__ import annotations

from collections.abc import Sequence

from troubleshoot.cli.json_output import say_json
from troubleshoot.cli.terminal import Terminal
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.text import begun
from troubleshoot.records.refrigerant.account import CircuitAccount, Rate
from troubleshoot.records.refrigerant.of_unit import OfUnit
from troubleshoot.records.refrigerant.told import (
    JUDGED,
    NOTHING,
    entry_lines,
    rate_lines,
    short_lines,
    total_line,
)
from troubleshoot.records.register.entry import Entry
from troubleshoot.visit.weighing import Weighing
from troubleshoot.visit.weights import cylinder_says, weighing_words

Found = Sequence[tuple[Entry, OfUnit]]


def show_refrigerant(knowledge: Knowledge, entry: Entry, unit: OfUnit) -> None:
    """Every weighing at a unit by its circuits, then totals and leak rates."""
    terminal = Terminal()
    terminal.say_all(unit.problems)
    if unit.is_empty:
        terminal.say(NOTHING)
    for account in unit.accounts:
        if not account.moved:
            continue
        terminal.say(f"{entry.name}, {account.circuit}", strong=True)
        for each in account.moved:
            head, *more = entry_lines(knowledge, each)
            terminal.say(head, 2)
            terminal.say_all(more, 4)
        _show_totals(terminal, knowledge, account)


def show_kept(knowledge: Knowledge, unit: OfUnit, weighing: Weighing) -> None:
    """What was kept of one weighing, and what its circuit has come to with it."""
    terminal = Terminal()
    terminal.say(f"Kept: {weighing_words(knowledge, weighing)}.")
    terminal.say_all(cylinder_says(knowledge, weighing))
    terminal.say_all(unit.problems)
    for account in unit.accounts:
        if account.circuit == weighing.circuit:
            _show_totals(terminal, knowledge, account)


def _show_totals(terminal: Terminal, knowledge: Knowledge, account: CircuitAccount) -> None:
    terminal.say(total_line(account), 2)
    terminal.say_all(rate_lines(knowledge, account), 2)


def show_in_short(unit: OfUnit) -> None:
    """The circuits of which something is on record, in short; nothing where there is none."""
    terminal = Terminal()
    terminal.say_all(unit.problems)
    for account in unit.accounts:
        if account.moved:
            terminal.say(f"Refrigerant of {account.circuit}:")
            terminal.say_all(short_lines(account), 2)
    if not unit.is_empty:
        terminal.say(JUDGED, 2)


def show_refrigerant_of_all(found: Found) -> None:
    """Each circuit of which something is on record, in short."""
    terminal = Terminal()
    for entry, unit in found:
        terminal.say_all(unit.problems)
        for account in unit.accounts:
            if account.moved:
                terminal.say(f"{entry.name}, {account.circuit}", strong=True)
                terminal.say_all(short_lines(account), 2)
    if all(unit.is_empty for _, unit in found):
        terminal.say(NOTHING)
    else:
        terminal.say(JUDGED)


def refrigerant_as_json(found: Found) -> None:
    """The same as one JSON object, weights in pounds."""
    say_json({"units": [_unit(entry, unit) for entry, unit in found]})


def _unit(entry: Entry, unit: OfUnit) -> dict[str, object]:
    moved = (account for account in unit.accounts if account.moved)
    return {
        "name": entry.name,
        "circuits": [_circuit(account) for account in moved],
        "problems": list(unit.problems),
    }


def _circuit(account: CircuitAccount) -> dict[str, object]:
    return {
        "circuit": account.circuit,
        "full_charge": account.full_charge,
        "added": round(account.added, 3),
        "recovered": round(account.recovered, 3),
        "weights_not_told": account.not_told,
        "leak_rate_annualizing": _rate(account.annualized),
        "leak_rate_rolling_average": _rate(account.rolling),
        "weighings": [
            {
                "day": each.day.isoformat(),
                "way": each.weighing.way,
                "pounds": None if each.pounds is None else round(each.pounds, 3),
                "typed": each.weighing.weight or None,
                "cylinder": each.weighing.cylinder or None,
                "visit": each.visit or None,
                "entry": each.number or None,
            }
            for each in account.moved
        ],
    }


def _rate(rate: Rate) -> dict[str, object]:
    percent = None if rate.percent is None else round(rate.percent, 2)
    return {"percent_a_year": percent, "why_not": begun(rate.why_not) or None}
