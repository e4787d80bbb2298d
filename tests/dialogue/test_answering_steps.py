"""What may be typed at a safety step, what confirms it, and what is no answer there."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from tests.dialogue.at_work import AtWork
from troubleshoot.dialogue.answering import answer_event_from, step_event_from
from troubleshoot.dialogue.by_word import NotAnAnswer
from troubleshoot.knowledge.model import Knowledge, Outcome
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.safety.declared import CONFIRMED, ENTER_CONFIRMS, STEPS
from troubleshoot.safety.steps import Step
from troubleshoot.visit.events import Started, StepDone, replay
from troubleshoot.visit.state import VisitState

NOW = datetime.fromisoformat("2026-11-26T12:00:00+00:00")


def step(
    shipped: Knowledge,
    name: str,
    typed: str,
    *,
    state: VisitState | None = None,
    again: bool = False,
) -> tuple[list[str], str | None]:
    at = "blower drive" if name == "drive-discharge" else None
    event = step_event_from(
        shipped,
        state or VisitState(unit=read_unit(shipped, {})),
        shipped.tests[name],
        Step(name, at, again),
        typed,
        NOW,
    )
    assert (event.step, event.place, event.again) == (name, at, again)
    return list(event.outcomes), event.text


@pytest.mark.parametrize(
    ("name", "typed", "named"),
    [
        ("lockout", "locked it", "locked"), ("lockout", "yes, locked", "locked"),
        ("lockout", "locked, done", "locked"), ("gas-cock-shut", "yes, shut", "shut"),
        ("capacitor-discharge", "discharged it", "discharged"),
        ("verified-dead", "dead yes", "dead"), ("lock-off", "locked it", "still-on"),
        ("tester-proof", "proved it", "proved"),
    ],
)  # fmt: skip
def test_a_word_that_only_points_or_affirms_changes_no_answer(
    name: str, typed: str, named: str, shipped: Knowledge
) -> None:
    """Regression: "locked it" was refused."""
    assert step(shipped, name, typed)[0] == [named]


@pytest.mark.parametrize(
    ("name", "typed", "named"),
    [
        ("tell-fire-panel", "on test w security at 1410", "on-test"),
        ("tell-fire-panel", "On test, with the front desk at 2:10 pm", "on-test"),
        ("tell-fire-panel", "panel on test since 14:10", "on-test"),
        ("tell-fire-panel", "no detector by mr x at 1410", None),
        ("tell-fire-panel", "on test w nobody at 1410", None),
        ("tell-fire-panel", "not on test at 1410", None),
        ("tell-occupants", "told by phone at 9:05", "told"),
        ("tell-occupants", "told nobody at 9:05", None),
        ("lockout", "locked w the power on at 1410", None),
        ("verified-dead", "dead by security at 1410", None),
    ],
)
def test_to_whom_and_when_may_stand_beside_what_was_told(
    name: str, typed: str, named: str | None, shipped: Knowledge
) -> None:
    """Regression: the step asked for name and time and refused them; no other step takes them."""
    if named is None:
        with pytest.raises(NotAnAnswer):
            step(shipped, name, typed)
    else:
        assert step(shipped, name, typed)[0] == [named]


@pytest.mark.parametrize(
    ("name", "typed", "named"),
    [
        ("lockout", "locked, my tag on", "locked"),
        ("second-person", "my helper is here", "there"),
        ("second-person", "somebody here", "there"),
        ("capacitor-discharge", "bled it, 0 v dc", "discharged"),
    ],
)
def test_what_mechanics_say_of_a_step_is_taken(
    name: str, typed: str, named: str, shipped: Knowledge
) -> None:
    assert step(shipped, name, typed)[0] == [named]


@pytest.mark.parametrize(
    ("name", "typed"),
    [("lockout", "my tag on"), ("second-person", "nobody is here"),
     ("capacitor-discharge", "bled one, 0 v dc"), ("capacitor-discharge", "bled nothing, 0 v dc")],
)  # fmt: skip
def test_what_says_less_than_the_step_asks_is_not(
    name: str, typed: str, shipped: Knowledge
) -> None:
    with pytest.raises(NotAnAnswer):
        step(shipped, name, typed)


@pytest.mark.parametrize(
    "typed", ["yes it", "done it", "yes done", "it", "it is done", "yes yes", "did it", "loc it"]
)
def test_alone_it_confirms_nothing_that_protects(typed: str, shipped: Knowledge) -> None:
    for name in CONFIRMED:
        if name not in ENTER_CONFIRMS:
            with pytest.raises(NotAnAnswer):
                step(shipped, name, typed)


@pytest.mark.parametrize("typed", ["not locked it", "unlocked it", "locked it not", "locked it?"])
def test_what_denies_is_not_lost_beside_it(typed: str, shipped: Knowledge) -> None:
    with pytest.raises(NotAnAnswer):
        step(shipped, "lockout", typed)


@pytest.mark.parametrize("typed", ["", "ok", "y", "yes", "OK", "done"])
def test_enter_confirms_what_protects_no_life_and_nothing_else(
    typed: str, shipped: Knowledge
) -> None:
    for name, word in CONFIRMED.items():
        if name in ENTER_CONFIRMS:
            assert step(shipped, name, typed) == ([word], None)
        else:
            with pytest.raises(NotAnAnswer, match="confirms nothing here") as error:
                step(shipped, name, typed)
            said = word.replace("-", " ")
            says = f'"{typed}"' if typed else "Enter"
            alone = shipped.tests[name].reads and not STEPS[name].number_says_part
            number = ", or the number on the meter," if alone else ""
            assert str(error.value) == (
                f'{says} confirms nothing here. Type "{said}"{number} when it is so.'
            )


@pytest.mark.parametrize(
    ("name", "typed", "named"),
    [
        ("tools-clear", "clear", ["clear"]), ("lockout", "locked", ["locked"]),
        ("lockout", "c", ["cannot-lock"]), ("roof-conditions", "safe", ["safe"]),
        ("panels-off", "off", ["off"]), ("edge-protection", "guard rail", ["on"]),
        ("tell-fire-panel", "on t", None), ("tell-fire-panel", "on test", ["on-test"]),
        ("lockout", "loc", None), ("roof-conditions", "saf", None), ("panels-off", "of", None),
        ("restart-and-watch", "run", None), ("restart-and-watch", "runs", ["runs"]),
        ("lockout", "locked off and tagged", ["locked"]), ("tell-occupants", "told ok", ["told"]),
        ("lockout", "locked off dead", ["locked"]),
        ("verified-dead", "dea", None), ("verified-dead", "dead", ["dead"]),
    ],
)  # fmt: skip
def test_a_word_that_confirms_is_not_typed_to_a_letter_or_two(
    name: str, typed: str, named: list[str] | None, shipped: Knowledge
) -> None:
    if named is not None:
        assert step(shipped, name, typed) == (named, None)
    else:
        with pytest.raises(NotAnAnswer, match="fewer letters confirm nothing here"):
            step(shipped, name, typed)


def test_no_beginning_of_a_word_that_protects_confirms(shipped: Knowledge) -> None:
    """Regression: "ther" was a second person at 480 V."""
    for name in sorted({*CONFIRMED} - ENTER_CONFIRMS):
        spoken = shipped.tests[name].spoken(CONFIRMED[name])
        for end in range(1, len(spoken)):
            try:
                named, _ = step(shipped, name, spoken[:end])
            except NotAnAnswer:
                continue
            assert CONFIRMED[name] not in named, spoken[:end]


@pytest.mark.parametrize("typed", ["bled", "drained", "bled down"])
def test_only_a_number_or_its_own_word_says_that_a_capacitor_is_empty(
    typed: str, shipped: Knowledge
) -> None:
    """Regression: "bled" certified a discharge that nobody had metered."""
    with pytest.raises(NotAnAnswer, match="Say in words what came of it: discharged, "):
        step(shipped, "capacitor-discharge", typed)
    assert step(shipped, "capacitor-discharge", "discharged") == (["discharged"], None)


@pytest.mark.parametrize(
    ("typed", "named", "number"),
    [
        ("40 ft safe", ["safe"], "40 ft"), ("safe, 120", ["safe"], "120"),
        ("15 ft, all the rest is safe", ["safe"], "15 ft"), ("safe", ["safe"], None),
        ("14 ft else safe", ["edge-6-to-15-ft"], "14 ft"),
        ("6 safe", ["edge-6-to-15-ft"], "6"), ("5 ft safe", ["edge-under-6-ft"], "5 ft"),
        ("20 ft, ladder not safe", ["ladder-not-safe"], "20 ft"),
        ("5 ft lightning", ["edge-under-6-ft", "lightning"], "5 ft"),
        ("edge 6 to 15 ft", ["edge-6-to-15-ft"], None),
    ],
)  # fmt: skip
def test_the_distance_to_the_edge_is_part_of_an_answer_at_the_roof(
    typed: str, named: list[str], number: str | None, shipped: Knowledge
) -> None:
    state = replay(shipped, [Started(complaint="no-cooling")])
    assert step(shipped, "roof-conditions", typed, state=state) == (named, number)


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("15 ft", '15 ft is far enough. Of all else the number says nothing: type "15 ft safe"'),
        ("120", "120 is far enough"),
        ("14 ft", "14 ft: edge 6 to 15 ft. Of all else"), ("5", "5: edge under 6 ft"),
        ("15 ft saf", "fewer letters confirm nothing"), ("15 parsecs", "Say in words"),
        ("15 ft and a dog", "Say in words what came of it: safe"),
    ],
)  # fmt: skip
def test_the_distance_alone_confirms_no_roof(typed: str, said: str, shipped: Knowledge) -> None:
    """Regression: "15 ft" said that ladder, weather and openings were safe."""
    state = replay(shipped, [Started(complaint="no-cooling")])
    with pytest.raises(NotAnAnswer) as error:
        step(shipped, "roof-conditions", typed, state=state)
    assert said in str(error.value)


@pytest.mark.parametrize(
    ("typed", "named"), [("tripped", "opens-in-run"), ("open", "open-when-cold")]
)
def test_a_tripped_limit_is_said_in_one_word(typed: str, named: str, shipped: Knowledge) -> None:
    limit = shipped.tests["main-limit"]
    words = tuple(outcome.id for outcome in limit.outcomes)
    event = answer_event_from(shipped, limit, None, typed, words)
    assert list(event.outcomes) == [named]


def test_what_names_no_outcome_of_a_step_is_refused(shipped: Knowledge) -> None:
    for typed in ("1", "xyz", ","):
        with pytest.raises(NotAnAnswer, match="Say in words what came of it: locked, "):
            step(shipped, "lockout", typed)


def test_the_second_time_round_of_a_proof_is_kept_as_one(shipped: Knowledge) -> None:
    assert step(shipped, "tester-proof", "proved", again=True) == (["proved"], None)


@pytest.mark.parametrize(
    ("name", "typed", "good"),
    [
        ("verified-dead", "0 V", True), ("verified-dead", "120 V", False),
        ("drive-discharge", "0 V", True), ("drive-discharge", "300 V", False),
    ],
)  # fmt: skip
def test_the_number_on_the_meter_confirms_a_step_or_not(
    name: str, typed: str, good: bool, shipped: Knowledge
) -> None:
    named, text = step(shipped, name, typed, state=locked(shipped, 0))
    assert text == typed and len(named) == 1
    assert (named == [CONFIRMED[name]]) is good


def test_a_number_that_cannot_be_is_refused(shipped: Knowledge) -> None:
    metered = next(n for n in CONFIRMED if shipped.tests[n].reads and not STEPS[n].number_says_part)
    with pytest.raises(NotAnAnswer, match=r".+; .+\."):
        step(shipped, metered, "12 furlongs")


def locked(shipped: Knowledge, minutes_ago: float | None) -> VisitState:
    """A visit in which the lock went on so long ago; None where that is not known."""
    time = "" if minutes_ago is None else (NOW - timedelta(minutes=minutes_ago)).isoformat()
    state = replay(shipped, [Started(complaint="no-cooling")])
    return replace(state, power_off_time=time)


def test_a_step_of_several_takes_several_and_one_of_one_does_not(shipped: Knowledge) -> None:
    assert shipped.tests["lockout"].choose == "several"
    both = step(shipped, "lockout", "cannot lock, second source")[0]
    assert both == ["cannot-lock", "second-source"]
    assert shipped.tests["tester-proof"].choose == "one"
    with pytest.raises(NotAnAnswer, match="Say in words"):
        step(shipped, "tester-proof", "proved, failed")


def test_a_number_near_a_limit_or_without_a_unit_is_judged_by_its_worse_side(
    shipped: Knowledge,
) -> None:
    state = locked(shipped, 0)
    for typed in ("12 furlongs", "9 9 9 V V"):
        with pytest.raises(NotAnAnswer, match=r".+; .+\.") as refused_for:
            step(shipped, "drive-discharge", typed, state=state)
        assert "says nothing here" not in str(refused_for.value)
    named, _ = step(shipped, "drive-discharge", "10 V", state=state)
    assert named != ["discharged"] and len(named) == 1
    assert step(shipped, "drive-discharge", "2 V", state=state)[0] == ["discharged"]


def test_a_number_that_says_nothing_wants_words(shipped: Knowledge) -> None:
    silent = replace(shipped.tests["drive-discharge"], outcomes=(Outcome("discharged"),))
    knowledge = replace(shipped, tests={**shipped.tests, "drive-discharge": silent})
    with pytest.raises(NotAnAnswer, match="That number says nothing here"):
        step_event_from(
            knowledge, locked(shipped, 0), silent, Step("drive-discharge", "x"), "2 V", NOW
        )


@pytest.mark.parametrize(
    ("name", "typed", "named"),
    [
        ("lockout", "locked off, tag on", "locked"), ("lockout", "Locked out", "locked"),
        ("lock-off", "lock is off", "switched-on"), ("lock-off", "locked", "still-on"),
        ("lock-off", "locked off, tag on", "still-on"),
        ("lock-off", "switched on", "switched-on"), ("lock-off", "breaker back on", "switched-on"),
        ("panels-off-energised", "open", "open"), ("panels-off-energised", "panel off", "open"),
        ("tell-fire-panel", "none", "no-detector"), ("gas-cock-shut", "cock shut", "shut"),
        ("tell-fire-panel", "no smoke detector", "no-detector"),
        ("roof-conditions", "edge 6 to 15 ft", "edge-6-to-15-ft"),
        ("roof-conditions", "edge under 6 ft", "edge-under-6-ft"),
        ("roof-conditions", "12 ft safe", "edge-6-to-15-ft"),
    ],
)  # fmt: skip
def test_a_step_takes_the_words_people_use_for_what_came_of_it(
    name: str, typed: str, named: str, shipped: Knowledge
) -> None:
    """Regression: the roof's own words with digits were refused, and "locked off" confirmed."""
    assert step(shipped, name, typed)[0] == [named]


