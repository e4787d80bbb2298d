"""`troubleshoot practise`: listing, playing, the record, and files of one's own."""

from __future__ import annotations

import re
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.loading import load_scenarios, scenario_paths

Command = Callable[..., tuple[int, str, str]]
OPEN_AND_RUN = (
    "step roof go", "step tell the people", "step combustible", "step prove the tester",
    "step stop the unit", "step panel with the power", "step tools", "step call for",
)  # fmt: skip
RUN_SHUT = (*OPEN_AND_RUN[:5], *OPEN_AND_RUN[-2:])
PLAYED = (
    "help", "tests", "tests site", "find history", "find read history", "visit history", "1",
    "steps", "unit", "state", *RUN_SHUT, "step connect gauges", "subcooling", "1", "y",
    "8 to 12", *OPEN_AND_RUN[4:], "do sight glass", "how", "readings", "hint",
    "call", "low charge leak", "1", "", "", "", "", "1",
)  # fmt: skip


def test_the_list_tells_call_season_and_difficulty_and_no_more(
    command: Command, shipped: Knowledge
) -> None:
    """Regression: the heading was the subsystem of the true fault in 40 of 40."""
    code, out, _ = command("practise")
    assert code == 0
    assert "quarry-road: summer, plain\n" in out
    assert '"Last year it was good. In June somebody put some gas in' in out
    lines = out.splitlines()
    heads = [line for line in lines if not line.startswith(" ")]
    of = {scenario.id: scenario for scenario in load_scenarios(shipped)}
    assert len(heads) == len(of) + 1
    for head in heads[:-1]:
        assert re.fullmatch(
            r"[a-z-]+: (summer|winter|spring or fall), (plain|takes thought|misleads)", head
        )
        name = head.partition(":")[0]
        assert shipped.spoken(of[name].subsystem) not in head


