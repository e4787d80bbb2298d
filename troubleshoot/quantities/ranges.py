"""The one error of every formula: a value outside the range for which the formula is valid."""

import math
from collections.abc import Sequence


class OutOfRange(ValueError):
    """A value lies where a formula does not hold.

    `key` names the value in the words of the formula ("line-temperature"); the message is one
    sentence for a person; `instead` says what to do.
    """

    def __init__(self, key: str, problem: str, instead: str = "") -> None:
        self.key = key
        self.problem = problem
        self.instead = instead
        super().__init__(f"{problem}; {instead}" if instead else problem)


def require(
    key: str,
    value: float,
    unit: str = "",
    *,
    above: float | None = None,
    at_least: float | None = None,
    below: float | None = None,
    at_most: float | None = None,
) -> None:
    """Raise OutOfRange unless `value` is a finite number inside the bounds given."""
    if not math.isfinite(value):
        raise OutOfRange(key, f"{key} is over range or missing", "give a number")
    inside = (
        (above is None or value > above)
        and (at_least is None or value >= at_least)
        and (below is None or value < below)
        and (at_most is None or value <= at_most)
    )
    if not inside:
        bounds = [
            f"{word} {_plain(bound)}{_behind(unit)}"
            for word, bound in (
                ("above", above),
                ("at least", at_least),
                ("below", below),
                ("at most", at_most),
            )
            if bound is not None
        ]
        raise OutOfRange(
            key,
            f"{key} is {_plain(value)}{_behind(unit)}",
            f"it must be {' and '.join(bounds)}; read it again",
        )


def require_all(
    key: str, values: Sequence[float], unit: str = "", *, above: float, at_most: float | None = None
) -> None:
    """Raise OutOfRange unless there is at least one value and each is inside the bounds."""
    if not values:
        raise OutOfRange(key, f"{key} holds no value", "give at least one")
    for value in values:
        require(key, value, unit, above=above, at_most=at_most)


def _plain(value: float) -> str:
    return f"{value:.6g}"


def _behind(unit: str) -> str:
    return f" {unit}" if unit else ""
