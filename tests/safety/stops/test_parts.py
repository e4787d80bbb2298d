"""What has to be sound afresh before a STOP goes, and what a break makes too old to count."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.building import base, measured, unit_of
from tests.safety.stops.little_rules import CLEAR, LOOK, ONE, ROOF, ROOM, TWO, VOLTS, hazard, said
from troubleshoot.knowledge.model import Bound, Hazard, LimitLine, Outcome, Read, Test
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.steps import DEAD_TEST, METER_PROOF
from troubleshoot.safety.stops.parts import (
    after_a_break,
    by_number_alone,
    not_yet_afresh,
    proved_since,
    shown_by,
)
from troubleshoot.safety.stops.record import Spot, StopMet
from troubleshoot.visit.state import VisitState

SWEEP = measured("sweep", {"normal": {"at_most": 5}}, reads=(Read("volts"),))
ON_GAS = replace(SWEEP, id="on-gas", exists_when={"metering": ("txv",)})
GAS = hazard("gas", "whole-job", all_clear="sweep")
KNOWN = base(
    [LOOK, ROOM, ROOF, CLEAR, SWEEP, ON_GAS],
    hazards=[GAS, hazard("bare", "whole-job")],
    quantities=[VOLTS],
)
FIXED, TXV = (unit_of(KNOWN, circuits=2, metering=word) for word in ("fixed-orifice", "txv"))
METERED: Spot = ("sweep", None)
SEEN: Spot = ("room", None)


@pytest.mark.parametrize(
    ("which", "finding", "wanted"),
    [
        (GAS, "room", ["sweep", "room"]),
        (GAS, "roof-conditions", ["sweep", "roof-conditions"]),
        (GAS, "all-clear", ["all-clear", "sweep"]),
        (GAS, "sweep", ["sweep"]),
        (GAS, "on-gas", ["sweep", "on-gas"]),
        (hazard("gas", "until-made-safe", all_clear="sweep"), "room", ["room"]),
        (hazard("gas", "whole-job", all_clear="all-clear"), "room", ["room"]),
        (hazard("gas", "whole-job"), "room", ["room"]),
    ],
)
def test_nothing_else_lifts_a_metered_stop_for_the_whole_job_without_its_number(
    which: Hazard, finding: str, wanted: list[str]
) -> None:
    """The number comes before anybody looks, and after the word of whoever cleared the place."""
    parts = shown_by(KNOWN, VisitState(unit=FIXED), which, (finding, None))
    assert [test for test, _ in parts] == wanted


@pytest.mark.parametrize(("unit", "wanted"), [(TXV, ["on-gas", "room"]), (FIXED, ["room"])])
def test_a_number_that_this_unit_cannot_give_is_not_waited_for(
    unit: object, wanted: list[str]
) -> None:
    job = VisitState(unit=unit)  # type: ignore[arg-type]
    parts = shown_by(KNOWN, job, hazard("gas", "whole-job", all_clear="on-gas"), SEEN)
    assert [test for test, _ in parts] == wanted


@pytest.mark.parametrize(
    ("scope", "test", "alone"),
    [
        ("whole-job", SWEEP, True),
        ("until-made-safe", SWEEP, False),
        (None, SWEEP, False),
        ("whole-job", replace(SWEEP, reads=()), False),
        ("whole-job", replace(SWEEP, kind="step"), False),
        ("whole-job", ROOM, False),
    ],
)
def test_only_a_number_lifts_a_stop_for_the_whole_job_that_an_instrument_shows(
    scope: str | None, test: Test, alone: bool
) -> None:
    assert by_number_alone(hazard("gas", scope), test) is alone


DEAD, PROOF = said(DEAD_TEST, "dead"), said(METER_PROOF, "proved")


@pytest.mark.parametrize(
    ("finding", "answers", "since", "counts"),
    [
        (DEAD_TEST, (DEAD,), 0, False),
        (DEAD_TEST, (DEAD, PROOF), 0, True),
        (DEAD_TEST, (PROOF, DEAD), 0, False),
        (DEAD_TEST, (PROOF, DEAD, PROOF), 0, True),
        (DEAD_TEST, (DEAD, PROOF, DEAD), 1, False),
        (DEAD_TEST, (DEAD, PROOF), 1, True),
        (DEAD_TEST, (), 0, True),
        ("room", (DEAD,), 0, True),
    ],
)
def test_a_test_for_dead_counts_once_the_meter_has_been_proved_after_it(
    finding: str, answers: tuple[object, ...], since: int, counts: bool
) -> None:
    """NFPA 70E 120.5: the tester is proved before the test and after it."""
    job = VisitState(unit=FIXED, answers=answers)  # type: ignore[arg-type]
    assert proved_since(job, (finding, None), since) is counts


NUMBER, LOOKED, OTHER = said("sweep", "normal"), said("room", "normal"), said("look", "bad", ONE)
BACK = StopMet("gas", 0, SEEN, reopened=True)


@pytest.mark.parametrize(
    ("met", "answers", "anew"),
    [
        (BACK, (NUMBER,), True),
        (BACK, (LOOKED, OTHER), True),
        (BACK, (NUMBER, LOOKED), False),
        (BACK, (OTHER,), False),
        (replace(BACK, reopened=False), (NUMBER,), False),
        (replace(BACK, spot=None), (NUMBER,), False),
        (replace(BACK, hazard="gone-by-now"), (NUMBER,), False),
        (replace(BACK, hazard="bare"), (NUMBER,), False),
    ],
    ids=["number", "look", "both", "neither", "not back", "no finding", "lost", "not metered"],
)
def test_a_break_makes_half_of_what_lifts_too_old_and_a_stop_lifted_stays_so(
    met: StopMet, answers: tuple[object, ...], anew: bool
) -> None:
    job = VisitState(unit=FIXED, answers=answers, stops=(met,))  # type: ignore[arg-type]
    since = len(answers) if anew else met.answers
    assert after_a_break(KNOWN, job) == (replace(met, answers=since),)


def test_each_stop_is_judged_for_itself_after_a_break() -> None:
    whole = replace(BACK, hazard="bare")
    job = VisitState(unit=FIXED, answers=(NUMBER,), stops=(whole, BACK))
    assert after_a_break(KNOWN, job) == (whole, replace(BACK, answers=1))


SPLIT = Test(
    "split", "split", "area", "computed", reads=(Read("own"),), per="circuit",
    outcomes=(Outcome("high", limits=(LimitLine((Bound("volts"),), {"target": ("known",)}),)),),
)  # fmt: skip


@pytest.mark.parametrize(("at", "asked"), [(ONE, "split"), (TWO, "sweep")])
def test_a_computed_finding_is_taken_afresh_by_what_gives_it_where_it_was(
    at: Place, asked: str
) -> None:
    """Only the second circuit has a plate to compute it from: at the first it is typed itself."""
    knowledge = base([SPLIT, SWEEP], quantities=[VOLTS])
    job = VisitState(unit=replace(FIXED, plate={("target", TWO): 12.0}))
    assert [each.id for each in not_yet_afresh(knowledge, job, ("split", at), 0)] == [asked]
