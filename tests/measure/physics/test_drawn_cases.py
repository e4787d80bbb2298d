"""Units drawn for measuring: known to the rule base, and read without a word refused."""

from __future__ import annotations

import pytest

pytest.importorskip("scipy", reason="the optional extra physics is not installed")

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.measure.physics.cards import COOLING, HEATING, cards_of
from troubleshoot.measure.physics.cases import EVERYTHING, WAYS, case_of, examined
from troubleshoot.measure.physics.draws import ROUND, pairs, singles
from troubleshoot.measure.physics.sound_parts import SOUND
from troubleshoot.physics.knobs import Faults


def test_every_card_drawn_is_one_of_the_rule_base(shipped: Knowledge) -> None:
    assert set(COOLING) | set(HEATING) <= set(shipped.faults)


def test_every_drawn_unit_is_understood_whole(shipped: Knowledge) -> None:
    cards = set()
    for unit in examined(singles(len(ROUND), "7")):
        case = case_of(shipped, unit, unit.rows)
        assert case.complaint in shipped.complaints
        assert len(case.answers) > 10, unit.drawn.cards
        cards |= set(unit.drawn.cards)
    assert cards == {*COOLING, *HEATING}


def test_two_faults_are_two_knobs_of_a_unit_that_can_have_both() -> None:
    for drawn, _ in pairs(200, "7"):
        one, other = (cards_of(drawn.mode)[card] for card in drawn.cards)
        assert one.fits(drawn.plate) and other.fits(drawn.plate)
        assert (one.part, one.knob) != (other.part, other.knob)
        for card in (one, other):
            turned = getattr(getattr(drawn.faults, card.part), card.knob)
            assert turned != getattr(getattr(Faults(), card.part), card.knob)


def test_dirt_on_all_coils_is_not_drawn_beside_what_is_in_one_of_two_circuits() -> None:
    for drawn, _ in pairs(400, "7"):
        both = [cards_of(drawn.mode)[card] for card in drawn.cards]
        in_circuits = [card for card in both if card.part == "refrigerant"]
        if drawn.plate.circuits > 1:
            assert len({card.everywhere for card in in_circuits}) < 2, drawn.cards


def test_each_way_of_reading_leaves_out_the_same_at_every_look() -> None:
    (unit,) = examined(singles(1, "7"))
    assert unit.read(EVERYTHING) == unit.rows
    for way in WAYS:
        assert unit.read(way) == unit.read(way)
        assert set(map(str, unit.read(way))) <= set(map(str, unit.rows))
    assert all("outcome" not in row for row in unit.read("no sights"))


def test_a_part_that_no_fault_touches_has_a_sound_outcome(shipped: Knowledge) -> None:
    for sound in SOUND.values():
        assert all(shipped.tests[test].healthy for test in sound)
        assert not any(shipped.tests[test].kind == "step" for test in sound)


def test_nothing_that_is_drawn_is_said_to_be_sound_beside_it() -> None:
    for unit in examined(singles(len(ROUND), "3")):
        assert not {row["test"] for row in unit.rows} & SOUND[unit.drawn.mode], unit.drawn.cards
