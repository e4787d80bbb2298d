"""What is wanted so that a STOP may be lifted: the finding, the steps before it, and by whom."""

from __future__ import annotations

from dataclasses import replace

from tests.visit.deciding.test_lifting import EVERYBODY, LIVE, ROOF
from tests.visit.deciding.test_stops import UNIT, start
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.guards import allowed
from troubleshoot.safety.profiles import hand_over
from troubleshoot.safety.reaching import steps_before
from troubleshoot.safety.steps import Step
from troubleshoot.safety.stops.afresh import Afresh, taken_by, way_to
from troubleshoot.safety.stops.record import Spot, StopMet
from troubleshoot.safety.transitions import after_step, refusals
from troubleshoot.safety.work_state import WorkState
from troubleshoot.visit.events import StepDone, replay

PLUG = Step("plug-under-gas", "outlet tap")


def test_the_way_to_a_step_ends_with_it_when_its_turn_has_come(shipped: Knowledge) -> None:
    way = way_to(shipped, replay(shipped, start()), LIVE)
    assert way is not None and way.finding == LIVE and way.reading is None
    ids = [step.id for step in way.steps]
    assert ids[0] == "roof-conditions" and ids.index("lockout") < ids.index("panels-off")
    assert ids[-1] == "verified-dead" and ids.count("verified-dead") == 1


def test_a_step_whose_turn_is_now_stands_alone(shipped: Knowledge) -> None:
    near = replace(replay(shipped, start()), work=WorkState(roof="edge-near"))
    assert way_to(shipped, near, ROOF) == Afresh(ROOF, (Step("roof-conditions"),))


def test_a_reading_comes_after_all_its_steps(shipped: Knowledge) -> None:
    limit: Spot = ("main-limit", None)
    state = replay(shipped, start())
    way = way_to(shipped, state, limit)
    assert way is not None and way.reading == limit and way.steps
    work = state.work
    for step in way.steps:
        assert not refusals(work, step, state.at_work)
        work = after_step(work, step, (CONFIRMED[step.id],), state.at_work)
    assert not allowed(work, shipped.tests[limit[0]], None, state.at_work)


def test_an_all_clear_is_somebodys_word_for_which_no_step_is_done(shipped: Knowledge) -> None:
    clear = shipped.complaints["gas-smell"].all_clear
    assert clear is not None
    state = replay(shipped, start("gas-smell"))
    assert way_to(shipped, state, (clear, None)) == Afresh((clear, None), reading=(clear, None))
    assert taken_by(shipped, state, (clear, None)) is None


def test_whoever_looks_at_what_was_made_safe_up_there_looks_at_the_roof_first(
    shipped: Knowledge,
) -> None:
    look: Spot = ("made-safe", None)
    state = replay(shipped, start())
    assert way_to(shipped, state, look) == Afresh(look, (Step("roof-conditions"),), look)
    up = replace(state, work=replace(state.work, roof="go"))
    assert way_to(shipped, up, look) == Afresh(look, (), look)


def test_the_word_that_a_room_is_clear_is_theirs_who_cleared_it_and_none_of_us_sweeps_for_it(
    shipped: Knowledge,
) -> None:
    word = replace(shipped.tests["all-clear"], hazards=("carbon-monoxide-in-room",))
    knowledge = replace(shipped, tests={**shipped.tests, word.id: word})
    state = replay(knowledge, start())
    assert steps_before(state, word, None), "before a test of ours the air would be swept"
    assert way_to(knowledge, state, (word.id, None)) == Afresh((word.id, None), (), (word.id, None))


