"""Cards that say nearly the same are found before they share each other's chance."""

from __future__ import annotations

from pathlib import Path

from tests.knowledge.small_rules import FILES, LOW_CHARGE, said, write_files, write_rules
from troubleshoot.knowledge.checks import check_rules
from troubleshoot.knowledge.load import shipped_folder

COPY = "faults/refrigerant/charge-short.yaml"
PACK = "format: 1\nname: The north site\n"


def copied(text: str = FILES[LOW_CHARGE]) -> str:
    text = text.replace("fault: low-charge", "fault: charge-short")
    return text.replace("name: Low charge", "name: Charge short")


def told(tmp_path: Path, text: str) -> list[str]:
    pack = write_files(tmp_path / "north", {"pack.yaml": PACK, COPY: text})
    return [each for each in said(write_rules(tmp_path), pack) if "[alike-cards]" in each]


def test_a_copy_under_another_name_is_found(tmp_path: Path) -> None:
    """Regression: a renamed copy of a card passed every check."""
    (problem,) = told(tmp_path, copied())
    assert problem.startswith(f"north/{COPY}:")
    assert "charge-short differs from low-charge only in name; keep one card" in problem


def test_a_near_twin_is_told_to_name_the_other(tmp_path: Path) -> None:
    near = copied().replace("evidence:\n", "evidence:\n  seldom: [{capacitor-look: swollen}]\n", 1)
    (problem,) = told(tmp_path, near)
    assert (
        "and charge-short grade is the same" in problem or "charge-short and low-charge" in problem
    )
    assert "name low-charge under look-alikes" in problem
    assert told(tmp_path, near.replace("proof: [", "look-alikes: [low-charge]\nproof: [")) == []


def test_the_shipped_twins_name_each_other() -> None:
    problems = check_rules([shipped_folder()])
    assert [str(each) for each in problems if each.check == "alike-cards"] == []