def test_a_play_is_debriefed_kept_listed_and_exported(
    command: Command,
    typed: Callable[..., None],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setenv("COLUMNS", "40")
    typed(*PLAYED)
    code, out, err = command("practise", "quarry-road", "--apprentice", "Learner One")
    assert (code, err) == (0, "")
    shown, _, after = out.partition("DEBRIEF\n")
    assert "three pounds added" in shown and "220 psig" in shown
    assert after.startswith("Right.")
    assert "Expert:" in after and "rules explain" in after
    assert not [line for line in out.splitlines() if re.search(r"\w-$", line)]
    assert max(len(line) for line in out.splitlines() if not line.startswith(">")) <= 40

    code, out, _ = command("practise", "--apprentice", "Learner One")
    assert re.search(r"quarry-road: summer, plain\n.*\n.*\n? .* points\n", out, re.S)
    code, out, _ = command("practise", "--apprentice", "Learner One", "--progress")
    out = " ".join(out.split())
    assert "refrigerant: 1 scenario, 1 play " in out
    assert "You were sure and wrong: never; sure and right: 1 time." in out
    code, out, _ = command("practise", "--apprentice", "Learner One", "--course")
    assert "Next: troubleshoot practise" in out
    file = tmp_path / "record.csv"
    code, out, _ = command("practise", "--apprentice", "Learner One", "--export", str(file))
    assert code == 0 and out.startswith("1 play in")
    assert file.read_text("utf-8").splitlines()[1].startswith("2")
    kept = file.read_bytes()
    code, _, err = command("practise", "--export", str(file))
    assert code == 2 and "is there already" in err and file.read_bytes() == kept
    everyone = tmp_path / "everyone.csv"
    assert command("practise", "--export", str(everyone))[1].startswith("1 play in")
    code, out, _ = command("practise", "--progress")
    assert "Nothing has been played yet." in out


def test_an_answer_shown_to_another_name_counts_half(
    command: Command, typed: Callable[..., None]
) -> None:
    """Regression: show as Decoy, then 100 points under one's own name."""
    typed("show", "show", "")
    command("practise", "church-field", "--apprentice", "Decoy")
    typed("stop", "gas leak at", "", "", "", "")
    out = command("practise", "church-field", "--apprentice", "Learner")[1]
    assert "shown in this data folder under another name" in " ".join(out.split())
    assert "Right. 50 points of 100." in out


def test_an_answer_called_after_one_reading_by_another_name_counts_half(
    command: Command, typed: Callable[..., None]
) -> None:
    """Regression: one test and any call as Decoy told the answer, and cost its owner nothing."""
    typed("visit history", "1", "call", "overcharge", "1", "1", "", "", "", "", "1")
    out = command("practise", "quarry-road", "--apprentice", "Decoy")[1]
    assert "DEBRIEF" in out and "1 test." in out
    typed("q")
    out = command("practise", "quarry-road", "--apprentice", "Learner")[1]
    assert "shown in this data folder under another name" in " ".join(out.split())


def test_a_name_of_the_same_letters_is_told_whose_record_it_is(
    command: Command, typed: Callable[..., None]
) -> None:
    """Regression: =Jo, @Jo and jo shared a record, and nobody was told."""
    typed("visit history", "1", "q")
    command("practise", "quarry-road", "--apprentice", "=Jo")
    for option in ("--progress", "--course", "--apprentice"):
        more = () if option == "--apprentice" else (option,)
        assert "The record of =Jo:" in command("practise", "--apprentice", "jo", *more)[1]
        assert "The record of" not in command("practise", "--apprentice", "=Jo", *more)[1]
    typed("q")
    assert "The record of =Jo:" in command("practise", "quarry-road", "--apprentice", "jo")[1]


def test_leaving_before_anything_is_done_keeps_nothing(
    command: Command, typed: Callable[..., None]
) -> None:
    typed("tests", "q")
    code, out, _ = command("practise", "quarry-road")
    assert code == 0 and "You left before anything was done" in out
    assert "Nothing has been played yet." in command("practise", "--progress")[1]


@pytest.mark.parametrize("lines", [["visit history", "1", "q"], ["visit history", "1"]])
def test_leaving_later_is_kept_and_the_next_play_is_practice(
    lines: list[str], command: Command, typed: Callable[..., None]
) -> None:
    """Regression: whoever looked, left and played again was marked on the second play."""
    typed(*lines)
    code, out, _ = command("practise", "quarry-road")
    assert code == 0 and out.endswith("You left; the play is kept as left, without points.\n")
    typed("call", "low charge leak", "1", "", "", "", "", "1")
    out = command("practise", "quarry-road")[1]
    assert re.match("Played first on ....-..-.., and that play counts. This is practice.", out)
    assert re.search(r"\n  ....-..-..: left\n", command("practise")[1])


@pytest.mark.parametrize(
    "lines",
    [
        ["find line volts", "1", "y", "q"],
        ["step verified dead", "q"],
        ["stop", "q"],
        ["visit history", "1", "danger gas"],
        ["step verified dead", "danger gas"],
    ],
)
def test_no_way_to_end_a_play_leaves_it_out_of_the_record(
    lines: list[str], command: Command, typed: Callable[..., None]
) -> None:
    """Regression: a slip and q, or danger, and the next play stood as the first."""
    typed(*lines)
    command("practise", "mill-lane")
    typed("q")
    again = command("practise", "mill-lane")[1]
    assert "Played first on" in again


def test_a_play_whose_window_was_closed_is_kept_as_it_stood(
    command: Command, typed: Callable[..., None], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Regression: SIGHUP or kill after a failure, and nothing had been played yet."""

    def killed(*_: object) -> None:
        raise SystemExit

    typed("step verified dead", "hint")
    with monkeypatch.context() as patched:
        patched.setattr("troubleshoot.cli.practice.play.Play._hint", killed)
        with suppress(SystemExit):
            command("practise", "mill-lane")
    assert re.search(r"1 play", command("practise", "--progress")[1])
    typed("q")
    assert "Played first on" in command("practise", "mill-lane")[1]
    assert re.search(r": (left|failed on safety)\n", command("practise")[1])


def test_the_first_play_counts_however_good_the_second(
    command: Command, typed: Callable[..., None]
) -> None:
    """Regression: a replay kept the best result, 40 and then 95."""
    typed("call", "nothing", "3")
    assert "0 points" in command("practise", "quarry-road")[1]
    typed(*PLAYED)
    assert "Right." in command("practise", "quarry-road")[1]
    assert re.search(r"\n  ....-..-..: 0 points\n", command("practise")[1])


def test_giving_up_shows_everything_for_no_points(
    command: Command, typed: Callable[..., None]
) -> None:
    typed("visit history", "1", "show", "", "show", "show")
    out = command("practise", "quarry-road")[1]
    assert "Shown, as you asked. 0 points of 100." in out
    assert "It was: Low charge from a leak" in out and "To take home:" in out
    assert "You called" not in out
    assert re.search(r"\n  ....-..-..: shown\n", command("practise")[1])


def test_every_prompt_of_a_call_takes_a_question_mark_and_q(
    command: Command, typed: Callable[..., None]
) -> None:
    before = ("call", "?", "low charge leak", "?", "1", "", "?")
    for more in ((), ("", "?"), ("", "", "?"), ("", "", "", "?")):
        typed(*before, *more, "q")
        code, out, err = command("practise", "quarry-road")
        assert (code, err) == (0, "") and "You left" in out
        assert out.count("q leaves.") == 3 + bool(more), more


def test_no_list_of_a_call_holds_what_only_the_truth_would_put_there(
    command: Command, typed: Callable[..., None]
) -> None:
    """Regression: the true repair was always among the choices."""
    typed("call", "flame rod dirty", "", "", "", "", "")
    out = command("practise", "ferry-green")[1]
    assert "It was: " in out
    typed("call", "belt slipping", "", "", "", "", "")
    asked = command("practise", "tannery-walk")[1].partition("DEBRIEF")[0]
    assert "What puts it right?" in asked
    assert "drier" not in asked.partition("What puts it right?")[2].lower()


def test_an_unneeded_step_does_not_drop_the_rest_of_the_row(
    command: Command, typed: Callable[..., None]
) -> None:
    typed("step drive, gauges off", "q")
    out = " ".join(command("practise", "quarry-road")[1].split())
    assert "this unit does not need it." in out and "Take the gauges off needs first" in out


def test_a_step_has_the_same_number_on_every_unit(
    command: Command, typed: Callable[..., None]
) -> None:
    """Regression: where a unit had no drive, every number behind it was another."""
    numbers = []
    for name in ("quarry-road", "corn-exchange", "ferry-green"):
        typed("steps", "q")
        listed = command("practise", name)[1].splitlines()
        numbers.append({line for line in listed if re.match("  [0-9]+ [A-Z]", line)})
    assert all(len(a & b) > 20 for a in numbers for b in numbers)
    first = {line.split()[0]: line for line in numbers[0]}
    assert all(first.get(line.split()[0], line) == line for line in numbers[1] | numbers[2])


def test_the_state_says_what_dead_lacks_and_what_has_expired(
    command: Command, typed: Callable[..., None]
) -> None:
    """Regression: refused with "needs: dead proved" while the state said "tested"."""
    typed(
        *OPEN_AND_RUN[:4], "step stop the unit", "step switch off", "step take the panels",
        "step test for dead", "state", "step prove the", "state", "q",
    )  # fmt: skip
    out = " ".join(command("practise", "quarry-road")[1].split())
    first, second = out.split("dead still lacks: ")[1:]
    assert first.startswith("Prove the") and "Test for dead" in first
    assert not second.startswith("Prove the") and "done: " in out and "(until " in out


def test_a_stop_that_is_obeyed_ends_the_play(command: Command, typed: Callable[..., None]) -> None:
    typed("visit history", "1", "1", "stop", "")
    code, out, _ = command("practise", "church-field")
    assert code == 0
    assert out.count("STOPPED: this could have hurt someone.") == 2
    assert out.index("The same again fails") < out.index("The play counts as failed.")
    assert "FAILED ON SAFETY, whatever the answer (" in out
    typed("stop", "gas leak at", "", "", "", "")
    code, out, _ = command("practise", "church-field")
    out = " ".join(out.split())
    assert "Handed over: right. What would you tell them was found?" in out
    assert "What lies behind it?" not in out
    assert "Right. 100 points of 100." in out


def test_a_standing_stop_is_told_in_full_once(command: Command, typed: Callable[..., None]) -> None:
    typed("visit history", "1", "1", "q")
    out = " ".join(command("practise", "rose-yard")[1].split())
    assert out.count("A STOP stands: If an alarm sounds, it shows 70 ppm") == 1
    assert out.count("A STOP stands: do what was said above. stop hands the job over.") == 1


def test_the_first_refusal_says_where_the_steps_are(
    command: Command, typed: Callable[..., None]
) -> None:
    typed("find air filters", "1", "1", "q")
    out = " ".join(command("practise", "quarry-road")[1].split())
    assert out.count("Filters needs first:") == 2
    assert out.count("steps lists the steps; state tells what is done.") == 1


def test_the_call_can_be_read_again(command: Command, typed: Callable[..., None]) -> None:
    typed("unit", "q")
    out = command("practise", "quarry-road")[1]
    assert out.count("Parcel office at Quarry Road") == 2 and out.count("In June somebody put") == 2


def test_a_safety_step_cannot_be_doubted(command: Command, typed: Callable[..., None]) -> None:
    typed("step roof", "doubt it was windy", "step roof", "state", "q")
    out = command("practise", "quarry-road")[1]
    assert "The last thing done was no reading: nothing to doubt." in out
    assert "Kept, but it counts for nothing" not in out


def test_what_cannot_be_understood_is_answered_and_asked_again(
    command: Command, typed: Callable[..., None]
) -> None:
    typed(
        "flapdoodle", "99", "tests nowhere", "step flapdoodle", "doubt", "doubt it", "again",
        "how", "how step lock and", "how step flapdoodle", "call", "flapdoodle", "", "stop", "q",
    )  # fmt: skip
    code, out, _ = command("practise", "quarry-road")
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
    typed("call", "nothing", "")
    code, out, _ = command("practise", "--draw", "condensate", "--seed", "2")
    assert code == 0 and out.startswith("Drawn case 2, the")
    assert "Wrong." in out and "It was: " in out


def test_progress_begins_with_the_weakest_subsystem(
    command: Command, typed: Callable[..., None]
) -> None:
    for name in ("drovers-yard", "quarry-road"):
        typed("do visit history", "call", "nothing", "")
        command("practise", name)
    lines = command("practise", "--progress")[1].splitlines()
    assert lines[0].startswith(".......... 0 refrigerant: 1 scenario, 1 play")
    assert re.match("####...... 4[0-9] compressor electrical: ", lines[1])


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
        (("quarry-rod",), "did you mean quarry-road?"),
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


def test_a_drawn_unit_is_acted_on_at_its_price(
    command: Command, typed: Callable[..., None]
) -> None:
    typed("act", "act the roof", "act drain", "1", "no", "act drain", "1", "y", "q")
    out = " ".join(command("practise", "--draw", "condensate", "--seed", "2")[1].split())
    assert "act with what you would put right" in out
    assert 'Nothing that can be done here is called "the roof".' in out
    assert "y does it, Enter leaves it >" in out and " min; " in out
    assert "STOPPED: this could have hurt someone." in out and "before hands go in" in out


@pytest.mark.parametrize("word", ["", "1", "no", "go on"])
def test_a_deed_wants_yes_typed_and_says_that_it_was_not_done(
    word: str, command: Command, typed: Callable[..., None]
) -> None:
    """Regression: Enter did the deed, and y left it without a word."""
    typed("act drain", "1", word, "q")
    out = command("practise", "--draw", "condensate", "--seed", "2")[1]
    assert "Not done." in out and "STOPPED" not in out


@pytest.mark.parametrize("name", ["church-field", "rose-yard", "quay-house"])
def test_below_a_danger_the_next_word_is_stop(
    name: str, command: Command, typed: Callable[..., None]
) -> None:
    """Regression: it said that tests is a good start."""
    typed("q")
    out = " ".join(command("practise", name)[1].split())
    assert "stop hands it over" in out and "good start" not in out


def test_who_stops_a_helper_is_praised_and_goes_on(
    command: Command, typed: Callable[..., None]
) -> None:
    typed("stop", "show", "show")
    out = " ".join(command("practise", "canal-wharf")[1].split())
    assert "Right: you stopped the helper, hands out." in out and "minute lost" not in out
    assert "You stopped the helper before hands went in: right." in out
    typed("show", "show")
    out = " ".join(command("practise", "canal-wharf")[1].split())
    assert "You let the helper reach in" in out


def test_a_file_with_the_name_of_a_shipped_scenario_never_counts_as_it(
    command: Command, typed: Callable[..., None], tmp_path: Path
) -> None:
    """Regression: an easy fault under a shipped name counted for the list, course and CSV."""
    forged = tmp_path / "quarry-road.yaml"
    forged.write_text(scenario_paths()["quarry-road"].read_text("utf-8"), "utf-8")
    typed("visit history", "1", "q")
    command("practise", str(forged))
    typed("q")
    assert "Played first on" not in command("practise", "quarry-road")[1]


def test_nothing_is_done_to_a_unit_that_does_not_move(
    command: Command, typed: Callable[..., None]
) -> None:
    typed("act filters", "q")
    assert "Nothing can be done to this unit" in command("practise", "pump-square")[1]