def test_a_plug_that_leaked_is_tested_again_on_the_way_back_once_the_burner_fires(
    shipped: Knowledge,
) -> None:
    """Gas stands on it at no other time: no way to dead work leads there."""
    leaked = replay(shipped, [*start(), StepDone.of(PLUG, ("leaks",))])
    again: Spot = (PLUG.id, None)
    way = way_to(shipped, leaked, again)
    assert way is not None and way.reading is None and way.steps[-1] == PLUG
    ids = [step.id for step in way.steps]
    assert ids[0] == "roof-conditions" and "lockout" not in ids
    assert ids.index("gas-cock-open") < ids.index("restart-and-watch") < ids.index(PLUG.id)
    watched = replay(
        shipped,
        [*start(unit={**UNIT, "duct-smoke-detector": "fitted"}), StepDone.of(PLUG, ("leaks",))],
    )
    way = way_to(shipped, watched, again)
    assert way is not None and way.steps[-1] == PLUG, "the fire panel comes back after it"
    tight = replace(leaked, work=replace(leaked.work, plugs_untested=frozenset()))
    assert way_to(shipped, tight, again) is None, "there is no plug left to test"


def test_an_apprentice_takes_nothing_back_that_was_handed_over(shipped: Knowledge) -> None:
    met = StopMet("lightning", 0, ROOF)
    state = replay(shipped, start(profiles=[*EVERYBODY, "apprentice", "supervised"]))
    assert taken_by(shipped, replace(state, stops=(met,)), ROOF) is None
    back = replace(state, stops=(replace(met, reopened=True),))
    assert taken_by(shipped, back, ROOF) == "hand over to the supervising technician"


def test_an_apprentice_alone_hands_over_a_step_on_the_way_not_only_the_finding(
    shipped: Knowledge,
) -> None:
    """The way to a test for dead begins with steps that an apprentice alone may not take."""

    def beyond(profiles: list[str], spot: Spot) -> str | None:
        return taken_by(shipped, replay(shipped, start(profiles=profiles)), spot)

    assert beyond(EVERYBODY, LIVE) is None
    assert beyond(["apprentice"], LIVE) == "hand over to the supervising technician"
    assert beyond(["technician"], LIVE) == "hand over to a qualified electrical person"
    assert beyond(EVERYBODY, ("main-limit", None)) is None
    assert beyond(["technician"], ("main-limit", None)) is not None
    look: Spot = ("wiring-burn-marks", None)
    assert hand_over(shipped.tests[look[0]], {"technician"}) is None
    assert beyond(["technician"], look) == "hand over to a qualified electrical person"


def test_the_person_for_the_reading_itself_is_asked_for_where_anybody_may_go_the_way(
    shipped: Knowledge,
) -> None:
    look = replace(shipped.tests["weather-pattern"], who=("gas",))
    knowledge = replace(shipped, tests={**shipped.tests, look.id: look})
    for profiles, phrase in ((EVERYBODY, None), (["technician"], "a qualified gas person")):
        state = replay(knowledge, start(profiles=profiles))
        said = None if phrase is None else f"hand over to {phrase}"
        assert taken_by(knowledge, state, (look.id, None)) == said


def test_the_person_for_the_next_step_on_the_way_is_asked_for_not_only_for_the_finding(
    shipped: Knowledge,
) -> None:
    tests = dict(shipped.tests)
    tests["roof-conditions"] = replace(tests["roof-conditions"], who=("fire-alarm",))
    tests["verified-dead"] = replace(
        tests["verified-dead"], who=(), exposes="none", work_state="any"
    )
    knowledge = replace(shipped, tests=tests)
    state = replay(knowledge, start(profiles=("technician",)))
    assert taken_by(knowledge, state, LIVE) == "hand over to a licensed fire-alarm person"
    tests["roof-conditions"] = replace(tests["roof-conditions"], who=())
    tests["lockout"] = replace(tests["lockout"], who=("fire-alarm",))
    assert taken_by(knowledge, state, LIVE) is None, "that step's own turn asks for it"
    tests["verified-dead"] = replace(tests["verified-dead"], who=("gas",))
    assert taken_by(knowledge, state, LIVE) == "hand over to a qualified gas person"
