"""The JSON Schema of rule files, held to the JSON Schema 2020-12 standard's own words."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.knowledge.rule_data import data_for
from tests.schema_reader import KNOWN, fits, misshapen, words_of
from troubleshoot.knowledge.forms import FORMS
from troubleshoot.knowledge.layout import kind_of
from troubleshoot.knowledge.load import load_rules, shipped_folder
from troubleshoot.knowledge.located import read_located
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.nodes import plain
from troubleshoot.knowledge.schema import json_schema


def test_schemas_use_only_words_that_this_reader_knows() -> None:
    for kind in FORMS:
        assert words_of(json_schema(kind)) <= KNOWN


def test_every_word_of_a_schema_says_what_the_standard_lets_it(shipped: Knowledge) -> None:
    for kind in FORMS:
        assert list(misshapen(json_schema(kind, shipped))) == []


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
    complaint = {"id": "a", "says": "b", "brought-by": {"often": ["no-such-fault"]}}
    assert not fits(schema, {"format": 1, "complaints": [complaint]}, schema)


def test_schemas_are_json_and_say_what_each_key_means() -> None:
    for kind in FORMS:
        schema = json.loads(json.dumps(json_schema(kind)))
        assert schema["title"] == kind
        assert all(each["description"] for each in schema["properties"].values())
