"""Where words hint at a danger that no phrase names the program asks instead of going on.

Half of the sentences are a stranger's, who had not seen the program; all are told at the prompt at
which they would have been taken or refused.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.visits import ALL, begin, events_of, lead_to

ASKED = "Is somebody or something in danger now? (y/n)"
FACT = "Enter where it is not known"


Reach = Callable[[Path, Clock], Person]


def is_asked(person: Person) -> bool:
    return " ".join(person.last.split()).endswith(ASKED)


def stands(person: Person) -> str:
    """What is asked now: the last line on the screen."""
    return person.last.splitlines()[-1]


def at_the_name(data: Path, clock: Clock) -> Person:
    return Person(data, clock=clock)


def at_the_complaint(data: Path, clock: Clock) -> Person:
    person = Person(data, clock=clock)
    person.types("RTU-7")
    return person


def at_a_fact(data: Path, clock: Clock) -> Person:
    person = Person(data, clock=clock)
    person.types("RTU-7", "no-heat", ALL)
    assert FACT in person.last
    return person


def at_a_test(data: Path, clock: Clock) -> Person:
    return begin(data, clock)


def at_a_step(data: Path, clock: Clock) -> Person:
    person = begin(data, clock)
    person.types("do wiring-burn-marks")
    lead_to(person, "Tell the people inside")
    return person


def at_the_nameplate(data: Path, clock: Clock) -> Person:
    """Where a value is asked that judges the first proof of a repair."""
    person = begin(data, clock)
    assert "From the nameplate" in person.types("repaired condenser-fan-capacitor-weak")
    return person


def at_a_proof(data: Path, clock: Clock) -> Person:
    person = at_the_nameplate(data, clock)
    assert "What did you read?" in person.types("5 uF")
    return person


def at_what_was_done(data: Path, clock: Clock) -> Person:
    person = begin(data, clock)
    person.types("i smell gas", "over")
    assert "Who was told" in person.last
    return person


PROMPTS: dict[Reach, tuple[str, ...]] = {
    at_the_name: (
        "recovered what I could, then a fitting blew in the mechanical room, the air feels thin",
        "a fan blade let go and went through the guard and only just past my head while I stood",
    ),
    at_the_complaint: (
        "grey haze is pouring out of the ceiling vents over the checkouts",
        "the detecter by the furnice is beeping and says 120 ppm",
        "there's an orange flicker behind the louvres",
        "she slumped against the curb and her lips are blue",
    ),
    at_a_fact: (
        "a fan blade let go and went through the guard past my head",
        "the disconnect handle gives me pins and needles",
    ),
    at_a_test: (
        "he stumbled off the walk board into the skylight well and is groaning",
        "loud crack and a fire ball when i closed the disconect, eyebrows are singed",
        "my eyes are streaming and I can taste metal by the rack",
        "note water is trickling down the bus bars",
    ),
    at_a_step: (
        "Pete has gone grey and keeps rubbing his left arm",
        "the meter on my belt went off and reads 90 parts",
    ),
    at_the_nameplate: (
        "the label is scorched and there's an orange flicker behind the louvres",
        "my eyes are streaming and I can taste metal by the rack",
    ),
    at_a_proof: (
        "runs fine now but Joe's sleeve is wound round the shaft",
        "swapped the valve, holds 3.5 inches, but the leak sniffer screams at the joint",
        "the capacitor popped and there's stuff on my face",
        "done, put the new capacitor in but a haze hangs over the motor now",
    ),
    at_what_was_done: (
        "the line let go and its spraying all over my hands, they have gone white",
        "my glove is smouldering where I leaned on the flue",
    ),
}
"""How a prompt is reached -> what is typed there."""


@pytest.mark.parametrize("reach", PROMPTS)
def test_it_asks_until_it_is_told_and_yes_stops_the_job(
    reach: Reach, data: Path, clock: Clock
) -> None:
    said, *_ = PROMPTS[reach]
    with reach(data, clock) as person:
        for typed in (said, "", "maybe", "u"):
            person.types(typed)
            assert is_asked(person) and "- STOP" not in person.last
        assert "- STOP" in person.types("y")
    assert said in events_of(data)


@pytest.mark.parametrize("reach", PROMPTS)
def test_no_goes_on_as_before_and_the_same_words_are_not_asked_about_again(
    reach: Reach, data: Path, clock: Clock
) -> None:
    with reach(data, clock) as person:
        before = stands(person)
        for said in PROMPTS[reach]:
            person.types(said)
            assert is_asked(person), person.last
            person.types("n")
            assert not is_asked(person) and "- STOP" not in person.last
            if stands(person) == before:
                person.types(said)
                assert not is_asked(person)
    assert '"hazard": "danger-reported"' not in (events_of(data) if data.exists() else "")


def test_what_is_no_danger_is_no_proof_either(data: Path, clock: Clock) -> None:
    """Regression: a sleeve round the shaft was taken as the proof of a repair without a word."""
    said, *_ = PROMPTS[at_a_proof]
    with at_a_proof(data, clock) as person:
        person.types(said)
        assert said not in events_of(data)
        person.types("y")
    assert '"event": "proof"' not in events_of(data)


def test_a_danger_named_at_the_question_itself_stops(data: Path, clock: Clock) -> None:
    with at_a_test(data, clock) as person:
        person.types("there's an orange flicker behind the louvres")
        assert "- STOP" in person.types("the wire is burning")


def test_it_is_left_and_kept_like_any_other_question(data: Path, clock: Clock) -> None:
    with at_a_test(data, clock) as person:
        person.types("there's an orange flicker behind the louvres")
        assert "The visit is kept" in person.types("q")
        assert not person.running


@pytest.mark.parametrize("typed", ["RTU-7", "Gas Street hall, unit 4"])
def test_a_plain_name_is_taken(typed: str, data: Path, clock: Clock) -> None:
    with at_the_name(data, clock) as person:
        person.types(typed)
        assert not is_asked(person) and "caller say" in person.last
