"""A person at a terminal whose program speaks another language, and who types in it."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Person
from tests.language.gathered import gathered
from tests.language.screens import left_in_english
from tests.language.upper import in_capitals
from troubleshoot.cli.door import CATALOGUE_VARIABLE
from troubleshoot.knowledge.load import shipped_folder
from troubleshoot.language.catalogue_file import catalogue_text


def test_a_visit_begins_is_left_and_goes_on_in_the_language(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "capitals.po"
    texts = gathered([shipped_folder()])
    path.write_text(catalogue_text(in_capitals(texts)), "utf-8")
    monkeypatch.setenv(CATALOGUE_VARIABLE, str(path))
    with Person(tmp_path / "data") as person:
        person.types("7", "IT DOES NOT COOL", "1", "3")
        said = person.types("Q")
        assert "THE VISIT IS KEPT" in said
        assert person.exit_code == 4
    with Person(tmp_path / "data", "diagnose") as person:
        assert "GO ON WITH" in person.types("Y", "Q") or "KEPT" in person.said
        shown = [line for line in person.said.splitlines() if not line.startswith(">")]
        assert left_in_english(shown) == set()
