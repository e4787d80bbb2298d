"""Plain good news at a step is asked of as its answer, and not as a danger; it confirms nothing.

The first of each kind were typed by a mechanic, who answered ten such questions unread; the others
were written before it was mended.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.dialogue import at_work
from tests.dialogue.at_work import AtWork
from tests.dialogue.read_out import kept, typed_at
from troubleshoot.dialogue.prompts import AtStop, Choose
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.visit.events import StateGone, StepDone

GOOD = (
    ("tell-occupants", "talked to the manager, he is fine with it"),
    ("tell-occupants", "everybody knows and its all good"),
    ("combustible-gas-sweep", "swept it all, nothin on the sniffer"),
    ("combustible-gas-sweep", "sniffer stayed quiet all over"),
    ("tester-proof", "meter reads 121 at the recept, good"),
    ("tester-proof", "got 119 at the outlet so meter is good"),
    ("lockout", "disconnect opened easy"),
    ("lockout", "switch is off and tagged, all good"),
    ("panels-off", "panel came off easy"),
    ("gas-cock-shut", "cock turned easy, all good"),
    ("verified-dead", "all legs good to ground"),
    ("tell-occupants", "talked to the owner, he's alright with it"),
)
NOT_GOOD = (
    ("lockout", "disconnect wont open, handle froze"),
    ("lockout", "no lock on the disconnect"),
    ("lockout", "opened easy but sparks came out"),
    ("lockout", "good and it started"),
    ("lockout", "someone says it is good to go"),
    ("combustible-gas-sweep", "something on the sniffer"),
    ("tester-proof", "meter is good but my hand is numb"),
    ("tell-occupants", "they said no good, kitchen stays on"),
    ("gas-cock-shut", "cock turned easy but it hisses"),
    ("panels-off", "panel came off and cut my finger"),
)


def at_step(knowledge: Knowledge, step: str, monkeypatch: pytest.MonkeyPatch) -> AtWork:
    place = ("no-heat", "do burner-orifices", step)
    monkeypatch.setitem(at_work.PLACES, f"step-{step}", place)
    return AtWork(knowledge, f"step-{step}")


@pytest.mark.parametrize(("step", "said"), GOOD)
def test_it_is_asked_whether_the_answer_is_meant(
    step: str, said: str, shipped: Knowledge, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Regression: is somebody or something in danger now? was asked of each."""
    visit = at_step(shipped, step, monkeypatch)
    told = visit.types(said)
    assert visit.at == step and not visit.dialogue.asks_aside
    assert any("meant? Then type it so." in each for each in told)
    assert not any(isinstance(event, StepDone) for event in visit.events)
    assert said in " | ".join(visit.book.state.notes)


@pytest.mark.parametrize(("step", "said"), NOT_GOOD)
def test_what_is_not_all_good_is_asked_about_or_stops_or_is_taken_as_bad(
    step: str, said: str, shipped: Knowledge, monkeypatch: pytest.MonkeyPatch
) -> None:
    visit = at_step(shipped, step, monkeypatch)
    visit.types(said)
    gone = any(isinstance(event, StateGone) for event in visit.events)
    worse = [each for each in visit.events if isinstance(each, StepDone)]
    assert all(CONFIRMED[step] not in each.outcomes for each in worse), "taken as it was told"
    is_asked = visit.dialogue.asks_aside or isinstance(visit.prompt, AtStop | Choose)
    assert gone or worse or is_asked


@pytest.mark.parametrize("said", ["hot, 170", "hot 170", "170, hot"])
def test_a_number_beside_its_word_is_the_reading(
    said: str, shipped: Knowledge, tmp_path: Path
) -> None:
    """Regression: hot, 170 at a shell was asked of as a live part."""
    _, book = typed_at(shipped, tmp_path, "compressor-shell-heat", said)
    assert [(test, text) for test, _, text in kept(book)] == [("compressor-shell-heat", "170")]


def test_a_word_that_says_otherwise_is_asked_about(shipped: Knowledge, tmp_path: Path) -> None:
    text, book = typed_at(shipped, tmp_path, "compressor-shell-heat", "cool, 170")
    assert "do not say the same" in text and not kept(book)
