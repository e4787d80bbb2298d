"""Every field that authors fill in has a reader at run time, outside the checks.

A field that nothing reads is a promise to its author that nobody keeps: cautions that are never
shown, an order that is never followed. The sources are read as syntax. A field's name that no other
class has counts wherever it is read; one that others share counts only on something that is called
as objects of its class are called here (`hazard.source`, `fired.hazard.source`,
`knowledge.hazards[name].source`).
"""

from __future__ import annotations

import ast
from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass
from functools import cache
from pathlib import Path

import pytest

from troubleshoot.knowledge import model

PACKAGE = Path(model.__file__).parent.parent.parent
WRITTEN = {
    name: tuple(field.name for field in fields(thing))
    for name in model.__all__
    if is_dataclass(thing := getattr(model, name))
}

CALLED: Mapping[str, frozenset[str]] = {
    name: frozenset(words.split())
    for name, words in {
        "Ban": "ban",
        "Bound": "bound b",
        "CardSignature": "signed",
        "Complaint": "complaint call complaints",
        "Condition": "condition",
        "Day": "day",
        "Derivation": "derivation way",
        "DriftAlarm": "alarm",
        "EquipmentFact": "fact",
        "Evidence": "item",
        "Example": "example",
        "Fault": "fault faults",
        "Finding": "finding f",
        "Given": "item",
        "Hazard": "hazard hazards",
        "HazardKind": "kind",
        "Implication": "implication",
        "Knowledge": "knowledge",
        "LimitLine": "line",
        "NamedLimit": "limit",
        "Outcome": "outcome o",
        "Override": "picture layer",
        "Picture": "picture layer",
        "Pack": "pack",
        "PlateValue": "plate p",
        "Procedure": "procedure rule procedures",
        "Proof": "proof",
        "Quantity": "quantity quantities",
        "Read": "one reads",
        "Relation": "relation",
        "Repair": "repair",
        "RoundPoint": "point p",
        "SaidAlong": "row",
        "ShortWords": "short own",
        "SignOff": "signed",
        "Signature": "signature",
        "SoundReading": "reading sound",
        "SoundWay": "way",
        "Stop": "stop",
        "Subsystem": "subsystem",
        "Test": "test tests",
        "Trigger": "trigger",
        "TypicalUnit": "typical drawn_on unit",
        "Void": "void",
    }.items()
}
"""How objects of each class are called where they are read. `item` is both evidence and a given
statement: they are read side by side, and share only the grade, which both loops read."""

FOR_CHECKS: Mapping[tuple[str, str], str] = {
    ("Relation", "source"): "where its figure comes from: a check asks for it",
    ("SoundReading", "none_because"): "a reason that stands in the place of a number",
    ("CardSignature", "card"): "what was signed: `changed_since_signed` compares it",
    ("SignOff", "rules"): "what was gone over: `Pack.is_as_signed` compares it",
    ("Knowledge", "signed"): "who answers for what was retired: read beside an earlier version",
}
"""What only the checks of the rules read, each with its reason."""


ALWAYS_LOADED = frozenset({"bounds.py"})
"""What of knowledge/ reckons while a visit runs."""


def reads(source: str) -> Iterator[tuple[str, str]]:
    """(what it is read of, attribute) for every attribute that a module reads."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Attribute) and isinstance(node.ctx, ast.Load):
            yield called(node.value), node.attr


def called(node: ast.expr) -> str:
    """The last name of an expression: hazard of `fired.hazard`, tests of `knowledge.tests[x]`."""
    if isinstance(node, ast.Attribute):
        return node.attr
    if isinstance(node, ast.Name):
        return node.id
    if isinstance(node, ast.Subscript):
        return called(node.value)
    return ""


def names_elsewhere(source: str) -> Iterator[str]:
    """Attributes that the classes of a module have themselves."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.ClassDef):
            for part in ast.walk(node):
                if isinstance(part, ast.FunctionDef):
                    yield part.name
                elif isinstance(part, ast.AnnAssign) and isinstance(part.target, ast.Name):
                    yield part.target.id
                elif isinstance(part, ast.Attribute) and isinstance(part.ctx, ast.Store):
                    yield part.attr


def unread(
    written: Mapping[str, tuple[str, ...]], sources: Mapping[str, str]
) -> set[tuple[str, str]]:
    """(class, field) that nothing reads. An id is the key that its entry is found by."""
    taken = {read for source in sources.values() for read in reads(source)}
    owners = [name for own in written.values() for name in own]
    shared = {name for source in sources.values() for name in names_elsewhere(source)}
    return {
        (kind, name)
        for kind, own in written.items()
        for name in own
        if name != "id"
        and not any(
            attribute == name
            and ((owners.count(name) == 1 and name not in shared) or of in CALLED[kind])
            for of, attribute in taken
        )
    }


def runtime_sources() -> dict[str, str]:
    return {
        str(path.relative_to(PACKAGE)): path.read_text("utf-8")
        for path in PACKAGE.rglob("*.py")
        if path.relative_to(PACKAGE).parts[0] != "knowledge" or path.name in ALWAYS_LOADED
    }


@cache
def unread_today() -> frozenset[tuple[str, str]]:
    """(class, field) of the model that nothing in the program reads; a second of work."""
    return frozenset(unread(WRITTEN, runtime_sources()))


def test_every_class_of_the_model_is_looked_at() -> None:
    assert set(CALLED) == set(WRITTEN)


def test_every_field_of_the_model_has_a_reader() -> None:
    assert unread_today() - set(FOR_CHECKS) == set()


@pytest.mark.parametrize("field", FOR_CHECKS)
def test_no_excuse_outlives_its_reason(field: tuple[str, str]) -> None:
    assert field in unread_today(), f"{field} is read now: strike the excuse"


@pytest.mark.parametrize(
    ("source", "found"),
    [
        ("def f(hazard): return hazard.stop", set()),
        ("def f(fired): return fired.hazard.stop", set()),
        ("def f(knowledge): return knowledge.hazards['x'].stop", set()),
        ("def f(truth): return truth.stop", {("Hazard", "stop")}),
        ("def f(hazard): hazard.stop = 1", {("Hazard", "stop")}),
        ("def f(x): return x.what_to_do", {("Hazard", "stop")}),
        ("", {("Hazard", "stop")}),
    ],
)
def test_a_shared_name_counts_only_on_what_is_called_like_its_class(
    source: str, found: set[tuple[str, str]]
) -> None:
    other = "class Truth:\n    stop: str"
    written = {"Hazard": ("id", "stop")}
    assert unread(written, {"a.py": source, "b.py": other}) == found


def test_a_name_of_its_own_counts_wherever_it_is_read() -> None:
    written = {"Hazard": ("what_to_do",), "Test": ("how",)}
    assert unread(written, {"a.py": "def f(x, y): return x.what_to_do, y.how"}) == set()
    assert unread(written, {"a.py": "def f(x): return x.how"}) == {("Hazard", "what_to_do")}
