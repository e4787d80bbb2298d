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

from troubleshoot.outside.refusal import NotUsable
from troubleshoot.practice.record import (
    RecordDamaged,
    all_records,
    as_csv,
    keep_open,
    keep_play,
    read_plays,
    record_path,
    shown_to_others,
)
from troubleshoot.practice.scores import (
    Play,
    calibration,
    first_of,
    progress,
)

PLAY = Play(
    "2000-01-31", "Learner One", "quarry-road", "refrigerant", 1, "right", False,
    80, 64, 7, 60, 6, 1, 2, 3, True, "sure", 0, False,
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
    reasoned=st.booleans(),
    sure=st.sampled_from(["sure", "likely", "guess", ""]),
    parts=st.integers(0, 9),
    shown_before=st.booleans(),
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
    for name, first in first_of(plays).items():
        assert first is next(play for play in plays if play.scenario == name)
    assert [row["counts"] for row in rows].count("yes") == len({play.scenario for play in plays})


def test_records_of_all_apprentices_count_each_for_itself(tmp_path: Path) -> None:
    """Regression: a supervisor's export without a name held no play, though twenty lay there."""
    other = replace(PLAY, apprentice="Learner Two", points=40)
    keep_play(record_path(tmp_path, "Learner One"), PLAY)
    keep_play(record_path(tmp_path, "Learner Two"), other)
    keep_open(record_path(tmp_path, "Learner Three"), replace(PLAY, verdict="left"))
    records = all_records(tmp_path)
    rows = list(csv.DictReader(io.StringIO(as_csv(*records), newline="")))
    assert [row["counts"] for row in rows] == ["yes"] * 3
    assert {row["apprentice"] for row in rows} == {"Learner One", "Learner Two"}


@pytest.mark.parametrize(
    ("play", "told"),
    [
        (replace(PLAY, verdict="shown", tests=0), True),
        (replace(PLAY, verdict="wrong", tests=0, reasoned=False), True),
        (replace(PLAY, verdict="wrong", tests=1, reasoned=False), True),
        (replace(PLAY, verdict="partly", tests=3, reasoned=False, failed=True), True),
        (replace(PLAY, verdict="right", tests=1, reasoned=False), True),
        (replace(PLAY, verdict="wrong", tests=4, reasoned=False), False),
        (replace(PLAY, verdict="right", tests=1), False),
        (replace(PLAY, verdict="left", tests=1, reasoned=False), False),
        (replace(PLAY, verdict="wrong"), False),
        (PLAY, False),
        (replace(PLAY, scenario="other", verdict="shown"), False),
    ],
)
def test_an_answer_shown_under_another_name_is_known(
    tmp_path: Path, play: Play, told: bool
) -> None:
    own = record_path(tmp_path, "Own")
    keep_play(own, replace(PLAY, verdict="shown"))
    assert not shown_to_others(tmp_path, own, PLAY.scenario)
    keep_play(record_path(tmp_path, "Decoy"), play)
    assert shown_to_others(tmp_path, own, PLAY.scenario) == told


def test_a_record_of_the_second_format_is_read(tmp_path: Path) -> None:
    path = tmp_path / "someone.jsonl"
    line = {name: value for name, value in asdict(PLAY).items() if name != "shown_before"}
    path.write_text(json.dumps({"format": 2, **line}) + "\n", "utf-8")
    assert read_plays(path) == (PLAY,)


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
        b'"a text"', b"[]", b"caf\xe9", b"[" * 100_000, b'{"format": 4}',
        json.dumps({"format": 2, **asdict(replace(PLAY, points=cast(int, "80")))}).encode(),
        json.dumps({"format": 2, **asdict(PLAY), "more": 1}).encode(),
        json.dumps({"format": 2, **asdict(replace(PLAY, points=10**400))}).encode(),
        json.dumps({"format": 2, **asdict(replace(PLAY, minutes=-1))}).encode(),
    ],
)  # fmt: skip
def test_a_line_of_another_kind_is_damage(tmp_path: Path, line: bytes) -> None:
    path = tmp_path / "someone.jsonl"
    path.write_bytes(line + b"\n")
    with pytest.raises(RecordDamaged, match="line 1 is damaged"):
        read_plays(path)


