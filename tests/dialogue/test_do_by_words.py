"""`do WORDS` finds a test by what people call it; `done` at a step is asked about."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.cli.lines import Lines, book_of, held
from tests.cli.player import Player, play
from troubleshoot.dialogue.commands import GONE, Commands
from troubleshoot.dialogue.meaning import spot_meant
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Talk
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import FactTold, Started
from troubleshoot.visit.hearing.tests_by_words import heard_test

UNIT = {"heat": "gas", "circuits": 1, "line-volts-class": "208-to-240-volt"}


@pytest.mark.parametrize(
    ("words", "taken", "which"),
    [
        ("manifold pressure", "gas-manifold-pressure", ()),
        ("suction-pressure", "suction-pressure", ()),
        ("amps on comp 2", "compressor-amps", ()),
        ("24 at the gas valve during the trial", "gas-valve-volts", ()),
        ("capacitance", None, ("capacitance-out-of-circuit", "capacitance-while-running")),
        ("heater fuses", None, ()), ("lockout", None, ()), ("", None, ()),
    ],
)  # fmt: skip
def test_words_of_its_name_are_enough_and_no_step_or_absent_part_is_meant(
    words: str, taken: str | None, which: tuple[str, ...], shipped: Knowledge
) -> None:
    heard = heard_test(shipped, read_unit(shipped, UNIT), words)
    assert heard.taken == taken and (taken or (*sorted(heard.which),) == which)


def told(shipped: Knowledge, folder: Path, *says: str) -> str:
    player = Player(shipped, {}, says, ["q"])
    play(shipped, folder, player, {"complaint": "no-cooling", "unit": UNIT})
    return player.text


def test_where_several_fit_they_are_listed_by_number(shipped: Knowledge, tmp_path: Path) -> None:
    """Regression: `do capacitance` was refused."""
    text = told(shipped, tmp_path, "do capacitance", "do 1", "q")
    assert "Which of these?" in text and "Not now" not in text
    assert "> do 1" in text.partition("Which of these?")[2]


def test_done_at_a_step_that_protects_asks_what_was_done(
    shipped: Knowledge, tmp_path: Path
) -> None:
    text = told(shipped, tmp_path, "do wiring-burn-marks", "told", "done", "safe", "q")
    assert 'Is the step done? Type "safe".' in text and "visit is closed" not in text


@pytest.mark.parametrize(
    ("words", "place"),
    [
        ("amps on comp 2", "compressor 2"),
        ("compressor amps at 2nd comp", "compressor 2"),
        ("compressor amps at circuit b", "compressor 2"),
    ],
)
def test_where_it_is_meant_is_taken_with_it(
    words: str, place: str, shipped: Knowledge, tmp_path: Path
) -> None:
    two = {**UNIT, "circuits": 2}
    player = Player(shipped, {}, [f"do {words}", "q"], ["q"])
    play(shipped, tmp_path, player, {"complaint": "no-cooling", "unit": two})
    assert f"Taken as: Compressor amps, each leg, {place}." in player.text


@pytest.mark.parametrize("typed", ["2", "comp b", "2nd compressor", "c2", "circuit 2"])
def test_a_place_is_chosen_as_people_say_it(typed: str, shipped: Knowledge) -> None:
    start = Started(complaint="no-cooling", unit={**UNIT, "circuits": 2})
    book, terminal = book_of(shipped, [start]), Lines(typed)
    spot = held(shipped, terminal, lambda voice: spot_meant(book, voice, "compressor amps"))
    assert spot == (shipped.tests["compressor-amps"], Place("compressor", 2))


def test_a_place_that_the_unit_has_not_is_said(shipped: Knowledge, tmp_path: Path) -> None:
    text = told(shipped, tmp_path, "do compressor amps at comp 3", "q")
    assert 'this unit has no "' in text


def test_a_danger_behind_do_is_heard(shipped: Knowledge, tmp_path: Path) -> None:
    """Regression: do you smell gas was answered with how a test is chosen."""
    text = told(shipped, tmp_path, "do you smell gas", "q")
    assert "STOP" in text


def test_a_listed_test_at_a_part_that_the_unit_has_no_more_is_refused_in_words(
    shipped: Knowledge,
) -> None:
    """A walk found it: listed for a capacitor, then its motor was told to have three phases."""
    unit = {**UNIT, "condenser-fans": 1}
    book = book_of(shipped, [Started(complaint="no-cooling", unit=unit)])
    terminal = Lines()

    def part(voice: Voice) -> Talk[bool]:
        decider = Decider(shipped)
        commands = Commands(book, voice, decider)
        commands.offered = (("capacitance-out-of-circuit", "capacitor condenser fan 1"),)
        book.add(FactTold("condenser-fan-phase", "three", {}))
        found = conclude_visit(decider.reasoner, book.state)
        return (yield from commands.serve("do 1", Decision("ending"), found))

    assert held(shipped, terminal, part)
    assert GONE in " ".join(terminal.text.split())
