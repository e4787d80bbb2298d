"""In a visit, a reading is shown beside what a sound unit of its kind would read now."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.dialogue.read_out import typed_at
from troubleshoot.knowledge.model import Knowledge

AIR = {
    "outdoor-temperature": "95 F",
    "return-air-temperature": "80 F",
    "return-wet-bulb": "67 F",
}


def told(shipped: Knowledge, folder: Path, line: str, air: dict[str, str] = AIR) -> str:
    text, _ = typed_at(shipped, folder, "suction-pressure", line, conditions=air)
    return text


@pytest.mark.parametrize(
    ("line", "beside"),
    [
        ("suction 140", "140 +/-4 psig: normal - expected about 129 to 152 psig"),
        ("head 390", "a sound unit reads 13.4 to 26.22 - expected about 358 to 426 psig"),
        ("suction 140 sl 62", "within; a sound unit reads 4 to 20 - expected about 8 to 19 F"),
    ],
    ids=["suction", "head in psig, judged over outdoor air", "what is computed from both"],
)
def test_it_stands_on_the_readings_own_line(
    shipped: Knowledge, tmp_path: Path, line: str, beside: str
) -> None:
    assert beside in told(shipped, tmp_path, line)


def test_nothing_is_added_where_the_air_is_not_known(shipped: Knowledge, tmp_path: Path) -> None:
    text = told(shipped, tmp_path, "suction 140 head 390 sl 62", {"outdoor-temperature": "95 F"})
    assert "a sound unit reads" in text
    assert "expected about" not in text


def test_a_danger_is_told_alone(shipped: Knowledge, tmp_path: Path) -> None:
    """A suction in vacuum calls up a hazard: what it should read is no matter then."""
    text = told(shipped, tmp_path, "-5 psig")
    assert "in vacuum" in text
    assert "expected about" not in text


def test_the_first_question_waits_for_no_table() -> None:
    """The table is read with the first reading that needs it."""
    import subprocess
    import sys

    program = (
        "import sys; import troubleshoot.dialogue.turns, troubleshoot.cli.screens.findings;"
        "print('troubleshoot.quantities.expected' in sys.modules)"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "False"
