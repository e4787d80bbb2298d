"""What rows came to, as a table for a spreadsheet and as lines of JSON for scripts."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterator, Mapping
from typing import Final

from troubleshoot.outside.text import in_json
from troubleshoot.reasoning.unit.places import with_place
from troubleshoot.records.logged.heading import MOMENT, UNIT
from troubleshoot.records.logged.judging import MOST_NAMED, NOT_TAKEN, Judged
from troubleshoot.visit.telling.wording import counted

_BETWEEN: Final = "; "
MOST_TOLD: Final = 20
"""Bad cells that are told beside the results, which name them all."""
RESULT_COLUMNS: Final = (
    "row", UNIT, *MOMENT, "standing-stops", "stops", "dangers", "ending",
    *(f"{head}-{number}" for number in range(1, MOST_NAMED + 1) for head in ("cause", "chance")),
    "effects", "nothing-wrong", "outside", "unexplained", "not-judged", "not-taken",
)  # fmt: skip
"""The columns of the results, a STOP before any cause."""


def cells_of_result(judged: Judged) -> dict[str, str]:
    """What a row came to, as a row of the results."""
    cells = {
        "row": str(judged.row),
        UNIT: judged.unit,
        **judged.moment,
        "standing-stops": " ".join(judged.standing),
        "stops": _BETWEEN.join(judged.stops),
        "dangers": " ".join(judged.dangers),
        "ending": judged.ending,
        "effects": _BETWEEN.join(map(_named, judged.effects)),
        "nothing-wrong": _chance(judged.nothing_wrong),
        "outside": _chance(judged.outside),
        "unexplained": _BETWEEN.join(judged.unexplained),
        "not-judged": _BETWEEN.join(judged.not_judged),
        "not-taken": _BETWEEN.join(judged.bad),
    }
    for number, cause in enumerate(judged.causes, start=1):
        cells[f"cause-{number}"] = _named(cause)
        cells[f"chance-{number}"] = str(cause["probability"])
    return cells


def json_of_result(judged: Judged) -> str:
    """What a row came to, as one line of JSON."""
    plain = {
        "row": judged.row,
        UNIT: judged.unit,
        **judged.moment,
        "standing_stops": judged.standing,
        "stops": judged.stops,
        "dangers": judged.dangers,
        "ending": judged.ending,
        "causes": judged.causes,
        "effects": judged.effects,
        "nothing_wrong": judged.nothing_wrong,
        "outside": judged.outside,
        "unexplained": judged.unexplained,
        "not_judged": judged.not_judged,
        "not_taken": judged.bad,
    }
    return in_json(json.dumps(plain, ensure_ascii=False))


class Tally:
    """What the rows came to so far, and the first of what is wrong with some; no row is kept."""

    def __init__(self) -> None:
        self._endings: Counter[str] = Counter()
        self._stopped = 0
        self._bad: list[str] = []

    def take(self, judged: Judged) -> None:
        self._endings[judged.ending] += 1
        self._stopped += bool(judged.stops)
        self._bad += judged.bad[: MOST_TOLD - len(self._bad)]

    @property
    def not_taken(self) -> int:
        """How many rows were not understood."""
        return self._endings[NOT_TAKEN]

    def lines(self) -> Iterator[str]:
        """How many rows came to what; then what of the bad ones was not understood."""
        rows = counted(sum(self._endings.values()), "row", "rows")
        ended = (f"{number} {ending}" for ending, number in sorted(self._endings.items()))
        yield f"{', '.join((rows, *ended, f'{self._stopped} with a STOP'))}."
        yield from self._bad
        if self.not_taken:
            yield "What is wrong with each row that is not taken stands in its line of the results."


def _named(cause: Mapping[str, object]) -> str:
    return with_place(str(cause["name"]), str(cause["at"]) if cause["at"] else None)


def _chance(number: float | None) -> str:
    return "" if number is None else str(number)
