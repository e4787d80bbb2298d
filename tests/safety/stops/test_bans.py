"""What a hazard that stands forbids: by area, work state and place, until it is found sound."""

from __future__ import annotations

from typing import Any

import pytest

from tests.building import base, case, fault, test_of, unit_of
from troubleshoot.knowledge.gravity import gravest_first
from troubleshoot.knowledge.model import Ban, Complaint, Finding, Hazard, Knowledge, Stop, Trigger
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.stops.standing import Forbidden, standing_hazards

LOOK = test_of("look", "bad", per="circuit")
CURE = test_of("cure", "bad", per="circuit", work_state="locked-out")
AMPS = test_of("amps", "bad", per="compressor", work_state="running-open")
FAN = test_of("fan", "bad", per="condenser-fan", work_state="running")
ROOM = test_of("room", "bad", subsystem="house")
TESTS = (LOOK, CURE, AMPS, FAN, ROOM)
ONE, TWO = Place("circuit", 1), Place("circuit", 2)
BAD = Trigger((Finding("look", ("bad",)),))


def hazard(*bans: Ban, trigger: Trigger = BAD, scope: str | None = None) -> Hazard:
    stop = None if scope is None else Stop(scope, "it")  # type: ignore[arg-type]
    return Hazard("bite", "WARNING", "keep off", (trigger,), stop, forbids=bans)


def knowing(*hazards: Hazard, **more: Any) -> Knowledge:
    return base(TESTS, [fault("f", {"often": [{"look": "bad"}]})], hazards=hazards, **more)


def concluded(knowledge: Knowledge, *answers: Answer, **more: Any) -> Conclusions:
    unit = unit_of(knowledge, circuits=2, condenser_fans=2)
    return Reasoner(knowledge).conclude(case(knowledge, *answers, unit=unit, **more))


def bad_at(*circuits: Place) -> list[Answer]:
    return [Answer("look", ("bad",), places=(circuit,)) for circuit in circuits]


RUNNING = ("running", "running-open")


def test_a_ban_at_a_circuit_leaves_the_other_circuit_and_what_both_share() -> None:
    ban = Ban(work_states=RUNNING, at="circuit")  # type: ignore[arg-type]
    one = Forbidden(concluded(knowing(hazard(ban)), *bad_at(ONE)))
    assert one.by(AMPS, Place("compressor", 1)) and not one.by(AMPS, Place("compressor", 2))
    assert not one.by(FAN, Place("condenser-fan", 1)), "the fans serve the sound circuit too"
    assert not one.by(CURE, ONE) and not one.by(ROOM, None)
    both = Forbidden(concluded(knowing(hazard(ban)), *bad_at(ONE, TWO)))
    assert both.by(AMPS, Place("compressor", 2)) and both.by(FAN, Place("condenser-fan", 1))


@pytest.mark.parametrize(
    ("ban", "barred"),
    [
        (Ban(areas=("area",)), {"look", "cure", "amps", "fan", "room"}),
        (Ban(areas=("elsewhere",)), set()),
        (Ban(areas=("house",)), {"room"}),
        (Ban(tests=("room",)), {"room"}),
        (Ban(places=("compressor",)), {"amps"}),
        (Ban(areas=("area",), work_states=("running",)), {"fan"}),
    ],
)
def test_all_parts_of_a_ban_must_fit(ban: Ban, barred: set[str]) -> None:
    forbidden = Forbidden(concluded(knowing(hazard(ban)), *bad_at(ONE)))
    at = {"compressor": Place("compressor", 1), "condenser-fan": Place("condenser-fan", 1)}
    found = {t.id for t in TESTS if forbidden.by(t, at.get(t.per or ""))}
    assert found == barred


def test_a_ban_ends_when_all_places_were_read_sound() -> None:
    ban = Ban(work_states=("running-open",), until=(Finding("cure", ("normal",)),))
    knowledge = knowing(hazard(ban))
    sound = [Answer("cure", ("normal",), places=(place,)) for place in (ONE, TWO)]
    for said, barred in ((sound[:1], True), (sound, False)):
        found = Forbidden(concluded(knowledge, *bad_at(ONE), *said))
        assert bool(found.by(AMPS, Place("compressor", 1))) == barred
    unsound = Answer("cure", ("bad",), places=(TWO,))
    found = Forbidden(concluded(knowledge, *bad_at(ONE), sound[0], unsound))
    assert found.by(AMPS, Place("compressor", 1))


