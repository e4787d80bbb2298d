"""What a stranger said on a roof: it stops in the right hazard's words, or is asked about first.

The sentences of `TOLD` were missed everywhere, or asked about and no more.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.test_asked_where_words_hint import at_a_test, at_the_complaint, is_asked
from tests.edge.visits import begin, events_of, lead_to
from troubleshoot.dialogue.answering import said_by
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.hearing.hinting import hints

TOLD = {
    "ladder blew down cant get off": "ladder-and-hatch",
    "I opened the disconnect and the load side is still hot": "live-now",
    "wires to the high pressure switch are twisted together": "jumpered-safety",
    "my co meter is chirping 85 ppm": "carbon-monoxide-evacuate",
    "disconnect off but still 277 volts to ground": "live-now",
    "my buddy is down and not answering": "somebody-hurt",
    "im hanging on the ladder and cant hold on": "fallen-or-hanging",
    "main lugs are melting": "scorched-or-hot-wiring",
    "somebody jumped out the rollout switch": "jumpered-safety",
    "wire nut on the rollout wires": "jumpered-safety",
    "my sleeve is caught in the belt": "caught-in-machine",
    "panel bit me": "unexplained-voltage",
    "bubbles at the union": "gas-odour",
    "thunder rolling in seen lightning": "lightning",
    "dizzy and got a headache since i fired it up": "carbon-monoxide-evacuate",
}


def orders_of(shipped: Knowledge, hazard: str) -> str:
    return " ".join(shipped.hazards[hazard].what_to_do.split())


def shown(person: Person) -> str:
    return " ".join(person.last.split())


@pytest.mark.parametrize(("typed", "hazard"), TOLD.items())
def test_at_a_test_it_stops_in_its_own_words(
    typed: str, hazard: str, data: Path, clock: Clock, shipped: Knowledge
) -> None:
    with at_a_test(data, clock) as person:
        person.types(typed)
        assert "STOP" in person.last and orders_of(shipped, hazard) in shown(person), person.last
    assert f'"hazard": "{hazard}"' in events_of(data)


@pytest.mark.parametrize("typed", [*TOLD][:3])
def test_at_the_complaint_and_in_a_note_too(
    typed: str, data: Path, clock: Clock, shipped: Knowledge
) -> None:
    orders = orders_of(shipped, TOLD[typed])
    with at_the_complaint(data, clock) as person:
        person.types(typed)
        assert orders in shown(person), person.last
    with begin(data / "other", clock) as person:
        person.types(f"note {typed}")
        assert orders in shown(person), person.last


@pytest.mark.parametrize(
    ("typed", "hazard"),
    [
        ("water is trickling down the bus bars", "wet-electrical"),
        ("there is an orange flicker behind the louvres", "smoke-or-heat-now"),
        ("Pete has gone grey and keeps rubbing his left arm", "somebody-hurt"),
        ("the meter on my belt went off and reads 90 parts", "carbon-monoxide-evacuate"),
        ("I am getting the bolt cutters for that lock", "lock-of-somebody-else"),
        ("tape is holding the float switch down", "jumpered-safety"),
    ],
)
def test_what_is_asked_about_and_is_one_is_told_as_what_the_words_say(
    typed: str, hazard: str, data: Path, clock: Clock, shipped: Knowledge
) -> None:
    """Regression: it was the hazard that stands for all others."""
    with at_a_test(data, clock) as person:
        person.types(typed)
        assert is_asked(person)
        person.types("y")
        assert orders_of(shipped, hazard) in shown(person), person.last


@pytest.mark.parametrize("typed", ["I burned my lunch", "we had a fire drill"])
def test_a_manner_of_speaking_is_not_asked_about(typed: str, data: Path, clock: Clock) -> None:
    with at_a_test(data, clock) as person:
        person.types(typed)
        assert not is_asked(person) and "STOP" not in person.last
        person.types(f"note {typed}")
        assert not is_asked(person) and "STOP" not in person.last


def test_words_of_an_answer_are_no_danger(shipped: Knowledge) -> None:
    """Regression: skin that is white was asked about, on the flame rod that it coats."""
    rod = shipped.tests["flame-rod"]
    own = said_by(rod, [outcome.id for outcome in rod.outcomes])
    assert hints("coated white skin") and not hints("coated white skin", own)


def test_at_the_step_that_asks_for_it_the_fire_panel_is_an_answer(data: Path, clock: Clock) -> None:
    with begin(data, clock) as person:
        person.types("do wiring-burn-marks")
        lead_to(person, "Put the fire panel on test")
        for said in ("fire guy put it on test", "the alarm company has it on test now"):
            person.types(said)
            assert not is_asked(person) and "STOP" not in person.last
        for said in ("fire guy put his thumb on test", "fire guy put it on a shelf"):
            person.types(said)
            assert is_asked(person), said
            person.types("n")
