"""`troubleshoot practise`: listing, playing, the record, and files of one's own."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest

Command = Callable[..., tuple[int, str, str]]
OPEN_AND_RUN = (
    "step roof go", "step tell the people", "step combustible", "step prove the tester",
    "step stop the unit", "step panel with the power", "step tools", "step call for",
)  # fmt: skip
PLAYED = (
    "help", "tests", "tests site", "find history", "find read history", "visit history", "1",
    "steps", "unit", "state", *OPEN_AND_RUN, "step connect gauges", "subcooling", "1", "8 to 12",
    "how", "readings", "hint", "call", "low charge leak", "1", "", "", "", "",
)  # fmt: skip


def test_scenarios_are_listed_by_subsystem_and_difficulty(command: Command) -> None:
    code, out, _ = command("practise")
    lines = out.splitlines()
    assert code == 0
    assert lines.index("refrigerant") < lines.index("  1 gas-added-in-june")
    assert lines.index("  1 gas-added-in-june") < lines.index("  2 ice-on-one-half")


def test_a_play_is_debriefed_kept_listed_and_exported(
    command: Command,
    typed: Callable[..., None],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setenv("COLUMNS", "40")
    typed(*PLAYED)
    code, out, err = command("practise", "gas-added-in-june", "--apprentice", "Learner One")
    assert (code, err) == (0, "")
    shown, _, after = out.partition("DEBRIEF\n")
    assert "three pounds added" in shown and "220 psig" in shown
    assert after.startswith("Right.")
    assert "Expert:" in after and "rules explain" in after
    assert not [line for line in out.splitlines() if re.search(r"\w-$", line)]
    assert max(len(line) for line in out.splitlines() if not line.startswith(">")) <= 40

    code, out, _ = command("practise", "--apprentice", "Learner One")
    assert "gas-added-in-june: " in out and "points" in out
    code, out, _ = command("practise", "--apprentice", "Learner One", "--progress")
    out = " ".join(out.split())
    assert "refrigerant: 1 scenario, 1 play " in out and "Next: troubleshoot practise" in out
    file = tmp_path / "record.csv"
    code, out, _ = command("practise", "--apprentice", "Learner One", "--export", str(file))
    assert code == 0 and out.startswith("1 play in")
    assert file.read_text("utf-8").splitlines()[1].startswith("2")
    code, out, _ = command("practise", "--progress")
    assert "Nothing has been played yet." in out


def test_leaving_keeps_nothing(command: Command, typed: Callable[..., None]) -> None:
    for lines in (["visit history", "1", "q"], ["visit history"]):
        typed(*lines)
        code, out, _ = command("practise", "gas-added-in-june")
        assert code == 0 and out.endswith("You left; nothing is kept of this play.\n")
    assert "Nothing has been played yet." in command("practise", "--progress")[1]


def test_a_stop_that_is_obeyed_ends_the_play(command: Command, typed: Callable[..., None]) -> None:
    typed("visit history", "1", "stop", "")
    code, out, _ = command("practise", "somebody-can-smell-gas")
    assert code == 0
    assert "STOPPED: this could have hurt someone." in out
    assert "FAILED ON SAFETY, whatever the answer." in out
    typed("stop", "gas leak at", "", "", "", "")
    code, out, _ = command("practise", "somebody-can-smell-gas")
    out = " ".join(out.split())
    assert "Handed over: right. What would you tell them was found?" in out
    assert "What lies behind it?" not in out
    assert "Right. 100 points of 100." in out


def test_a_standing_stop_is_told_in_full_once(command: Command, typed: Callable[..., None]) -> None:
    typed("visit history", "1", "1", "q")
    out = " ".join(command("practise", "nursery-alarm-chirped")[1].split())
    assert out.count("A STOP stands: If an alarm sounds, it shows 70 ppm") == 1
    assert out.count("A STOP stands: do what was said above. stop hands the job over.") == 1


def test_the_first_refusal_says_where_the_steps_are(
    command: Command, typed: Callable[..., None]
) -> None:
    typed("find air filters", "1", "1", "q")
    out = " ".join(command("practise", "gas-added-in-june")[1].split())
    assert out.count("Filters needs first:") == 2
    assert out.count("steps lists the steps; state tells what is done.") == 1


def test_the_call_can_be_read_again(command: Command, typed: Callable[..., None]) -> None:
    typed("unit", "q")
    out = command("practise", "gas-added-in-june")[1]
    assert out.count("Parcel office at Quarry Road") == 2 and out.count("In June somebody put") == 2


def test_a_safety_step_cannot_be_doubted(command: Command, typed: Callable[..., None]) -> None:
    typed("step roof", "doubt it was windy", "step roof", "state", "q")
    out = command("practise", "gas-added-in-june")[1]
    assert "The last thing done was no reading: nothing to doubt." in out
    assert "Kept, but it counts for nothing" not in out


def test_what_cannot_be_understood_is_answered_and_asked_again(
    command: Command, typed: Callable[..., None]
) -> None:
    typed(
        "flapdoodle", "99", "tests nowhere", "step flapdoodle", "doubt", "doubt it", "again",
        "how", "how step lock and", "how step flapdoodle", "call", "flapdoodle", "", "stop", "q",
    )  # fmt: skip
    code, out, _ = command("practise", "gas-added-in-june")
    assert code == 0
    for said in (
        'No test here is called "flapdoodle"', "No such number", "No area begins with nowhere",
        'No safety step is called "flapdoodle"', "Say why: doubt REASON",
        "The last thing done was no reading", "There is nothing to read again",
        'No cause here is called "flapdoodle"', "Nothing found so far stops the job",
    ):  # fmt: skip
        assert said in " ".join(out.split()), said


def test_a_new_file_is_written_once_and_can_be_played(
    command: Command, typed: Callable[..., None], tmp_path: Path
) -> None:
    file = tmp_path / "tea-rooms.yaml"
    assert command("practise", "new", str(file))[0] == 0
    code, _, err = command("practise", "new", str(file))
    assert code == 2 and "is there already" in err
    typed("air filters", "q")
    code, out, _ = command("practise", str(file))
    assert code == 0 and out.startswith("Tea rooms")
    file.write_text(file.read_text("utf-8").replace("104 psig", "134 psig"), "utf-8")
    code, _, err = command("practise", str(file))
    assert code == 1 and "superheat comes to" in err
    file.write_text(file.read_text("utf-8").replace("format: 1", "format: 2"), "utf-8")
    code, _, err = command("practise", str(file))
    assert code == 1 and "tea-rooms.yaml:4:" in err
    file.write_bytes(b"\xff\xfe")
    code, _, err = command("practise", str(file))
    assert code == 2 and err == f"{file}: line 1 is not UTF-8 text; save it as UTF-8\n"


def test_a_drawn_case_is_played_like_any_other(
    command: Command, typed: Callable[..., None]
) -> None:
    typed("call", "nothing")
    code, out, _ = command("practise", "--draw", "condensate", "--seed", "2")
    assert code == 0 and out.startswith("Drawn case 2, the")
    assert "Wrong." in out and "It was: " in out


def test_progress_begins_with_the_weakest_subsystem(
    command: Command, typed: Callable[..., None]
) -> None:
    for name in ("quoted-a-compressor", "gas-added-in-june"):
        typed("do visit history", "call", "nothing")
        command("practise", name)
    lines = command("practise", "--progress")[1].splitlines()
    assert lines[0].startswith(".......... 0 refrigerant: 1 scenario, 1 play")
    assert lines[1].startswith("########## 100 compressor electrical: ")


def test_a_subsystem_may_be_said_as_it_is_listed(
    command: Command, typed: Callable[..., None]
) -> None:
    for said in ("indoor-blower", "Indoor blower"):
        typed("q")
        code, out, _ = command("practise", "--draw", said, "--seed", "2")
        assert code == 0 and out.startswith("Drawn case 2, the")


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("gas-aded-in-june",), "did you mean gas-added-in-june?"),
        (("nothing/here.yaml",), "there is no scenario or file nothing/here.yaml"),
        (("one", "two"), "one scenario at a time"),
        (("one", "--draw", "power"), "one scenario at a time"),
        (("--difficulty", "3"), "add --draw SUBSYSTEM"),
        (("--seed", "3"), "add --draw SUBSYSTEM"),
        (("new",), "say which file"),
        (("schema", "fault"), "troubleshoot practise schema"),
        (("--draw", "powder"), "powder is no subsystem"),
        (("--export", "/nowhere/at/all.csv"), "cannot be written"),
    ],
)
def test_what_cannot_be_done_is_one_sentence(
    command: Command, words: tuple[str, ...], says: str
) -> None:
    code, out, err = command("practise", *words)
    assert (code, out) == (2, "")
    assert says in err and len(err.splitlines()) == 1