def test_what_was_read_last_at_a_place_ends_a_ban_or_not() -> None:
    ban = Ban(work_states=("running-open",), until=(Finding("room", ("normal",)),))
    for said, barred in ((("normal", "bad"), True), (("bad", "normal"), False)):
        answers = [Answer("room", (outcome,)) for outcome in said]
        found = Forbidden(concluded(knowing(hazard(ban)), *bad_at(ONE), *answers))
        assert bool(found.by(AMPS, Place("compressor", 1))) == barred


@pytest.mark.parametrize(
    ("answers", "barred"), [([], True), ([TWO], True), ([ONE], False), ([ONE, TWO], False)]
)
def test_a_ban_at_a_circuit_ends_when_that_circuit_was_read_sound(
    answers: list[Place], barred: bool
) -> None:
    ban = Ban(work_states=("running-open",), at="circuit", until=(Finding("cure", ("normal",)),))
    sound = [Answer("cure", ("normal",), places=(place,)) for place in answers]
    found = Forbidden(concluded(knowing(hazard(ban)), *bad_at(ONE), *sound))
    assert bool(found.by(AMPS, Place("compressor", 1))) == barred


@pytest.mark.parametrize(("numbers", "barred"), [((), True), ((1,), True), ((1, 2), False)])
def test_a_ban_on_a_kind_of_place_ends_when_every_one_of_them_was_read_sound(
    numbers: tuple[int, ...], barred: bool
) -> None:
    ban = Ban(places=("compressor",), until=(Finding("amps", ("normal",)),))
    places = [Place("compressor", number) for number in numbers]
    sound = [Answer("amps", ("normal",), places=(place,)) for place in places]
    found = Forbidden(concluded(knowing(hazard(ban)), *bad_at(ONE), *sound))
    assert bool(found.by(ROOM, Place("compressor", 1))) == barred


def test_what_ends_a_ban_is_not_barred_by_it() -> None:
    ban = Ban(areas=("area",), until=(Finding("cure", ("normal",)),))
    assert not Forbidden(concluded(knowing(hazard(ban)), *bad_at(ONE))).by(CURE, ONE)


@pytest.mark.parametrize(
    ("scope", "barred"),
    [("whole-job", True), ("until-made-safe", True), ("this-step", False), (None, False)],
)
def test_a_wide_stop_that_says_nothing_narrower_forbids_everything(
    scope: str | None, barred: bool
) -> None:
    forbidden = Forbidden(concluded(knowing(hazard(scope=scope)), *bad_at(ONE)))
    assert bool(forbidden.by(ROOM, None)) == barred


def test_its_own_finding_may_be_taken_again_by_choice_and_is_never_proposed() -> None:
    forbidden = Forbidden(concluded(knowing(hazard(scope="whole-job")), *bad_at(ONE)))
    assert forbidden.by(LOOK, ONE) and not forbidden.even_if_chosen(LOOK, ONE)
    assert forbidden.even_if_chosen(AMPS, Place("compressor", 1))


def test_what_two_hazards_forbid_is_free_for_neither_ones_finding() -> None:
    fan = Trigger((Finding("room", ("bad",)),))
    other = Hazard("burn", "DANGER", "flee", (fan,), Stop("whole-job", "it"))
    knowledge = knowing(hazard(scope="whole-job"), other)
    found = Forbidden(concluded(knowledge, *bad_at(ONE), Answer("room", ("bad",))))
    left = found.even_if_chosen(LOOK, ONE)
    assert left is not None and left.id == "burn"


def test_a_likely_fault_forbids_nothing_and_does_not_stand() -> None:
    found = concluded(knowing(hazard(scope="whole-job", trigger=Trigger(fault="f"))), *bad_at(ONE))
    assert [f.hazard.id for f in found.hazards] == ["bite"]
    assert standing_hazards(found) == () and not Forbidden(found).by(ROOM, None)


