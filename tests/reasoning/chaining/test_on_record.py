"""A STOP that a record names stands for the whole job, whatever today's rules know of it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.building import base
from troubleshoot.knowledge.model import Hazard, Stop
from troubleshoot.reasoning.chaining.on_record import hazard_on_record, stopping

LEAK = Hazard("leak", "WARNING", "keep off", stop=Stop("this-step", "the joint"), spoken="a leak")
WORDS = Hazard("noise", "NOTICE", "listen", spoken="a noise")
KNOWN = replace(base(hazards=[LEAK, WORDS]), words={"old": "an old leak"})


def test_a_danger_that_the_rules_have_lost_is_told_as_one_and_handed_over() -> None:
    lost, words = hazard_on_record(KNOWN, "old"), "an old leak"
    assert (lost.id, lost.spoken, lost.signal) == ("old", words, "DANGER")
    assert lost.stops_the_job and lost.stop == Stop("whole-job", words)
    assert words in lost.what_to_do and words in lost.tag
    assert "Do not go on." in lost.what_to_do and "hand the job over" in lost.what_to_do
    assert lost.tag.startswith("Do not start") and lost.defer_to.startswith("the supervisor")


def test_what_the_rules_still_name_is_told_as_they_have_it() -> None:
    assert hazard_on_record(KNOWN, "leak") is LEAK


@pytest.mark.parametrize(
    ("name", "covers"), [("leak", "the joint"), ("noise", "a noise"), ("old", "an old leak")]
)
def test_on_record_it_stops_the_whole_job_and_still_covers_what_it_did(
    name: str, covers: str
) -> None:
    stops = stopping(KNOWN, name)
    assert stops.stop == Stop("whole-job", covers)
    assert stops.what_to_do == hazard_on_record(KNOWN, name).what_to_do
