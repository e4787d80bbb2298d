"""An id that nobody has said how to say, or words that cannot be typed.

What: an outcome, value of a fact, area, subsystem, hazard, fact, nameplate value or quantity has an
id of several words, and no words.yaml says it; words.yaml says what has no such id; or what people
type, a value, an area, is said in words that do not lead back to its id, or two outcomes of a test
in the same.
Why: people would be shown the bare id, in every language; and what is shown must be what may be
typed.
Fix: add a line to words.yaml. Capitals and commas are free; letters and figures stay those of the
id where it is typed, but for an outcome, which is heard as it is said. An id of a pack's own is
only told of: it is shown as it is.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.nodes import LocatedMapping
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase, Steps
from troubleshoot.knowledge.walking import value_at
from troubleshoot.outside.text import plain_words

ID: Final = "spoken-words"

Shown = tuple[tuple[str, str], Steps, str]
"""(kind and id of the entry, steps to the id, the id)."""


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every id without words, words without an id, words not to be typed."""
    words, known = base.knowledge.words, set()
    for entry, steps, name in (*_typed(base), *_only_shown(base)):
        if name not in known and "-" in name and name not in words:
            what, instead = f"nobody says how {name} is said", f"add {name} to words.yaml"
            own = base.definitions.of(entry[0]).get(entry[1])
            is_packs = own is not None and own.file.folder
            yield base.problem(ID, entry, steps, what, instead, "notice" if is_packs else "error")
        known.add(name)
    yield from _said_alike(base)
    typed = {name for _, steps, name in _typed(base) if "outcomes" not in steps}
    for file in base.files:
        said = value_at(file.root, "words") if file.kind == "words" else None
        for name, line in said.entries.items() if isinstance(said, LocatedMapping) else ():
            what = instead = ""
            if name not in known:
                what, instead = f"{name} is the id of nothing that is shown", "delete the line"
            elif name in typed and not _leads_back(words[name], name):
                what = f'"{words[name]}", typed, does not lead back to {name}'
                instead = "keep the words of the id; capitals and commas are free"
            if what:
                yield Problem(file.path, line.line, line.column, what, instead, ID)


def _said_alike(base: RuleBase) -> Iterator[Problem]:
    for test in base.knowledge.tests.values():
        said: dict[str, str] = {}
        for number, outcome in enumerate(test.outcomes):
            words = plain_words(test.spoken(outcome.id))
            other = said.setdefault(words, outcome.id)
            if other != outcome.id:
                what = f'{other} and {outcome.id} are both said "{words}"'
                place = ("test", test.id), ("outcomes", number, "id")
                yield base.problem(ID, *place, what, "say one of them otherwise in words.yaml")


def _leads_back(words: str, name: str) -> bool:
    return plain_words(words.replace(",", " ")) == plain_words(name)


def _typed(base: RuleBase) -> Iterator[Shown]:
    """What people type as they are shown it."""
    for test in base.knowledge.tests.values():
        yield ("test", test.id), (), test.area
        for number, outcome in enumerate(test.outcomes):
            yield ("test", test.id), ("outcomes", number, "id"), outcome.id
    for fault in base.knowledge.faults.values():
        yield ("fault", fault.id), ("subsystem",), fault.subsystem
    for part in base.knowledge.subsystems.values():
        for name in (part.id, *part.areas):
            yield ("subsystem", part.id), ("id",), name
    for fact in base.knowledge.facts.values():
        for number, value in enumerate(fact.values):
            yield ("fact", fact.id), ("values", number), value


def _only_shown(base: RuleBase) -> Iterator[Shown]:
    knowledge = base.knowledge
    for hazard in knowledge.hazards:
        yield ("hazard", hazard), ("id",), hazard
    for kind, names in (
        ("fact", knowledge.facts),
        ("plate value", knowledge.plate_values),
        ("quantity", knowledge.quantities),
        ("hazard kind", knowledge.hazard_kinds),
    ):
        for name in names:
            yield (kind, name), ("id",), name
