"""The forward-chaining engine: the only module that imports experta.

Flat rules (see `chains`) become experta rules over one kind of fact: an atom true at a circuit. All
patterns of a rule share one variable, the circuit.

experta's own matcher polls every rule after each change; ours looks rules up by atom, which keeps
an answer's cost flat in the number of rules. Both conclude the same (a test compares them).
"""

from __future__ import annotations

import collections
import collections.abc
import inspect
import logging
from collections.abc import Callable, Iterable, Sequence
from typing import Any

from troubleshoot.frozen import frozen
from troubleshoot.reasoning.chaining.chains import FlatRule

# experta pins a frozendict that subclasses collections.Mapping, gone since Python 3.10: put the
# name back for the length of the import.
collections.Mapping = collections.abc.Mapping  # type: ignore[attr-defined]
try:
    from experta import MATCH, Fact, KnowledgeEngine, Rule
    from experta.abstract import Matcher
    from experta.activation import Activation
    from experta.matchers import ReteMatcher as StockMatcher
finally:
    del collections.Mapping  # type: ignore[attr-defined]

__all__ = ["Chain", "ChainTooLong", "Conclusion", "IndexedMatcher", "StockMatcher"]

logging.getLogger("experta").setLevel(logging.WARNING)

STEPS_PER_RULE = 64
"""No sound base fires a rule more often than it has circuits; beyond this the run is cut short."""


TAKES_ANYTHING = inspect.Signature([inspect.Parameter("facts", inspect.Parameter.VAR_KEYWORD)])
"""experta works out every callback's signature; stating it takes half the time off building."""


class ChainTooLong(RuntimeError):
    """The rules went on firing beyond any sound length: a loop in the rule base."""


class Atom(Fact):  # type: ignore[misc]
    """Something true at a circuit."""


@frozen
class Conclusion:
    """An atom concluded at a circuit, by which rule, from which atoms."""

    atom: str
    at: int
    of: str
    because: tuple[str, ...]


class IndexedMatcher(Matcher):  # type: ignore[misc]
    """Finds the rules that a new fact completes, by looking its atom up.

    Every pattern names its atom literally and shares only the circuit, so a rule is complete at a
    circuit once each of its atoms is there. Facts are never retracted.
    """

    def __init__(self, engine: KnowledgeEngine) -> None:
        super().__init__(engine)
        self._by_atom: dict[str, list[tuple[Any, int, int]]] = {}
        for bound in engine.get_rules():
            # A rule fetched from the engine is bound to it, and would be handed it twice.
            patterns = list(bound)
            rule = bound.new_conditions(*patterns)
            for position, pattern in enumerate(patterns):
                self._by_atom.setdefault(pattern["key"], []).append((rule, position, len(patterns)))
        self.reset()

    def reset(self) -> None:
        self._found: dict[tuple[int, int], dict[int, Any]] = {}

    def changes(
        self, adding: Iterable[Any] | None = None, deleting: Iterable[Any] | None = None
    ) -> tuple[list[Any], list[Any]]:
        added: list[Any] = []
        for fact in adding or ():
            if type(fact) is Atom:
                added.extend(self._completed(fact))
        return added, []

    def _completed(self, fact: Any) -> Iterable[Any]:
        for rule, position, needed in self._by_atom.get(fact["key"], ()):
            found = self._found.setdefault((id(rule), fact["at"]), {})
            found[position] = fact
            if len(found) == needed:
                facts = tuple(found[i] for i in sorted(found))
                context = {f"f{i}": f for i, f in found.items()} | {"at": fact["at"]}
                yield Activation(rule, facts, context)


class Chain:
    """The compiled rules of one rule base; built once a process, run for every new set of facts.

    Not thread-safe: one engine, one thread.
    """

    def __init__(self, rules: Sequence[FlatRule], matcher: type[Matcher] | None = None) -> None:
        self._rules = tuple(rules)
        self._needed = frozenset(atom for rule in self._rules for atom in rule.needs)
        self._concluded: dict[tuple[str, int], Conclusion] = {}
        members: dict[str, Any] = {"__matcher__": matcher or IndexedMatcher}
        for number, rule in enumerate(self._rules, start=1):
            patterns = [f"f{i}" << Atom(key=atom, at=MATCH.at) for i, atom in enumerate(rule.needs)]
            members[f"rule_{number}"] = Rule(*patterns, salience=-number)(self._callback(rule))
        self._engine = type("ChainEngine", (KnowledgeEngine,), members)()
        # experta looks for initial facts among all rules at every reset; they never change.
        initial = self._engine.get_deffacts()
        self._engine.get_deffacts = lambda: initial

    def _callback(self, rule: FlatRule) -> Callable[..., None]:
        def conclude(engine: KnowledgeEngine, at: int, **facts: Any) -> None:
            if (rule.concludes, at) not in self._concluded:
                because = tuple(str(fact["key"]) for _, fact in sorted(facts.items()))
                self._concluded[(rule.concludes, at)] = Conclusion(
                    rule.concludes, at, rule.of, because
                )
                engine.declare(Atom(key=rule.concludes, at=at))

        conclude.__signature__ = TAKES_ANYTHING  # type: ignore[attr-defined]
        return conclude

    def start(self, atoms: Iterable[tuple[str, int]]) -> None:
        """Forget everything and chain from these atoms."""
        self._engine.reset()
        self._concluded.clear()
        self._run(self._atoms(atoms))

    def add(self, atoms: Iterable[tuple[str, int]]) -> None:
        """Chain on from some more atoms; rules only add."""
        self._run(self._atoms(atoms))

    def _atoms(self, atoms: Iterable[tuple[str, int]]) -> list[Any]:
        """Facts of the atoms that some rule needs; the others could conclude nothing."""
        return [Atom(key=key, at=at) for key, at in sorted(set(atoms)) if key in self._needed]

    def _run(self, facts: list[Any]) -> None:
        if facts:
            self._engine.declare(*facts)
        steps = STEPS_PER_RULE * (len(self._rules) + len(facts) + 1)
        self._engine.run(steps=steps)
        added, _ = self._engine.get_activations()
        if added or self._engine.agenda.activations:
            raise ChainTooLong("the rules go on concluding without end; look for a loop in them")

    @property
    def concluded(self) -> tuple[Conclusion, ...]:
        """Every atom concluded, in order of name and circuit."""
        return tuple(self._concluded[key] for key in sorted(self._concluded))
