"""The forms of files as JSON Schema, from which editors complete and check while typing.

Where the rule base is at hand the schema also lists the names that may stand in each place.
Dialect: JSON Schema 2020-12.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any, Final

from troubleshoot.knowledge.forms import FORMS
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.reading_values import ID, LONGEST_ID, WORD
from troubleshoot.knowledge.shapes import (
    Anything,
    Choice,
    Exactly,
    Facts,
    Findings,
    Later,
    ListOf,
    Name,
    NewId,
    Number,
    OneOrMore,
    Pairs,
    Percent,
    Record,
    Shape,
    Tagged,
    Text,
    Truth,
    Word,
)
from troubleshoot.knowledge.vocabulary import PLAIN_SOURCES

Schema = dict[str, Any]

_DIALECT: Final = "https://json-schema.org/draft/2020-12/schema"


def json_schema(kind: str, knowledge: Knowledge | None = None) -> Schema:
    """Return the JSON Schema of a kind of rule file (a key of FORMS).

    Raises KeyError for a kind that does not exist.
    """
    return schema_of(FORMS[kind], kind, knowledge)


def schema_of(form: Record, title: str, knowledge: Knowledge | None = None) -> Schema:
    """Return the JSON Schema of the files that have a form.

    With `knowledge` the names it defines are listed as the words that may stand where they are
    named, and beside each test its own outcomes.
    """
    writer = _SchemaWriter(
        {} if knowledge is None else names_of(knowledge),
        {} if knowledge is None else outcomes_of(knowledge),
    )
    schema = writer.write(form)
    definitions = {name: writer.write(shape.get()) for name, shape in writer.later.items()}
    definitions |= writer.findings
    return {"$schema": _DIALECT, "title": title, **schema} | (
        {"$defs": definitions} if definitions else {}
    )


def names_of(knowledge: Knowledge) -> Mapping[str, Sequence[str]]:
    """The names that a rule base defines, by what they are names of; sorted."""
    quantities, plates = set(knowledge.quantities), set(knowledge.plate_values)
    facts = set(knowledge.facts)
    derived = {rule.derives for rule in knowledge.procedures.values() if rule.derives}
    names: dict[str, set[str]] = {
        "test": set(knowledge.tests),
        "area": {
            *(test.area for test in knowledge.tests.values()),
            *(word for each in knowledge.subsystems.values() for word in (each.id, *each.areas)),
        },
        "fault": set(knowledge.faults),
        "hazard": set(knowledge.hazards),
        "hazard kind": set(knowledge.hazard_kinds),
        "complaint": set(knowledge.complaints),
        "quantity": quantities,
        "fact": facts,
        "plate value": plates,
        "fact or plate value": facts | plates,
        "reference": quantities | plates,
        "input": quantities | plates | facts,
        "state": set(knowledge.limits),
        "derived finding": derived,
        "subsystem": {
            *knowledge.subsystems,
            *(fault.subsystem for fault in knowledge.faults.values()),
        },
    }
    return {kind: sorted(found) for kind, found in names.items()}


def outcomes_of(knowledge: Knowledge) -> Mapping[str, Sequence[str]]:
    """The outcomes of each test that has some."""
    return {
        test.id: [each.id for each in test.outcomes]
        for test in knowledge.tests.values()
        if test.outcomes
    }


class _SchemaWriter:
    """Turns shapes into schemas; `later` collects shapes that are named before they are made.

    `findings`: what may stand where tests with their outcomes do, named since it is long.
    """

    def __init__(
        self, names: Mapping[str, Sequence[str]], outcomes: Mapping[str, Sequence[str]]
    ) -> None:
        self.later: dict[str, Later] = {}
        self.findings: dict[str, Schema] = {}
        self._names = names
        self._outcomes = outcomes
        self._writers: dict[type, Callable[[Any], Schema]] = {
            Text: lambda shape: {"type": "string", "minLength": 1, "maxLength": shape.longest},
            NewId: lambda shape: _word(f"^(?:{ID.pattern})$"),
            Word: lambda shape: _word(f"^(?:{WORD.pattern})$"),
            Name: self._name,
            Choice: lambda shape: {"enum": list(shape.options)},
            Number: _number,
            Exactly: lambda shape: {"const": shape.number},
            Percent: lambda shape: {"type": "string", "pattern": "^[0-9]{1,2} ?%$"},
            Truth: lambda shape: {"type": "boolean"},
            Anything: lambda shape: {},
            ListOf: self._list,
            OneOrMore: self._one_or_more,
            Pairs: self._pairs,
            Findings: self._findings,
            Facts: self._facts,
            Record: self._record,
            Tagged: self._tagged,
            Later: self._later,
        }

    def write(self, shape: Shape) -> Schema:
        return self._writers[type(shape)](shape)

    def _name(self, shape: Name) -> Schema:
        known = self._names.get(shape.of)
        if known:
            return {"enum": list(known)}
        if shape.of == "source":
            return {"type": "string", "minLength": 1, "examples": list(PLAIN_SOURCES)}
        return {"type": "string", "minLength": 1}

    def _list(self, shape: ListOf) -> Schema:
        schema: Schema = {"type": "array", "items": self.write(shape.item)}
        return schema | {"minItems": shape.least, "maxItems": shape.most}

    def _one_or_more(self, shape: OneOrMore) -> Schema:
        return _one_or_more(self.write(shape.item), shape.most)

    def _pairs(self, shape: Pairs) -> Schema:
        return _mapping(self.write(shape.value), self.write(shape.key), shape.least, shape.most)

    def _findings(self, shape: Findings) -> Schema:
        any_of = OneOrMore(Name("outcome"))
        test = self.write(Name("test"))
        schema = _mapping(self.write(any_of), test, shape.least, shape.most)
        if not self._outcomes:
            return schema
        own = {
            name: _one_or_more({"enum": list(outcomes)}, any_of.most)
            for name, outcomes in self._outcomes.items()
        }
        called = f"findings-{shape.least}-{shape.most}"
        self.findings[called] = {**schema, "properties": own}
        return {"$ref": f"#/$defs/{called}"}

    def _facts(self, shape: Facts) -> Schema:
        return _mapping(self.write(OneOrMore(Word())), self.write(Name("input")), 1, 12)

    def _record(self, shape: Record) -> Schema:
        properties = {}
        for field in shape.fields:
            properties[field.key] = {"description": field.meaning, **self.write(field.shape)}
        schema: Schema = {
            "type": "object",
            "properties": properties,
            "required": [field.key for field in shape.fields if field.required],
            "additionalProperties": False,
        }
        if shape.some_of:
            schema["anyOf"] = [{"required": [key]} for key in shape.some_of]
        return schema

    def _tagged(self, shape: Tagged) -> Schema:
        """A chain of if / then / else on the keys, so that messages speak of one option only."""
        if shape.otherwise is not None:
            schema = self.write(shape.otherwise)
        else:
            schema = {"required": [tag for tag, _ in shape.options][:1]}
        for tag, option in reversed(shape.options):
            schema = {"if": {"required": [tag]}, "then": self.write(option), "else": schema}
        return {"type": "object", **schema}

    def _later(self, shape: Later) -> Schema:
        self.later[shape.name] = shape
        return {"$ref": f"#/$defs/{shape.name}"}


def _word(pattern: str) -> Schema:
    return {"type": "string", "pattern": pattern, "maxLength": LONGEST_ID}


def _one_or_more(item: Schema, most: int) -> Schema:
    """Either of two, and not a condition: what stands behind one is offered by no editor."""
    return {"anyOf": [item, {"type": "array", "items": item, "maxItems": most}]}


def _number(shape: Number) -> Schema:
    schema: Schema = {"type": "integer" if shape.whole else "number"}
    if shape.least is not None:
        schema["minimum"] = shape.least
    if shape.most is not None:
        schema["maximum"] = shape.most
    return schema


def _mapping(value: Schema, key: Schema, least: int, most: int) -> Schema:
    schema: Schema = {"type": "object", "additionalProperties": value, "propertyNames": key}
    return schema | {"minProperties": least, "maxProperties": most}
