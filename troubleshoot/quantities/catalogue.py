"""Every calculation that can be asked for by name, and the one way to carry it out.

Imported by the calc command only, for it draws in every formula of the house.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace
from difflib import get_close_matches
from types import MappingProxyType
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.quantities.calculations import (
    air,
    airflow,
    capacitors,
    charge,
    expected,
    gas,
    instruments,
    motors,
    saturation,
    supply,
)
from troubleshoot.quantities.calculations.inputs import Problem, WrongUse, WrongValue, read_inputs
from troubleshoot.quantities.calculations.model import (
    ANY_UNIT,
    WORD,
    Calculation,
    Computed,
    Figure,
    Given,
)
from troubleshoot.quantities.ranges import OutOfRange

__all__ = ["CATALOGUE", "TOPICS", "Answer", "Problem", "WrongUse", "WrongValue", "answer", "find"]

TOPICS: Final[Mapping[str, tuple[Calculation, ...]]] = MappingProxyType(
    {
        capacitors.TOPIC: capacitors.CALCULATIONS,
        supply.TOPIC: supply.CALCULATIONS,
        motors.TOPIC: motors.CALCULATIONS,
        saturation.TOPIC: (
            *saturation.CALCULATIONS,
            *charge.CALCULATIONS,
            *expected.CALCULATIONS,
        ),
        air.TOPIC: (*air.CALCULATIONS, *airflow.CALCULATIONS),
        gas.TOPIC: gas.CALCULATIONS,
        instruments.TOPIC: instruments.CALCULATIONS,
    }
)
"""The calculations by topic, in the order in which they are listed."""

CATALOGUE: Final[Mapping[str, Calculation]] = MappingProxyType(
    {each.name: each for calculations in TOPICS.values() for each in calculations}
)
"""The calculations by name."""


@frozen
class Answered:
    """One result: a number or a span with its unit, or a word with none.

    `spread` comes from typed +/- values.
    """

    name: str
    figure: Figure
    unit: str | None
    spread: float | None = None


@frozen
class Answer:
    """What one calculation gave, with everything needed to judge it."""

    calculation: Calculation
    given: Given
    results: tuple[Answered, ...]
    cautions: tuple[str, ...]


def find(name: str) -> Calculation:
    """Return the calculation so named; raise WrongUse with the nearest name."""
    found = CATALOGUE.get(name)
    if found is not None:
        return found
    near = get_close_matches(name, CATALOGUE, n=1)
    hint = f"did you mean {near[0]}?" if near else "calc alone lists the names"
    raise WrongUse([Problem(name, f"{name} is no calculation", hint)])


def answer(name: str, pairs: Sequence[tuple[str, str]]) -> Answer:
    """Return the results of a calculation from typed keys and values.

    Raises WrongUse for an unknown name or keys that do not fit, WrongValue for values that cannot
    be understood or lie outside the range of the formula.
    """
    calculation = find(name)
    given = read_inputs(calculation, pairs)
    computed = _compute(calculation, given)
    spreads = _spreads(calculation, given)
    results = tuple(
        Answered(
            name=result.name,
            figure=computed.figures[result.name],
            unit=None if result.unit == WORD else _unit(result.unit, given),
            spread=spreads.get(result.name),
        )
        for result in calculation.results
        if result.name in computed.figures
    )
    cautions = (*computed.cautions, *calculation.cautions)
    return Answer(calculation, given, results, cautions)


def _unit(unit: str, given: Given) -> str:
    return given.unit if unit == ANY_UNIT else unit


def _compute(calculation: Calculation, given: Given) -> Computed:
    """Return the computed figures; raise WrongValue outside the range of the formula."""
    try:
        return calculation.compute(given)
    except OutOfRange as error:
        problem = Problem(error.key, error.problem, error.instead or "read it again")
        raise WrongValue([problem]) from None
    except ValueError as error:
        problem = Problem(calculation.name, str(error).rstrip("."), "check the values")
        raise WrongValue([problem]) from None


def _spreads(calculation: Calculation, given: Given) -> Mapping[str, float]:
    """Return the plus-or-minus of each result that the typed ones bring about.

    Each is carried through by half the difference of the results at its two ends, and all are
    added as independent ones: the square root of the sum of squares (JCGM 100, 5.1.2 and 5.1.3).
    """
    squares: dict[str, float] = {}
    for name, spread in given.spreads.items():
        middle = given.number(name)
        low, high = (
            _compute(calculation, replace(given, values={**given.values, name: middle + step}))
            for step in (-spread, spread)
        )
        for result, below in low.figures.items():
            above = high.figures.get(result)
            if isinstance(below, float) and isinstance(above, float):
                squares[result] = squares.get(result, 0.0) + ((above - below) / 2) ** 2
    return {result: math.sqrt(square) for result, square in squares.items()}
