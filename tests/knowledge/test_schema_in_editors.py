"""The JSON Schema of rule files as an editor takes it: by a published validator of the standard.

What stands in for an editor is `jsonschema`, the validator for Python of draft 2020-12. An editor's
own server is run in `test_in_an_editor.py`, where there is one.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from tests.knowledge.small_rules import (
    CAPACITORS,
    ELECTRICAL,
    FILES,
    LOW_CHARGE,
    REFRIGERANT,
    WEAK,
    write_rules,
)
from troubleshoot.knowledge.forms import FORMS
from troubleshoot.knowledge.layout import kind_of
from troubleshoot.knowledge.load import load_rules, shipped_folder
from troubleshoot.knowledge.located import read_located
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.nodes import plain
from troubleshoot.knowledge.schema import json_schema

jsonschema = pytest.importorskip("jsonschema", reason="the extra dev is not installed")

BROKEN = (
    (LOW_CHARGE, "is: cause", "is: because"),
    (LOW_CHARGE, "how-common: common", "how-common: often"),
    (LOW_CHARGE, "fault: low-charge", "fault: Low charge"),
    (LOW_CHARGE, "  often:\n    - superheat: high", "  mostly:\n    - superheat: high"),
    (LOW_CHARGE, "- superheat: normal-txv", "- superheat: normal-tvx"),
    (LOW_CHARGE, "{metering: txv}", "{meterings: txv}"),
    (LOW_CHARGE, "minutes: 180", "minutes: long"),
    (LOW_CHARGE, "minutes: 180", "minutes: -180"),
    (LOW_CHARGE, "part-cost: 250-to-1000", "part-cost: cheap"),
    (LOW_CHARGE, "who: {any: [refrigerant]}", "who: {any: [plumber]}"),
    (LOW_CHARGE, "proof: [{text: Superheat right}]", "proof: [{texts: Superheat right}]"),
    (LOW_CHARGE, "    names-it: true", "    names-it: maybe"),
    (LOW_CHARGE, "  what: Find the leak, mend it, weigh the charge in.\n", ""),
    (LOW_CHARGE, "format: 1", "format: 2"),
    (LOW_CHARGE, "because: not gone over", "status: reviewed by nobody"),
    (WEAK, "look-alikes: [low-charge]", "look-alikes: [low-charges]"),
    (WEAK, "look-alikes: [low-charge]", "look-alike: [low-charge]"),
    (CAPACITORS, "    kind: look", "    kind: glance"),
    (CAPACITORS, "    choose: several", "    choose: some"),
    (CAPACITORS, "    minutes: 1\n", "    minutes: [1]\n"),
    (REFRIGERANT, "area: refrigerant", "areas: refrigerant"),
    (ELECTRICAL, "procedures:", "procedure:"),
)


@cache
def validator(kind: str, knowledge: Knowledge) -> Any:
    schema = json_schema(kind, knowledge)
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


def complaints(kind: str, text: str, knowledge: Knowledge) -> Iterator[str]:
    """What an editor would underline in a file."""
    data = plain(read_located(text, "a file"))
    return (error.message for error in validator(kind, knowledge).iter_errors(data))


@pytest.mark.parametrize("kind", FORMS)
def test_an_editor_underlines_nothing_in_what_is_shipped(kind: str, shipped: Knowledge) -> None:
    folder = shipped_folder()
    for path in sorted(folder.rglob("*.yaml")):
        if kind_of(path.relative_to(folder).as_posix()) == kind:
            assert list(complaints(kind, path.read_text("utf-8"), shipped)) == [], path


@pytest.fixture
def small(tmp_path: Path) -> Knowledge:
    return load_rules(write_rules(tmp_path), cache=tmp_path / "cache")


@pytest.mark.parametrize("change", BROKEN, ids=lambda change: change[2].strip()[:30])
def test_an_editor_underlines_what_is_wrong(change: tuple[str, str, str], small: Knowledge) -> None:
    name, old, new = change
    assert FILES[name].count(old) >= 1
    kind = kind_of(name)
    assert kind is not None and list(complaints(kind, FILES[name], small)) == []
    assert list(complaints(kind, FILES[name].replace(old, new, 1), small))
