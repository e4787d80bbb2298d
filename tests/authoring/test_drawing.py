"""The faults of a subsystem against its tests, as one page."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from xml.etree import ElementTree

import pytest

from troubleshoot.authoring.drawing import chart_of, svg_of
from troubleshoot.knowledge.model import Knowledge

Call = Callable[..., tuple[int, str, str]]
NAMESPACE = "{http://www.w3.org/2000/svg}"


def test_each_fault_has_a_row_and_each_test_that_a_card_grades_a_column(
    shipped: Knowledge,
) -> None:
    chart = chart_of(shipped, "contactors")
    assert {f.subsystem for f in chart.faults} == {"contactors"}
    coil = shipped.faults["contactor-coil-open"]
    graded = {f.test for item in coil.evidence for f in item.findings}
    assert graded <= {test.id for test in chart.tests}
    assert chart.cells["contactor-coil-open", "contactor-coil-ohms"] == "almost-always"
    assert chart.cells["contactor-coil-open", "operating-sequence"] == "never"


@pytest.mark.parametrize("subsystem", ["contactors", "leak-mitigation", "indoor-blower"])
def test_everything_stands_on_the_page(shipped: Knowledge, subsystem: str) -> None:
    chart = chart_of(shipped, subsystem)
    root = ElementTree.fromstring(svg_of(chart))
    _, _, width, height = map(float, root.attrib["viewBox"].split())
    marks = [e for e in root if e.tag in (f"{NAMESPACE}circle", f"{NAMESPACE}path")]
    assert len(marks) == len(chart.cells) + 5  # and the five of the legend
    for each in root.iter(f"{NAMESPACE}rect"):
        assert float(each.attrib["x"]) + float(each.attrib["width"]) <= width
        assert float(each.attrib["y"]) + float(each.attrib["height"]) <= height
    for each in root.iter(f"{NAMESPACE}text"):
        if "x" in each.attrib and "text-anchor" not in each.attrib:
            assert float(each.attrib["x"]) + 6 * len(each.text or "") <= width
    assert root.attrib["width"].endswith("mm")


def test_what_people_wrote_is_text_and_nothing_else(shipped: Knowledge) -> None:
    coil = shipped.faults["contactor-coil-open"]
    named = replace(coil, name='<script>"x" & y</script>')
    chart = replace(chart_of(shipped, "contactors"), faults=(named,))
    root = ElementTree.fromstring(svg_of(chart))
    assert named.name in [each.text for each in root.iter(f"{NAMESPACE}text")]


def test_a_drawing_is_written_once(command: Call, tmp_path: Path) -> None:
    file = tmp_path / "contactors.svg"
    code, out, _ = command("rules", "draw", "contactors", str(file))
    assert code == 0 and "9 faults" in out and file.read_text("utf-8").startswith("<svg ")
    code, _, failed = command("rules", "draw", "contactors", str(file))
    assert code == 2 and "is there already" in failed
    code, _, failed = command("rules", "draw", "contractors", str(tmp_path / "x.svg"))
    assert code == 2 and "did you mean contactors" in failed
