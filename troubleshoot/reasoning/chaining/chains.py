"""Procedure rules and hazards compiled into flat rules: a few atoms together conclude another.

An atom is a word such as `seen:superheat:high`, true at a circuit. The chaining engine knows only
atoms; the condition trees of the rule files (any, at-least, not) become helper rules, one a
branch, so that each flat rule is a plain "all of these". `not` means answered no: it becomes atoms
that are only true once the question has been answered otherwise.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Condition, Finding, Hazard, Knowledge, Trigger


@frozen
class FlatRule:
    """All atoms of `needs`, at one circuit, conclude `concludes`. `of` says whose rule it is."""

    of: str
    needs: tuple[str, ...]
    concludes: str


def seen(test: str, outcome: str) -> str:
    return f"seen:{test}:{outcome}"


def unseen(test: str, outcome: str) -> str:
    """Answered, and this outcome was not it."""
    return f"unseen:{test}:{outcome}"


def possible(test: str, outcome: str) -> str:
    """Seen, or possible within the meter's accuracy, valid or not: what hazards look at."""
    return f"possible:{test}:{outcome}"


def equipment(fact: str, word: str) -> str:
    return f"equipment:{fact}:{word}"


def state(name: str, holds: bool) -> str:
    return f"state:{name}:{'holds' if holds else 'fails'}"


def derived(name: str) -> str:
    return f"derived:{name}"


def complaint(name: str) -> str:
    return f"complaint:{name}"


def likely(fault: str) -> str:
    return f"likely:{fault}"


def procedure(name: str) -> str:
    return f"procedure:{name}"


def hazard(name: str, trigger: int = 0) -> str:
    """A hazard called up by one of its triggers, by number: each stands on its own."""
    return f"hazard:{name}:{trigger}"


def compile_chains(knowledge: Knowledge) -> tuple[FlatRule, ...]:
    """Every chain rule of the base, in file order."""
    compiler = _Compiler(knowledge)
    for rule in knowledge.procedures.values():
        for needs in compiler.branches(rule.id, rule.when, positive=True):
            compiler.add(rule.id, needs, procedure(rule.id))
        if rule.derives is not None:
            compiler.add(rule.id, (procedure(rule.id),), derived(rule.derives))
    for each in knowledge.hazards.values():
        for trigger, needs in _hazard_needs(each):
            compiler.add(each.id, needs, hazard(each.id, trigger))
    return tuple(dict.fromkeys(compiler.rules))


class _Compiler:
    """Turns condition trees into flat rules, naming a helper atom for each inner branch."""

    def __init__(self, knowledge: Knowledge) -> None:
        self.knowledge = knowledge
        self.rules: list[FlatRule] = []
        self._helpers = itertools.count()

    def add(self, of: str, needs: tuple[str, ...], concludes: str) -> None:
        self.rules.append(FlatRule(of, tuple(dict.fromkeys(needs)), concludes))

    def branches(self, of: str, condition: Condition, positive: bool) -> Iterator[tuple[str, ...]]:
        """The alternatives, each a set of atoms, any one of which makes the condition true."""
        op, parts = condition.op, condition.parts
        if op == "not":
            yield from self.branches(of, parts[0], not positive)
            return
        needed = {"all": len(parts), "any": 1, "at-least": condition.count}.get(op)
        if needed is None:
            yield from self._leaf(condition, positive)
            return
        if not positive:
            needed = len(parts) - needed + 1
        atoms = [self._as_atom(of, part, positive) for part in parts]
        yield from itertools.combinations(atoms, needed)

    def _as_atom(self, of: str, condition: Condition, positive: bool) -> str:
        """One atom that is true exactly when the condition is; a helper where it has branches."""
        ways = list(self.branches(of, condition, positive))
        if len(ways) == 1 and len(ways[0]) == 1:
            return ways[0][0]
        helper = f"helper:{of}:{next(self._helpers)}"
        for needs in ways:
            self.add(of, needs, helper)
        return helper

    def _leaf(self, condition: Condition, positive: bool) -> Iterator[tuple[str, ...]]:
        if condition.op == "finding" and condition.finding is not None:
            yield from self._finding(condition.finding, positive)
        elif condition.op == "fact":
            values = self.knowledge.facts[condition.name].values
            for word in values:
                if (word in condition.words) == positive:
                    yield (equipment(condition.name, word),)
        elif condition.op == "state":
            yield (state(condition.name, positive),)
        elif positive:
            yield (derived(condition.name),)

    def _finding(self, finding: Finding, positive: bool) -> Iterator[tuple[str, ...]]:
        if positive:
            for outcome in finding.outcomes:
                yield (seen(finding.test, outcome),)
        else:
            yield tuple(unseen(finding.test, outcome) for outcome in finding.outcomes)


def _hazard_needs(each: Hazard) -> Iterator[tuple[int, tuple[str, ...]]]:
    """The alternatives that call a hazard up: by finding, complaint or likely fault.

    Triggers by test, work state or profile are not chained: they belong to the step about to be
    shown and are looked up there.
    """
    for number, trigger in enumerate(each.triggers):
        if not belongs_to_step(trigger):
            for needs in _trigger_needs(trigger):
                yield number, needs


def belongs_to_step(trigger: Trigger) -> bool:
    """Whether a trigger speaks of the step about to be done rather than of what was found."""
    of_step = (trigger.test, trigger.work_state, trigger.exposes, trigger.profile)
    return any(part is not None for part in of_step)


def _trigger_needs(trigger: Trigger) -> Iterable[tuple[str, ...]]:
    found = seen if trigger.as_taken else possible
    choices: list[tuple[str, ...]] = [
        tuple(found(f.test, o) for o in f.outcomes) for f in trigger.findings
    ]
    choices += [
        tuple(equipment(fact, word) for word in words) for fact, words in trigger.equipment.items()
    ]
    if trigger.complaint is not None:
        choices.append((complaint(trigger.complaint),))
    if trigger.fault is not None:
        choices.append((likely(trigger.fault),))
    return itertools.product(*choices)
