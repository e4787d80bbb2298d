"""The routine round in a report: a row a point, so that the next visit can be compared."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.text import markdown
from troubleshoot.reasoning.unit.places import with_place

_RESULTS: Final[Mapping[str, str]] = {
    "sound": "sound",
    "in-part": "sound as far as taken",
    "abnormal": "not sound",
    "not-judged": "not judged",
    "not-taken": "not taken",
}


def round_ending(account: Mapping[str, Any]) -> str:
    """How a round ended, in a sentence; empty where none was walked."""
    walked = account.get("round")
    if not walked:
        return ""
    results = [row["result"] for row in walked["points"]]
    counts = ", ".join(
        f"{results.count(result)} {said}" for result, said in _RESULTS.items() if result in results
    )
    return f"PM, {walked['season']}: of {len(results)} points {counts}. "


def round_report(knowledge: Knowledge, account: Mapping[str, Any]) -> Iterator[str]:
    """The points of a round with what was read, what was not taken and why, and what to watch."""
    walked = account.get("round")
    if not walked:
        return
    yield ""
    yield f"## Round, {walked['season']}"
    yield ""
    yield "| point | result | read | not taken | watch |"
    yield "| --- | --- | --- | --- | --- |"
    for row in walked["points"]:
        cells = (
            f"{row['number']} {row['point']}",
            _RESULTS[row["result"]],
            "; ".join(_read(knowledge, each) for each in row["readings"]),
            "; ".join(f"{_name(knowledge, each)}: {each['why']}" for each in row["not_taken"]),
            row["watch"],
        )
        yield f"| {' | '.join(map(markdown, cells))} |"


def _name(knowledge: Knowledge, row: Mapping[str, Any]) -> str:
    return with_place(knowledge.tests[row["test"]].name, row["at"])


def _read(knowledge: Knowledge, row: Mapping[str, Any]) -> str:
    outcome = knowledge.tests[row["test"]].spoken_all(row["outcome"])
    said = ", ".join(filter(None, (row["read"], outcome)))
    return f"{_name(knowledge, row)}: {said or 'not judged'}"
