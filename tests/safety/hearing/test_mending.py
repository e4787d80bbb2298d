"""Whose mistyped words are put right: those of dangers that stop, and none the rules speak in."""

from __future__ import annotations

from dataclasses import replace

from tests.building import base, fault, test_of
from tests.safety.hearing.invented import job, no_stop
from troubleshoot.knowledge.model import Complaint, EquipmentFact, Outcome
from troubleshoot.safety.hearing.mending import mender_of, ordinary_words

RULES = base(
    hazards=[
        job("embers", "glimmering"),
        job("lamps", "flicker + lamp"),
        no_stop("minding", "kindling"),
    ]
)
SPOKEN = replace(
    base(
        tests=[
            replace(
                test_of("t1"),
                name="aname",
                area="anarea",
                how=("ahow",),
                words=("aword",),
                outcomes=(Outcome("anid", means="ameaning", words=("asaying",)),),
            )
        ],
        complaints=[Complaint("c1", "bsays", words=("bword",))],
        facts=[EquipmentFact("f1", ("cvalue",), "casks", words={"cvalue": ("cword",)})],
        faults=[
            replace(fault("f2"), name="dname", why="dwhy", if_left="dleft", words=("dword",)),
        ],
        hazards=[replace(no_stop("h1"), what_to_do="edo", tag="etag")],
    ),
    words={"w1": "gspoken"},
    alike={"harm": ("injury", "hram", "hrm")},
)


def test_mistyped_words_of_dangers_that_stop_are_put_right() -> None:
    """And what counts as one of them; not the words of a net, nor of a caution."""
    mend = mender_of(RULES)
    assert mend("glmimering") == "glimmering"
    assert mend("kidnling") == "kidnling" and mend("flciker") == "flciker"
    assert mend("chrared") == "charred"


def test_an_ordinary_word_is_mistyped_for_none() -> None:
    rules = base(tests=[test_of("glmimering")], hazards=[*RULES.hazards.values()])
    assert mender_of(rules)("glmimering") == "glmimering"


def test_ordinary_words_are_all_that_the_rules_speak_in() -> None:
    """Not how a word is misspelt for another."""
    assert ordinary_words(SPOKEN) == {
        "aname", "anarea", "ahow", "aword", "anid", "ameaning", "asaying", "bsays", "bword",
        "cvalue", "casks", "cword", "dname", "dwhy", "dleft", "dword", "mend", "it", "edo",
        "etag", "gspoken", "harm", "injury",
    }  # fmt: skip
