"""Bands: one scale cut from low to high, where every number means one outcome."""

from __future__ import annotations

import itertools
import math
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.knowledge.small_rules import CAPACITORS, said, write_rules
from troubleshoot.knowledge.building import build_record
from troubleshoot.knowledge.formatting import format_file
from troubleshoot.knowledge.forms.declared import form_of
from troubleshoot.knowledge.load import load_rules
from troubleshoot.knowledge.model import Bound, LimitLine, Test
from troubleshoot.knowledge.trying_limits import lines_here, outcomes_at
from troubleshoot.knowledge.upgrading import upgraded

OUTCOMES = ("a", "b", "c", "other")
CUTS = st.lists(
    st.integers(-999, 999).map(lambda n: n / 4), min_size=1, max_size=6, unique=True
).map(sorted)


def built(**more: Any) -> Test:
    """A test as it is built from plain data."""
    data = {"id": "t", "name": "t", "kind": "measurement", **more}
    test = build_record(form_of(Test), data, area="somewhere")
    assert isinstance(test, Test)
    return test


def as_today(test: dict[str, Any]) -> dict[str, Any]:
    """A test as `rules format` writes it."""
    (after,) = upgraded("tests", {"area": "somewhere", "tests": [test]})["tests"]
    assert isinstance(after, dict)
    return after


def outcomes_of(test: Test, number: float) -> list[str]:
    return outcomes_at(lines_here(test, {}), {"q": number})


@st.composite
def cut_scales(draw: st.DrawFn) -> tuple[list[dict[str, Any]], list[dict[str, Any]]]:
    """(outcomes with limits, bands) that say the same of one scale, in their own ways."""
    cuts = draw(CUTS)
    names = draw(st.lists(st.sampled_from(OUTCOMES), min_size=len(cuts) + 1,
                          max_size=len(cuts) + 1))  # fmt: skip
    sides = draw(st.lists(st.booleans(), min_size=len(cuts), max_size=len(cuts)))
    lines: dict[str, list[dict[str, Any]]] = {name: [] for name in OUTCOMES}
    bands: list[dict[str, Any]] = []
    for number, name in enumerate(names):
        line: dict[str, Any] = {"quantity": "q"}
        band: dict[str, Any] = {"outcome": name}
        if number:
            line["above" if sides[number - 1] else "at-least"] = cuts[number - 1]
        if number < len(cuts):
            line["at-most" if sides[number] else "below"] = cuts[number]
            band["up-to" if sides[number] else "below"] = cuts[number]
        if {"at-least", "at-most"} <= line.keys() and draw(st.booleans()):
            line["between"] = [line.pop("at-least"), line.pop("at-most")]
        lines[name].append(line)
        bands.append(band)
    outcomes = [{"id": name, "limits": found} for name, found in lines.items() if found]
    return draw(st.permutations(outcomes)), bands


@given(cut_scales())
def test_limits_written_as_bands_mean_the_same_at_below_and_above_each_cut(
    scale: tuple[list[dict[str, Any]], list[dict[str, Any]]],
) -> None:
    outcomes, bands = scale
    before = {"id": "t", "name": "t", "kind": "measurement", "outcomes": outcomes}
    after = as_today(before)
    assert after["bands"] == {"of": "q", "from-low-to-high": bands}
    assert all("limits" not in outcome for outcome in after["outcomes"])
    old, new = built(**before), built(**after)
    cuts = [end for band in bands for key, end in band.items() if key != "outcome"]
    for cut in cuts:
        for number in (cut, cut - 0.01, cut + 0.01, math.nextafter(cut, math.inf)):
            assert outcomes_of(new, number) == outcomes_of(old, number)
            assert len(outcomes_of(new, number)) == 1
    assert as_today(after) == after


@pytest.mark.parametrize(
    "limits",
    [
        {"low": [{"below": 8}], "high": [{"above": 8}]},
        {"low": [{"at-most": 8}], "high": [{"at-least": 8}]},
        {"low": [{"below": 8}], "high": [{"at-least": 9}]},
        {"low": [{"between": [0, 8]}], "high": [{"above": 8}]},
        {"low": [{"below": 8}], "high": [{"between": [8, 9]}]},
        {"low": [{"below": 8}], "high": [{"at-least": 8, "when": {"circuits": ["one"]}}]},
        {"low": [{"below": 8, "relative-to": "r", "as": "times"}], "high": [{"at-least": 8}]},
        {"low": [{"below": 8}], "high": [{"all": [{"quantity": "q", "at-least": 8}]}]},
        {"low": [{"below": 8}], "high": [{"reads": "open"}]},
    ],
)
def test_limits_that_leave_a_gap_overlap_or_depend_stay_as_they_are(limits: Any) -> None:
    outcomes = [
        {"id": name, "limits": [line if "all" in line else {"quantity": "q", **line}
                                for line in lines]}
        for name, lines in limits.items()
    ]  # fmt: skip
    test = {"id": "t", "outcomes": outcomes}
    assert as_today(test) == test


