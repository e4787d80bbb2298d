"""What the remedy of a danger has to be stands in fields of its hazard, not in its orders."""

from __future__ import annotations

from dataclasses import replace

import pytest

from troubleshoot.knowledge.caution_diff import dropped
from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.safety.stops.by_its_orders import why_too_near, why_untested
from troubleshoot.safety.stops.no_repair import why_no_repair
from troubleshoot.safety.stops.reopening import NotAResult, in_words

IN_ANOTHER_LANGUAGE = "Alejese y apague el equipo."


def in_another_language(shipped: Knowledge, name: str) -> Hazard:
    return replace(shipped.hazards[name], what_to_do=IN_ANOTHER_LANGUAGE)


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("smoke-or-heat-now", "switched it off"),
        ("smoke-or-heat-now", "replaced the thermostat"),
        ("wet-electrical", "replaced the filters"),
        ("heat-exchanger-breach", "patched the crack and cleaned the burners"),
        ("rollout-tripped", "sealed the crack and cleaned the burners"),
    ],
)
def test_no_remedy_stays_none_whatever_language_its_orders_are_in(
    name: str, said: str, shipped: Knowledge
) -> None:
    """Regression: translated orders let a cracked exchanger be patched."""
    with pytest.raises(NotAResult):
        in_words(shipped, said, in_another_language(shipped, name))


def test_a_second_patch_is_none_either(shipped: Knowledge) -> None:
    said = "patched the crack, replaced the exchanger, then sealed the hole"
    with pytest.raises(NotAResult):
        in_words(shipped, said, shipped.hazards["heat-exchanger-breach"])


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("gas-odour", "sealed the leak at the union"),
        ("refrigerant-escaping", "brazed the leak"),
        (None, "brazed the leak"),
    ],
)
def test_what_leaks_elsewhere_is_sealed(name: str | None, said: str, shipped: Knowledge) -> None:
    hazard = None if name is None else shipped.hazards[name]
    assert why_no_repair(said, hazard) == ""


@pytest.mark.parametrize(
    "said", ["patched the crack, then replaced the exchanger", "new heat exchanger fitted"]
)
def test_an_exchanger_is_replaced_whatever_was_tried_before(said: str, shipped: Knowledge) -> None:
    assert in_words(shipped, said, shipped.hazards["heat-exchanger-breach"]) == said


def test_a_wet_switch_is_tested_and_a_line_kept_from_in_any_language(shipped: Knowledge) -> None:
    assert why_untested("it is dry", in_another_language(shipped, "wet-electrical"))
    assert not why_untested("200 Mohm", in_another_language(shipped, "wet-electrical"))
    assert why_too_near("it is 9 ft away", in_another_language(shipped, "overhead-line-near"))
    assert not why_too_near("it is 12 ft away", in_another_language(shipped, "antenna-near"))


def test_only_a_stop_of_the_whole_job_keeps_off_until_then(shipped: Knowledge) -> None:
    held = {hazard.id for hazard in shipped.hazards.values() if hazard.stays_off}
    assert held == {"smoke-or-heat-now", "wet-electrical", "heat-exchanger-breach"}
    stop = shipped.hazards["smoke-or-heat-now"].stop
    assert stop is not None
    narrow = replace(stop, scope="this-step")
    assert not replace(shipped.hazards["smoke-or-heat-now"], stop=narrow).stays_off


def test_a_distance_that_the_orders_tell_is_the_one_that_is_asked_for(shipped: Knowledge) -> None:
    """OSHA 1926.1408 and 1910.333(c)(3): 10 ft up to 50 kV."""
    for hazard in shipped.hazards.values():
        if hazard.least_feet:
            assert f"at least {hazard.least_feet:g} ft" in hazard.what_to_do


@pytest.mark.parametrize(
    ("name", "field", "to", "told"),
    [
        ("smoke-or-heat-now", "off_until", None, "no longer stays off until it is repaired"),
        ("wet-electrical", "off_until", "repaired", "no longer stays off until it is tested"),
        ("heat-exchanger-breach", "exchanger", False, "lets a heat exchanger be patched"),
        ("antenna-near", "least_feet", 6.0, "kept people 10 ft away, and 6 ft now"),
    ],
)
def test_a_lesser_remedy_is_told_between_two_versions(
    name: str, field: str, to: object, told: str, shipped: Knowledge
) -> None:
    lesser = replace(shipped.hazards[name], **{field: to})  # type: ignore[arg-type]
    now = replace(shipped, hazards={**shipped.hazards, name: lesser})
    assert [(d.id, d.word, d.what) for d in dropped(shipped, now)] == [
        (name, field.replace("_", "-"), f"{name} {told}")
    ]
    assert [*dropped(now, shipped)] == []
