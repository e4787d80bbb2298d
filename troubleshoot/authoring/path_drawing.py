"""The path of a visit on one page: the trunk is what was read, twigs what might have been."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final
from xml.sax.saxutils import escape

from troubleshoot.authoring.path import Branch, Path, Turn

PAGE: Final = (216, 279)
"""A letter page upright, in millimetres: the drawing is fitted into it."""
LINE, TEXT, MARGIN, WIDTH = 15, 11, 16, 800
"""Height of a line and of a letter, and the width of it all, in units of the drawing."""
TRUNK, FORK, TWIGS = 26, 370, 410
LETTER: Final = 7.2
"""Width of a bold letter on the mean."""
LETTERS: Final = 58
"""Letters of a line in either half; more are cut."""
WARNING: Final = (
    "For the office. It shows no cautions and none of the steps that make the unit safe: "
    "do no test by it."
)


def svg_of_path(path: Path) -> str:
    """The path as an SVG document of one page."""
    rows = [_rows(turn) for turn in path.turns]
    height = 2 * MARGIN + LINE * (5 + sum(rows))
    across, down = PAGE
    return "\n".join((
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{across}mm" height="{down}mm" '
        f'viewBox="0 0 {WIDTH} {height}" preserveAspectRatio="xMidYMin" '
        f'font-family="sans-serif" font-size="{TEXT}">',
        f"<title>{escape(path.title)}</title>",
        _text(MARGIN, MARGIN + TEXT, path.title, "bold", 2 * LETTERS),
        _text(MARGIN, MARGIN + TEXT + LINE, WARNING, longest=2 * LETTERS),
        _text(TRUNK + 12, MARGIN + TEXT + 3 * LINE, path.call, "bold"),
        _text(TRUNK + 12, MARGIN + TEXT + 4 * LINE, path.begins),
        *_trunk(path, rows),
        "</svg>",
        "",
    ))  # fmt: skip


def _rows(turn: Turn) -> int:
    """The lines of a turn: its name, what it showed, what leads; or as many as it has twigs."""
    return max(3, len(turn.others)) + 1


def _trunk(path: Path, rows: list[int]) -> Iterator[str]:
    y = MARGIN + LINE * 5
    top = MARGIN + LINE * 3
    for turn, lines in zip(path.turns, rows, strict=True):
        yield _line(TRUNK, top, TRUNK, y + LINE, 3)
        yield f'<circle cx="{TRUNK}" cy="{y + LINE}" r="5"/>'
        yield _text(TRUNK + 12, y + LINE + 4, turn.name, "bold")
        yield _text(TRUNK + 12, y + 2 * LINE + 4, turn.taken.showed)
        yield _text(TRUNK + 12, y + 3 * LINE + 4, turn.taken.told, _weight(turn.taken))
        beside = TRUNK + 18 + LETTER * len(turn.name)
        if turn.others and beside < FORK:
            yield _line(beside, y + LINE, FORK, y + LINE, 1)
        for number, branch in enumerate(turn.others, start=1):
            yield _line(FORK, y + LINE, TWIGS - 6, y + number * LINE, 1)
            told = f"{branch.showed}: {branch.told}"
            yield _text(TWIGS, y + number * LINE + 4, told, _weight(branch), LETTERS + 6)
        top, y = y + LINE, y + LINE * lines


def _weight(branch: Branch) -> str:
    return "bold" if branch.is_stop else "normal"


def _line(x: float, y: float, to_x: float, to_y: float, width: float) -> str:
    return (
        f'<line x1="{x}" y1="{y}" x2="{to_x}" y2="{to_y}" stroke="black" stroke-width="{width}"/>'
    )


def _text(x: float, y: float, text: str, weight: str = "normal", longest: int = LETTERS) -> str:
    shown = text if len(text) <= longest else f"{text[: longest - 3]}..."
    return f'<text x="{x}" y="{y}" font-weight="{weight}">{escape(shown)}</text>'
