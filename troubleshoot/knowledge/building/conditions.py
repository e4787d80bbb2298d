"""Plain data -> the pieces every rule is made of: findings, bounds, evidence, conditions."""

from __future__ import annotations

from typing import Any

from troubleshoot.knowledge.model import (
    Bound,
    Condition,
    Evidence,
    FactsNeeded,
    Finding,
    Given,
    LimitLine,
    Signature,
)


def build_source(data: Any) -> str:
    return "; ".join(data.get("source", ()))


def build_signatures(data: Any) -> tuple[Signature, ...]:
    return tuple(
        Signature(tuple(item["drops"]), item["by"], item["on"], item["why"])
        for item in data.get("signed", ())
    )


def build_facts(data: Any) -> FactsNeeded:
    return {fact: tuple(words) for fact, words in data.items()} if data else {}


def build_findings(data: Any) -> tuple[Finding, ...]:
    return tuple(Finding(test, tuple(outcomes)) for test, outcomes in data.items())


def build_bound(data: Any) -> Bound:
    low, high = data.get("between", (None, None))
    return Bound(
        quantity=data["quantity"],
        relative_to=data.get("relative-to"),
        compared_as=data.get("as", "value"),
        above=data.get("above"),
        at_least=data.get("at-least", low),
        below=data.get("below"),
        at_most=data.get("at-most", high),
        reads=data.get("reads"),
        when=build_facts(data.get("when")),
    )


def build_limit_line(data: Any) -> LimitLine:
    """A line of one bound keeps its `when` on the line, where it decides the whole line."""
    if "all" in data:
        bounds = tuple(build_bound(bound) for bound in data["all"])
        return LimitLine(bounds, build_facts(data.get("when")))
    alone = {key: value for key, value in data.items() if key != "when"}
    return LimitLine((build_bound(alone),), build_facts(data.get("when")))


def build_evidence(data: Any) -> tuple[Evidence, ...]:
    """Evidence in the order of the card: grade by grade as written."""
    return tuple(Evidence(grade, _any_of(item)) for grade, items in data.items() for item in items)


def _any_of(item: Any) -> tuple[Finding, ...]:
    if "any-of" not in item:
        return build_findings(item)
    return tuple(finding for each in item["any-of"] for finding in build_findings(each))


def build_given(data: Any) -> tuple[Given, ...]:
    return tuple(
        Given(
            grade=item["grade"],
            finding=build_findings(item["finding"])[0],
            given=tuple(finding for each in item["given"] for finding in build_findings(each)),
        )
        for item in data
    )


def build_condition(data: Any) -> Condition:
    """Build a condition tree from a mapping with exactly one key.

    A fact leaf with several facts means all of them, so it becomes `all` of single leaves.
    """
    ((op, value),) = data.items()
    if op in ("all", "any"):
        return Condition(op, parts=tuple(build_condition(part) for part in value))
    if op == "at-least":
        parts = tuple(build_condition(part) for part in value["of"])
        return Condition(op, parts=parts, count=value["count"])
    if op == "not":
        return Condition(op, parts=(build_condition(value),))
    if op == "finding":
        return Condition(op, finding=build_findings(value)[0])
    if op == "fact":
        leaves = tuple(
            Condition(op, name=name, words=tuple(words)) for name, words in value.items()
        )
        return leaves[0] if len(leaves) == 1 else Condition("all", parts=leaves)
    return Condition(op, name=value)
