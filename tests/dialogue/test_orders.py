"""An order, a promise or a denial is no report that a protecting step was done."""

from __future__ import annotations

from datetime import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.dialogue.answering import answer_event_from, step_event_from
from troubleshoot.dialogue.by_word import NotAnAnswer
from troubleshoot.dialogue.mistyped import meant_by
from troubleshoot.dialogue.orders import is_order, orders
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED, ENTER_CONFIRMS, STEPS
from troubleshoot.safety.steps import EDGE_PROTECTION, Step
from troubleshoot.visit.events import Started, replay

SHIPPED = load_shipped()
NOW = datetime.fromisoformat("2026-11-26T12:00:00+00:00")
PROTECTING = sorted(set(CONFIRMED) - ENTER_CONFIRMS - {EDGE_PROTECTION})
WORDS = [
    (step, word)
    for step in PROTECTING
    for outcome in SHIPPED.tests[step].outcomes
    if outcome.id == CONFIRMED[step]
    for word in (outcome.spoken, *outcome.words)
]
TURNING = (
    "soon", "later", "tomorrow", "maybe", "not yet", "not", "i think", "i hope", "almost", "nearly",
    "next", "if possible", "when he comes", "by him", "yesterday", "before", "again later", "no",
    "never", "will be", "to do", "?", "in a minute", "half", "except l3", "but not tagged",
)  # fmt: skip
"""What is said behind a word, and turns it round or puts it off."""


def done(typed: str, step: str) -> tuple[str, ...]:
    """What is taken for it at a step, with one typing error seen through; empty for nothing."""
    test, state = SHIPPED.tests[step], replay(SHIPPED, [Started(complaint="no-cooling")])
    where = Step(step, "blower drive" if step == "drive-discharge" else None)
    try:
        return step_event_from(SHIPPED, state, test, where, typed, NOW).outcomes
    except NotAnAnswer:
        meant = meant_by(SHIPPED, test, typed, [outcome.id for outcome in test.outcomes])
        return () if meant is None else (meant,)


@given(
    at=st.sampled_from(WORDS),
    tail=st.sampled_from(TURNING),
    joint=st.sampled_from([" ", ", ", " - "]),
    end=st.sampled_from(["", " done", " yes", " it", ", done"]),
)
def test_words_behind_that_are_not_known_to_be_harmless_confirm_nothing(
    at: tuple[str, str], tail: str, joint: str, end: str
) -> None:
    step, word = at
    assert done(f"{word}{joint}{tail}{end}", step) == ()


@given(at=st.sampled_from(WORDS), tail=st.sampled_from(TURNING))
def test_nor_do_they_in_front(at: tuple[str, str], tail: str) -> None:
    step, word = at
    assert CONFIRMED[step] not in done(f"{tail} {word}", step)


@pytest.mark.parametrize("typed", ["none done", "done none", "none, done", "none it", "yes none"])
def test_nothing_done_is_not_a_finding_of_nothing(typed: str) -> None:
    """Regression: "none done" passed the sweep for refrigerant as "none"."""
    for step in ("refrigerant-sweep-a2l", "combustible-gas-sweep", "tell-fire-panel"):
        assert done(typed, step) == ()


@pytest.mark.parametrize("typed", ["n,n,n,n", "no, no", "none, n", "l,l,l,l", "s,s,s,s"])
def test_few_letters_do_not_become_enough_by_being_repeated(typed: str) -> None:
    for step in ("refrigerant-sweep-a2l", "lockout", "roof-conditions"):
        assert CONFIRMED[step] not in done(typed, step)


REPORTED = [(step, word) for step, word in CONFIRMED.items() if orders(word)]


