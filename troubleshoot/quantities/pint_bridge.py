"""The one door to pint: conversion by its unit registry, the authority our factors are held to.

pint is imported on first use, because its registry takes longer to build than the whole start-up
budget. It is given numbers and expressions from our list, never typed text.
"""

from functools import cache
from typing import TYPE_CHECKING

from troubleshoot.quantities.units import UnitMismatch, unit

if TYPE_CHECKING:
    from pint import UnitRegistry


@cache
def _registry() -> "UnitRegistry[float]":
    from pint import UnitRegistry

    return UnitRegistry()


def pint_convert(value: float, from_unit: str, to_unit: str) -> float:
    """Return `value`, given in `from_unit`, in `to_unit`, as pint computes it.

    Raises UnknownUnit for a word that is no unit. Raises UnitMismatch for units of different
    kinds, also where pint would convert (gauge into absolute pressure), for pint knows
    dimensions only.
    """
    source, target = unit(from_unit), unit(to_unit)
    if source.kind != target.kind:
        raise UnitMismatch(f"{from_unit} ({source.kind}) is not of the kind {target.kind}.")
    registry = _registry()
    given = registry.parse_expression(source.expression)
    wanted = registry.parse_expression(target.expression)
    quantity = registry.Quantity(value * given.magnitude, given.units)
    return float(quantity.to(wanted.units).magnitude / wanted.magnitude)
