"""Little words and everyday ones are heard as nothing else: out, off, in a minute, none fitted.

Each first line was typed by a stranger and heard as an answer, a danger or a repair.
"""

from __future__ import annotations

import pytest

from tests.dialogue.at_work import AtWork
from tests.dialogue.read_out import typed_at
from troubleshoot.dialogue.board_code import code_meant
from troubleshoot.dialogue.by_word import by_own_text
from troubleshoot.dialogue.in_clauses import by_clauses
from troubleshoot.dialogue.prompts import Choose
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events import StateGone
from troubleshoot.visit.hearing.repairs_told import repairs_told


@pytest.mark.parametrize("said", ["in a minute", "off", "what", "read", "out", "just a second"])
def test_a_little_word_names_no_outcome_of_any_test(said: str, shipped: Knowledge) -> None:
    """Regression: in a minute was asked of as lightning, off as a swollen can."""
    for test in shipped.tests.values():
        outcomes = tuple(outcome.id for outcome in test.outcomes)
        assert by_own_text(test, said, outcomes) is None, test.id
        assert by_clauses(shipped, test, said, outcomes) == (), test.id


@pytest.mark.parametrize("said", ["lamp's out", "lamp out", "light's off", "it is dark"])
def test_a_lamp_that_is_out_is_no_lockout(said: str, shipped: Knowledge, tmp_path: object) -> None:
    from pathlib import Path

    _, book = typed_at(shipped, Path(str(tmp_path)), "board-code", said)
    found = [a.outcomes for a in book.state.answers if a.test == "board-code"]
    assert ("lockout",) not in found


@pytest.mark.parametrize(
    ("said", "code"),
    [
        ("press sw code, 3 flashes", "code-pressure-switch"),
        ("hi press sw", "code-high-pressure"),
        ("lo press switch, 2 blinks", "code-low-pressure"),
    ],
)
def test_a_code_is_known_by_its_short_words(said: str, code: str, shipped: Knowledge) -> None:
    test = shipped.tests["board-code"]
    assert code_meant(test, said, [outcome.id for outcome in test.outcomes]) == code


@pytest.mark.parametrize(
    "said",
    [
        "none fitted",
        "new shift, I am Lee",
        "manager changed his mind about the stop",
        "nothing fitted here",
        "new guy on the job",
        "changed clothes",
    ],
)
def test_it_is_no_repair(said: str) -> None:
    """Regression: what was wrong with it then? was asked of a manager's mind."""
    assert repairs_told(said) == ()


def test_parts_are_still_repairs() -> None:
    told = ("new contactor", "changed the fan 2 cap", "filters were changed last week")
    assert all(map(repairs_told, told))


@pytest.mark.parametrize("said", ["powers back on", "power's back on", "power was restored"])
@pytest.mark.parametrize("place", ["verified-dead", "in", "cock"])
def test_power_that_is_back_voids_lock_and_dead(said: str, place: str, shipped: Knowledge) -> None:
    """Regression: at the test for dead it was a feed from a second place."""
    visit = AtWork(shipped, place)
    visit.types(said)
    gone = [event.steps for event in visit.events if isinstance(event, StateGone)]
    work = visit.book.state.work
    assert gone and "lockout" in gone[0] and work.power != "locked-out"
    assert work.dead == "not-shown" and work.second_source != "unlocked"


@pytest.mark.parametrize("said", ["still hot", "power is still on"])
def test_what_is_fed_with_its_switch_off_is_live(said: str, shipped: Knowledge) -> None:
    visit = AtWork(shipped, "verified-dead")
    visit.types(said)
    assert not any(isinstance(event, StateGone) for event in visit.events)
    assert visit.events and visit.book.state.work.dead == "not-shown"


def test_who_watches_is_no_lock(shipped: Knowledge) -> None:
    """Regression: it was asked whether the lock still stands."""
    visit = AtWork(shipped, "live")
    visit.types("my watch guy went to lunch")
    assert not visit.book.state.work.second_person


@pytest.mark.parametrize(
    ("said", "asks_of_gas"),
    [
        ("put the meter back in the truck", False),
        ("gas meter was put back on by the utility", True),
    ],
)
def test_a_meter_in_the_truck_is_no_gas_meter(
    said: str, asks_of_gas: bool, shipped: Knowledge
) -> None:
    visit = AtWork(shipped, "cock")
    visit.types(said)
    assert isinstance(visit.prompt, Choose)
    assert (shipped.tests["gas-cock-shut"].name in visit.prompt.question) is asks_of_gas


@pytest.mark.parametrize("said", ["nothing smoking nothing hot", "no shock no spark all quiet"])
@pytest.mark.parametrize("place", ["in", "verified-dead", "manometer"])
def test_what_is_denied_is_neither_live_nor_asked_about(
    said: str, place: str, shipped: Knowledge
) -> None:
    """Regression: nothing hot was asked of as the lock, and stopped the test for dead."""
    visit = AtWork(shipped, place)
    at = visit.at
    visit.types(said)
    assert visit.at == at and not visit.dialogue.asks_aside and not visit.events
