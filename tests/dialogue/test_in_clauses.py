"""What says what the list says, in other grammar, is taken; no denial, doubt or half of it is."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from troubleshoot.dialogue.in_clauses import by_clauses
from troubleshoot.knowledge.model import Knowledge, Test


def meant(shipped: Knowledge, name: str, typed: str) -> tuple[str, ...]:
    test = shipped.tests[name]
    return by_clauses(shipped, test, typed, tuple(o.id for o in test.outcomes))


@pytest.mark.parametrize(
    ("name", "typed", "outcome"),
    [
        ("condenser-fan-turning", "fan's just hummin, won't turn", "stopped"),
        ("condenser-fan-turning", "its just sittin there hummin", "stopped"),
        ("condenser-fan-turning", "not turning, just hums", "stopped"),
        ("condenser-fan-turning", "turning full speed", "normal"),
        ("condenser-fan-turning", "both turning fine", "normal"),
        ("condenser-fan-hand-spin", "spins free, no play", "free"),
        ("air-filters", "packed solid with dirt", "loaded"),
        ("air-filters", "plugged up black", "loaded"),
        ("air-filters", "there's no filters in it", "missing"),
        ("walk-round", "clean, nothin out of the ordinary", "clean"),
        ("flame-rod", "white coating on it, porcelain's good", "coated"),
        ("ice-on-coil", "no ice on it", "none"),
        ("ice-on-coil", "white frost on the suction pipe", "frost"),
        ("contactor-pull-in", "it aint movin with the call on", "does-not-pull-in"),
        ("breaker-and-disconnect", "handle's down, nothin tripped", "switched-off"),
        ("thermostat-cable-ohms", "Y is open", "open"),
        ("ignition-spark", "nope, no spark", "none"),
        ("inducer-fan", "turnin slow, drags", "slow"),
        ("blower-rpm", "wheel aint turnin", "zero"),
        ("drain-pan", "drain pan is full of water", "standing-water"),
        ("contactor-contacts", "contacts are pitted", "pitted"),
    ],
)
def test_filler_pronouns_and_clauses_are_seen_through(
    shipped: Knowledge, name: str, typed: str, outcome: str
) -> None:
    """Regression: all of these were refused, though the list says the same."""
    assert meant(shipped, name, typed) == (outcome,)


def test_two_things_that_are_so_are_both_taken_where_several_may_be(shipped: Knowledge) -> None:
    assert meant(shipped, "flame-rod", "white skin on it, lead reads open") == (
        "coated", "lead-open",
    )  # fmt: skip
    assert meant(shipped, "condenser-fan-turning", "it's slow, turns the wrong way") == ()


@pytest.mark.parametrize(
    ("name", "typed"),
    [
        ("condenser-fan-turning", "not turning full speed"),
        ("condenser-fan-turning", "one turning, one hummin"),
        ("condenser-fan-turning", "turning"),
        ("condenser-fan-turning", "was hummin"),
        ("condenser-fan-turning", "hums now and then"),
        ("condenser-fan-turning", "does it turn full speed?"),
        ("condenser-fan-hand-spin", "spins free, some play"),
        ("condenser-fan-hand-spin", "no force"),
        ("air-filters", "not packed with dirt"),
        ("blower-belt", "no cracks, frays or missing pieces"),
        ("blower-belt", "no cracks, glazing"),
        ("wiring-burn-marks", "nothin browned or melted"),
        ("ice-on-coil", "half of it frost"),
        ("thermostat-cable-ohms", "Y is open, 3 ohm on R"),
        ("blower-wheel", "good enough"),
        ("air-filters", "filters are not plugged"),
        ("condenser-fan-windings", "motor is not grounded"),
    ],
)
def test_a_denial_a_doubt_another_word_or_several_outcomes_are_none(
    shipped: Knowledge, name: str, typed: str
) -> None:
    assert meant(shipped, name, typed) == ()


def _said(shipped: Knowledge) -> Iterator[tuple[Test, str, str]]:
    for test in shipped.tests.values():
        for outcome in test.outcomes:
            for word in (outcome.spoken, *outcome.words):
                yield test, outcome.id, word


def test_no_word_denied_is_taken_for_its_outcome(shipped: Knowledge) -> None:
    """Unless another outcome's word, denied, is one of its own: not turning, no spark."""
    for test, outcome, word in _said(shipped):
        own = {w for o in test.outcomes if o.id == outcome for w in (o.spoken, *o.words)}
        for said in (f"not {word}", f"it isn't {word}", f"never {word}", f"no, not {word}"):
            if {"not", "no", "none", "nothing", "does not"}.isdisjoint(word.split()):
                denied = f"not {word}" in own
                assert denied or outcome not in meant(shipped, test.id, said), (test.id, said)


def test_no_word_in_doubt_of_another_day_or_asked_is_taken(shipped: Knowledge) -> None:
    for test, outcome, word in _said(shipped):
        for said in (f"{word}?", f"maybe {word}", f"used to be {word}", f"will be {word}"):
            assert outcome not in meant(shipped, test.id, said), (test.id, said)
