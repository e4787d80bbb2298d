"""At which prompts it breaks in that a state has gone, and where the same words are an answer.

The sentences are made up: common practice, no source.
"""

from __future__ import annotations

import pytest

from tests.dialogue import at_work
from tests.dialogue.at_work import AtWork
from tests.dialogue.test_gone_at_an_ending import ended
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.prompts import (
    AskPlate,
    AskTest,
    AskWords,
    AtStop,
    Choose,
    DoStep,
    Prompt,
)
from troubleshoot.dialogue.said import Sentence, Voice
from troubleshoot.dialogue.state_gone import ask_if_gone, gone_at
from troubleshoot.dialogue.talk import DangerCalled
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events import DangerReported, Noted, StateGone
from troubleshoot.visit.telling.lapses import LIVE_AGAIN, NOT_READY

GONE = "power is back on"
OUT = AskWords("What was found?"), Choose("Is it so?")
"""What is asked at a STOP too."""


@pytest.fixture(scope="module")
def hands_in(shipped: Knowledge) -> AtWork:
    """A visit with hands in, behind the lock; nothing is typed in it."""
    return AtWork(shipped, "in")


def breaks_in(
    visit: AtWork, typed: str, prompt: Prompt | None = None, *, stop: bool = False
) -> bool:
    """Whether words break in on a prompt, that of the visit where none is given."""
    return gone_at(visit.book, lambda: stop, prompt or visit.prompt, typed) is not None


@pytest.mark.parametrize(
    "typed",
    [
        "do condenser-fan-turning", "do Condenser fan turning, which way",
        "do contactor-coil-volts at contactor 1",
    ],
)  # fmt: skip
def test_a_test_that_is_chosen_by_its_name_tells_nothing(typed: str, hands_in: AtWork) -> None:
    assert not breaks_in(hands_in, typed)
    assert breaks_in(hands_in, typed.removeprefix("do "))


@pytest.mark.parametrize("typed", [GONE, f"note {GONE}", f"do it, {GONE}"])
def test_what_is_told_besides_breaks_in(typed: str, hands_in: AtWork) -> None:
    assert breaks_in(hands_in, typed)


@pytest.mark.parametrize(
    ("place", "typed", "gone"),
    [
        # put back while it is tested for dead, and not merely read as still live
        ("verified-dead", "power is back", True), ("verified-dead", "power is restored", True),
        ("verified-dead", "power returned", True), ("verified-dead", "power on", False),
        ("verified-dead", "power is still back on L1", False),
        ("verified-dead", "live, second feed is back", False),
        ("verified-dead", "208 V between L1 and L2", False),
        # what a step tells of its own matter, and what a test is answered with
        ("lock-off", GONE, False), ("lock-off", "meter quit", True),
        ("gas-cock-open", "gas is back on", False), ("gas-cock-open", GONE, True),
        ("run", "no flame", False), ("live", "meter quit", True),
        # a question in a note is one, and a note no answer
        ("in", "note is the lock off", False),
        ("verified-dead", "note dead, panel is back on", True),
    ],
)  # fmt: skip
def test_what_answers_the_prompt_in_hand_does_not_break_in(
    place: str, typed: str, gone: bool, shipped: Knowledge
) -> None:
    assert breaks_in(AtWork(shipped, place), typed) is gone


def test_a_step_that_is_asked_again_hears_of_its_own_matter_itself(shipped: Knowledge) -> None:
    """The meter is proved before the test for dead and behind it."""
    visit = AtWork(shipped, "verified-dead")
    assert breaks_in(visit, "meter quit")
    visit.types("2 V")
    assert visit.at == "tester-proof" and not breaks_in(visit, "meter quit")


def test_a_mistyped_answer_is_one(shipped: Knowledge, monkeypatch: pytest.MonkeyPatch) -> None:
    """White powder, with a slip in it, is no power on the rod."""
    monkeypatch.setitem(at_work.PLACES, "rod", ("no-heat", "do flame-rod", "flame-rod"))
    visit = AtWork(shipped, "rod")
    assert not breaks_in(visit, "white podwer on it") and breaks_in(visit, "power on it")


def test_behind_a_stop_only_what_it_asks_for_is_answered(
    shipped: Knowledge, hands_in: AtWork
) -> None:
    plate = AskPlate(next(iter(shipped.plate_values.values())))
    for prompt in (*OUT, plate):
        assert breaks_in(hands_in, GONE, prompt)
    assert not any(breaks_in(hands_in, GONE, prompt, stop=True) for prompt in OUT)
    assert breaks_in(hands_in, GONE, plate, stop=True)
    assert not breaks_in(hands_in, "lock is still on", plate)


