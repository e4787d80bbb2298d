"""A name that nothing defines.

What: a test, outcome, fault, hazard, complaint, quantity, equipment fact, nameplate value, source,
unit or meter is named that no rule file defines.
Why: a misspelt name would pass silently, and the rule would never speak.
Fix: write the name as it is defined. The message offers the nearest one.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Final

from troubleshoot.knowledge.base import RuleFile
from troubleshoot.knowledge.definitions import Definitions
from troubleshoot.knowledge.nodes import Located, LocatedMapping, LocatedValue
from troubleshoot.knowledge.problems import Problem, did_you_mean
from troubleshoot.knowledge.shapes import Facts, Findings, Name
from troubleshoot.knowledge.upgrading import form_before
from troubleshoot.knowledge.vocabulary import PLAIN_SOURCES
from troubleshoot.knowledge.walking import Step, text_of, texts_of, value_at, walk
from troubleshoot.quantities.instruments import INSTRUMENTS
from troubleshoot.quantities.units import UNITS

ID: Final = "unknown-names"

_KNOWN_WORDS: Final = ("known", "not-known")
_UNIONS: Final = {
    "reference": ("plate value", "quantity"),
    "input": ("quantity", "plate value", "fact"),
    "fact or plate value": ("fact", "plate value"),
}


def find(files: tuple[RuleFile, ...], definitions: Definitions) -> Iterator[Problem]:
    """Yield a problem for every name without a definition."""
    naming = _Naming(definitions)
    for file in files:
        naming.path = file.path
        for step in walk(form_before(file.kind), file.root):
            yield from naming.problems_of(step)


class _Naming:
    """Looks up names; `path` is the file in which they stand."""

    def __init__(self, definitions: Definitions) -> None:
        self.path = ""
        self._definitions = definitions
        self._known: dict[str, frozenset[str]] = {
            "unit": frozenset(UNITS),
            "meter": frozenset(INSTRUMENTS),
            **definitions.names,
        }
        self._special: dict[str, Callable[[Step], Iterator[Problem]]] = {
            "source": self._source,
            "own outcome": self._own_outcome,
            "outcome of test": self._outcome_of_test,
        }

    def problems_of(self, step: Step) -> Iterator[Problem]:
        if isinstance(step.shape, Findings) and isinstance(step.node, LocatedMapping):
            yield from self._findings(step.node)
        elif isinstance(step.shape, Facts) and isinstance(step.node, LocatedMapping):
            yield from self._facts(step.node, of_a_limit=_is_limit(step))
        elif isinstance(step.shape, Name):
            special = self._special.get(step.shape.of)
            if special is not None:
                yield from special(step)
            else:
                yield from self._look_up(step.shape.of, step.node)

    def known(self, kind: str) -> frozenset[str]:
        if kind not in self._known:
            kinds = _UNIONS.get(kind, (kind,))
            names = frozenset(name for each in kinds for name in self._definitions.of(each))
            self._known[kind] = names
        return self._known[kind]

    def _look_up(self, kind: str, node: Located) -> Iterator[Problem]:
        for word, at in texts_of(node):
            yield from self._among(word, at, kind, self.known(kind))

    def _among(
        self, word: str, at: LocatedValue, kind: str, known: frozenset[str]
    ) -> Iterator[Problem]:
        if word not in known:
            what = f"no {kind} is called {word}"
            instead = did_you_mean(word, known)
            about = f"{kind} {word}"
            yield Problem(self.path, at.line, at.column, what, instead, ID, about=about)

    def _findings(self, node: LocatedMapping) -> Iterator[Problem]:
        for test, entry in node.entries.items():
            outcomes = self._definitions.words["test"].get(test)
            if outcomes is None:
                at = LocatedValue(test, entry.line, entry.column)
                yield from self._among(test, at, "test", self.known("test"))
                continue
            for word, at in texts_of(entry.value):
                yield from self._among(word, at, f"outcome of {test}", frozenset(outcomes))

    def _facts(self, node: LocatedMapping, of_a_limit: bool) -> Iterator[Problem]:
        """A limit may ask whether a quantity is known as well: it is judged where numbers are."""
        numbers = ["plate value", "quantity"] if of_a_limit else ["plate value"]
        for fact, entry in node.entries.items():
            values = self._definitions.words["fact"].get(fact)
            if values is None and not any(fact in self._definitions.of(n) for n in numbers):
                at = LocatedValue(fact, entry.line, entry.column)
                yield from self._among(fact, at, "equipment fact", self.known("fact"))
                continue
            allowed = frozenset((*(values or ()), *_KNOWN_WORDS))
            for word, at in texts_of(entry.value):
                yield from self._among(word, at, f"value of {fact}", allowed)

    def _source(self, step: Step) -> Iterator[Problem]:
        known = frozenset((*PLAIN_SOURCES, *self._definitions.of("source")))
        for text, at in texts_of(step.node):
            for word in text.split("; "):
                yield from self._among(word, at, "source", known)

    def _own_outcome(self, step: Step) -> Iterator[Problem]:
        ids = (text_of(value_at(node, "id")) for node in reversed(step.inside))
        test = next(filter(None, ids), "")
        outcomes = self._definitions.words["test"].get(test, ())
        for word, at in texts_of(step.node):
            yield from self._among(word, at, f"outcome of {test}", frozenset(outcomes))

    def _outcome_of_test(self, step: Step) -> Iterator[Problem]:
        test = text_of(value_at(step.inside[-1], "test"))
        outcomes = self._definitions.words["test"].get(test or "")
        if outcomes is not None:
            for word, at in texts_of(step.node):
                yield from self._among(word, at, f"outcome of {test}", frozenset(outcomes))


def _is_limit(step: Step) -> bool:
    """Whether a condition is that of a bound or of a line of bounds."""
    return any(value_at(step.inside[-1], key) is not None for key in ("all", "quantity"))
