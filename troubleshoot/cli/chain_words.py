"""The chain rules that the engine runs, as sentences: from a reading to a caution, step by step."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.knowledge.spoken import spoken
from troubleshoot.reasoning.chaining.chains import FlatRule, compile_chains

MOST_RULES: Final = 24
"""More alternatives of one entry than anybody reads; the rest is counted."""


def chain_of(knowledge: Knowledge, name: str) -> Iterator[str]:
    """What calls an entry of the rules up, and what it calls up: one line a rule."""
    own = [rule for rule in compile_chains(knowledge) if rule.of == name or _needs(rule, name)]
    for rule in own[:MOST_RULES]:
        needs = " and ".join(_said(knowledge, atom) for atom in rule.needs)
        yield f"If {needs}: {_said(knowledge, rule.concludes)}."
    if len(own) > MOST_RULES:
        yield f"and {len(own) - MOST_RULES} rules more."


def _needs(rule: FlatRule, name: str) -> bool:
    """Whether a rule hangs on an entry: a test's reading, a complaint, a likely fault."""
    return any(name == atom.split(":")[1] for atom in rule.needs if not atom.startswith("helper"))


def _said(knowledge: Knowledge, atom: str) -> str:
    kind, name, *rest = atom.split(":")
    word = rest[0] if rest else ""
    if kind in ("seen", "unseen", "possible"):
        return _read(kind, knowledge.tests[name], word)
    if kind == "equipment":
        return f"the unit's {knowledge.spoken(name)} is {knowledge.spoken(word)}"
    if kind == "state":
        return f"the state {name} holds" if word == "holds" else f"the state {name} fails"
    if kind == "complaint":
        return f'the caller says "{knowledge.complaints[name].says}"'
    if kind == "likely":
        return f"{knowledge.faults[name].name} is likely"
    if kind == "hazard":
        hazard = knowledge.hazards[name]
        stops = "" if hazard.stop is None else f", STOP {spoken(hazard.stop.scope)}"
        return f"{hazard.signal}, {hazard.spoken}{stops}"
    if kind == "procedure":
        return f"the rule {name} holds"
    return f"part {rest[0]} of {name}" if rest else name


def _read(kind: str, test: Test, outcome: str) -> str:
    """What a reading is, may be, or is not."""
    if kind == "seen":
        return f'"{test.name}" is {test.spoken(outcome)}'
    if kind == "possible":
        return f'"{test.name}" is or may be {test.spoken(outcome)}'
    return f'"{test.name}" was read and is not {test.spoken(outcome)}'
