"""Output that people read, kept on file: a change of it is seen, and read, before it lands.

Write the files anew with UPDATE_STORIES=1 in front of pytest; then read the difference.
"""

from __future__ import annotations

import os
from pathlib import Path

HERE = Path(__file__).parent / "stories"


def golden(name: str, text: str) -> None:
    """Compare with the text on file, or write it when asked to."""
    path = HERE / f"{name}.txt"
    if os.environ.get("UPDATE_STORIES"):
        path.write_text(text, "utf-8")
    assert text == path.read_text("utf-8"), f"{path} differs; read it, then UPDATE_STORIES=1"
