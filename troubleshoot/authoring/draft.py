"""A card as its author tells it, before it is a file; frozen, so that an answer can be taken back.

What the author is not asked follows from what was told: the id from the name, the examples from
what would be seen and from the case of what it is taken for.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import Any, Final

from troubleshoot.authoring.example_text import row_as_written
from troubleshoot.frozen import frozen
from troubleshoot.knowledge.formatting import written
from troubleshoot.knowledge.model import Evidence, FactsNeeded, Fault, Finding, Knowledge, Proof
from troubleshoot.knowledge.model.faults import Repair
from troubleshoot.knowledge.reading_values import LONGEST_ID
from troubleshoot.knowledge.vocabulary import GRADES, PLAIN_SOURCES, Grade, HowCommon, PlaceKind
from troubleshoot.outside.text import without_apostrophes

FORMAT: Final = 1
NO_SOURCE: Final = PLAIN_SOURCES[0]
NOT_GONE_OVER: Final = "as its author told it; nobody has gone over it yet"
SHOWS: Final[tuple[Grade, ...]] = ("almost-always", "often")
"""What shows so often that the card's own example holds it."""
_BETWEEN: Final = re.compile("[^a-z0-9]+")
MOST_WORDS_OF_AN_ID: Final = 8
MOST_NAME_OF_A_CASE: Final = 160


@frozen
class Draft:
    """What has been told of a card so far. `seen`: what shows when the fault is there."""

    name: str = ""
    story: str = ""
    subsystem: str = ""
    how_common: HowCommon = "uncommon"
    per: PlaceKind | None = None
    exists_when: FactsNeeded | None = None
    calls: tuple[tuple[Grade, str], ...] = ()
    seen: tuple[Evidence, ...] = ()
    look_alikes: tuple[str, ...] = ()
    why: str = ""
    if_left: str = ""
    repair: Repair | None = None
    proof: Proof | None = None
    source: str = NO_SOURCE

    @property
    def id(self) -> str:
        """The id that its name makes."""
        return id_of(self.name)

    @property
    def file(self) -> str:
        """Where its card lies in a folder of rules."""
        return f"faults/{self.subsystem}/{self.id}.yaml"


def id_of(name: str) -> str:
    """The id of a name: its first words, joined by hyphens; empty where it has none."""
    plain = without_apostrophes(name.lower())
    words = _BETWEEN.sub(" ", plain).split()[:MOST_WORDS_OF_AN_ID]
    while len("-".join(words)) > LONGEST_ID:
        words.pop()
    return "-".join(words)


def with_seen(draft_seen: tuple[Evidence, ...], new: Evidence) -> tuple[Evidence, ...]:
    """What is seen, with one finding more: it takes the place of what was said of it before.

    Two outcomes of one test with the same word become one statement, either of which may show.
    """
    finding = new.findings[0]
    kept: list[Evidence] = []
    outcomes = finding.outcomes
    for item in draft_seen:
        of_test = item.findings[0]
        if of_test.test != finding.test:
            kept.append(item)
            continue
        others = tuple(o for o in of_test.outcomes if o not in finding.outcomes)
        if item.grade == new.grade:
            outcomes = (*others, *outcomes)
        elif others:
            kept.append(Evidence(item.grade, (Finding(finding.test, others),)))
    return (*kept, Evidence(new.grade, (Finding(finding.test, outcomes),)))


def card_text(knowledge: Knowledge, draft: Draft) -> str:
    """The card as a rule file, in the canonical style."""
    return written("fault", _card(knowledge, draft))


def _card(knowledge: Knowledge, draft: Draft) -> dict[str, Any]:
    assert draft.repair is not None and draft.proof is not None
    proof: dict[str, Any] = {"text": draft.proof.text}
    if draft.proof.finding is not None:
        proof["finding"] = _finding(draft.proof.finding)
    card = {
        "format": FORMAT,
        "fault": draft.id,
        "name": draft.name,
        "subsystem": draft.subsystem,
        "is": "cause",
        "how-common": draft.how_common,
        "per": draft.per,
        "exists-when": {fact: list(words) for fact, words in (draft.exists_when or {}).items()},
        "calls": _by_grade(draft.calls),
        "evidence": _by_grade((item.grade, _finding(item.findings[0])) for item in draft.seen),
        "if-left": draft.if_left,
        "why": draft.why,
        "repair": _repair(draft.repair),
        "proof": [proof],
        "look-alikes": list(draft.look_alikes),
        "source": draft.source.split("; "),
        "status": "draft",
        "because": NOT_GONE_OVER,
        "examples": [_its_case(draft), _another_case(knowledge, draft)],
    }
    return {key: value for key, value in card.items() if value not in (None, "", [], {})}


