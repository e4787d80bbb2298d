"""The JSON Schema of rule files, held to the JSON Schema 2020-12 standard's own words.

The standard: "JSON Schema: A Media Type for Describing JSON Documents", draft 2020-12, and its
validation vocabulary. A small reader of the words that we use stands in for a whole validator.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.knowledge.rule_data import data_for
from troubleshoot.knowledge.forms import FORMS
from troubleshoot.knowledge.layout import kind_of
from troubleshoot.knowledge.load import load_rules, shipped_folder
from troubleshoot.knowledge.located import read_located
from troubleshoot.knowledge.nodes import plain
from troubleshoot.knowledge.schema import json_schema

TYPES: Mapping[str, Any] = {
    "object": dict, "array": list, "string": str, "boolean": bool, "number": (int, float),
    "integer": int,
}  # fmt: skip
ANNOTATIONS = {"$schema", "$defs", "title", "description", "examples"}
STEERING = {"if", "then", "else", "additionalProperties", "propertyNames"}


def fits(schema: Mapping[str, Any], value: Any, root: Mapping[str, Any]) -> bool:
    """Whether a value is valid, for the words of JSON Schema that our schemas use."""
    if "$ref" in schema:
        return fits(root["$defs"][schema["$ref"].removeprefix("#/$defs/")], value, root)
    if "if" in schema:
        branch = "then" if fits(schema["if"], value, root) else "else"
        if not fits(schema[branch], value, root):
            return False
    return all(
        _keyword_holds(word, schema, value, root)
        for word in schema
        if word not in ANNOTATIONS | {"if", "then", "else"}
    )


def _keyword_holds(word: str, schema: Mapping[str, Any], value: Any, root: Any) -> bool:
    said = schema[word]
    if word == "type":
        is_truth = isinstance(value, bool)
        return isinstance(value, TYPES[said]) and is_truth == (said == "boolean")
    if word == "enum":
        return value in said
    if word == "const":
        return bool(value == said)
    if word == "anyOf":
        return any(fits(option, value, root) for option in said)
    if isinstance(value, str):
        return {
            "minLength": lambda: len(value) >= said,
            "maxLength": lambda: len(value) <= said,
            "pattern": lambda: re.search(said, value) is not None,
        }.get(word, lambda: True)()
    if isinstance(value, int | float):
        return {"minimum": lambda: value >= said, "maximum": lambda: value <= said}.get(
            word, lambda: True
        )()
    if isinstance(value, list):
        return {
            "minItems": lambda: len(value) >= said,
            "maxItems": lambda: len(value) <= said,
            "items": lambda: all(fits(said, item, root) for item in value),
        }.get(word, lambda: True)()
    if isinstance(value, dict):
        return _mapping_keyword_holds(word, schema, value, root)
    return True


def _mapping_keyword_holds(
    word: str, schema: Mapping[str, Any], value: dict[str, Any], root: Any
) -> bool:
    said = schema[word]
    properties = schema.get("properties", {})
    others = {key: each for key, each in value.items() if key not in properties}
    return {
        "required": lambda: all(key in value for key in said),
        "minProperties": lambda: len(value) >= said,
        "maxProperties": lambda: len(value) <= said,
        "propertyNames": lambda: all(fits(said, key, root) for key in value),
        "properties": lambda: all(
            fits(said[key], value[key], root) for key in said if key in value
        ),
        "additionalProperties": lambda: (
            not others if said is False else all(fits(said, each, root) for each in others.values())
        ),
    }[word]()


def words_of(schema: Any) -> set[str]:
    """The keywords of a schema and of all schemas in it."""
    if isinstance(schema, list):
        return set().union(*(words_of(each) for each in schema)) if schema else set()
    if not isinstance(schema, Mapping):
        return set()
    found: set[str] = set(schema)
    for word, inner in schema.items():
        if word in ("properties", "$defs"):
            for each in inner.values():
                found |= words_of(each)
        elif word in STEERING | {"items", "anyOf"}:
            found |= words_of(inner)
    return found


def test_schemas_use_only_words_that_this_reader_knows() -> None:
    known = ANNOTATIONS | STEERING | {
        "$ref", "type", "enum", "const", "anyOf", "minLength", "maxLength", "pattern", "minimum",
        "maximum", "minItems", "maxItems", "items", "required", "minProperties", "maxProperties",
        "properties",
    }  # fmt: skip
    for kind in FORMS:
        assert words_of(json_schema(kind)) <= known


@pytest.mark.parametrize("kind", sorted(FORMS))
@settings(
    max_examples=20,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)
@given(data=st.data())
def test_what_fits_the_form_fits_the_schema(kind: str, data: st.DataObject) -> None:
    schema = json_schema(kind)
    assert fits(schema, data.draw(data_for(FORMS[kind])), schema)


@pytest.mark.parametrize(
    ("kind", "text"),
    [
        ("retired", "format: 2"),
        ("retired", "{format: 1, retyred: []}"),
        ("sources", "{format: 1, sources: [{id: Not an id, published: x}]}"),
        ("procedures", "{format: 1, procedures: [{id: a, when: {x: y}, then: {derives: b}, "
         "reason: c}]}"),
        ("procedures", "{format: 1, procedures: [{id: a, when: {all: [{x: y}]}, then: {derives: "
         "b}, reason: c}]}"),
        ("procedures", "{format: 1, procedures: [{id: a, when: {state: b}, then: {}, reason: c}]}"),
        ("limits", "{format: 1, limits: [{id: a, applies-to: b, source: c}]}"),
        ("hazards", "{format: 1, hazards: [{id: a, signal: RED, what-to-do: b}]}"),
        ("round", "{format: 1, points: [{id: a, number: 0, point: b, season: fall}]}"),
    ],
)  # fmt: skip
def test_what_does_not_fit_the_form_does_not_fit_the_schema(kind: str, text: str) -> None:
    schema = json_schema(kind)
    assert not fits(schema, plain(read_located(text, "a.yaml")), schema)


def test_the_shipped_rules_fit_the_schemas_that_list_their_names(tmp_path: Path) -> None:
    folder = shipped_folder()
    knowledge = load_rules(folder, cache=tmp_path)
    schemas = {kind: json_schema(kind, knowledge) for kind in FORMS}
    for path in folder.rglob("*.yaml"):
        schema = schemas[kind_of(path.relative_to(folder).as_posix()) or ""]
        assert fits(schema, plain(read_located(path.read_bytes(), str(path))), schema), path


def test_with_a_rule_base_an_unknown_name_does_not_fit(tmp_path: Path) -> None:
    schema = json_schema("complaints", load_rules(shipped_folder(), cache=tmp_path))
    complaint = {"id": "a", "says": "b", "faults": ["no-such-fault"]}
    assert not fits(schema, {"format": 1, "complaints": [complaint]}, schema)


def test_schemas_are_json_and_say_what_each_key_means() -> None:
    for kind in FORMS:
        schema = json.loads(json.dumps(json_schema(kind)))
        assert schema["title"] == kind
        assert all(each["description"] for each in schema["properties"].values())