def test_a_trigger_as_taken_leaves_a_reading_alone_that_does_not_count() -> None:
    seen = hazard(Ban(tests=("room",)), trigger=Trigger(BAD.findings, as_taken=True))
    for valid, stands in ((None, True), (False, False)):
        answer = Answer("look", ("bad",), places=(ONE,), valid=valid)
        assert bool(standing_hazards(concluded(knowing(seen), answer))) == stands


def test_what_the_call_brings_up_stands_until_the_all_clear_and_forbids_nothing() -> None:
    call = Complaint("smell", "It smells", hazards_first=("bite",), all_clear="room")
    knowledge = knowing(hazard(scope="whole-job"), complaints=[call])
    called = concluded(knowledge, complaint="smell")
    assert [s.hazard.id for s in standing_hazards(called)] == ["bite"]
    assert standing_hazards(called)[0].lines == ("WARNING: keep off",)
    assert not Forbidden(called).by(ROOM, None)
    cleared = concluded(knowledge, Answer("room", ("normal",)), complaint="smell")
    assert standing_hazards(cleared) == ()


def test_what_was_found_and_what_the_call_brings_up_stand_in_the_order_of_the_rules() -> None:
    call = Complaint("smell", "It smells", hazards_first=("cry",), all_clear="room")
    cry = Hazard("cry", "WARNING", "get out")
    for hazards in ((cry, hazard()), (hazard(), cry)):
        found = concluded(knowing(*hazards, complaints=[call]), *bad_at(ONE), complaint="smell")
        assert [s.hazard for s in standing_hazards(found)] == list(hazards)


def test_the_place_is_said_where_it_is_one_of_several() -> None:
    (one,) = standing_hazards(concluded(knowing(hazard(scope="this-step")), *bad_at(TWO)))
    assert one.lines == ("WARNING, circuit 2 - STOP THIS STEP: keep off",)
    (both,) = standing_hazards(concluded(knowing(hazard(scope="this-step")), *bad_at(ONE, TWO)))
    assert both.lines == ("WARNING - STOP THIS STEP: keep off",)


def test_the_gravest_comes_first() -> None:
    hazards = [
        Hazard("n", "NOTICE", "n"),
        Hazard("w", "WARNING", "w"),
        Hazard("d", "DANGER", "d", stop=Stop("this-step", "it")),
        Hazard("j", "DANGER", "j", stop=Stop("whole-job", "it")),
    ]
    assert [h.id for h in gravest_first(hazards)] == ["j", "d", "w", "n"]


def test_what_halts_the_job_comes_first_and_a_stop_for_one_step_halts_none() -> None:
    bad = Trigger((Finding("room", ("bad",)),))
    hazards = [
        Hazard("word", "DANGER", "d", (bad,)),
        Hazard("step", "WARNING", "s", (bad,), Stop("this-step", "it")),
        Hazard("safe", "WARNING", "m", (bad,), Stop("until-made-safe", "it")),
        Hazard("job", "NOTICE", "j", (bad,), Stop("whole-job", "it")),
    ]
    found = concluded(knowing(*hazards), Answer("room", ("bad",)))
    assert [each.hazard.id for each in standing_hazards(found)] == ["job", "safe", "word", "step"]


def test_a_stop_that_stands_comes_before_a_wider_one_that_the_call_only_may_call_up() -> None:
    call = Complaint("smell", "It smells", hazards_first=("job",), all_clear="room")
    job = Hazard("job", "WARNING", "j", stop=Stop("whole-job", "it"))
    safe = Hazard("safe", "WARNING", "m", (BAD,), Stop("until-made-safe", "it"))
    found = concluded(knowing(job, safe, complaints=[call]), *bad_at(ONE), complaint="smell")
    assert [each.hazard.id for each in standing_hazards(found)] == ["safe", "job"]


def test_under_a_stop_that_the_call_brought_up_any_test_may_be_forbidden_by_choice_too() -> None:
    """The call is no test that could be taken once more."""
    call = Complaint("smells", "It smells", all_clear="room")
    gas = hazard(trigger=Trigger(complaint="smells"), scope="whole-job")
    forbidden = Forbidden(concluded(knowing(gas, complaints=[call]), complaint="smells"))
    assert forbidden.by(LOOK, ONE) is not None
    assert forbidden.even_if_chosen(LOOK, ONE) is not None
