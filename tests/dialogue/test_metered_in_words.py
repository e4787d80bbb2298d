"""What the meter shows, told in a sentence: the worse is always heard, the sound one when plain."""

from __future__ import annotations

from datetime import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.dialogue.answering import answer_event_from, step_event_from
from troubleshoot.dialogue.by_word import NotAnAnswer
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED, STEPS
from troubleshoot.safety.steps import Step
from troubleshoot.visit.events import Started, StepDone, replay

NOW = datetime.fromisoformat("2026-11-26T12:00:00+00:00")
PLACES = {"drive-discharge": "blower drive"}
BY_HIGHEST = sorted(
    {"verified-dead", "capacitor-discharge", "drive-discharge"}
    | {"combustible-gas-sweep", "room-carbon-monoxide"}
)
"""The steps that a number alone confirms."""


def step(shipped: Knowledge, name: str, typed: str) -> StepDone:
    state = replay(shipped, [Started(complaint="no-cooling")])
    where = Step(name, PLACES.get(name))
    return step_event_from(shipped, state, shipped.tests[name], where, typed, NOW)


@pytest.mark.parametrize(
    ("typed", "number"),
    [
        ("still hot on l1, 277", "277"), ("got 277 on one leg", "277"),
        ("one leg is hot 277", "277"), ("dead on two, 120 v on L3", "120 v"),
        ("dead, but l2 reads 277 to ground", "277"), ("leg 1 has 277", "277"),
        ("0 on l1, 0 on l2, 480 volts on l3", "480 volts"), ("not dead, 0 v", "0 v"),
        ("still hot", None), ("its live on l1", None), ("leg 2 is energized", None),
        ("not dead", None), ("all 3 legs dead but 40 v to ground", "40 v"),
        ("L1 is at 3 volts", "3 volts"), ("hot, 0 v", "0 v"), ("phase a still has power", None),
    ],
)  # fmt: skip
def test_a_live_leg_told_in_words_stops_as_its_number_does(
    typed: str, number: str | None, shipped: Knowledge
) -> None:
    """Regression: "still hot on l1, 277" was refused as no number."""
    event = step(shipped, "verified-dead", typed)
    assert "live" in event.outcomes and "dead" not in event.outcomes
    assert event.text == number


@pytest.mark.parametrize(
    ("name", "typed"),
    [
        ("verified-dead", "dead all 3 legs 0 v"), ("verified-dead", "0 v on all three"),
        ("verified-dead", "all dead, 0.1 v"), ("verified-dead", "L1 to L2 to L3 and ground all 0"),
        ("room-carbon-monoxide", "co is 2"), ("room-carbon-monoxide", "CO reads 2 ppm"),
        ("combustible-gas-sweep", "the meter shows 0"), ("drive-discharge", "bled down, 2 v"),
        ("capacitor-discharge", "discharged, it reads 1 v"),
    ],
)  # fmt: skip
def test_a_sound_number_in_plain_words_confirms(name: str, typed: str, shipped: Knowledge) -> None:
    event = step(shipped, name, typed)
    assert event.outcomes == (CONFIRMED[name],) and event.text is not None


PLAIN = (
    "ac and are at bled get getting got have i in is it its me meter metered now of on read "
    "reading reads says show showing shows tested the there they three to"
)


@pytest.mark.parametrize("word", PLAIN.split())
def test_a_word_that_takes_nothing_away_may_stand_beside_it(word: str, shipped: Knowledge) -> None:
    assert step(shipped, "verified-dead", f"all dead, 0 v {word}").outcomes == ("dead",)


@pytest.mark.parametrize(
    "typed",
    [
        "0 v on l1", "0 on one leg", "maybe 0", "0 amps on all three", "0 v?", "0 on l1 and l2",
        "dead, 0 v, could not reach l3", "0 on all but l3", "not hot, 0 v", "all dead 5,7",
        "0 v after 5 minutes", "all 3 dead", "meter says nothing, 0",
    ],
)  # fmt: skip
def test_a_sound_number_among_other_words_confirms_nothing(typed: str, shipped: Knowledge) -> None:
    with pytest.raises(NotAnAnswer):
        step(shipped, "verified-dead", typed)


@pytest.mark.parametrize(
    ("name", "typed", "outcome"),
    [
        ("room-carbon-monoxide", "co is 50 in the space", "high"),
        ("combustible-gas-sweep", "got 20 at the union", "leak"),
        ("drive-discharge", "still 300 on the bus", "holds-charge"),
        ("capacitor-discharge", "it is swollen, 0 v", "swollen-or-hissing"),
    ],
)
def test_so_does_every_other_metered_step(
    name: str, typed: str, outcome: str, shipped: Knowledge
) -> None:
    assert step(shipped, name, typed).outcomes == (outcome,)


def test_the_highest_number_is_the_worst_at_every_step_that_a_number_confirms(
    shipped: Knowledge,
) -> None:
    """The reading of sentences rests on it."""
    reading = {s for s in STEPS if shipped.tests[s].reads and not STEPS[s].number_says_part}
    assert reading == set(BY_HIGHEST)
    for name in reading:
        found = [step(shipped, name, number).outcomes == (CONFIRMED[name],) for number in "059"]
        assert found[0] and found == sorted(found, reverse=True)
        assert step(shipped, name, "90").outcomes != (CONFIRMED[name],)


def test_an_air_reading_asked_as_a_test_is_heard_alike(shipped: Knowledge) -> None:
    test = shipped.tests["room-carbon-monoxide"]
    outcomes = tuple(outcome.id for outcome in test.outcomes)
    for typed, number in (("co is 2", "2"), ("it got up to 50 in the space", "50")):
        event = answer_event_from(shipped, test, None, typed, outcomes)
        assert (event.outcomes, event.text) == ((), number)
    with pytest.raises(NotAnAnswer, match="2 is sound, and I cannot tell"):
        answer_event_from(shipped, test, None, "co is 2 in one room only", outcomes)


@given(
    volts=st.integers(3, 600),
    before=st.sampled_from(
        ["", "got ", "dead all 3 legs, ", "l1 0 v, ", "no idea why: ", "leg 2 "]
    ),
    after=st.sampled_from([" v", "", " on one leg", " volts to ground", " and all else dead", "?"]),
)
def test_no_words_hide_a_live_leg(volts: int, before: str, after: str, shipped: Knowledge) -> None:
    typed = f"{before}{volts}{after}"
    listed = len(shipped.tests["verified-dead"].outcomes)
    if typed == f"{volts}?" or (typed == f"{volts}" and volts <= listed):
        with pytest.raises(NotAnAnswer):
            step(shipped, "verified-dead", typed)
    else:
        assert "live" in step(shipped, "verified-dead", typed).outcomes


@pytest.mark.parametrize(
    "typed",
    [
        "hot wire is L1, black", "hot goes to black", "gas pressure 3.5 manifold",
        "flame blue, steady, all 5", "compressor hot to touch, off on overload", "superheat 12",
    ],
)  # fmt: skip
def test_what_is_read_of_another_thing_names_no_live_leg(typed: str, shipped: Knowledge) -> None:
    """Regression: a manifold's pressure and the name of a wire were taken for "live"."""
    with pytest.raises(NotAnAnswer):
        step(shipped, "verified-dead", typed)


@pytest.mark.parametrize(
    "typed", ["hot on L1", "hot wire L1 is live", "compressor terminals hot", "burner on, 277 V"]
)
def test_a_live_leg_stays_one_beside_other_things(typed: str, shipped: Knowledge) -> None:
    assert step(shipped, "verified-dead", typed).outcomes == ("live",)
