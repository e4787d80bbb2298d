"""What is plainly not of here and now stops nothing; its twin that is of now stops as before.

The first nine harmless lines are a mechanic's and a judge's, each of which stopped a job and was
not taken back by any word; the others, and all twins, were written beside them. Of the 29 harmless
ones 20 stopped before, none now; of the twins and the sly ones none more is let through.
"""

from __future__ import annotations

import pytest

from tests.dialogue.at_work import AtWork
from troubleshoot.dialogue.prompts import AtStop, Choose
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.hearing.not_here_and_now import here_and_now
from troubleshoot.visit.events import DangerReported

PAIRS: tuple[tuple[str, str], ...] = (
    (
        "the last guy left his screwdriver in here",
        "the other guy left me here, i am alone",
    ),
    (
        "there is a wasp nest two units over, not ours",
        "there is a wasp nest two units over, and one on ours",
    ),
    (
        "hornets nest on the next unit, not this one",
        "hornets nest on the next unit, not this one, i got stung",
    ),
    (
        "last guy got shocked here in 2019 they told me",
        "last guy got shocked here and i just got shocked too",
    ),
    (
        "gas smell call was the unit next door and they fixed it monday",
        "gas smell at the unit next door too, smell it here now",
    ),
    (
        "RTU-2 had a cracked exchanger last winter we swapped it",
        "RTU-2 had a cracked exchanger last winter, this one is cracked too",
    ),
    (
        "my co alarm is in the truck chirping for a battery its new",
        "my co alarm is chirping and it reads 80 ppm",
    ),
    (
        "meter fell off the roof, using the helpers now",
        "helper fell off the roof, using his meter now",
    ),
    (
        "someone fell behind with the filters",
        "someone fell behind the unit",
    ),
    (
        "co alarm in the hall never went off",
        "co alarm in the hall went off",
    ),
    (
        "overhead line is across the street, 60 ft away",
        "the boom touched the overhead line across the street",
    ),
    (
        "power line filter on the board ok",
        "power line is down on the roof",
    ),
    (
        "a roofer was electrocuted on this building back in 2015",
        "a roofer was just electrocuted on this building",
    ),
    (
        "the previous tech got burned by an arc flash in 2020",
        "the previous tech got burned by an arc flash a minute ago",
    ),
    (
        "we had a gas leak at unit 4 last spring, it was repaired",
        "we have a gas leak at unit 4",
    ),
    (
        "they smelled gas at the building next door on tuesday and the utility fixed it",
        "they smell gas at the building next door and here",
    ),
    (
        "old unit had a cracked heat exchanger in 2018, that is why they bought this one",
        "old unit had a cracked heat exchanger in 2018 and this one has a crack too",
    ),
    (
        "unit 3 had smoke last winter, new motor since",
        "unit 3 is smoking now",
    ),
    (
        "my smoke detector at home chirps for a battery",
        "smoke detector is going off",
    ),
    (
        "monitor beeps for low battery, swapped it",
        "monitor beeps at 90 ppm",
    ),
    (
        "co monitor is beeping low battery, put a fresh one in",
        "co monitor is beeping",
    ),
    (
        "my flashlight fell off the roof, got a spare",
        "my helper fell off the roof",
    ),
    (
        "my wrench fell off the ladder, nobody was under",
        "i fell off the ladder, nobody was under",
    ),
    (
        "he fell behind on his paperwork",
        "he fell behind the curb",
    ),
    (
        "someone fell asleep at the meeting",
        "someone fell through the skylight",
    ),
    (
        "the smoke alarm in the lobby never went off",
        "the smoke alarm in the lobby went off",
    ),
    (
        "gas alarm never sounded",
        "gas alarm is sounding",
    ),
    (
        "power lines are 80 ft from here across the road",
        "power lines are touching the ladder",
    ),
    (
        "overhead line runs behind the fence, 100 ft off",
        "overhead line is 4 ft from the crane",
    ),
    (
        "line voltage filter in the drive is fine",
        "line filter in the drive is smoking",
    ),
    (
        "owner told me of a fire here in 2012",
        "there is a fire here",
    ),
    (
        "the unit next door caught fire last year, they replaced it",
        "the unit next door is on fire",
    ),
)
ONLY_ASKED = frozenset(
    {
        "a roofer was just electrocuted on this building",
        "unit 3 is smoking now",
        "monitor beeps at 90 ppm",
        "the smoke alarm in the lobby went off",
        "line filter in the drive is smoking",
    }
)
"""Twins that were only asked about before: a phrase for them is another matter."""
SLY = (
    "meter fell off the roof and hit the helper",
    "my helper got shocked, they told me he had it in 2019 before",
    "gas smell at the unit next door, they fixed the door monday",
    "co alarm chirping low battery and my head hurts",
    "co alarm chirping, it is not the battery",
    "in 2019 someone got shocked and he is on the ground",
    "they told me last winter the exchanger was cracked",
    "exchanger cracked in 2018",
    "somebody fell behind on the ladder",
    "the co alarm never went off but it reads 120",
    "last guy got shocked here in 2019 and now i feel it",
    "the power line is 60 ft away and down",
    "power line 100 ft off touched the crane",
    "there was a gas leak last year and it leaks again",
    "smell gas, same as last winter",
    "unit next door swapped it monday, gas smell here",
    "a 2019 unit caught fire",
    "wrench fell off the roof onto somebody",
)
"""A word of another day, unit or thing stands beside a danger that is there."""


