"""A series drawn: every number where it belongs, within the frame, in well-formed SVG."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from datetime import date

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.records.history.drawn import TALL, WIDE, drawn
from troubleshoot.records.history.series import Read, Series


def series(knowledge: Knowledge, values: list[float], low: float | None = None) -> Series:
    reads = tuple(
        Read(f"v{n}", date(2024 + n, 5, 1), value, 0.01, low=low) for n, value in enumerate(values)
    )
    return Series(knowledge.tests["flame-current"], None, "flame-current", "uA", reads)


@pytest.mark.parametrize(
    "values", [[4.0, 3.0, 2.5], [4.0, 4.0, 4.0], [0.0, 0.0], [4.0, 1.0, 9.0, 2.0]]
)
def test_every_number_is_drawn_within_the_frame(shipped: Knowledge, values: list[float]) -> None:
    figure = ET.fromstring(drawn(series(shipped, values, low=1.8), "Flame <current>"))
    dots = [each for each in figure.iter() if each.tag == "circle"]
    assert len(dots) == len(values)
    for dot in dots:
        assert 0 < float(dot.get("cx", "")) < WIDE and 0 < float(dot.get("cy", "")) < TALL
    for polygon in (each for each in figure.iter() if each.tag == "polygon"):
        for pair in polygon.get("points", "").split():
            x, y = map(float, pair.split(","))
            assert 0 <= x <= WIDE and 0 <= y <= TALL
    assert figure.findtext("figcaption") == "Flame <current>"


def test_a_higher_number_is_drawn_higher_and_a_later_one_to_the_right(shipped: Knowledge) -> None:
    figure = ET.fromstring(drawn(series(shipped, [4.0, 2.0, 3.0]), "x"))
    xs, ys = zip(*((float(d.get("cx", "")), float(d.get("cy", "")))
                   for d in figure.iter() if d.tag == "circle"), strict=True)  # fmt: skip
    assert list(xs) == sorted(xs)
    assert ys[0] < ys[2] < ys[1]


def test_one_number_is_no_figure(shipped: Knowledge) -> None:
    assert drawn(series(shipped, [4.0]), "x") == ""
