"""The path of a visit as a tree: where each answer led, and where the others would have."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest

from tests.cli.whole_visit import whole_visit
from troubleshoot.authoring.path import path_of
from troubleshoot.authoring.path_drawing import WARNING, svg_of_path
from troubleshoot.cli import clock
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.visit.cases.file import read_case
from troubleshoot.visit.telling.wording import percent

Call = Callable[..., tuple[int, str, str]]
NAMESPACE = "{http://www.w3.org/2000/svg}"
CASE: dict[str, Any] = {
    "unit": {"circuits": 2, "metering": "txv", "refrigerant": "R-410A"},
    "complaint": "fails-hot-afternoons",
    "readings": [
        {"test": "suction-pressure", "at": "circuit 1", "text": "128 psig"},
        {"test": "contactor-contacts", "at": "contactor 2", "outcome": "pole-burnt-away"},
        {"test": "condenser-coil", "outcome": "matted"},
    ],
}


def case(**changes: Any) -> dict[str, Any]:
    return {**CASE, **changes}


def test_each_answer_leads_where_it_led_then(shipped: Knowledge) -> None:
    path = path_of(shipped, read_case(shipped, case()), "a case")
    assert [turn.name for turn in path.turns][1:] == [
        "Look at the contacts, contactor 2", "Condenser coil, both faces and between the rows",
    ]  # fmt: skip
    for number, turn in enumerate(path.turns, start=1):
        then = read_case(shipped, case(readings=case()["readings"][:number]))
        first = Reasoner(shipped).conclude(then).causes[0]
        assert turn.taken.told.startswith(f"{percent(first.probability)} {first.fault.name}")


def test_every_outcome_has_its_branch_and_a_stop_is_one(shipped: Knowledge) -> None:
    contacts = path_of(shipped, read_case(shipped, case()), "a case").turns[1]
    shown = [contacts.taken.showed, *(each.showed for each in contacts.others)]
    words = {word for each in shown for word in each.split(" or ")}
    test = shipped.tests["contactor-contacts"]
    assert words == {test.spoken(outcome.id) for outcome in test.outcomes}
    (welded,) = (each for each in contacts.others if "welded" in each.showed)
    assert welded.is_stop and welded.told.startswith("STOP: ")


@pytest.mark.parametrize("times", [1, 6])
def test_everything_stands_on_one_page(times: int, shipped: Knowledge) -> None:
    path = path_of(shipped, read_case(shipped, case()), '<b>"a" & b</b>')
    long = type(path)(path.title, path.call, path.begins, path.turns * times)
    root = ElementTree.fromstring(svg_of_path(long))
    _, _, width, height = map(float, root.attrib["viewBox"].split())
    texts = list(root.iter(f"{NAMESPACE}text"))
    assert [path.title, WARNING] == [each.text for each in texts[:2]]
    for each in texts:
        assert float(each.attrib["y"]) <= height
        assert float(each.attrib["x"]) + 6 * len(each.text or "") <= width
    for each in root.iter(f"{NAMESPACE}line"):
        assert float(each.attrib["y2"]) <= height and float(each.attrib["x2"]) <= width


def test_a_case_without_call_and_readings_is_drawn(shipped: Knowledge) -> None:
    path = path_of(shipped, read_case(shipped, {}), "nothing")
    assert path.turns == () and "<svg " in svg_of_path(path)


def test_a_visit_that_is_kept_is_drawn(
    shipped: Knowledge, command: Call, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setattr(clock, "now", clock.now)  # put back after the visit has set its own
    monkeypatch.setenv("TROUBLESHOOT_DATA", str(tmp_path))
    whole_visit(shipped, tmp_path)
    file = tmp_path / "path.svg"
    code, out, _ = command("rules", "draw", "2026-11-26-1", str(file))
    assert code == 0 and out.endswith(" tests\n") and "2026-11-26-1" in file.read_text("utf-8")


def test_what_is_neither_is_told(command: Call, tmp_path: Path) -> None:
    code, _, failed = command("rules", "draw", "contactor", str(tmp_path / "a.svg"))
    assert code == 2 and "no visit that is kept and no file; did you mean contactors" in failed