@pytest.mark.parametrize("name", ["x" * 5000, "half \udce9", "\x1b[2J", "", "@=-"])
def test_what_can_be_no_name_is_refused(tmp_path: Path, name: str) -> None:
    with pytest.raises(NotUsable):
        record_path(tmp_path, name)


def test_every_apprentice_has_a_file_inside_the_folder(tmp_path: Path) -> None:
    for name in ("Learner One", "../../etc/passwd", "a/b", "\U00010428" * 80):
        path = record_path(tmp_path, name)
        assert path.parent == tmp_path / "practice"
        assert path.suffix == ".jsonl" and path.stem
        assert len(path.with_suffix(".open").name.encode()) <= 255


def test_names_are_told_apart_by_letters_of_any_script(tmp_path: Path) -> None:
    """Regression: every name in Cyrillic or Greek shared the record of nobody."""
    names = (
        "Jo",
        "J\u00f6",
        "\u041e\u043b\u044f",
        "\u039d\u03af\u03ba\u03b7",
        "\u674e",
        "apprentice",
    )
    assert len({record_path(tmp_path, name) for name in names}) == len(names)
    same = ("Learner One", "=learner one", "@LEARNER-ONE", " learner  one ")
    assert len({record_path(tmp_path, name) for name in same}) == 1


def test_a_record_from_before_calls_were_reasoned_is_still_read(tmp_path: Path) -> None:
    path = tmp_path / "someone.jsonl"
    old = {k: v for k, v in asdict(PLAY).items() if k not in ("reasoned", "sure", "parts")}
    path.write_text(json.dumps({"format": 1, **old}) + "\n", "utf-8")
    assert read_plays(path) == (replace(PLAY, sure=""),)


@pytest.mark.parametrize(
    "said", ["=1+1", "+1", "-1", "@SUM(1)", "\t=1+1", " =1+1", "\r=1", "\uff1d1", "%0A=1"]
)
def test_a_cell_that_would_be_a_formula_is_made_text(said: str) -> None:
    """Common practice for CSV that spreadsheets open: no source."""
    (row,) = csv.DictReader(io.StringIO(as_csv([replace(PLAY, apprentice=said)]), newline=""))
    assert row["apprentice"] == f"'{said}"


def test_sureness_is_held_against_the_truth_in_the_plays_that_count() -> None:
    plays = [
        PLAY, replace(PLAY, verdict="wrong"), replace(PLAY, scenario="b", verdict="wrong"),
        replace(PLAY, scenario="c", verdict="partly"), replace(PLAY, scenario="d", sure="guess"),
        replace(PLAY, scenario="e", sure="", verdict="wrong"),
    ]  # fmt: skip
    found = calibration(plays)
    assert (found.sure_right, found.sure_wrong, found.doubtful_right) == (1, 2, 1)


def test_no_subsystem_is_told_of_a_case_that_was_only_left() -> None:
    """Regression: read one thing, leave, and the progress named the subsystem of the truth."""
    left = replace(PLAY, verdict="left", sure="")
    assert progress([left]) == ()
    assert "refrigerant" not in as_csv([left])
    assert [each.plays for each in progress([left, PLAY])] == [2]
    assert "refrigerant" in as_csv([left, PLAY])


def test_a_guess_that_came_off_is_not_sure_and_right() -> None:
    """Regression: sure of the caller's words, without a reading, was sure and right."""
    found = calibration([replace(PLAY, reasoned=False)])
    assert (found.sure_right, found.sure_wrong) == (0, 0)


def test_progress_takes_the_first_play_of_each_scenario() -> None:
    plays = [
        PLAY, replace(PLAY, points=95), replace(PLAY, scenario="other", points=60, failed=True),
        replace(PLAY, subsystem="gas", scenario="third", points=10),
    ]  # fmt: skip
    gas, refrigerant = progress(plays)
    assert (gas.subsystem, gas.mean) == ("gas", 10)
    assert (refrigerant.plays, refrigerant.scenarios, refrigerant.mean) == (3, 2, 70)
    assert refrigerant.failures == 1
