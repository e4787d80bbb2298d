"""What a number says at a step, and which of its words have to be typed whole."""

from __future__ import annotations

import pytest

from troubleshoot.dialogue.confirming import by_its_word
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED, STEPS
from troubleshoot.visit.hearing.metered import NO_END, NO_WORD, no_proof, too_little


@pytest.mark.parametrize(
    ("step", "number", "proves"),
    [
        ("roof-conditions", "more than 20 ft", True),
        ("roof-conditions", "less than 20 ft", False),
        ("circuit-evacuated", "less than 400 micron", True),
        ("circuit-evacuated", "more than 400 micron", False),
        ("verified-dead", "less than 1 V", False),
        ("verified-dead", "more than 1 V", False),
    ],
)
def test_a_number_without_an_end_proves_nothing_where_it_may_be_worse(
    step: str, number: str, proves: bool, shipped: Knowledge
) -> None:
    """Near an edge less is worse, of a vacuum more; of volts no bound counts at all."""
    assert no_proof(shipped, step, number, number) == ("" if proves else NO_END)


@pytest.mark.parametrize(
    ("step", "number"), [("roof-conditions", "20 ft"), ("circuit-evacuated", "400 micron")]
)
def test_a_distance_or_a_vacuum_says_nothing_of_the_rest(
    step: str, number: str, shipped: Knowledge
) -> None:
    """Twenty feet from the edge the roof may be iced; a vacuum has still to hold by itself."""
    assert too_little(shipped, step, (CONFIRMED[step],), number) == NO_WORD
    assert too_little(shipped, step, (CONFIRMED[step],), None) == ""


def test_volts_say_all_that_is_asked_of_a_proof(shipped: Knowledge) -> None:
    assert too_little(shipped, "verified-dead", ("dead",), "0 V") == ""


@pytest.mark.parametrize("step", ["circuit-opened", "circuit-held"])
def test_that_nothing_was_opened_wants_its_word_whole(step: str, shipped: Knowledge) -> None:
    """It has a repaired circuit taken for sound: nobody guesses it from a typing error."""
    test = shipped.tests[step]
    words = {outcome.id: outcome.spoken for outcome in test.outcomes}
    by_word = {outcome for outcome, word in words.items() if by_its_word(test, word)}
    assert by_word == {CONFIRMED[step], "nothing-opened"}


def test_of_any_other_step_only_what_confirms_it_takes_a_danger_away(shipped: Knowledge) -> None:
    also = {step.id for step in STEPS.values() if step.also_by_word}
    assert also == {"circuit-opened", "circuit-held"}
    locked = shipped.tests["lockout"]
    assert by_its_word(locked, "locked") and not by_its_word(locked, "cannot lock")
