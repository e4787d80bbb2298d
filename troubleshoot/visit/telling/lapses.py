"""What a break has voided, in words: said first, before any caution or question."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.safety.work_state import WorkState, open_items

HANDS_OUT: Final = (
    "Hands out: it counts as live. Look first: is your own lock still on, and your tag? Make no "
    "call for heat, cooling or fan."
)
AGAIN: Final = "What the work still needs of it is asked again in this order, as at the start."
KEEP_CLEAR: Final = (
    "It counts as live and as about to start: hands out, and clear of its moving parts."
)
OPEN_WHEN_LEFT: Final = (
    "Hands out of it: it counts as live until you go on here and are told what still counts."
)
_CLOTHING: Final = "arc-rated clothing on"


def lapsed(before: WorkState, after: WorkState) -> tuple[str, ...]:
    """What counts no more after a break, and the first order where hands may be in.

    `before`, `after`: the work as it stood at the start of the break, and as it counts now.
    """
    voided = tuple(_voided(before, after))
    if not voided:
        return ()
    head = f"A break was noticed. It counts no more: {', '.join(voided)}. {AGAIN}"
    if before.power != "on":
        return head, HANDS_OUT
    return (head, KEEP_CLEAR) if before.panels != "on" else (head,)


def before_going_on(name: str, work: WorkState) -> tuple[str, ...]:
    """The first order to whoever starts again where a panel may be off, or hands may be in.

    `name`: of the unit, empty where it has none; `work` as it stood when the program ended.
    """
    if work.power == "on" and work.panels == "on":
        return ()
    left = "; ".join(open_items(work))
    return OPEN_WHEN_LEFT, f"As it was left{f' at {name}' if name else ''}: {left}."


def _voided(before: WorkState, after: WorkState) -> Iterator[str]:
    """Each in words, in the order in which the way to a test asks for it (`safety/stages.py`).

    Clothing comes before what is live, and on the way to dead work only after the lock.
    """
    dressed, locked = before.arc_clothing, before.power != "on"
    for said, then, now in (
        ("the look at the roof", before.roof != "not-checked", after.roof != "not-checked"),
        ("people told", before.occupants_told, after.occupants_told),
        ("the fire panel on test", before.fire_panel == "on-test", after.fire_panel == "on-test"),
        ("a second person in sight", before.second_person, after.second_person),
        (_CLOTHING, dressed and not locked, after.arc_clothing),
        ("the gas shut", before.gas == "shut", after.gas == "shut"),
        ("air swept", bool(before.clear), before.clear <= after.clear),
        ("the proof of the meter", before.meter == "proved", after.meter == "proved"),
        ("stopped by its controls", before.calls == "off", after.calls == "off"),
        ("locked out", before.power == "locked-out", after.power == "locked-out"),
        ("the second source locked", before.second_source == "locked", _locked(after)),
        (_CLOTHING, dressed and locked, after.arc_clothing),
        ("dead", before.dead != "not-shown", after.dead != "not-shown"),
        ("capacitors discharged", bool(before.discharged), before.discharged <= after.discharged),
    ):
        if then and not now:
            yield said


def _locked(state: WorkState) -> bool:
    return state.second_source == "locked"
