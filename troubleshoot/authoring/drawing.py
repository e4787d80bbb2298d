"""The faults of a subsystem against the tests that their cards grade, as one page to print.

Each cell says how often the fault shows something there other than what is sound: the fuller the
mark, the more often; a cross speaks against the fault. Nothing is told by colour alone.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Final
from xml.sax.saxutils import escape

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Fault, Knowledge, Test
from troubleshoot.knowledge.vocabulary import BANDS, GRADES, Grade
from troubleshoot.reasoning.evidence.grades import spoken

CELL, TEXT, LETTER = 18, 11, 6.2
"""Sides of a cell, height of a letter and its width on the mean, in units of the drawing."""
MARGIN: Final = 12
LONGEST_NAME: Final = 48
PAGE: Final = (279, 216)
"""A letter page across, in millimetres: the drawing is fitted into it."""


@frozen
class Chart:
    """What is drawn. `cells`: (fault, test) -> the grade of the outcome that tells most there."""

    title: str
    faults: tuple[Fault, ...]
    tests: tuple[Test, ...]
    cells: Mapping[tuple[str, str], Grade]


def chart_of(knowledge: Knowledge, subsystem: str) -> Chart:
    """The faults of a subsystem and every test that one of them grades, the widest known first."""
    faults = tuple(f for f in knowledge.faults.values() if f.subsystem == subsystem)
    cells: dict[tuple[str, str], Grade] = {}
    for fault in faults:
        for test, grade in _graded(knowledge, fault):
            cells.setdefault((fault.id, test), grade)
    speaking = {test: sum((f.id, test) in cells for f in faults) for _, test in cells}
    names = sorted(speaking, key=lambda name: (-speaking[name], name))
    tests = tuple(knowledge.tests[name] for name in names)
    return Chart(knowledge.spoken(subsystem), faults, tests, cells)


def _graded(knowledge: Knowledge, fault: Fault) -> Iterator[tuple[str, Grade]]:
    """Each test that a card grades, with the strongest word on what is not sound there."""
    told = [(item.grade, finding) for item in fault.evidence for finding in item.findings]
    told.sort(key=lambda each: GRADES.index(each[0]))
    for grade, finding in told:
        healthy = knowledge.tests[finding.test].healthy
        if not set(finding.outcomes) <= set(healthy):
            yield finding.test, grade
    for _, finding in told:
        yield finding.test, "never"


def svg_of(chart: Chart) -> str:
    """The chart as an SVG document of one page."""
    left = MARGIN + LETTER * max((len(_name(f.name)) for f in chart.faults), default=0)
    top = 3 * MARGIN + TEXT + LETTER * max((len(_name(t.name)) for t in chart.tests), default=0)
    wide = max(CELL * len(chart.tests) + top / 2, sum(map(_legend_width, GRADES)))
    width = left + wide + 2 * MARGIN
    height = top + CELL * len(chart.faults) + 4 * MARGIN
    across, down = PAGE
    return "\n".join((
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{across}mm" height="{down}mm" '
        f'viewBox="0 0 {width:.0f} {height:.0f}" font-family="sans-serif" font-size="{TEXT}">',
        f"<title>{escape(chart.title)}</title>",
        f'<text x="{MARGIN}" y="{MARGIN + TEXT}" font-weight="bold">{escape(chart.title)}</text>',
        *_columns(chart, left, top),
        *_rows(chart, left, top),
        *_legend(left, height - 2 * MARGIN),
        "</svg>",
        "",
    ))  # fmt: skip


def _columns(chart: Chart, left: float, top: float) -> Iterator[str]:
    for number, test in enumerate(chart.tests):
        x, y = left + CELL * (number + 0.7), top - 4
        name = escape(_name(test.name))
        yield f'<text transform="translate({x:.1f} {y:.1f}) rotate(-60)">{name}</text>'


def _rows(chart: Chart, left: float, top: float) -> Iterator[str]:
    for row, fault in enumerate(chart.faults):
        y = top + CELL * row
        name = escape(_name(fault.name))
        yield f'<text x="{left - 6:.1f}" y="{y + 13:.1f}" text-anchor="end">{name}</text>'
        for column, test in enumerate(chart.tests):
            x = left + CELL * column
            yield (
                f'<rect x="{x:.1f}" y="{y:.1f}" width="{CELL}" height="{CELL}" fill="none" '
                'stroke="#999" stroke-width="0.5"/>'
            )
            if (grade := chart.cells.get((fault.id, test.id))) is not None:
                yield _mark(grade, x + CELL / 2, y + CELL / 2)


def _legend(left: float, y: float) -> Iterator[str]:
    x = left
    for grade in GRADES:
        said = spoken(grade)
        yield _mark(grade, x, y - 4)
        yield f'<text x="{x + 12:.1f}" y="{y:.1f}">{escape(said)}</text>'
        x += _legend_width(grade)


def _legend_width(grade: Grade) -> float:
    return 24 + LETTER * len(spoken(grade))


def _mark(grade: Grade, x: float, y: float) -> str:
    """A disc as large as the grade is often; a cross for never."""
    if grade == "never":
        return (
            f'<path d="M{x - 4:.1f} {y - 4:.1f}l8 8m0 -8l-8 8" stroke="black" fill="none" '
            'stroke-width="1.5"/>'
        )
    low, high = BANDS[grade]
    return f'<circle cx="{x:.1f}" cy="{y:.1f}" r="{7.5 * ((low + high) / 2) ** 0.5:.1f}"/>'


def _name(name: str) -> str:
    return name if len(name) <= LONGEST_NAME else f"{name[: LONGEST_NAME - 3]}..."
