"""An example that cannot be run as written.

What: a reading gives neither an outcome nor a text, or a text for a test that reads no number; a
fact of the unit has a word it cannot have; a chance is asked for (`at-least`) where the fault must
not come first.
Why: an example is a test of the card; it must be read the way a person's answers are.
Fix: give each reading an outcome or what was typed; write facts with the words of
equipment.yaml, or a count where the fact counts something.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Final

from troubleshoot.knowledge.model import Example, Knowledge
from troubleshoot.knowledge.problems import Problem, did_you_mean
from troubleshoot.knowledge.rule_base import RuleBase, Steps
from troubleshoot.outside.numbers import whole_number

ID: Final = "example-readings"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every part of an example that cannot be read."""
    for fault in base.knowledge.faults.values():
        for number, example in enumerate(fault.examples):
            for steps, what, instead in _wrong(base.knowledge, example):
                steps = ("examples", number, *steps)
                yield base.problem(ID, ("fault", fault.id), steps, what, instead)


def _wrong(knowledge: Knowledge, example: Example) -> Iterator[tuple[Steps, str, str]]:
    if example.at_least is not None and not example.names_it:
        what = "a chance is asked for where the fault must not come first"
        yield ("at-least",), what, "leave at-least out, or write names-it: true"
    for nth, reading in enumerate(example.readings):
        for what, instead in _wrong_reading(knowledge, reading):
            yield ("readings", nth), what, instead
    for key, value in example.unit.items():
        fact = knowledge.facts.get(key)
        if fact is None or str(value) in fact.values:
            continue
        if not (fact.counts and whole_number(str(value)) is not None):
            what = f"{key} cannot be {value}"
            yield ("unit", key), what, did_you_mean(str(value), fact.values)


def _wrong_reading(
    knowledge: Knowledge, reading: Mapping[str, object]
) -> Iterator[tuple[str, str]]:
    test = knowledge.tests[str(reading["test"])]
    if "outcome" not in reading and "text" not in reading:
        yield f"the reading of {test.id} says nothing", "give an outcome, or the text typed"
    if "text" in reading and not test.reads:
        yield f"{test.id} reads no number", "give its outcome"
    outcomes = reading.get("outcome", ())
    if isinstance(outcomes, list) and len(outcomes) > 1 and test.choose == "one":
        yield f"{test.id} has one outcome at a time", "give one outcome"
