"""Choosing a test in a practice: by number or name, its place, and a guess at a sound reading."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

Command = Callable[..., tuple[int, str, str]]
Typed = Callable[..., None]
TO_THE_GAUGES = (
    "step roof", "step tell the people", "step combustible", "step prove the", "step controls",
    "step tools", "step call for", "step connect",
)  # fmt: skip
OPENED = ("step controls", "step panel with", "step tools", "step call for")


@pytest.fixture
def shown(command: Command, typed: Typed, monkeypatch: pytest.MonkeyPatch) -> Callable[..., str]:
    """What is said while these lines are typed, on a phone: line breaks are taken out."""
    monkeypatch.setenv("COLUMNS", "40")

    def play(name: str, *lines: str) -> str:
        typed(*lines, "q")
        code, out, err = command("practise", name)
        assert (code, err) == (0, "")
        return " ".join(out.split())

    return play


def test_places_are_listed_one_a_line(
    command: Command, typed: Typed, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "40")
    typed("tests cap", "1", "", "q")
    out = command("practise", "mill-lane")[1].splitlines()
    at = out.index("Where?")
    assert out[at + 1 : at + 4] == [
        "  1 capacitor compressor 1",
        "  2 capacitor condenser fan 1",
        "  3 capacitor blower",
    ]


def test_a_place_that_does_not_exist_is_refused_where_there_is_only_one(
    shown: Callable[..., str],
) -> None:
    out = shown("mill-lane", *TO_THE_GAUGES, "head pressure", "1 at circuit 3", "y", "")
    assert 'this unit has no "circuit 3" for that; say "circuit 1".' in out
    assert "guess >" not in out
    out = shown("mill-lane", "visit history", "1 at circuit 1")
    assert "this concerns the whole unit; leave the place out." in out
    assert "+5 min" not in out


def test_a_place_that_could_be_several_is_asked_again(shown: Callable[..., str]) -> None:
    out = shown("lock-house", "find superheat at", "1", "y", "circuit", "circuit 2")
    assert '"circuit" could be circuit 1 or circuit 2.' in out
    assert out.count("Where?") == 2


@pytest.mark.parametrize("words", ["do 1", "do visit history", "do who was here, and"])
def test_do_takes_a_test_by_number_or_name_as_on_a_visit(
    shown: Callable[..., str], words: str
) -> None:
    out = shown("mill-lane", "find visit history", words)
    assert "+5 min, 5 in all" in out


def test_do_takes_a_test_at_a_place_and_lists_what_could_be_meant(
    shown: Callable[..., str],
) -> None:
    out = shown(
        "mill-lane",
        *TO_THE_GAUGES, *OPENED,
        "do condenser fan amps at condenser fan 1", "1.5", "do", "do capacitor",
    )  # fmt: skip
    assert "Condenser fan amps, each leg: locked rotor." in out
    assert "do with a number of the last list, or with a test's name." in out
    assert "Capacitor from outside (1 min, 3 places, locked out)" in out


def test_how_at_a_guess_tells_of_the_test_that_is_asked_and_asks_again(
    shown: Callable[..., str],
) -> None:
    out = shown(
        "mill-lane",
        *TO_THE_GAUGES, "do head pressure", "?", "15",
    )  # fmt: skip
    after = out.partition("Head pressure and condensing over ambient: what")[2]
    assert "read the head pressure and turn it into a temperature" in after
    assert after.count("guess >") == 2
    assert "585 psig" in after


def test_a_guess_without_a_number_is_asked_again_and_costs_nothing(
    shown: Callable[..., str],
) -> None:
    out = shown("mill-lane", *TO_THE_GAUGES, "do head pressure", "hot", "q")
    assert "A number, or a range such as 8 to 12; Enter if you do not know." in out
    assert "585 psig" not in out


def test_a_guess_says_what_it_is_of_where_the_meter_shows_something_else(
    shown: Callable[..., str],
) -> None:
    out = shown("mill-lane", *TO_THE_GAUGES, "do head pressure", "", *OPENED, "do fan amps")
    assert "what would a sound unit read (condensing over ambient, F)?" in out
    assert "Condenser fan amps, each leg: what would a sound unit read (A)?" in out


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ("capacitence", "did you mean capacitance?"),
        ("find hed pressure", "did you mean head pressure?"),
        ("tests capasitors", "No area begins with capasitors; did you mean capacitors?"),
        ("step profe meter", "did you mean prove meter?"),
        ("flapdoodle", "try find with one word of it, or help."),
        ("tests flapdoodle", "tests alone lists the areas."),
    ],
)
def test_a_misspelt_word_is_answered_with_the_nearest_one(
    shown: Callable[..., str], words: str, says: str
) -> None:
    assert says in shown("mill-lane", words)


def test_a_test_is_found_by_its_area_as_well(shown: Callable[..., str]) -> None:
    out = shown("mill-lane", "capacitor")
    listed = out.partition("> capacitor")[2]
    assert "Capacitance, leads lifted" in listed and "Capacitor from outside" in listed
    assert listed.index("Capacitor from outside") < listed.index("Capacitance, leads lifted")


def test_a_test_with_an_at_of_its_own_is_done_by_name(shown: Callable[..., str]) -> None:
    """Regression: do look at the flame listed all that is looked at."""
    out = shown("pump-square", "do look at the flame")
    assert "Look at the flame needs first:" in out


def test_the_areas_fit_on_one_screen(shown: Callable[..., str]) -> None:
    """Regression: the first word that is proposed ended in a page of its own."""
    out = shown("pump-square", "tests").partition("> tests")[2].partition("> ")[0]
    assert "ignition: " in out and len(out.splitlines()) <= 20


def test_nothing_lies_behind_in_a_word(shown: Callable[..., str]) -> None:
    """Regression: `nothing` offered causes called so, and the next number took a wrong one."""
    out = shown("mill-lane", "call", "condenser fan capacitor", "1", "", "nothing", "", "", "3")
    behind = out.partition("What lies behind it?")[2].partition("What puts it right?")
    assert behind[1] and "could be" not in behind[0] and "Start delay" not in behind[0]


def test_a_word_of_several_steps_is_asked_about(shown: Callable[..., str]) -> None:
    """Regression: `how step lock` told of the second source of power; CO was among nine."""
    for words in ("how step lock", "step lock"):
        out = shown("mill-lane", words)
        assert '"lock" could be "Switch off, lock, tag and try" or' in " ".join(out.split())
    assert "could be" not in shown("pump-square", "how step CO")


def test_find_lists_every_test_that_is_called_so(shown: Callable[..., str]) -> None:
    """Regression: find igniter kept back the ohms that decide the case."""
    out = shown("pump-square", "find igniter")
    assert "1 Igniter volts and glow" in out and "2 Hot-surface igniter, cold ohms" in out


def test_how_says_what_a_test_of_the_list_needs_first(shown: Callable[..., str]) -> None:
    """Regression: neither list, how nor state said so, and the first number failed the play."""
    out = shown("pump-square", "find igniter", "how 1")
    assert "how 1 says what number 1 needs first" in " ".join(out.split())
    needs = out.partition("Needs first:")[2]
    assert "- the roof found safe to work on" in needs and "the meter proved" in needs


def test_a_number_is_said_back_before_a_live_test(shown: Callable[..., str]) -> None:
    """Regression: of two tests called walk the live one was done for a mistyped number."""
    out = shown("pump-square", "find igniter", "1", "")
    assert "1 is Igniter volts and glow, live." in out and "Not done." in out
    assert "STOPPED" not in out
    out = shown("pump-square", "find igniter", "1", "y")
    assert "STOPPED: this could have hurt someone." in out


def test_a_row_of_steps_protects_nobody(shown: Callable[..., str]) -> None:
    """Regression: `step 3,7,8,9` did a whole lock-out in one line."""
    out = shown("mill-lane", "step roof, tell the people, lock", "state")
    assert "done by itself: one step a line" in out
    assert "Not done: roof, tell the people, lock." in out


def test_a_row_says_what_it_left_undone(shown: Callable[..., str]) -> None:
    out = shown("mill-lane", "step flapdoodle, panels on")
    assert "Not done: panels on." in out


def test_among_listed_causes_other_words_may_be_typed(shown: Callable[..., str]) -> None:
    out = shown("mill-lane", "call", "compressor", "fan capacitor", "", "")
    assert re.search("and [0-9]+ more: say more words of it[.]", out)
    assert "Called: Condenser fan run capacitor weak or open." in out
    out = shown("mill-lane", "call", "capacitr", "compressor", "99", "", "")
    assert 'No cause here is called "capacitr"; did you mean capacitor?' in out
    assert 'No cause here is called "99"; other words, or Enter.' in out


def test_a_subsystem_lists_the_tests_of_all_its_areas(shown: Callable[..., str]) -> None:
    out = shown("mill-lane", "tests compressor electrical")
    assert "Compressor amps" in out and "Compressor windings" in out
    assert "did you mean whole unit?" in shown("mill-lane", "tests hole unit")


def test_no_area_is_named_in_a_programmers_words(shown: Callable[..., str]) -> None:
    out = shown("mill-lane", "tests", "tests thermometer")
    assert "inputs" not in out and "thermometer and meter: " in out
    assert "Suction line temperature" in out