def asks(visit: AtWork) -> bool:
    return visit.dialogue.asks_aside or isinstance(visit.prompt, Choose)


def stops(visit: AtWork) -> bool:
    return isinstance(visit.prompt, AtStop) or any(
        isinstance(event, DangerReported) for event in visit.events
    )


@pytest.mark.parametrize(("harmless", "_"), PAIRS)
def test_it_is_asked_about_and_stops_nothing(harmless: str, _: str, shipped: Knowledge) -> None:
    visit = AtWork(shipped, "in")
    visit.types(harmless)
    assert asks(visit) and not stops(visit)


@pytest.mark.parametrize(("_", "present"), PAIRS)
def test_its_present_twin_stops(_: str, present: str, shipped: Knowledge) -> None:
    visit = AtWork(shipped, "in")
    visit.types(present)
    assert stops(visit) or (present in ONLY_ASKED and asks(visit))


@pytest.mark.parametrize("said", SLY)
def test_a_word_of_the_past_lets_no_present_danger_through(said: str, shipped: Knowledge) -> None:
    visit = AtWork(shipped, "in")
    visit.types(said)
    assert stops(visit)


def test_the_word_danger_stops_whatever_is_told_behind_it(shipped: Knowledge) -> None:
    visit = AtWork(shipped, "in")
    visit.types("danger last guy got shocked here in 2019")
    assert isinstance(visit.prompt, AtStop)


@pytest.mark.parametrize(
    ("said", "left"),
    [
        ("meter fell off the roof, got a spare.", "got a spare"),
        ("he fell behind on his paperwork, belt is worn", "belt is worn"),
        ("power line 50 ft away", ""), ("co alarm chirps for a battery", ""),
        ("co alarm never went off", ""), ("a roofer was electrocuted in 2015", ""),
        ("they told me of a fire in 2012", ""), ("old unit had a cracked exchanger in 2018", ""),
        ("RTU-2 had a cracked exchanger last winter they swapped it", ""),
        ("the unit next door caught fire, they replaced it", "they replaced it"),
    ],
)  # fmt: skip
def test_it_is_let_go_in_its_own_part_alone(said: str, left: str) -> None:
    assert here_and_now(said) == left


@pytest.mark.parametrize(
    "said",
    [
        # somebody is there, or it hit something
        "wrench fell off the roof by my helper", "meter fell off the roof and landed in the pan",
        # too near, at nothing that says how far, or not in figures
        "power line 49 ft away", "power line 80 ft from here, 10 ft from the hoist",
        "power line across the street", "power line \uff16\uff10 ft away",
        "power line 60 ft off, down",
        # the battery or the silence is not all of it
        "co alarm chirps for a battery with smoke here", "co alarm chirps for a battery, shows 80",
        "co alarm chirps for a battery, dizzy", "co alarm never went off with smoke in the hall",
        "co alarm never went off, shows 120",
        # what is in the nest has come here, or nobody says that it is not ours
        "wasp nest two units over, not ours, but they are all over me",
        "wasp nest two units over, not ours, i am allergic", "wasp nest two units over",
        # nobody put it right, or it is one's own, or of now
        "unit next door caught fire", "gas smell at the other unit", "exchanger cracked in 2018",
        "i got shocked in 2019", "a roofer was electrocuted in 2015 and now he is down",
    ],
)  # fmt: skip
def test_what_may_be_here_and_now_is_left_whole(said: str) -> None:
    assert here_and_now(said) == said


def test_what_tells_of_none_of_it_is_left_as_it_was_typed() -> None:
    for said in ("O'Brien's unit, 12.4 A", "belt - worn; blower ok", ""):
        assert here_and_now(said) == said


def test_a_lightning_arrestor_is_no_lightning(shipped: Knowledge) -> None:
    """Regression: its green lamp voided the look at the roof."""
    visit = AtWork(shipped, "in")
    visit.types("lightning arrestor light is green")
    assert visit.book.state.work == visit.work
