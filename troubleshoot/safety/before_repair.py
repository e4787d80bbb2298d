"""What must stand before hands do a repair, told with it wherever it is shown.

It is derived from what the repair is on: who does it, and the subsystem of its fault. A state that
is not known counts as missing.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable
from dataclasses import replace
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Fault
from troubleshoot.safety import steps
from troubleshoot.safety.needs import BURNER_AREAS, Needs, circuits_of, for_dead_work
from troubleshoot.safety.work_state import EMPTY, UnitAtWork, WorkState

NOT_OURS: Final = frozenset({"owner", "utility", "fire-alarm", "building-controls"})
"""Who repairs what is not inside the unit."""

LIVE: Final = "By the record the unit was live with its panel open when this was repaired"

LOCK_IS_OFF: Final = "locked and tagged now (by the record the lock was taken off again)"
_INSIDE: Final = "before hands go in"
_GAS: Final = "before a gas part is opened"
_CIRCUIT: Final = "before the circuit is opened"


@frozen
class _Want:
    """What must stand `before` something is done; `by`: the steps that bring it about."""

    before: str
    words: str
    by: frozenset[str]
    stands: Callable[[WorkState, UnitAtWork, str | None], bool]


def _bled(work: WorkState, unit: UnitAtWork, place: str | None) -> bool:
    """Dead is proved only after the last discharge, so that a unit not known has nothing bled."""
    return work.dead == "proved" and {*unit.capacitors, *unit.drives} <= work.discharged


def _charge_is_out(work: WorkState, unit: UnitAtWork, place: str | None) -> bool:
    return all(work.circuit(circuit) in EMPTY for circuit in circuits_of(place, unit))


_WANTS: Final = (
    _Want(
        _INSIDE,
        "locked and tagged",
        frozenset({steps.LOCKOUT}),
        lambda work, unit, place: work.power == "locked-out",
    ),
    _Want(
        _INSIDE,
        "proved dead",
        frozenset({steps.DEAD_TEST}),
        lambda work, unit, place: work.power == "locked-out" and work.dead == "proved",
    ),
    _Want(
        _INSIDE,
        "capacitors discharged and metered",
        frozenset({steps.BLEED_CAPACITOR, steps.BLEED_DRIVE}),
        _bled,
    ),
    _Want(
        _GAS,
        "gas cock shut",
        frozenset({steps.GAS_SHUT}),
        lambda work, unit, place: work.gas == "shut",
    ),
    _Want(_CIRCUIT, "its charge recovered", frozenset({steps.RECOVER}), _charge_is_out),
)


def caution_before(
    fault: Fault,
    work: WorkState | None = None,
    unit: UnitAtWork | None = None,
    place: str | None = None,
) -> str:
    """What is not known to stand before the repair of a fault, in one line; empty for nothing.

    `place`: where the fault is. Without a work state the unit counts as it is found.
    """
    return caution_before_any(((fault, place),), work, unit)


def caution_before_any(
    faults: Iterable[tuple[Fault, str | None]],
    work: WorkState | None = None,
    unit: UnitAtWork | None = None,
) -> str:
    """The same of several faults, each with its place, where nobody knows yet which it is."""
    now, at_work = work or WorkState(), unit or UnitAtWork()
    wanted = ((want, place) for fault, place in faults for want in _wanted(fault))
    lacking = {want.words for want, place in wanted if not want.stands(now, at_work, place)}
    missing = [want for want in _WANTS if want.words in lacking]
    befores = dict.fromkeys(want.before for want in missing)
    parts = [
        f"{before}: {', '.join(w.words for w in missing if w.before == before)}"
        for before in befores
    ]
    return f"WARNING - {'; '.join(parts)}." if parts else ""


def not_on_record(
    fault: Fault, done: Collection[str], work: WorkState, unit: UnitAtWork
) -> tuple[str, ...]:
    """What a repair wants, and nobody has said. `done`: the steps that were confirmed.

    A lock that the record has taken off since is told as off: what is done under none is done live.
    """
    wanted = [want for want in _wanted(fault) if _is_there(want, unit)]
    missing = [want.words for want in wanted if want.by.isdisjoint(done)]
    was_locked = any(steps.LOCKOUT in want.by and want.words not in missing for want in wanted)
    taken_off = (LOCK_IS_OFF,) if was_locked and work.power == "on" else ()
    return (*taken_off, *missing)


def needs_of_repair(fault: Fault, unit: UnitAtWork, place: str | None = None) -> Needs | None:
    """What has to stand before hands do a repair; None where they stay outside, or are others'.

    `place`: where the fault is.
    """
    wanted = {want.before for want in _WANTS if want in _wanted(fault)}
    if _INSIDE not in wanted or fault.repair.hands == "outside":
        return None
    circuits = circuits_of(place, unit) if may_open_circuit(fault) else ()
    return replace(
        for_dead_work(unit),
        gas="shut" if _GAS in wanted and unit.burns_gas else "any",
        sweeps=tuple(dict.fromkeys((*for_dead_work(unit).sweeps, *_gas_swept(wanted, unit)))),
        circuits=tuple((circuit, "charge-recovered") for circuit in circuits),
    )


def _gas_swept(wanted: Collection[str], unit: UnitAtWork) -> tuple[str, ...]:
    return (steps.GAS_SWEEP,) if _GAS in wanted and unit.burns_gas else ()


def may_open_circuit(fault: Fault) -> bool:
    """Whether the refrigerant circuit may have been opened for a repair, or its charge taken out.

    So it is of whatever nobody may do without being certified for refrigerant, unless its card says
    that the circuit stays closed.
    """
    repair = fault.repair
    of_circuit = "refrigerant" in repair.who and (repair.who_rule == "all" or len(repair.who) == 1)
    return of_circuit and repair.circuit != "stays-closed"


def is_ours(fault: Fault) -> bool:
    """Whether any of those who work on the unit itself do the repair of a fault."""
    return not {*fault.repair.who} <= NOT_OURS


def was_live(fault: Fault, work: WorkState) -> bool:
    """Whether hands were in a live unit for a repair, as the record has it."""
    is_inside = fault.repair.hands != "outside" and is_ours(fault)
    return is_inside and work.power == "on" and work.panels == "off"


def _wanted(fault: Fault) -> tuple[_Want, ...]:
    who = {*fault.repair.who}
    if who <= NOT_OURS:
        return ()
    wanted = {_INSIDE}
    if fault.subsystem in BURNER_AREAS or "gas" in who:
        wanted.add(_GAS)
    if "refrigerant" in who:
        wanted.add(_CIRCUIT)
    return tuple(want for want in _WANTS if want.before in wanted)


def _is_there(want: _Want, unit: UnitAtWork) -> bool:
    """Whether the unit has what is wanted: one known to store nothing has nothing to bleed."""
    return steps.BLEED_CAPACITOR not in want.by or bool(unit.capacitors or unit.drives)
