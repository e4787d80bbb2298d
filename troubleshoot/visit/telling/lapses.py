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
LIVE_AGAIN: Final = (
    "Hands out: it counts as live. Touch nothing in it before it is locked out and proved dead "
    "again; call nobody to switch anything."
)
FED_TWICE: Final = (
    "Hands out of it: another feed keeps it live with its own switch off. That one is found, "
    "locked and tried too, before it counts as dead."
)
METER_GONE: Final = (
    "Hands out: it counts as live. What that meter has shown counts no more; it, or another, is "
    "proved first."
)
NOT_DEAD: Final = (
    "Hands out: it counts as live and as charged until it is discharged, metered and tested again."
)
UNBURNT: Final = (
    "No call, no spark, no flame: unburnt gas may have gathered. Take the call off, shut the cock, "
    "and stay clear."
)
GAS_AND_TAP: Final = (
    "Shut the cock now if you can reach it without leaning over the train, no switch and no flame: "
    "gas may come out where the plug is out. Smell it? Get clear, and type danger gas."
)
GAS_BACK: Final = (
    "Hands and flames away from the burners: gas counts as on. Make no call; the cock is shut "
    "again first, its handle across the pipe."
)
OFF_THE_EDGE: Final = (
    "Stop, get away from the edge and hold on to nothing that slides. Thunder or ice: come down, "
    "as safely as you can, before anything else."
)
ALONE: Final = "Step back from live parts: nobody is there to help."
UNDRESSED: Final = "Step back from it, and reach for nothing live, before the clothing is on."
NOT_SWEPT: Final = "No flame and no switch: the air counts as not swept."
PANEL_OFF: Final = "Stand clear: moving and live parts count as open."
PANEL_ON: Final = "Hands off the panel: it counts as neither on nor off until that is seen."
FIRE_PANEL: Final = (
    "Stop and start nothing: the fire panel counts as watching until it is put on test again."
)
NOT_READY: Final = "Switch nothing on: it is not ready for power."
STOP_FIRST: Final = "Stop there: what you stand on has changed."
CAN_WAIT: Final = frozenset({NOT_READY, STOP_FIRST})
"""Orders that take nobody's hands out of anything: a STOP is read before them."""
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


def said_gone(before: WorkState, after: WorkState) -> tuple[str, ...]:
    """What to do at once where somebody says that a state has gone, then what counts no more.

    `before`, `after`: the work as it stood, and as it counts now.
    """
    order = next(words for is_so, words in _orders(before, after) if is_so)
    voided = all_voided(before, after)
    told = f"It counts no more: {', '.join(voided)}. {AGAIN}" if voided else AGAIN
    return order, told


def all_voided(before: WorkState, after: WorkState) -> tuple[str, ...]:
    """All that counted before and counts no more, in words."""
    return (*_voided(before, after), *_voided_besides(before, after))


def _orders(before: WorkState, after: WorkState) -> Iterator[tuple[bool, str]]:
    """Whether each first order holds, the gravest first; the last one always does.

    Where nothing stood that has gone, a charge was told before any was bled.
    """
    locked, turned_on = before.power != "on", after.power != before.power
    live = turned_on or after.second_source != before.second_source
    yield live and locked, LIVE_AGAIN
    yield after.second_source != before.second_source, FED_TWICE
    yield after.meter != before.meter and locked, METER_GONE
    yield after.dead != before.dead or after == before, NOT_DEAD
    yield after.discharged != before.discharged, NOT_DEAD
    yield after.unburnt and not before.unburnt, UNBURNT
    yield after.gas != before.gas and bool(after.taps_open), GAS_AND_TAP
    yield after.gas != before.gas, GAS_BACK
    yield after.roof != before.roof, OFF_THE_EDGE
    yield before.second_person and not after.second_person, ALONE
    yield before.arc_clothing and not after.arc_clothing, UNDRESSED
    yield after.clear != before.clear, NOT_SWEPT
    yield after.calls != before.calls, KEEP_CLEAR
    yield after.panels != before.panels and before.panels == "on", PANEL_OFF
    yield after.panels != before.panels, PANEL_ON
    yield after.fire_panel != before.fire_panel, FIRE_PANEL
    yield after.leads_off != before.leads_off or not after.area_clear, NOT_READY
    yield True, STOP_FIRST


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


def _voided_besides(before: WorkState, after: WorkState) -> Iterator[str]:
    """What no break voids."""
    for said, then, now in (
        ("the panels off", before.panels == "off", after.panels == "off"),
        ("the panels on", before.panels == "on", after.panels == "on"),
        ("tools and people clear", before.area_clear, after.area_clear),
        ("no gas left unburnt", not before.unburnt, not after.unburnt),
        ("every lead back", not before.leads_off, not after.leads_off),
    ):
        if then and not now:
            yield said


def _locked(state: WorkState) -> bool:
    return state.second_source == "locked"