@pytest.mark.parametrize(
    ("place", "typed", "where"),
    [
        ("in", "my padlock hangs at my belt", "a test"),
        ("manometer", "i was off the roof 20 minutes", "a safety step"),
    ],
)
def test_what_is_asked_about_is_kept_with_where_it_was_told(
    place: str, typed: str, where: str, shipped: Knowledge
) -> None:
    for answer, gone in (("y", False), ("n", True)):
        visit = AtWork(shipped, place)
        at = visit.at
        visit.types(typed)
        assert isinstance(visit.prompt, Choose) and "still stand, as it" in visit.prompt.question
        notes = [each.text for each in visit.events if isinstance(each, Noted)]
        assert notes == [f"told at {where}: {typed}"]
        visit.types(answer)
        assert any(isinstance(each, StateGone) for each in visit.events) is gone
        assert (visit.at == at) is not gone and not isinstance(visit.prompt, Choose)


def test_a_danger_in_what_would_be_asked_about_is_called(shipped: Knowledge) -> None:
    visit = AtWork(shipped, "live")
    assert isinstance(visit.prompt, AskTest)
    listener = Listener(shipped, Voice())
    with pytest.raises(DangerCalled):
        next(ask_if_gone(visit.book, listener, visit.prompt, "guy is down"))
    assert not visit.events


def test_what_hints_at_nothing_that_stands_is_not_asked_about(shipped: Knowledge) -> None:
    visit = AtWork(shipped, "cock")
    assert isinstance(visit.prompt, AskTest)
    listener = Listener(shipped, Voice())
    assert list(ask_if_gone(visit.book, listener, visit.prompt, "7,5")) == []
    assert not visit.events


def test_at_an_ending_nothing_is_kept_before_it_is_answered(shipped: Knowledge) -> None:
    visit = ended(shipped)
    visit.types("went to lunch and back")
    assert isinstance(visit.prompt, Choose) and not visit.book.state.notes


def test_the_first_order_is_not_to_be_missed_and_the_rest_is_told_behind_it(
    shipped: Knowledge,
) -> None:
    visit = AtWork(shipped, "in")
    first, then = (each for each in visit.dialogue.answer(GONE) if isinstance(each, Sentence))
    assert first == Sentence(LIVE_AGAIN, strong=True)
    assert then.text.startswith("It counts no more: stopped by its controls, locked out, dead")
    visit = AtWork(shipped, "out")
    first, then = (
        each for each in visit.dialogue.answer("left a wire off") if each != Sentence("")
    )
    assert first == Sentence(NOT_READY, strong=True)
    assert isinstance(then, Sentence) and "every lead back" in then.text


def test_at_a_stop_that_stands_all_of_it_is_told_at_once(shipped: Knowledge) -> None:
    visit = AtWork(shipped, "in")
    visit.types("smell gas here")
    assert isinstance(visit.prompt, AtStop)
    first, then = visit.types("lock is off")[:2]
    assert first == LIVE_AGAIN and then.startswith("It counts no more: ")
    assert isinstance(visit.prompt, AtStop) and not visit.prompt.gone


def test_what_was_told_in_full_is_told_again_once_it_has_gone(shipped: Knowledge) -> None:
    visit = AtWork(shipped, "in")
    for _ in range(2):
        visit.types(GONE)
        assert isinstance(visit.prompt, DoStep) and not visit.prompt.told
        visit.goes_on_to("capacitance-out-of-circuit")


@pytest.mark.parametrize("typed", ["it glows", "note it glows"])
def test_what_hints_at_a_danger_besides_is_asked_about(typed: str, shipped: Knowledge) -> None:
    """What is kept are the words, without the command before them."""
    visit = AtWork(shipped, "in")
    visit.types(typed.replace("it", "lock is off, it"))
    assert visit.dialogue.asks_aside
    visit.types("y")
    kept = [each for each in visit.events if isinstance(each, StateGone | DangerReported)]
    assert [each.words for each in kept] == 2 * ["lock is off, it glows"]
    assert isinstance(visit.prompt, AtStop)


@pytest.mark.parametrize(
    "typed", ["somebody switched it on", "note somebody switched it on", "danger power is back on"]
)
def test_a_danger_besides_stops_with_what_has_gone(typed: str, shipped: Knowledge) -> None:
    visit = AtWork(shipped, "in")
    assert visit.types(typed) == [LIVE_AGAIN]
    kept = [each for each in visit.events if isinstance(each, StateGone | DangerReported)]
    assert [each.words for each in kept] == 2 * [
        typed.removeprefix("note ").removeprefix("danger ")
    ]
    assert isinstance(visit.prompt, AtStop)
    (left,) = visit.prompt.gone
    assert left.startswith("It counts no more: ")


def test_behind_a_danger_waits_what_takes_nobodys_hands_out(shipped: Knowledge) -> None:
    visit = AtWork(shipped, "live")
    assert visit.types("bare wire hanging against the cabinet and its live") == []
    assert isinstance(visit.prompt, AtStop)
    first, left = visit.prompt.gone
    assert first == NOT_READY and left.startswith("It counts no more: every lead back.")
