"""A card as it is told becomes a rule file."""

from __future__ import annotations

from dataclasses import replace

import pytest
import yaml

from troubleshoot.authoring.draft import Draft, card_text, id_of, with_seen
from troubleshoot.knowledge.formatting import format_file
from troubleshoot.knowledge.model import Evidence, Finding, Knowledge, Proof
from troubleshoot.knowledge.model.faults import Repair
from troubleshoot.knowledge.vocabulary import Grade

DRAFT = Draft(
    name='Board relay stuck: "closed", 24 V on G # always',
    story="fan runs at night: Enter, or 'auto', no matter",
    subsystem="controls",
    calls=(("often", "fan-never-stops"), ("almost-always", "no-cooling")),
    repair=Repair(what="Replace the board.", minutes=45.0, part_cost="adjust", who=("electrical",)),
    proof=Proof(text="The fan stops with the call"),
)


def seen(test: str, outcome: str, grade: Grade) -> Evidence:
    return Evidence(grade, (Finding(test, (outcome,)),))


SLIPPING = (seen("blower-belt", "slipping", "often"),)


@pytest.mark.parametrize(
    ("name", "wanted"),
    [
        ("Blower belt broken or off", "blower-belt-broken-or-off"),
        ("Owner's 24 V / 40 VA transformer", "owners-24-v-40-va-transformer"),
        ("a b c d e f g h i j", "a-b-c-d-e-f-g-h"),
        ("../../etc/passwd", "etc-passwd"),
        ("Ünïcode", "n-code"),
        ("...", ""),
        (f"valve {'x' * 90}", "valve"),
    ],
)
def test_an_id_is_made_of_the_words_of_a_name(name: str, wanted: str) -> None:
    assert id_of(name) == wanted


def test_whatever_is_told_is_read_back_as_it_was_told(shipped: Knowledge) -> None:
    text = card_text(shipped, replace(DRAFT, seen=SLIPPING))
    assert format_file(text, kind="fault") == text
    card = yaml.safe_load(text)
    assert (card["name"], card["examples"][0]["name"]) == (DRAFT.name, DRAFT.story)
    assert card["evidence"] == {"often": [{"blower-belt": "slipping"}]}


def test_a_second_outcome_with_the_same_word_may_show_instead() -> None:
    told = with_seen((), seen("belt", "worn", "often"))
    assert with_seen(told, seen("belt", "loose", "often")) == (
        Evidence("often", (Finding("belt", ("worn", "loose")),)),
    )


def test_what_is_told_again_takes_the_place_of_what_was_told() -> None:
    told = with_seen((), seen("belt", "worn", "often"))
    assert with_seen(told, seen("belt", "worn", "seldom")) == (seen("belt", "worn", "seldom"),)


def test_the_look_alikes_case_is_the_second_example(shipped: Knowledge) -> None:
    alike = shipped.faults["filters-loaded"]
    told = replace(DRAFT, seen=SLIPPING)
    text = card_text(shipped, replace(told, look_alikes=(alike.id,)))
    assert f"a case of its look-alike: {alike.examples[0].name}"[:60] in text
    sound = card_text(shipped, told)
    assert "what it shows by is sound" in sound and "blower-belt, outcome: good" in sound
