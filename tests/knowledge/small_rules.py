"""A small invented rule base that passes every check, and ways to spoil it in one place."""

from __future__ import annotations

from pathlib import Path

from troubleshoot.knowledge.checks import check_rules

Change = tuple[str, str, str]
"""(file, text that stands in it once, text to put instead)."""

_FOLDER = Path(__file__).parent / "small"

FILES = {
    path.relative_to(_FOLDER).as_posix(): path.read_text("utf-8")
    for path in sorted(_FOLDER.rglob("*.yaml"))
}
"""Its files, by their name inside the folder."""

WEAK = "faults/capacitors/fan-capacitor-weak.yaml"
LOW_CHARGE = "faults/refrigerant/low-charge.yaml"
CAPACITORS = "tests/capacitors.yaml"
REFRIGERANT = "tests/refrigerant.yaml"
ELECTRICAL = "procedures/electrical.yaml"


def write_rules(folder: Path, *changes: Change) -> Path:
    """Write the small rule base with changes, and return its folder."""
    files = dict(FILES)
    for name, old, new in changes:
        assert files[name].count(old) == 1, f"{old!r} stands {files[name].count(old)} times"
        files[name] = files[name].replace(old, new)
    return write_files(folder / "rules", files)


def write_files(folder: Path, files: dict[str, str]) -> Path:
    """Write named files below a folder, and return the folder."""
    for name, text in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, "utf-8")
    return folder


def said(folder: Path, *packs: Path) -> list[str]:
    """What the checks say of a folder of rules, with short paths and the check's id."""
    problems = check_rules([folder, *packs])
    parent = f"{folder.parent}/"
    return [f"{problem} [{problem.check}]".replace(parent, "") for problem in problems]