def test_what_a_meter_shows_instead_of_a_number_stays_with_its_outcome() -> None:
    outcomes = [
        {"id": "open", "limits": [{"quantity": "q", "reads": "open"}]},
        {"id": "low", "limits": [{"quantity": "q", "below": 8}]},
        {"id": "normal", "limits": [{"quantity": "q", "at-least": 8}], "means": "8 or more"},
    ]
    test = as_today({"id": "t", "outcomes": outcomes})
    assert test["outcomes"] == [outcomes[0], {"id": "low"}, {"id": "normal", "means": "8 or more"}]
    assert outcomes_of(built(**test), math.inf) == ["open"]


BANDS = """\
      from-low-to-high:
        - {outcome: low, below: -6}
        - {outcome: normal, up-to: 6}
        - {outcome: high}
"""


def with_bands(folder: Path, old: str = BANDS, new: str = BANDS) -> Path:
    """The small rules as they are written now, with one change in the test of capacitors."""
    rules = write_rules(folder)
    path = rules / CAPACITORS
    text = format_file(path.read_text("utf-8"))
    assert BANDS in text and text.count(old) == 1
    path.write_text(text.replace(old, new), "utf-8")
    return rules


def test_bands_become_the_limits_of_their_outcomes(tmp_path: Path) -> None:
    folder = with_bands(tmp_path)
    assert said(folder) == []
    section = load_rules(folder, cache=tmp_path / "cache").tests["capacitance-one-side-off"]
    scale = ("capacitance", "capacitor-rated", "percent-difference")
    found = {outcome.id: outcome.limits for outcome in section.outcomes}
    assert found["low"] == (LimitLine((Bound(*scale, below=-6),)),)
    assert found["normal"] == (LimitLine((Bound(*scale, at_least=-6, at_most=6),)),)
    assert section.outcomes[0].source == "invented-standard"


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        ("low, below: -6", "low", "the band has no end; write below or up-to"),
        ("low, below: -6", "low, below: -6, up-to: 1", "the band has two ends; write below or"),
        ("high}", "high, up-to: 99}", "the last band ends; leave its end out: it holds all above"),
        ("up-to: 6", "up-to: -6", "the band ends at -6, and the one before it at -6; write the"),
        ("up-to: 6", "up-to: -7", "the band ends at -7, and the one before it at -6; write the"),
        ("outcome: low", "outcome: lo", "no outcome of capacitance-one-side-off is called lo;"),
        ("        - {outcome: low, below: -6}\n        - {outcome: normal, up-to: 6}\n", "",
         "from-low-to-high holds 1 items; write 2 to 20"),
    ],
)  # fmt: skip
def test_bands_that_leave_a_gap_are_refused_at_their_place(
    tmp_path: Path, old: str, new: str, message: str
) -> None:
    problems = said(with_bands(tmp_path, BANDS, BANDS.replace(old, new)))
    assert len(problems) == 1
    assert message in problems[0]


def test_an_outcome_with_a_band_has_no_numbers_of_its_own(tmp_path: Path) -> None:
    limits = "        limits: [{quantity: capacitance, below: 1}]\n"
    folder = with_bands(tmp_path, "      - {id: low}\n", f"      - id: low\n{limits}")
    said_first = said(folder)[0]
    assert "the outcome has a band and limits of its own; keep one of them [bands" in said_first


def test_every_number_has_one_outcome_whatever_the_ends() -> None:
    sides = itertools.product(("below", "up-to"), repeat=2)
    for one, two in sides:
        bands = [{"outcome": "a", one: 1}, {"outcome": "b", two: 2}, {"outcome": "c"}]
        test = built(
            bands={"of": "q", "from-low-to-high": bands},
            outcomes=[{"id": name} for name in "abc"],
        )
        found = ["".join(outcomes_of(test, x)) for x in (0.5, 1, 1.5, 2, 2.5)]
        assert found == ["a", "a" if one == "up-to" else "b", "b",
                         "b" if two == "up-to" else "c", "c"]  # fmt: skip
