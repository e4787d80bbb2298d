"""Which hazard a danger is taken for that is told in no phrase of any: the nearest, or the worst.

How near counts is for the whole of each case: acid and drip stand in both hazards, drum in one.
"""

from __future__ import annotations

import pytest

from tests.building import base
from tests.safety.hearing.invented import ANY, job, lesser
from troubleshoot.knowledge.model import Hazard
from troubleshoot.safety.hearing.dangers import ANY_DANGER, named
from troubleshoot.safety.hearing.reporting import reported

DRUM = lesser("drum", "acid drip drum")


def taken_for(typed: str, *hazards: Hazard) -> str:
    knowledge = base(hazards=[*hazards, ANY])
    assert named(knowledge, typed) == (), "it is a guess only where no phrase was said"
    (found,) = reported(knowledge, typed)
    return found.id


@pytest.mark.parametrize(
    ("whole_job", "typed", "found"),
    [
        ("acid drip", "drum drip acid", "job"),
        ("acid drip whistle", "drum drip acid", "drum"),
        ("drip acid whistle rattle", "drum drip acid", "drum"),
        ("acid whistle", "drum drip acid", "drum"),
    ],
)
def test_one_for_the_whole_job_goes_before_a_lesser_one_that_is_no_more_than_twice_as_near(
    whole_job: str, typed: str, found: str
) -> None:
    for order in ((DRUM, job("job", whole_job)), (job("job", whole_job), DRUM)):
        assert taken_for(typed, *order) == found


@pytest.mark.parametrize(
    ("typed", "found"),
    [
        ("drip acid", "drum"),
        ("drip acid kettle", "drum"),
        ("drip acid kettle ribbon", "drum"),
        ("drip acid kettle ribbon teapot", ANY_DANGER),
        ("drip kettle", ANY_DANGER),
        ("drip", ANY_DANGER),
        ("kettle", ANY_DANGER),
        ("", ANY_DANGER),
    ],
)
def test_two_telling_words_and_half_of_what_was_said_make_a_guess(typed: str, found: str) -> None:
    assert taken_for(typed, DRUM) == found


@pytest.mark.parametrize(
    ("phrase", "typed"),
    [("no gasket drum", "gasket no ribbon"), ("cannot stop drum", "drum cannot ribbon"),
     ("nobody near drum", "drum nobody ribbon")],
)  # fmt: skip
def test_a_denial_and_what_changes_nothing_bring_a_guess_no_nearer(phrase: str, typed: str) -> None:
    assert taken_for(typed, lesser("other", phrase)) == ANY_DANGER


@pytest.mark.parametrize(
    ("hazards", "typed", "found"),
    [
        (["acid drip drum", "acid drip whistle"], "whistle acid drip", 1),
        (["acid drip ribbon", "acid kettle ribbon"], "ribbon acid kettle", 1),
        (["acid drip", "acid drip drum whistle"], "drip acid", 0),
        (["acid drip drum whistle", "acid drip"], "drip acid", 1),
        (["acid drip", "acid ribbon", "drip acid kettle"], "kettle ribbon acid", 1),
        (["acid drip drum", "acid kettle drum", "drip whistle"], "kettle drip acid", 1),
    ],
)
def test_the_nearest_has_more_of_its_words_said_and_rarer_ones(
    hazards: list[str], typed: str, found: int
) -> None:
    assert taken_for(typed, *(lesser(str(n), words) for n, words in enumerate(hazards))) == str(
        found
    )


def test_a_hazard_is_as_near_as_the_nearest_of_its_phrases() -> None:
    many = lesser("many", "drum kettle", "acid drip whistle", "acid ribbon")
    assert taken_for("whistle acid drip", lesser("other", "acid drip kettle"), many) == "many"
