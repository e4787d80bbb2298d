"""A small reader of JSON Schema, which stands in for a whole validator.

The standard: "JSON Schema: A Media Type for Describing JSON Documents", draft 2020-12, and its
validation vocabulary. It knows the words that our schemas use, and KNOWN lists them.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterator, Mapping
from typing import Any

TYPES: Mapping[str, Any] = {
    "object": dict, "array": list, "string": str, "boolean": bool, "number": (int, float),
    "integer": int,
}  # fmt: skip
ANNOTATIONS = {"$schema", "$defs", "title", "description", "examples"}
STEERING = {"if", "then", "else", "additionalProperties", "propertyNames"}
KNOWN = ANNOTATIONS | STEERING | {
    "$ref", "type", "enum", "const", "anyOf", "minLength", "maxLength", "pattern", "minimum",
    "maximum", "minItems", "maxItems", "items", "required", "minProperties", "maxProperties",
    "properties",
}  # fmt: skip


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


def misshapen(schema: Any) -> Iterator[str]:
    """Words of a schema, and of all schemas in it, that do not say what the standard lets them."""
    for inner in _schemas_in(schema):
        for word, said in inner.items():
            if not _SAYS.get(word, lambda said: True)(said):
                yield f"{word}: {said!r}"


def _schemas_in(schema: Mapping[str, Any]) -> Iterator[Mapping[str, Any]]:
    yield schema
    for word, inner in schema.items():
        if word in ("properties", "$defs"):
            nested = list(inner.values())
        elif word in STEERING | {"items"} and not isinstance(inner, bool):
            nested = [inner]
        else:
            nested = inner if word == "anyOf" else []
        for each in nested:
            yield from _schemas_in(each)


def _is_count(said: Any) -> bool:
    return isinstance(said, int) and not isinstance(said, bool) and said >= 0


def _is_list_of_all_different(said: Any) -> bool:
    return isinstance(said, list) and len({json.dumps(each) for each in said}) == len(said)


_SAYS: Mapping[str, Callable[[Any], bool]] = {
    "type": lambda said: said in TYPES,
    "enum": lambda said: bool(said) and _is_list_of_all_different(said),
    "required": lambda said: (
        _is_list_of_all_different(said) and all(isinstance(key, str) for key in said)
    ),
    "anyOf": lambda said: isinstance(said, list) and bool(said),
    "pattern": lambda said: bool(re.compile(said)),
    "minimum": lambda said: isinstance(said, int | float),
    "maximum": lambda said: isinstance(said, int | float),
    **dict.fromkeys(
        ("minLength", "maxLength", "minItems", "maxItems", "minProperties", "maxProperties"),
        _is_count,
    ),
}
"""What a word may say, by the validation vocabulary (sections 6.1 to 6.5)."""
