"""What the tests at the edge share: a folder to keep visits in, and a clock to turn."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.edge.person import Clock
from tests.edge.starting import nobody_starts_any_more


@pytest.fixture(scope="session", autouse=True)
def _ready() -> Iterator[None]:
    """The program that the first start keeps ready goes with the last test."""
    yield
    nobody_starts_any_more()


@pytest.fixture
def clock(tmp_path: Path) -> Clock:
    return Clock(tmp_path)


@pytest.fixture
def data(tmp_path: Path) -> Path:
    return tmp_path / "data"