@given(at=st.sampled_from(REPORTED), data=st.data())
def test_an_order_is_asked_about(at: tuple[str, str], data: st.DataObject) -> None:
    """Regression: "lock", "stop", "prove" and "discharge" were taken for the report."""
    step, report = at
    order = data.draw(st.sampled_from(sorted(orders(report))))
    how = data.draw(
        st.sampled_from(["{}", "{} it", "please {} it", "yes {}", "{} done", "{} now", "{} them"])
    )
    assert done(how.format(order), step) == ()
    assert done(report, step) == (report,) or STEPS[step].waits_from


@pytest.mark.parametrize(
    ("step", "typed", "meant"),
    [
        ("lockout", "lock", "locked"), ("lockout", "lock it", "locked"),
        ("second-source-locked", "lock", "locked"), ("stop-by-controls", "stop", "stopped"),
        ("stop-by-controls", "stop it", "stopped"), ("arc-clothing-on", "dress", "dressed"),
        ("tester-proof", "prove", "proved"), ("capacitor-discharge", "discharge", "discharged"),
        ("manometer-off", "plug", "plugged"), ("charge-recovered", "recover", "recovered"),
        ("gas-cock-shut", "shut it", "shut"), ("gas-cock-open", "open it", "open"),
        ("tools-clear", "clear it", "clear"), ("manometer-on", "on it", "on"),
        ("lockout", "lock on", "locked"), ("lockout", "loto", "locked"),
        ("lockout", "tag on", "locked"), ("lockout", "lock and tag on, done", "locked"),
        ("lockout", "lock on tag on", "locked"), ("second-source-locked", "lock on", "locked"),
    ],
)  # fmt: skip
def test_it_is_asked_whether_the_report_was_meant(
    step: str, typed: str, meant: str, shipped: Knowledge
) -> None:
    """Regression: "lock on" and "loto" were taken at once for a lock that hangs."""
    assert is_order(typed, CONFIRMED[step])
    with pytest.raises(NotAnAnswer, match=f'^Is "{meant}" meant\\? Then type it so\\.$'):
        step_event_from(
            shipped, replay(shipped, [Started()]), shipped.tests[step], Step(step), typed, NOW
        )


@pytest.mark.parametrize(("step", "word"), [at for at in WORDS if orders(CONFIRMED[at[0]])])
def test_no_word_of_a_protecting_step_may_be_read_as_an_order(step: str, word: str) -> None:
    assert not is_order(word, CONFIRMED[step])


@pytest.mark.parametrize(
    ("step", "typed", "meant"),
    [
        ("lockout", "lokced", "locked"), ("stop-by-controls", "stoped", "stopped"),
        ("arc-clothing-on", "dresed", "dressed"), ("tester-proof", "provde", "proved"),
        ("capacitor-discharge", "disharged", "discharged"), ("tester-proof", "proven", "proved"),
        ("second-person", "here", "there"), ("gas-cock-shut", "shut", "shut"),
        ("lockout", "locked it", "locked"), ("verified-dead", "dead, done", "dead"),
    ],
)  # fmt: skip
def test_a_report_stays_one_though_it_is_mistyped_or_said_otherwise(
    step: str, typed: str, meant: str
) -> None:
    assert done(typed, step) == (meant,)


@pytest.mark.parametrize(
    ("name", "typed"),
    [
        ("thunder-waited-out", "wait"), ("all-clear", "clear"), ("call-in", "agree"),
        ("combustible-gas-sweep", "n"), ("refrigerant-sweep-a2l", "no"),
        ("refrigerant-sweep-a2l", "none done"),
    ],
)  # fmt: skip
def test_what_shows_a_danger_gone_wants_its_word_where_it_is_asked_as_a_test(
    name: str, typed: str, shipped: Knowledge
) -> None:
    test = shipped.tests[name]
    outcomes = tuple(outcome.id for outcome in test.outcomes)
    with pytest.raises(NotAnAnswer):
        answer_event_from(shipped, test, None, typed, outcomes)
    sound = test.healthy[0]
    assert answer_event_from(shipped, test, None, sound, outcomes).outcomes == (sound,)
