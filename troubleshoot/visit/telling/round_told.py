"""What a routine round has found, in words and as plain data."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.places import Layout, spoken, with_place
from troubleshoot.visit.round.found import PointFound, SpotFound
from troubleshoot.visit.telling.account import Plain
from troubleshoot.visit.telling.as_read import as_computed, as_read


def named(knowledge: Knowledge, layout: Layout, found: SpotFound) -> str:
    """A test of a point with its place, where there are several."""
    test = knowledge.tests[found.spot[0]]
    return with_place(test.name, layout.shown(test.per, found.spot[1]))


def finding_line(knowledge: Knowledge, layout: Layout, point: PointFound, found: SpotFound) -> str:
    """What is not sound, or could not be judged, in a line with its reading."""
    assert found.reading is not None
    test = knowledge.tests[found.spot[0]]
    outcome = ", ".join(map(test.spoken, found.reading.seen)) or "not judged"
    read = read_as(knowledge, found)
    kind = "Not sound" if found.result == "abnormal" else "Not judged"
    why = f"; {found.why}" if found.why else ""
    said = f"{kind}, point {point.here.number}: {named(knowledge, layout, found)}: {outcome}"
    return f"{said}{f' ({read})' if read else ''}{why}"


def not_taken_lines(
    knowledge: Knowledge, layout: Layout, points: Iterable[PointFound]
) -> Iterator[str]:
    """What was not taken, and why, a line a test."""
    for point in points:
        for found in point.spots:
            if found.result == "not-taken":
                name = named(knowledge, layout, found)
                yield f"Not taken, point {point.here.number}: {name}: {found.why}"


def read_as(knowledge: Knowledge, found: SpotFound) -> str:
    """A reading as it was typed, or computed, with its unit; empty for a look."""
    reading = found.reading
    if reading is None:
        return ""
    if reading.computed and reading.classified is not None:
        unit = knowledge.quantities[reading.classified.quantity].unit.removesuffix("-diff")
        return f"{as_computed(reading.classified.value)} {unit}"
    return as_read(knowledge, knowledge.tests[reading.test], reading.text or "")


def round_account(knowledge: Knowledge, season: str, points: Iterable[PointFound]) -> Plain:
    """The round as plain data: each point with its readings, and what was not taken and why."""
    return {"season": season, "points": [_point(knowledge, point) for point in points]}


def _point(knowledge: Knowledge, found: PointFound) -> Plain:
    point = found.here.point
    return {
        "id": point.id,
        "number": found.here.number,
        "point": point.point,
        "result": found.result,
        "limit": point.limit,
        "watch": point.trend,
        "readings": [_reading(knowledge, each) for each in found.spots if each.reading],
        "not_taken": [
            {"test": each.spot[0], "at": spoken(each.spot[1]), "why": each.why}
            for each in found.spots
            if each.reading is None
        ],
    }


def _reading(knowledge: Knowledge, found: SpotFound) -> Plain:
    assert found.reading is not None
    return {
        "test": found.spot[0],
        "at": spoken(found.spot[1]),
        "outcome": ", ".join(found.reading.seen) or None,
        "read": read_as(knowledge, found) or None,
        "result": found.result,
    }