def _by_grade(graded: Iterable[tuple[Grade, Any]]) -> dict[Grade, list[Any]]:
    """By grade, in the order of the five words."""
    told = list(graded)
    found = {grade: [item for own, item in told if own == grade] for grade in GRADES}
    return {grade: items for grade, items in found.items() if items}


def _finding(finding: Finding) -> dict[str, list[str]]:
    return {finding.test: list(finding.outcomes)}


def _repair(repair: Repair) -> dict[str, Any]:
    return {
        "what": repair.what,
        "minutes": round(repair.minutes),
        "part-cost": repair.part_cost,
        "who": {repair.who_rule: list(repair.who)},
    }


def _its_case(draft: Draft) -> dict[str, Any]:
    """The case in which the fault must be named: all that shows often on it, one word a test."""
    shows = (item.findings[0] for grade in SHOWS for item in draft.seen if item.grade == grade)
    first: dict[str, str] = {}
    for finding in shows:
        first.setdefault(finding.test, finding.outcomes[0])
    return _example(draft.story, True, _call(draft), draft.exists_when, _rows(first))


def _another_case(knowledge: Knowledge, draft: Draft) -> dict[str, Any]:
    """A case in which it must not be named: that of what it is taken for, or one that is sound."""
    alike = (knowledge.faults[name] for name in draft.look_alikes)
    case = next((case for fault in alike if (case := _case_of(fault, draft)) is not None), None)
    if case is not None:
        return case
    tests = dict.fromkeys(item.findings[0].test for item in draft.seen)
    told = (name for name in tests if _is_other(knowledge, draft, name))
    rows = _rows({name: knowledge.tests[name].healthy[0] for name in told})
    return _example("what it shows by is sound", False, _call(draft), draft.exists_when, rows)


def _case_of(fault: Fault, draft: Draft) -> dict[str, Any] | None:
    """A look-alike's own first case, on a unit that may have the new fault too."""
    own = next((example for example in fault.examples if example.names_it), None)
    if own is None:
        return None
    name = f"a case of its look-alike: {own.name}"[:MOST_NAME_OF_A_CASE]
    rows = [row_as_written(row) for row in own.readings]
    case = _example(name, False, own.complaint, draft.exists_when, rows)
    unit = {**case.get("unit", {}), **own.unit}
    return case | _without_empty({"unit": unit, "conditions": dict(own.conditions)})


def _is_other(knowledge: Knowledge, draft: Draft, test: str) -> bool:
    """Whether a sound unit shows something that the fault does not."""
    healthy = knowledge.tests[test].healthy
    own = {o for i in draft.seen if i.grade in SHOWS for o in i.findings[0].outcomes}
    return bool(healthy) and healthy[0] not in own


def _rows(outcomes: Mapping[str, str]) -> list[dict[str, Any]]:
    return [{"test": test, "outcome": [outcome]} for test, outcome in outcomes.items()]


def _call(draft: Draft) -> str | None:
    """The call that it brings most."""
    graded = sorted(draft.calls, key=lambda each: GRADES.index(each[0]))
    return graded[0][1] if graded else None


def _example(
    name: str,
    names_it: bool,
    complaint: str | None,
    facts: FactsNeeded | None,
    readings: list[dict[str, Any]],
) -> dict[str, Any]:
    unit = {fact: words[0] for fact, words in (facts or {}).items()}
    data = {"name": name, "names-it": names_it, "unit": unit, "complaint": complaint}
    return {**_without_empty(data), "readings": readings}


def _without_empty(data: Mapping[str, Any]) -> dict[str, Any]:
    return {key: value for key, value in data.items() if value not in (None, "", {})}
