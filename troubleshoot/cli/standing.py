"""STOPs that stand over a unit from earlier visits: they meet whoever names it next."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from troubleshoot.cli.listening import Listener
from troubleshoot.cli.screens import show_stop
from troubleshoot.cli.terminal import Terminal
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.files import read_bytes
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.reasoning.conclude import FiredHazard
from troubleshoot.visit.hazard_words import first_orders
from troubleshoot.visit.journal import MOST_BYTES, JournalError
from troubleshoot.visit.kept_visit import read_visit
from troubleshoot.visit.visit_names import kept_visits

_MARKS = (b'"event": "stop"', b'"event": "danger"')
"""What stands in the journal of every visit that a STOP has halted."""


@dataclass(frozen=True, slots=True)
class Stopped:
    """A visit over which a STOP stands. `over`: it was handed over, and waits for its result."""

    path: Path
    unit: str
    fired: FiredHazard
    over: bool
    tag: tuple[str, ...]

    @property
    def visit(self) -> str:
        return self.path.stem


def stopped_visits(knowledge: Knowledge, visits: Path, but: str = "") -> Iterator[Stopped]:
    """Yield the visits over which a STOP stands, the latest first; `but` names one left out."""
    for path in kept_visits(visits):
        if path.stem != but and _was_halted(path):
            stopped = _standing(knowledge, path)
            if stopped is not None:
                yield stopped


def same_unit(one: str, other: str) -> bool:
    """Whether two names are of one unit, however they were typed: RTU-7, rtu 7."""
    return bool(_plain(one)) and _plain(one) == _plain(other)


def met_by(knowledge: Knowledge, terminal: Terminal, path: Path, unit: str) -> Stopped | None:
    """The STOP of another visit to the unit of the visit at `path`, told; none where there is none.

    A visit may have been begun before that STOP, or be named after its unit only later.
    """
    others = stopped_visits(knowledge, path.parent, but=path.stem)
    stopped = next((s for s in others if same_unit(s.unit, unit)), None)
    return None if stopped is None else told(terminal, stopped)


def meet_standing(
    knowledge: Knowledge, terminal: Terminal, visits: Path, unit: str, but: str = ""
) -> Stopped | None:
    """The STOP that stands over this unit, told; none where it is another unit's or there is none.

    A name may be mistyped and a visit may have none, so whoever begins is shown what stands.
    """
    standing = tuple(stopped_visits(knowledge, visits, but))
    for stopped in standing:
        if same_unit(stopped.unit, unit):
            return told(terminal, stopped)
    if not standing:
        return None
    terminal.say("A STOP stands over:")
    for number, stopped in enumerate(standing, start=1):
        reason = stopped.fired.hazard.id.replace("-", " ")
        terminal.say(f"{number} {stopped.unit or 'a unit without a name'}: {reason}", 2)
    listener = Listener(knowledge, terminal)
    while True:
        typed = terminal.ask("Is this one of them? Its number, or n >").lower()
        if typed in ("n", "no"):
            return None
        for number, stopped in enumerate(standing, start=1):
            if typed == str(number) or same_unit(stopped.unit, typed):
                return told(terminal, stopped)
        listener.not_understood(typed, "Its number, its name, or n.")


def told(terminal: Terminal, stopped: Stopped) -> Stopped:
    """Tell of a STOP that stands over a unit from an earlier visit, and how that visit goes on."""
    terminal.hold(first_orders(stopped.fired.hazard))
    show_stop(terminal, stopped.fired, stopped.tag)
    if stopped.over:
        terminal.say(
            f"Visit {stopped.visit} was handed over at this STOP. Once it has been made safe it "
            f"goes on by: troubleshoot reopen {stopped.visit}"
        )
    else:
        terminal.say(f"Going on with visit {stopped.visit}, where it stands.")
    terminal.say_held()
    terminal.hold()
    return stopped


def _was_halted(path: Path) -> bool:
    try:
        kept = read_bytes(path, MOST_BYTES)
    except NotUsable:
        return False
    return any(mark in kept for mark in _MARKS)


def _standing(knowledge: Knowledge, path: Path) -> Stopped | None:
    # Reasoning is imported only where a visit was ever halted: most starts need none of it.
    from troubleshoot.reasoning.conclude import Reasoner
    from troubleshoot.visit.events import replay
    from troubleshoot.visit.stops import conclude_visit, standing_stop
    from troubleshoot.visit.tags import tag_lines
    from troubleshoot.visit.understanding import understood

    try:
        kept = read_visit(path)
    except JournalError:
        return None
    state = replay(knowledge, understood(knowledge, kept.events).events)
    conclusions = conclude_visit(Reasoner(knowledge), state)
    fired = standing_stop(knowledge, state, conclusions)
    if fired is None or state.ended not in (None, "stopped"):
        return None
    tag = tag_lines(knowledge, state, conclusions, fired)
    return Stopped(path, state.name, fired, state.ended == "stopped", tag)


def _plain(name: str) -> str:
    return "".join(c for c in name.casefold() if c.isalnum())
