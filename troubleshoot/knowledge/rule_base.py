"""A rule base that holds together: its files, its names and its model, for the further checks."""

from __future__ import annotations

from collections.abc import Iterator

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.assembling import build_knowledge
from troubleshoot.knowledge.base import ReadBase, RuleFile
from troubleshoot.knowledge.definitions import Definition, Definitions, collect_definitions
from troubleshoot.knowledge.model import Evidence, FactsNeeded, Fault, Given, Knowledge
from troubleshoot.knowledge.nodes import Located, LocatedList, LocatedMapping
from troubleshoot.knowledge.problems import Level, Problem
from troubleshoot.knowledge.walking import value_at

Steps = tuple[str | int, ...]


@frozen
class Scope:
    """One set of grades that holds together: the card's own, or those of an override or picture.

    `steps` lead from the card to where `evidence` and `given` stand. `all_evidence` also holds
    what the card says of tests on which the scope is silent, `all_given` the card's too. `on` are
    the conditions under which the scope is used.
    """

    name: str
    steps: Steps
    evidence: tuple[Evidence, ...]
    given: tuple[Given, ...]
    all_evidence: tuple[Evidence, ...]
    all_given: tuple[Given, ...]
    on: tuple[FactsNeeded, ...]


@frozen
class RuleBase:
    files: tuple[RuleFile, ...]
    definitions: Definitions
    knowledge: Knowledge

    def problem(
        self,
        check: str,
        entry: tuple[str, str],
        steps: Steps,
        what: str,
        instead: str,
        level: Level = "error",
    ) -> Problem:
        """A problem at the value that `steps` lead to from an entry (kind, id).

        Where a step does not exist the place is the last value that does, so that a missing key
        is shown at the entry that lacks it.
        """
        definition = self.definitions.of(entry[0])[entry[1]]
        line, column = _place(definition, steps)
        return Problem(definition.file.path, line, column, what, instead, check, level)

    def scopes(self, fault: Fault) -> Iterator[Scope]:
        """Yield the card's own grades, then those of each override and picture."""
        card, given, on = fault.evidence, fault.given, fault.exists_when
        yield Scope("", (), card, given, card, given, (on,))
        for key, pictures in (("overrides", fault.overrides), ("pictures", fault.pictures)):
            for number, picture in enumerate(pictures):
                own = picture.evidence
                kept = tuple(e for e in card if not tests_of((e,)) & tests_of(own))
                yield Scope(
                    name=picture.name or f"override {number + 1}",
                    steps=(key, number),
                    evidence=own,
                    given=picture.given,
                    all_evidence=(*own, *kept),
                    all_given=(*picture.given, *given),
                    on=(on, picture.when),
                )


def make_rule_base(base: ReadBase) -> RuleBase:
    """Build the model of files that have no problem of form or names."""
    knowledge = build_knowledge((file.kind, file.data) for file in base.files)
    return RuleBase(base.files, collect_definitions(base.files), knowledge)


def tests_of(evidence: tuple[Evidence, ...]) -> frozenset[str]:
    """The tests that pieces of evidence name."""
    return frozenset(finding.test for item in evidence for finding in item.findings)


def evidence_steps(evidence: tuple[Evidence, ...], number: int) -> Steps:
    """The steps from a scope to the piece of evidence that is the `number`th in its order."""
    grade = evidence[number].grade
    before = sum(1 for item in evidence[:number] if item.grade == grade)
    return ("evidence", grade, before)


def _place(definition: Definition, steps: Steps) -> tuple[int, int]:
    """Line and column of the deepest value on the way; of a key's value, the key itself."""
    node: Located = definition.node
    line, column = definition.at.line, definition.at.column
    for step in steps:
        if isinstance(node, LocatedMapping) and isinstance(step, str) and step in node.entries:
            entry = node.entries[step]
            node, line, column = entry.value, entry.line, entry.column
            continue
        inner = value_at(node, step) if isinstance(node, LocatedList) else None
        if inner is None:
            break
        node, line, column = inner, inner.line, inner.column
    return line, column
