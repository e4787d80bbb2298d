"""Which typed numbers are doubted: those beyond what units show in any weather.

What cannot be at all is refused where it is read (`measuring.require_possible`).
"""

from __future__ import annotations

from troubleshoot.knowledge.model import Knowledge, Quantity, Test
from troubleshoot.quantities.typed import NotUnderstood, Typed
from troubleshoot.quantities.units import convert, same_kind
from troubleshoot.quantities.units import unit as unit_of
from troubleshoot.reasoning.readings.measuring import read_text


def doubted(knowledge: Knowledge, test: Test, text: str) -> str | None:
    """Why a reading is doubted, in a sentence; None where it is not."""
    try:
        typed = read_text(test, text, knowledge)
    except NotUnderstood:
        return None
    for one in test.reads:
        quantity = knowledge.quantities[one.quantity]
        why = _beyond(quantity, typed) if one.legs is None or one is test.reads[0] else None
        if why is not None:
            return why
    return None


def _beyond(quantity: Quantity, typed: Typed) -> str | None:
    if quantity.doubted_beyond is None or not same_kind(quantity.unit, typed.values[0].unit):
        return None
    low, high = quantity.doubted_beyond
    unit = unit_of(quantity.unit).spoken
    name = quantity.spoken
    for leg in typed.values:
        if leg.over_range:
            continue
        value = convert(leg.value, leg.unit, quantity.unit)
        if not low <= value <= high:
            limit = f"under {low:g}" if value < low else f"over {high:g}"
            return f"{value:g} {unit} is odd: {name} is hardly ever {limit}."
    return None
