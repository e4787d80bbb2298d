"""The record of plays: kept line by line, read back, summed up, exported."""

from __future__ import annotations

import csv
import io
import json
from dataclasses import asdict, replace
from pathlib import Path
from typing import cast

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.practice.playing import scenario_named
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.practice.scores import (
    Play,
    RecordDamaged,
    as_csv,
    best_of,
    keep_play,
    progress,
    propose,
    read_plays,
    record_path,
)

PLAY = Play(
    "2000-01-31", "Learner One", "gas-added-in-june", "refrigerant", 1, "right", False,
    80, 64, 7, 60, 6, 1, 2, 3,
)  # fmt: skip
PLAYS = st.builds(
    Play,
    date=st.just("2000-01-31"),
    apprentice=st.text(max_size=20),
    scenario=st.sampled_from(["one", "two", "three"]),
    subsystem=st.sampled_from(["gas", "power"]),
    difficulty=st.integers(1, 3),
    verdict=st.sampled_from(["right", "partly", "wrong"]),
    failed=st.booleans(),
    points=st.integers(0, 100),
    minutes=st.integers(0, 500),
    tests=st.integers(0, 60),
    expert_minutes=st.integers(0, 500),
    expert_tests=st.integers(0, 60),
    hints=st.integers(0, 9),
    guesses_close=st.integers(0, 9),
    guesses=st.integers(0, 9),
)


@settings(max_examples=40, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(plays=st.lists(PLAYS, max_size=6))
def test_what_is_kept_is_read_back(tmp_path: Path, plays: list[Play]) -> None:
    path = tmp_path / "practice" / "someone.jsonl"
    path.unlink(missing_ok=True)
    for play in plays:
        keep_play(path, play)
    assert read_plays(path) == tuple(plays)
    rows = list(csv.DictReader(io.StringIO(as_csv(plays), newline="")))
    assert [int(row["points"]) for row in rows] == [play.points for play in plays]
    for name, best in best_of(plays).items():
        assert best.points == max(play.points for play in plays if play.scenario == name)


def test_no_record_is_an_empty_record(tmp_path: Path) -> None:
    assert read_plays(tmp_path / "nobody.jsonl") == ()
    assert progress(()) == ()


def test_a_cut_off_last_line_is_left_out_and_any_other_is_told(tmp_path: Path) -> None:
    path = tmp_path / "someone.jsonl"
    keep_play(path, PLAY)
    whole = path.read_text("utf-8")
    path.write_text(whole + whole[:40], "utf-8")
    assert read_plays(path) == (PLAY,)
    path.write_text(whole[:40] + "\n" + whole, "utf-8")
    with pytest.raises(RecordDamaged, match="line 1 is damaged"):
        read_plays(path)


def test_a_play_after_a_cut_off_line_stands_on_its_own_line(tmp_path: Path) -> None:
    """Regression: it was joined to what was left, and the record was damaged for good."""
    path = tmp_path / "someone.jsonl"
    keep_play(path, PLAY)
    whole = path.read_bytes()
    path.write_bytes(whole + whole[:40])
    keep_play(path, PLAY)
    assert read_plays(path) == (PLAY, PLAY)


@pytest.mark.parametrize(
    "line",
    [
        b'"a text"', b"[]", b"caf\xe9", b"[" * 100_000, b'{"format": 2}',
        json.dumps({"format": 1, **asdict(replace(PLAY, points=cast(int, "80")))}).encode(),
        json.dumps({"format": 1, **asdict(PLAY), "more": 1}).encode(),
        json.dumps({"format": 1, **asdict(replace(PLAY, points=10**400))}).encode(),
        json.dumps({"format": 1, **asdict(replace(PLAY, minutes=-1))}).encode(),
    ],
)  # fmt: skip
def test_a_line_of_another_kind_is_damage(tmp_path: Path, line: bytes) -> None:
    path = tmp_path / "someone.jsonl"
    path.write_bytes(line + b"\n")
    with pytest.raises(RecordDamaged, match="line 1 is damaged"):
        read_plays(path)


@pytest.mark.parametrize("name", ["x" * 5000, "half \udce9", "\x1b[2J"])
def test_what_can_be_no_name_is_refused(tmp_path: Path, name: str) -> None:
    with pytest.raises(NotUsable):
        record_path(tmp_path, name)


def test_every_apprentice_has_a_file_inside_the_folder(tmp_path: Path) -> None:
    for name in ("Learner One", "../../etc/passwd", "", "a/b"):
        path = record_path(tmp_path, name)
        assert path.parent == tmp_path / "practice"
        assert path.suffix == ".jsonl" and path.stem


def test_a_cell_that_would_be_a_formula_is_made_text() -> None:
    text = as_csv([replace(PLAY, apprentice="=1+1")])
    assert "'=1+1" in text.splitlines()[1]


def test_progress_takes_the_best_of_each_scenario() -> None:
    plays = [
        PLAY, replace(PLAY, points=40), replace(PLAY, scenario="other", points=60, failed=True),
        replace(PLAY, subsystem="gas", scenario="third", points=10),
    ]  # fmt: skip
    gas, refrigerant = progress(plays)
    assert (gas.subsystem, gas.mean_best) == ("gas", 10)
    assert (refrigerant.plays, refrigerant.scenarios, refrigerant.mean_best) == (3, 2, 70)
    assert refrigerant.failures == 1


def test_the_weakest_subsystem_is_proposed_next_and_mastered_ones_never(
    shipped: Knowledge,
) -> None:
    names = ("gas-added-in-june", "ice-on-one-half", "lights-and-goes-out")
    scenarios = [scenario_named(shipped, name) for name in names]
    well = replace(PLAY, scenario="lights-and-goes-out", subsystem="ignition", points=60)
    proposed = propose([well], scenarios)
    assert proposed is not None and proposed.id == "gas-added-in-june"
    strong = [PLAY, replace(PLAY, scenario="ice-on-one-half", points=90), well]
    proposed = propose(strong, scenarios)
    assert proposed is not None and proposed.id == "lights-and-goes-out"
    assert propose([*strong, replace(well, points=95)], scenarios) is None
