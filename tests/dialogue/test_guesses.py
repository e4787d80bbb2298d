"""What is offered as meant never denies what was said, and a step's word is no finding unasked.

How people put it is common practice, no source.
"""

from __future__ import annotations

import pytest

from tests.dialogue.at_work import PLACES, AtWork
from tests.dialogue.test_other_words import asks_of, at, found
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.facts_said import facts_said
from troubleshoot.visit.hearing.repairs_told import repairs_told

PLACES.setdefault("board-code", ("no-heat", "do board-code", "board-code"))


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("ignition-trials", "lights right off and stays lit"),
        ("ignition-trials", "lights nice and stays lit"),
        ("condenser-fan-turning", "outside air damper is stuck wide open"),
        ("condenser-fan-turning", "blower belt is frayed, normal noise"),
        ("drain-pan", "drain stub is clogged to the outlet"),
    ],
)
def test_no_guess_denies_what_was_said(name: str, said: str, shipped: Knowledge) -> None:
    """Regression: of a flame that stays lit "delayed light" was asked, of a damper "normal"."""
    visit = at(shipped, name)
    visit.types(said)
    test = shipped.tests[name]
    unsaid = test.healthy if name != "ignition-trials" else [o.id for o in test.outcomes]
    assert not found(visit)
    assert not asks_of(visit, [*map(test.spoken, unsaid)])


@pytest.mark.parametrize(
    ("name", "said", "meant"),
    [("economizer-damper", "runs", "follows"), ("board-code", "locked", "lockout")],
)
def test_the_word_of_a_step_is_asked_about_at_a_test(
    name: str, said: str, meant: str, shipped: Knowledge
) -> None:
    """Regression: typed a prompt too early it was taken as the outcome that it was nearest to."""
    visit = at(shipped, name)
    visit.types(said)
    assert not found(visit)
    assert asks_of(visit, [meant])


@pytest.mark.parametrize(
    ("name", "said", "meant"),
    [
        ("air-filters", "filters are plugged solid, all four", "loaded"),
        ("air-filters", "clogged solid, every one of them", "loaded"),
        ("air-filters", "filters look new, put in last month", "clean"),
        ("air-filters", "packed with lint, changed 2 months ago", "loaded"),
        ("flame-rod", "rod is coated, replaced last year", "coated"),
        ("economizer-damper", "blades stuck most of the way open, won't close", "stuck part open"),
        ("board-code", "normal heartbeat, no codes", "normal"),
        ("thermostat-settings", "stat is right, nobody changed it", "correct"),
        ("thermostat-settings", "stat is set right, nobody touched it", "correct"),
    ],
)
def test_a_plain_finding_is_met_at_once(
    name: str, said: str, meant: str, shipped: Knowledge
) -> None:
    """Regression: of each it was asked what stands, and then it was asked again or lost."""
    visit = at(shipped, name)
    visit.types(said)
    spoken = [shipped.tests[name].spoken(o) for _, outcomes in found(visit) for o in outcomes]
    assert spoken == [meant] or (not spoken and asks_of(visit, [meant]))


@pytest.mark.parametrize(
    "said", ["dirty, not plugged", "plugged solid, swapped last month, my lock is off"]
)
def test_what_denies_itself_or_tells_of_a_state_is_not(said: str, shipped: Knowledge) -> None:
    visit = at(shipped, "air-filters")
    visit.types(said)
    assert not found(visit) and not asks_of(visit, ["loaded"])


@pytest.mark.parametrize(
    "said", ["matted over, the owner never phoned", "packed with lint, these are bought online"]
)
def test_what_was_found_is_taken_once_all_is_said_to_stand(said: str, shipped: Knowledge) -> None:
    """Regression: it was asked once more whether "loaded" is meant."""
    visit = at(shipped, "air-filters")
    visit.types(said)
    assert not found(visit)
    assert 'Taken as "loaded".' in visit.types("y")


@pytest.mark.parametrize("said", ["all good, new faces clean", "new points bright and clean"])
def test_what_a_new_part_is_like_is_no_repair(said: str, shipped: Knowledge) -> None:
    """Regression: of new faces that are clean it was asked whether a coated rod was repaired."""
    visit = AtWork(shipped, at(shipped, "contactor-contacts").at)
    visit.types(said)
    assert "Repaired" not in str(getattr(visit.prompt, "question", ""))


@pytest.mark.parametrize(
    ("said", "parts"),
    [
        ("put a new contactor in, tightened the lugs", ["contactor"]),
        ("freed the damper and greased the linkage", ["damper"]),
        ("swapped the motor, oiled the bearings", ["motor"]),
        ("tightened the lugs", ["lugs"]),
        ("replaced the belt, cleaned the coil", ["belt", "coil"]),
    ],
)
def test_what_is_done_along_with_a_repair_is_none_of_its_own(said: str, parts: list[str]) -> None:
    assert [told.part for told in repairs_told(said)] == parts


@pytest.mark.parametrize(
    ("said", "where"),
    [
        ("gas 410a piston, ports outside the cabinet", "outside"),
        ("service ports are outside the cabinet", "outside"),
        ("ports behind the panel", "inside"),
    ],
)
def test_where_the_ports_are_is_heard_with_the_rest(
    said: str, where: str, shipped: Knowledge
) -> None:
    """Regression: told at the call it was lost without a word."""
    assert facts_said(shipped, "", said)["service-ports"] == where
