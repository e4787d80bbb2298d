"""The invented site that ships: made by its script, and put into an empty folder by one command."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

pytest.importorskip("scipy")

from tests.bench import make_demo_site


def test_the_script_makes_the_same_site_again(tmp_path: Path) -> None:
    make_demo_site.main(tmp_path)
    for name in ("units.csv", "readings.csv", "refrigerant.csv"):
        assert (tmp_path / name).read_bytes() == (make_demo_site.FOLDER / name).read_bytes()


def test_the_site_is_not_put_among_real_units(
    command: Callable[..., tuple[int, str, str]], tmp_path: Path
) -> None:
    (tmp_path / "data" / "visits").mkdir(parents=True)
    (tmp_path / "data" / "visits" / "2026-11-25-1.journal").write_text("x")
    code, out, err = command("units", "demo")
    assert (code, out) == (2, "") and "name an empty folder" in err
