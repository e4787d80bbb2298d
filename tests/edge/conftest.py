"""What the tests at the edge share: a folder to keep visits in, and a clock to turn."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock


@pytest.fixture
def clock(tmp_path: Path) -> Clock:
    return Clock(tmp_path)


@pytest.fixture
def data(tmp_path: Path) -> Path:
    return tmp_path / "data"
