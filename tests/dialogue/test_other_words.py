"""What came of a look in a mechanic's own words is taken or asked about, and no state goes by it.

How people put it is common practice, no source. That whatever may tell of a lock, of power or of
somebody inside is asked about first: 29 CFR 1910.147 and 1910.333, from memory.
"""

from __future__ import annotations

import pytest

from tests.dialogue.at_test_sentences import PASSED_UNASKED, TOLD
from tests.dialogue.at_work import PLACES, AtWork
from tests.dialogue.mechanic_sentences import APART, FOUND, GONE
from troubleshoot.dialogue.prompts import AtStop, Choose
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events import Answered, StateGone

HEAT = frozenset({"flame-rod", "heat-exchanger-look", "pressure-switch-tube"})
WHERE = {
    "capacitor": " at capacitor condenser fan 1",
    "contactor": " at contactor 1",
    "circuit": " at circuit 1",
    "condenser-fan": " at condenser fan 1",
}
TAKEN = 9
"""Of each 20 or so; before, 4 and 1 were."""
MET = 15
"""Taken, or asked about by their own name, at once or once it is said that all stands."""


def at(shipped: Knowledge, name: str) -> AtWork:
    """A visit that has come to this test."""
    call = "no-heat" if name in HEAT else "no-cooling"
    PLACES.setdefault(
        name, (call, f"do {name}{WHERE.get(shipped.tests[name].per or '', '')}", name)
    )
    return AtWork(shipped, name)


def found(visit: AtWork) -> list[tuple[str, tuple[str, ...]]]:
    return [(e.test, e.outcomes) for e in visit.events if isinstance(e, Answered)]


def asks_of(visit: AtWork, spoken: list[str]) -> bool:
    """Whether one of these outcomes is asked about."""
    prompt = visit.prompt
    if not isinstance(prompt, Choose):
        return False
    offered = {*prompt.options} & {*spoken}
    return bool(offered) or any(f'Is "{each}" meant?' in prompt.question for each in spoken)


@pytest.mark.parametrize("sentences", [FOUND, APART], ids=["found", "apart"])
def test_what_was_found_is_taken_or_asked_about(
    sentences: tuple[tuple[str, str, str], ...], shipped: Knowledge
) -> None:
    """Regression: of the first 4 were taken, of those apart 1; else it was asked what stands."""
    taken, met, wrong = 0, 0, []
    for name, said, meant in sentences:
        visit, wanted = at(shipped, name), meant.split(",")
        visit.types(said)
        if got := found(visit):
            wrong += [said] * (got[0][0] != name or not {*got[0][1]} <= {*wanted})
            taken, met = taken + 1, met + 1
            continue
        spoken = [*map(shipped.tests[name].spoken, wanted)]
        if not asks_of(visit, spoken):
            visit.types("y")
        met += asks_of(visit, spoken)
    assert not wrong
    assert taken >= TAKEN
    assert met >= MET


@pytest.mark.parametrize(("name", "said"), GONE)
def test_what_may_tell_that_something_has_gone_is_never_taken(
    name: str, said: str, shipped: Knowledge
) -> None:
    visit = at(shipped, name)
    visit.types(said)
    outcomes = [each.spoken for each in shipped.tests[name].outcomes]
    assert not found(visit) and not asks_of(visit, outcomes)
    gone = any(isinstance(event, StateGone) for event in visit.events)
    assert gone or visit.dialogue.asks_aside or isinstance(visit.prompt, AtStop | Choose)


@pytest.mark.parametrize("place", ["in", "live"])
def test_no_state_is_asked_of_as_an_outcome(place: str, shipped: Knowledge) -> None:
    for said in (*TOLD[place], *TOLD["both"], *PASSED_UNASKED):
        visit = AtWork(shipped, place)
        test = shipped.tests[visit.at]
        visit.types(said)
        assert not asks_of(visit, [each.spoken for each in test.outcomes]), said


def test_a_yes_takes_it_and_a_no_keeps_it_as_a_note(shipped: Knowledge) -> None:
    """Whether all stands is not asked besides, where no word may tell that it does not."""
    for answer, taken in (("y", [("evaporator-coil-face", ("dirty",))]), ("n", [])):
        visit = at(shipped, "evaporator-coil-face")
        visit.types("matted with dog hair")
        visit.types(answer)
        assert found(visit) == taken and visit.dialogue.asks_aside is False
        assert taken or "matted with dog hair" in " | ".join(visit.book.state.notes)


def test_what_is_taken_in_other_words_is_said_back(shipped: Knowledge) -> None:
    visit = at(shipped, "drain-pan")
    assert 'Taken as "standing water".' in visit.types("pan is full to the brim")


def test_what_is_sound_in_other_words_is_asked_about(shipped: Knowledge) -> None:
    visit = at(shipped, "drain-pan")
    visit.types("falling to the outlet like a slide")
    assert not found(visit) and asks_of(visit, ["drains"])


def test_what_shows_a_danger_gone_is_not_asked_about_from_other_words(shipped: Knowledge) -> None:
    visit = at(shipped, "contactor-contacts")
    visit.types("faces are gray and even all over the brass")
    assert not found(visit) and not asks_of(visit, ["clean"])


@pytest.mark.parametrize(
    "said", ["not plugged with fuzz", "may be packed with lint", "wet or torn?"]
)
def test_a_denial_or_a_doubt_points_at_nothing(said: str, shipped: Knowledge) -> None:
    visit = at(shipped, "air-filters")
    visit.types(said)
    outcomes = [each.spoken for each in shipped.tests["air-filters"].outcomes]
    assert not found(visit) and not asks_of(visit, outcomes)
