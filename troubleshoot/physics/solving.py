"""Three equations in a box: Newton, and where it sticks, one bracket inside another."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from typing import Final

from scipy.optimize import brentq

from troubleshoot.frozen import frozen

Three = tuple[float, float, float]

CLOSE: Final = 2e-5
"""Largest error of a balance, as a share of what is balanced."""
NEAR: Final = 2e-3
"""The same where a kink of the model lies at the answer and brackets have found it."""
_STEPS: Final = 40


@frozen
class Box:
    """Where an answer can lie, and the size of a small step in each unknown."""

    low: Three
    high: Three
    step: Three

    def held(self, x: Three) -> Three:
        """The same inside."""
        a, b, c = (min(max(v, lo), hi) for v, lo, hi in zip(x, self.low, self.high, strict=True))
        return a, b, c


def solve(off: Callable[[Three], Three], starts: Iterable[Three], box: Box) -> tuple[Three, bool]:
    """Where all three errors vanish, and whether they do; else the nearest end of the box.

    Newton from each start in turn, then the bracketed search.

    For the bracketed search: the first error falls as the first unknown rises, the second as the
    third does, and the last rises with the second.
    """
    for start in starts:
        found = _newton(off, box.held(start), box)
        if found is not None:
            return found, True
    return _bracketed(off, box)


def _size(error: Three) -> float:
    return max(abs(e) for e in error)


def _newton(off: Callable[[Three], Three], x: Three, box: Box) -> Three | None:
    error = off(x)
    for _ in range(_STEPS):
        if _size(error) < CLOSE:
            return x
        move = _move(off, x, error, box)
        if move is None:
            return None
        share = 1.0
        while share > 0.02:
            tried = box.held(
                (x[0] + share * move[0], x[1] + share * move[1], x[2] + share * move[2])
            )
            news = off(tried)
            if _norm(news) < (1.0 - 0.1 * share) * _norm(error):
                break
            share *= 0.4
        else:
            return None
        x, error = tried, news
    return None


def _norm(error: Three) -> float:
    return math.sqrt(error[0] ** 2 + error[1] ** 2 + error[2] ** 2)


def _move(off: Callable[[Three], Three], x: Three, error: Three, box: Box) -> Three | None:
    columns = []
    for i in range(3):
        small = 0.02 * box.step[i] * (-1.0 if x[i] + 0.02 * box.step[i] > box.high[i] else 1.0)
        aside = list(x)
        aside[i] += small
        moved = off((aside[0], aside[1], aside[2]))
        columns.append([(m - e) / small for m, e in zip(moved, error, strict=True)])
    a, b, c = columns
    whole = _determinant(a, b, c)
    if abs(whole) < 1e-30:
        return None
    wanted = [-e for e in error]
    return (
        _determinant(wanted, b, c) / whole,
        _determinant(a, wanted, c) / whole,
        _determinant(a, b, wanted) / whole,
    )


def _determinant(a: list[float], b: list[float], c: list[float]) -> float:
    return (
        a[0] * (b[1] * c[2] - b[2] * c[1])
        - b[0] * (a[1] * c[2] - a[2] * c[1])
        + c[0] * (a[1] * b[2] - a[2] * b[1])
    )


def _bracketed(off: Callable[[Three], Three], box: Box) -> tuple[Three, bool]:
    def leaving(te: float, tc: float) -> float:
        return _root(lambda h: off((te, tc, h))[1], box.low[2], box.high[2], 1.0)

    def evaporating(tc: float) -> float:
        def passed(te: float) -> float:
            return off((te, tc, leaving(te, tc)))[0]

        return _root(passed, box.low[0], box.high[0], 1e-4)

    def held(tc: float) -> float:
        te = evaporating(tc)
        return off((te, tc, leaving(te, tc)))[2]

    tc = _root(held, box.low[1], box.high[1], 1e-4)
    te = evaporating(tc)
    found = te, tc, leaving(te, tc)
    return found, _size(off(found)) < NEAR


def _root(error: Callable[[float], float], low: float, high: float, close: float) -> float:
    """Where the error vanishes; the end with the smaller one where it does not."""
    at_low, at_high = error(low), error(high)
    if at_low * at_high > 0:
        return low if abs(at_low) < abs(at_high) else high
    return float(brentq(error, low, high, xtol=close, rtol=1e-10))