def at_an_edge(shipped: Knowledge, how_near: str) -> VisitState:
    look = StepDone("roof-conditions", (how_near,))
    return replay(shipped, [Started(complaint="no-cooling"), look])


def test_near_an_edge_the_work_goes_on_once_its_protection_is_named(shipped: Knowledge) -> None:
    far, near = (at_an_edge(shipped, each) for each in ("edge-6-to-15-ft", "edge-under-6-ft"))
    assert far.work.roof == near.work.roof == "edge-near"
    for typed in ("tied off", "guard rail", "guardrail", "harness"):
        assert step(shipped, "edge-protection", typed, state=near)[0] == ["on"]
    for typed in ("warning line", "second person"):
        assert step(shipped, "edge-protection", typed, state=far)[0] == ["on"]
        with pytest.raises(NotAnAnswer, match="only a guard rail or being tied off"):
            step(shipped, "edge-protection", typed, state=near)
    with pytest.raises(NotAnAnswer, match="Say what protects you"):
        step(shipped, "edge-protection", "on", state=far)


@pytest.mark.parametrize("name", ["lock-off", "panels-off-energised"])
def test_off_says_nothing_where_it_would_read_as_the_opposite(
    name: str, shipped: Knowledge
) -> None:
    """Regression: `off` confirmed that the power was on, and that a live panel was open."""
    with pytest.raises(NotAnAnswer):
        step(shipped, name, "off")


