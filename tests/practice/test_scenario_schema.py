"""The JSON Schema of scenario files: every shipped one passes it, what is mistyped fails it."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from typing import Any

import pytest

from tests.schema_reader import KNOWN, fits, misshapen, words_of
from troubleshoot.knowledge.located import read_located
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.nodes import plain
from troubleshoot.knowledge.schema import schema_of
from troubleshoot.practice.form import SCENARIO_FILE
from troubleshoot.practice.loading import scenario_paths
from troubleshoot.practice.starting import starting_scenario

GOOD = starting_scenario("tea-rooms.yaml")


@pytest.fixture(scope="module")
def schema(shipped: Knowledge) -> Mapping[str, Any]:
    return schema_of(SCENARIO_FILE, "scenario", shipped)


def data_of(text: str) -> Any:
    return plain(read_located(text, "case.yaml"))


def test_the_command_prints_the_schema(
    schema: Mapping[str, Any], command: Callable[..., tuple[int, str, str]]
) -> None:
    code, out, err = command("practise", "schema")
    assert (code, err) == (0, "")
    assert json.loads(out) == schema


def test_the_schema_says_what_the_standard_lets_it(schema: Mapping[str, Any]) -> None:
    assert words_of(schema) <= KNOWN
    assert list(misshapen(schema)) == []
    assert all(each["description"] for each in schema["properties"].values())


def test_every_shipped_scenario_and_the_one_to_start_from_fit(schema: Mapping[str, Any]) -> None:
    for path in scenario_paths().values():
        assert fits(schema, data_of(path.read_text("utf-8")), schema), path
    assert fits(schema, data_of(GOOD), schema)


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("format: 1", "format: 2"),
        ("scenario: tea-rooms", "scenario: Tea rooms"),
        ("subsystem: filters-coil-duct", "subsystem: filters"),
        ("difficulty: 1", "difficulty: 4"),
        ("difficulty: 1", "difficulty: easy"),
        ("complaint: weak-airflow", "complaint: weak-airflo"),
        ("metering: txv", "meetering: txv"),
        ("test: air-filters", "test: air-filtres"),
        ("test: filter-pressure-drop, text: 0.9 in wc", "test: filter-pressure-drop"),
        ("text: 104 psig", "texte: 104 psig"),
        ("text: 104 psig", "text: 104 psig, valid: perhaps"),
        ("quantity: superheat", "quantity: superheats"),
        ("    - {fault: filters-loaded}", "    - {fault: filters-laden}"),
        ("    - {fault: filters-loaded}", "    - filters-loaded"),
        ("  repair: New filters of the right size.\n", ""),
        ("teaches: ", "teeches: "),
    ],
)
def test_a_usual_mistake_does_not_fit(schema: Mapping[str, Any], old: str, new: str) -> None:
    assert old in GOOD
    assert not fits(schema, data_of(GOOD.replace(old, new, 1)), schema)
