"""`rules new` at a terminal: a story becomes a card that the checks and its own examples hold."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from tests.edge.person import Person
from troubleshoot.cli.failures import Failure
from troubleshoot.cli.workshop.new_card import write_new

Call = Callable[..., tuple[int, str, str]]

STORY = (
    ("site >", "The north shop"),
    ("name >", "Blower belt ground away by its sheaves"),
    ("case >", 'belt dust on the blower: low air, the far rooms "starve" # every summer'),
    ("part >", "indoor blower"),
    ("how common", "2"),
    ("each", ""),
    ("units", ""),
    ("call >", "hardly any air"), ("which", "1"), ("how often", "1"), ("call >", ""),
    ("reading >", "sheaves"), ("which", "1"), ("shows >", "worn"), ("how often", "1"),
    ("reading >", "belt"), ("which", "1"), ("shows >", "3"), ("how often", "2"),
    ("reading >", ""),
    ("other fault >", "loaded filters"), ("which", "1"), ("other fault >", ""),
    ("why >", "Sheaves out of line: 1/8 in is enough."),
    ("if left >", "It throws the belt, and the coil freezes."),
    ("repair >", "Gauge the sheaves, line them up and fit a belt of the right size."),
    ("minutes >", "60"), ("cost >", "2"), ("who >", "1"),
    ("proof >", "The belt runs true at its tension"),
    ("reading >", "belt"), ("which", "1"), ("shows >", "good"),
    ("source", ""),
)  # fmt: skip
"""The prompt that is expected, and what is typed at it."""
CARD = "faults/indoor-blower/blower-belt-ground-away-by-its-sheaves.yaml"


def prompt(person: Person) -> str:
    """The prompt that the screen ends with."""
    return person.last.splitlines()[-1]


def told(person: Person, story: Iterator[tuple[str, str]] | None = None) -> None:
    for wanted, typed in story or iter(STORY):
        assert wanted in prompt(person), person.last
        person.types(typed)


def test_a_story_becomes_a_card_that_is_checked_and_tried(
    data: Path, tmp_path: Path, command: Call
) -> None:
    """At every prompt ?, a comma, and q with second thoughts, change nothing."""
    folder = tmp_path / "north"
    with Person(data, "rules", "new", str(folder), lines=60) as person:
        for wanted, typed in STORY:
            assert wanted in prompt(person), person.last
            person.types("?", ",", "q", "")  # which is asked about, and not left
            assert wanted in prompt(person), person.last
            person.types(typed)
        assert "to check it" in prompt(person) and not folder.exists()
        assert "holds" in person.types("") and not folder.exists()
        person.types("y")
        assert person.exit_code == 0
    card = (folder / CARD).read_text("utf-8")
    assert "fault: blower-belt-ground-away-by-its-sheaves\n" in card and "status: draft" in card
    assert command("rules", "format", "--check", str(folder / CARD))[0] == 0
    code, out, _ = command("rules", "check", "--rules", str(folder))
    assert code == 0 and str(folder) not in out
    code, out, _ = command("rules", "test", Path(CARD).stem, "--rules", str(folder))
    assert (code, out) == (0, "2 examples tried, 0 failed, 0 known gaps in draft cards\n")
    assert "Gauge the sheaves" in command("rules", "explain", Path(CARD).stem, "--rules",
                                          str(folder))[1]  # fmt: skip


def test_leaving_writes_nothing(data: Path, tmp_path: Path) -> None:
    with Person(data, "rules", "new", str(tmp_path / "north"), lines=60) as person:
        told(person, iter(STORY[:6]))
        person.types("q", "y")
        assert person.exit_code == 0 and "Nothing was written." in person.said
    assert not (tmp_path / "north").exists()


def test_what_was_said_last_is_taken_back(data: Path, tmp_path: Path) -> None:
    with Person(data, "rules", "new", str(tmp_path / "north"), lines=60) as person:
        told(person, iter(STORY[:3]))
        assert "case >" in person.types("u")
        assert "name >" in person.types("u")
        assert "This is the first question." in person.types("u")
        told(person, iter(STORY[1:11]))
        assert "call >" in person.types("u") and "How often is that call" not in person.last


def test_a_paste_answers_one_question(data: Path, tmp_path: Path) -> None:
    with Person(data, "rules", "new", str(tmp_path / "north"), lines=60) as person:
        person.types("The north shop")
        person.pastes("Blower belt ground away by its sheaves\nq\ny\nrm -rf\n")
        assert "3 lines typed ahead of the question were not read" in person.last
        assert "case >" in prompt(person)


def test_a_small_screen_shows_a_list_page_by_page(data: Path, tmp_path: Path) -> None:
    folder = str(tmp_path / "north")
    with Person(data, "rules", "new", folder, lines=16, reads=False) as person:
        told(person, iter(STORY[:3]))
        assert person.last.endswith("Enter for the rest > ")
        assert "q leaves at the question" in person.types("q")
        while not prompt(person).startswith("part"):
            person.types("")
        assert "how common" in person.types("indoor blower")


@pytest.mark.parametrize(
    ("name", "told"),
    [
        ("Contactor coil open", "is in the rules already"),
        ("24 V lost", "Begin with a word in plain letters."),
        ("x" * 121, "That is 121 letters; 120 at most."),
        ("...", "It is wanted in words."),
    ],
)
def test_a_name_that_would_not_do_is_asked_for_again(
    name: str, told: str, command: Call, typed: Callable[..., None], tmp_path: Path
) -> None:
    typed("The north shop", name, "q", "y")
    code, out, _ = command("rules", "new", str(tmp_path / "north"))
    assert code == 0 and told in out and "Nothing was written." in out


def test_a_folder_of_something_else_is_left_alone(
    command: Call, typed: Callable[..., None], tmp_path: Path
) -> None:
    (tmp_path / "letters.txt").write_text("dear", "utf-8")
    typed("The north shop")
    code, _, failed = command("rules", "new", str(tmp_path))
    assert code == 2 and "has no pack.yaml" in failed


def test_a_file_that_is_there_is_never_written_over(tmp_path: Path) -> None:
    (tmp_path / "card.yaml").write_text("mine", "utf-8")
    with pytest.raises(Failure, match="is there already, and was left as it is"):
        write_new(tmp_path, {"card.yaml": "new"})
    assert (tmp_path / "card.yaml").read_text("utf-8") == "mine"