@pytest.mark.parametrize("said", ["done as before", "as before", "same as before", "Like before."])
def test_as_before_is_no_more_than_done(said: str, shipped: Knowledge) -> None:
    """Regression: a screen said done as before, and to type it was asked of as a danger."""
    for place in ("verified-dead", "gas-cock-open", "out"):
        visit = AtWork(shipped, place)
        at = visit.at
        told = visit.types(said)
        assert visit.at == at and not visit.events and not visit.dialogue.asks_aside
        assert any("confirms nothing here. Type " in line for line in told)


def test_as_before_is_enter_where_enter_protects_nothing(shipped: Knowledge) -> None:
    assert step(shipped, "panels-off", "done as before") == ([CONFIRMED["panels-off"]], None)


@pytest.mark.parametrize("typed", ["weighed in 5 lb 10 oz", "5 lb 10 oz charged", "charged 7.5 lb"])
def test_the_step_that_asks_for_the_weight_takes_it(typed: str, shipped: Knowledge) -> None:
    """Regression: it was taken for a reading of another test, and refused."""
    outcomes, weight = step(shipped, "charge-put-back", typed)
    assert outcomes == ["charged"] and weight and "lb" in weight


def test_the_weight_alone_does_not_say_that_it_is_in(shipped: Knowledge) -> None:
    with pytest.raises(NotAnAnswer):
        step(shipped, "charge-put-back", "5 lb 10 oz")
