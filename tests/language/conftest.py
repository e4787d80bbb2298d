"""A catalogue in capitals, as a file that the program is started with."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.language.gathered import gathered
from tests.language.upper import in_capitals
from troubleshoot.cli.door import CATALOGUE_VARIABLE
from troubleshoot.knowledge.load import shipped_folder
from troubleshoot.language.catalogue import Catalogue
from troubleshoot.language.catalogue_file import Entry, catalogue_text


@pytest.fixture(scope="session")
def texts() -> tuple[Entry, ...]:
    """Every text that can leave the program with the shipped rules."""
    return gathered([shipped_folder()])


@pytest.fixture(scope="session")
def capitals_file(texts: tuple[Entry, ...], tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("language") / "capitals.po"
    path.write_text(catalogue_text(in_capitals(texts)), "utf-8")
    return path


@pytest.fixture(scope="session")
def capitals(texts: tuple[Entry, ...]) -> Catalogue:
    return Catalogue(in_capitals(texts))


@pytest.fixture
def in_the_language(capitals_file: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Has the program speak in capitals."""
    monkeypatch.setenv(CATALOGUE_VARIABLE, str(capitals_file))
