"""Rule files as they were written before -> as they are written now, without a change of meaning.

`rules format` does this to plain data that passed its form, and what is loaded has at least the
keys of today. Each step leaves what is new as it is.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, replace
from itertools import pairwise
from math import inf
from typing import Any, Final

from troubleshoot.knowledge.forms import FORMS, LISTINGS, has_source
from troubleshoot.knowledge.shapes import Name, OneOrMore, Record, optional
from troubleshoot.knowledge.vocabulary import GRADES

AREAS_BEFORE: Final = {"indoor-air": "filters-coil-duct"}
"""Words for areas of tests that were not those of the subsystems, and what they are now."""

STATUS_BEFORE: Final = {"reviewed": "gone-over"}
"""Words for how far a card can be trusted, and what they are now."""

_SCALE: Final = {"quantity": "of", "relative-to": "relative-to", "as": "as"}
"""The keys of a limit that say what is compared, and what bands call them."""


_LISTS: Final = ("faults", "also", "impossible-for")
"""What complaints listed before cards said under `calls` what they bring."""


def form_before(kind: str) -> Record:
    """The form of a kind of file, with the keys that it had before."""
    form = FORMS[kind]
    if kind != "complaints":
        return form
    (listing,) = LISTINGS[kind]
    names = OneOrMore(Name("fault"), most=400)
    old = tuple(optional(key, names, "as it was written before") for key in _LISTS)
    item = replace(listing.item, fields=(*listing.item.fields, *old))
    field = replace(listing, item=item).field
    return replace(form, fields=tuple(field if f.key == kind else f for f in form.fields))


def upgraded(kind: str, data: dict[str, Any]) -> dict[str, Any]:
    """The plain data of a file, as it is written now."""
    data = in_keys_of_today(kind, data)
    if kind == "tests":
        data = {**data, "tests": [_in_bands(test) for test in data["tests"]]}
    return _source_said_once(kind, data)


def in_keys_of_today(kind: str, data: dict[str, Any]) -> dict[str, Any]:
    """The plain data of a file that passed `form_before`, without the keys and words that are gone.

    Earlier rules must stay readable: a site's folder, and what `rules check --against` compares.
    """
    if kind == "complaints":
        return {**data, "complaints": [_in_grades(each) for each in data["complaints"]]}
    if kind == "tests":
        return {**data, "area": AREAS_BEFORE.get(data["area"], data["area"])}
    if kind == "fault" and "status" in data:
        return {**data, "status": STATUS_BEFORE.get(data["status"], data["status"])}
    if kind == "hazards":
        return {**data, "hazards": [_in_subsystems(each) for each in data["hazards"]]}
    return data


def _source_said_once(kind: str, data: dict[str, Any]) -> dict[str, Any]:
    """The source that more than half of the entries name stands at the top; none gains one."""
    lists = [each for each in LISTINGS.get(kind, ()) if has_source(each) and each.key in data]
    named = [tuple(item.get("source", ())) for each in lists for item in data[each.key]]
    if "source" not in data:
        if () in named or len(named) < 2:
            return data
        most, count = Counter(named).most_common(1)[0]
        if 2 * count <= len(named):
            return data
        data = {**data, "source": list(most)}
    whole = data["source"]
    for each in lists:
        items = [
            {key: value for key, value in item.items() if (key, value) != ("source", whole)}
            for item in data[each.key]
        ]
        data = {**data, each.key: items}
    return data


@dataclass(frozen=True, order=True, slots=True)
class _Span:
    """A line of limits on one scale. `taken`: the number itself belongs to it."""

    low: float
    high: float
    low_taken: bool
    high_taken: bool
    outcome: str

    @classmethod
    def of(cls, line: dict[str, Any], outcome: str) -> _Span:
        least, most = line.get("between", (None, None))
        low, low_taken = line.get("at-least", least), "above" not in line
        high, high_taken = line.get("at-most", most), "below" not in line
        return cls(
            low=-inf if line.get("above", low) is None else line.get("above", low),
            high=inf if line.get("below", high) is None else line.get("below", high),
            low_taken=low_taken,
            high_taken=high_taken,
            outcome=outcome,
        )

    @property
    def band(self) -> dict[str, Any]:
        end = {} if self.high == inf else {"up-to" if self.high_taken else "below": self.high}
        return {"outcome": self.outcome, **end}


def _in_grades(complaint: dict[str, Any]) -> dict[str, Any]:
    """A complaint whose lists of faults are grades: the first of them was the likeliest."""
    first, *others = complaint.get("faults") or [None]
    lists = {
        "almost-always": [] if first is None else [first],
        "often": others,
        "seldom": complaint.get("also", []),
        "never": complaint.get("impossible-for", []),
    }
    old = complaint.get("brought-by", {})
    grades = {grade: [*old.get(grade, []), *lists.get(grade, [])] for grade in GRADES}
    kept = {key: value for key, value in complaint.items() if key not in _LISTS}
    brought = {grade: names for grade, names in grades.items() if names}
    return {**kept, "brought-by": brought} if brought else kept


def _in_subsystems(hazard: dict[str, Any]) -> dict[str, Any]:
    """A hazard whose bans name areas by the words of today."""
    if "forbids" not in hazard:
        return hazard
    bans = [
        {**ban, "areas": [AREAS_BEFORE.get(area, area) for area in ban["areas"]]}
        if "areas" in ban
        else ban
        for ban in hazard["forbids"]
    ]
    return {**hazard, "forbids": bans}


def _in_bands(test: dict[str, Any]) -> dict[str, Any]:
    """A test whose limits cut one scale without a gap, with bands; any other as it is."""
    lines = [
        (outcome["id"], line)
        for outcome in test["outcomes"]
        for line in outcome.get("limits", ())
        if "reads" not in line
    ]
    scales = [{key: line.get(key) for key in _SCALE} for _, line in lines]
    if len(lines) < 2 or any(each != scales[0] for each in scales):
        return test
    if "bands" in test or any("all" in line or "when" in line for _, line in lines):
        return test
    spans = sorted(_Span.of(line, outcome) for outcome, line in lines)
    whole = spans[0].low == -inf and spans[-1].high == inf
    if not whole or not all(
        one.high == next_.low and one.high_taken != next_.low_taken
        for one, next_ in pairwise(spans)
    ):
        return test
    scale = {_SCALE[key]: value for key, value in scales[0].items() if value is not None}
    bands = {**scale, "from-low-to-high": [span.band for span in spans]}
    outcomes = [_without_numbers(outcome) for outcome in test["outcomes"]]
    return {**test, "bands": bands, "outcomes": outcomes}


def _without_numbers(outcome: dict[str, Any]) -> dict[str, Any]:
    """An outcome with what a meter reads as zero or open, and no numbers."""
    left = [line for line in outcome.get("limits", ()) if "reads" in line]
    kept = {key: value for key, value in outcome.items() if key != "limits"}
    return {**kept, "limits": left} if left else kept
