"""Which words are put right as mistyped dangers, and which of them tell of a danger at all."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.building import base, fault, test_of
from tests.safety.hearing.invented import ANY, job, lesser, no_stop
from troubleshoot.knowledge.model import Complaint, Knowledge, Outcome
from troubleshoot.safety.hearing.dangers import is_mistyped, may_be_danger, spoken_of

BLAST = job("blast", "explosion")
SPELT_SO = "explosin"
LOOK, FAULT = test_of("look"), fault("worn")
KNOWN = {
    "a complaint": base(complaints=[Complaint("call", SPELT_SO)]),
    "its words": base(complaints=[Complaint("call", "it is cold", words=("cold", SPELT_SO))]),
    "a test's name": base([replace(LOOK, name=SPELT_SO)]),
    "its area": base([replace(LOOK, area=SPELT_SO)]),
    "how it is done": base([replace(LOOK, how=("look at it", SPELT_SO))]),
    "an outcome": base([replace(LOOK, outcomes=(Outcome(SPELT_SO),))]),
    "what it means": base([replace(LOOK, outcomes=(Outcome("bad", f"an {SPELT_SO} cap"),))]),
    "a fault": base(faults=[replace(FAULT, name=SPELT_SO)]),
    "why": base(faults=[replace(FAULT, why=SPELT_SO)]),
    "if it is left": base(faults=[replace(FAULT, if_left=SPELT_SO)]),
    "its repair": base(faults=[replace(FAULT, repair=replace(FAULT.repair, what=SPELT_SO))]),
    "orders": base(hazards=[replace(lesser("other", "acid"), what_to_do=SPELT_SO)]),
    "a tag": base(hazards=[replace(lesser("other", "acid"), tag=SPELT_SO)]),
}


def with_blast(knowledge: Knowledge) -> Knowledge:
    return replace(knowledge, hazards={**knowledge.hazards, BLAST.id: BLAST, ANY.id: ANY})


@pytest.mark.parametrize("where", KNOWN)
def test_a_word_that_stands_in_the_rules_is_spelt_as_it_was_meant(where: str) -> None:
    """Else everybody who types what is read on the screen would have called a danger."""
    assert is_mistyped(with_blast(base()), SPELT_SO) and spoken_of(with_blast(base()), SPELT_SO)
    knowledge = with_blast(KNOWN[where])
    assert not is_mistyped(knowledge, SPELT_SO) and not spoken_of(knowledge, SPELT_SO)


@pytest.mark.parametrize(
    ("typed", "put_right"),
    [
        ("explosin", True), ("an explosin here", True), ("here explosion", False),
        ("smoulderng", True), ("", False),
    ],
)  # fmt: skip
def test_what_is_put_right_is_a_word_of_a_stop_or_one_that_counts_as_it(
    typed: str, put_right: bool
) -> None:
    knowledge = base(hazards=[BLAST, job("smoke", "smoke"), ANY])
    assert is_mistyped(knowledge, typed) is put_right
    assert bool(spoken_of(knowledge, typed)) is (put_right or typed == "here explosion")


def test_no_caution_that_stops_nothing_is_seen_in_a_slip_of_the_fingers() -> None:
    assert is_mistyped(base(hazards=[job("mind", "gangway"), ANY]), "gangwy")
    assert not is_mistyped(base(hazards=[no_stop("mind", "gangway"), ANY]), "gangwy")


@pytest.mark.parametrize(
    ("typed", "may_be"),
    [
        ("it fell", True), ("what a fall of acid", True), ("panel", False), ("the panel", False),
        ("gangway", False), ("in it", False), ("kettle", False), ("", False),
    ],
)  # fmt: skip
def test_a_telling_word_of_a_stop_may_be_a_danger_and_the_name_of_a_thing_is_none(
    typed: str, may_be: bool
) -> None:
    """A caution, a loose word and a thing alone give nobody reason to be told how to call."""
    knowledge = base(
        hazards=[job("fell", "panel fell", "acid"), no_stop("mind", "gangway"),
                 lesser("loose", "in it"), ANY]
    )  # fmt: skip
    assert may_be_danger(knowledge, typed) is may_be
