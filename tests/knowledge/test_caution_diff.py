"""What a person no longer sees by newer rules is listed, once, and nothing else is."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.knowledge.caution_diff import Drop, dropped
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Finding, Hazard, Knowledge, Stop, Test, Trigger
from troubleshoot.knowledge.shown_cautions import hazards_shown


def with_test(knowledge: Knowledge, test: Test) -> Knowledge:
    return replace(knowledge, tests={**knowledge.tests, test.id: test})


def with_hazard(knowledge: Knowledge, hazard: Hazard) -> Knowledge:
    return replace(knowledge, hazards={**knowledge.hazards, hazard.id: hazard})


def words(earlier: Knowledge, now: Knowledge) -> list[tuple[str, str, str]]:
    return [(drop.kind, drop.id, drop.word) for drop in dropped(earlier, now)]


def test_the_same_rules_drop_nothing(shipped: Knowledge) -> None:
    assert list(dropped(shipped, shipped)) == []


def test_more_caution_drops_nothing(shipped: Knowledge) -> None:
    """Rules that only add, compared with the thinner ones before them."""
    thin = replace(shipped.tests["compressor-insulation"], hazards=(), needs_state=(), who=())
    assert list(dropped(with_test(shipped, thin), shipped)) == []


def thinner(knowledge: Knowledge) -> Iterator[tuple[tuple[str, str, str], Test]]:
    """Every way to take one caution, need or person from a shipped test: (what is lost, test)."""
    for test in knowledge.tests.values():
        for hazard in test.hazards:
            less = replace(test, hazards=tuple(h for h in test.hazards if h != hazard))
            if hazard not in hazards_shown(knowledge, less):
                yield ("test", test.id, hazard), less
        for need in test.needs_state:
            needs = tuple(n for n in test.needs_state if n != need)
            yield ("test", test.id, need), replace(test, needs_state=needs)
        for profile in test.who:
            who = tuple(p for p in test.who if p != profile)
            yield ("test", test.id, profile), replace(test, who=who)


def test_nothing_can_be_taken_from_a_test_unseen(shipped: Knowledge) -> None:
    found = 0
    for lost, less in thinner(shipped):
        before = replace(shipped, tests={less.id: shipped.tests[less.id]}, complaints={})
        now = replace(shipped, tests={less.id: less}, complaints={})
        assert words(before, now) == [lost]
        found += 1
    assert found > 500


def test_a_laxer_state_is_told_with_the_cautions_that_went_with_it(shipped: Knowledge) -> None:
    test = shipped.tests["compressor-insulation"]
    changed = replace(test, work_state="any")
    assert words(shipped, with_test(shipped, changed)) == [
        ("test", test.id, "work-state"),
        ("test", test.id, "lockout-and-verify-dead"),
    ]


def test_lesser_exposure_and_a_shorter_wait_are_told(shipped: Knowledge) -> None:
    amps = shipped.tests["compressor-amps"]
    drive = shipped.tests["drive-discharge"]
    assert drive.wait_minutes > 0
    changed = replace(amps, exposes="none")
    assert ("test", amps.id, "exposes") in words(shipped, with_test(shipped, changed))
    hasty = with_test(shipped, replace(drive, wait_minutes=0.0))
    assert words(shipped, hasty) == [("test", drive.id, "wait-minutes")]
    trials = shipped.tests["ignition-trials"]
    lit = with_test(shipped, replace(trials, leaves_unburnt=trials.leaves_unburnt[1:]))
    assert words(shipped, lit) == [("test", trials.id, "leaves-unburnt")]


def test_a_trigger_that_is_gone_is_one_finding_for_all_its_tests(shipped: Knowledge) -> None:
    hazard = shipped.hazards["lockout-and-verify-dead"]
    triggers = tuple(t for t in hazard.triggers if t.work_state is None)
    (drop,) = dropped(shipped, with_hazard(shipped, replace(hazard, triggers=triggers)))
    assert (drop.kind, drop.id, drop.word) == ("hazard", hazard.id, "when")
    assert "more" in drop.what


def test_a_trigger_narrowed_to_some_units_is_told(shipped: Knowledge) -> None:
    hazard = shipped.hazards["lockout-and-verify-dead"]
    triggers = tuple(
        replace(trigger, equipment={"line-volts-class": ("480-volt",)})
        if trigger.work_state
        else trigger
        for trigger in hazard.triggers
    )
    assert words(shipped, with_hazard(shipped, replace(hazard, triggers=triggers))) == [
        ("hazard", hazard.id, "when")
    ]


@pytest.mark.parametrize("named", ["findings", "complaint", "fault"])
def test_a_finding_call_or_fault_on_which_it_was_silent_before_is_told(
    shipped: Knowledge, named: str
) -> None:
    """Every trigger of every shipped hazard that hangs on one of them, taken away alone."""
    seen = 0
    for hazard in shipped.hazards.values():
        for trigger in hazard.triggers:
            if not getattr(trigger, named) or covered(hazard, trigger):
                continue
            others = tuple(t for t in hazard.triggers if t is not trigger)
            alone = replace(shipped, hazards={hazard.id: hazard}, complaints={})
            lost = words(alone, with_hazard(alone, replace(hazard, triggers=others)))
            assert lost and {(kind, id_) for kind, id_, _ in lost} == {("hazard", hazard.id)}
            seen += 1
            break
    assert seen


def covered(hazard: Hazard, trigger: Trigger) -> bool:
    """Whether another trigger of the hazard asks for less, so that this one is no loss."""
    return any(
        other is not trigger and set(other.findings) < set(trigger.findings)
        for other in hazard.triggers
    )


def test_one_outcome_of_several_is_told(shipped: Knowledge) -> None:
    hazard = shipped.hazards["heat-exchanger-breach"]
    look = Finding("heat-exchanger-look", ("crack", "hole"))
    triggers = tuple(
        replace(t, findings=(replace(look, outcomes=("crack",)),)) if t.findings == (look,) else t
        for t in hazard.triggers
    )
    (drop,) = dropped(shipped, with_hazard(shipped, replace(hazard, triggers=triggers)))
    assert drop.word == "heat-exchanger-look"
    assert "hole" in drop.what and "crack" not in drop.what


@pytest.mark.parametrize(
    ("change", "word"),
    [
        ({"signal": "CAUTION"}, "signal"),
        ({"what_to_do": "Mind the gas."}, "what-to-do"),
        ({"stop": None}, "stop"),
        ({"stop": Stop("this-step", "gas is smelled")}, "stop"),
        ({"defer_to": ""}, "defer-to"),
        ({"tag": ""}, "tag"),
        ({"words": ()}, "words"),
        ({"cleared_by": ("supervisor",)}, "cleared-by"),
        ({"cleared_by": ()}, "cleared-by"),
        ({"remedies": ()}, "remedies"),
        ({"remedies": ("The windows were opened",)}, "remedies"),
    ],
)
def test_a_weaker_hazard_is_told(shipped: Knowledge, change: dict[str, object], word: str) -> None:
    hazard = shipped.hazards["gas-odour"]
    weaker = replace(hazard, **change)  # type: ignore[arg-type]
    assert words(shipped, with_hazard(shipped, weaker)) == [("hazard", "gas-odour", word)]
    assert words(with_hazard(shipped, weaker), shipped) in ([], [("hazard", "gas-odour", word)])


def test_one_remedy_less_is_no_loss_and_one_more_is(shipped: Knowledge) -> None:
    hazard = shipped.hazards["heat-exchanger-breach"]
    less = replace(hazard, remedies=hazard.remedies[:1])
    assert words(shipped, with_hazard(shipped, less)) == []
    (drop,) = dropped(with_hazard(shipped, less), shipped)
    assert drop.word == "remedies" and hazard.remedies[1] in drop.what


def test_a_danger_that_a_look_shows_gone_where_a_test_did_is_told(shipped: Knowledge) -> None:
    wet = replace(shipped.hazards["wet-electrical"], tested=False)
    assert words(shipped, with_hazard(shipped, wet)) == [("hazard", wet.id, "tested")]
    assert words(with_hazard(shipped, wet), shipped) == []


def test_what_is_gone_altogether_is_told_once(shipped: Knowledge) -> None:
    tests = {id_: test for id_, test in shipped.tests.items() if id_ != "verified-dead"}
    assert ("retired", "verified-dead", "verified-dead") in words(
        shipped, replace(shipped, tests=tests)
    )
    hazards = {id_: hazard for id_, hazard in shipped.hazards.items() if id_ != "live-work"}
    assert words(shipped, replace(shipped, hazards=hazards)) == [
        ("retired", "live-work", "live-work")
    ]


def test_a_renamed_test_is_compared_under_its_new_name(shipped: Knowledge) -> None:
    old = shipped.tests["compressor-insulation"]
    new = replace(old, id="windings-to-ground", needs_state=("meter-proved",))
    tests = {id_: test for id_, test in shipped.tests.items() if id_ != old.id}
    aliases = {(old.id, outcome.id): (new.id, outcome.id) for outcome in old.outcomes}
    now = replace(shipped, tests={**tests, new.id: new}, aliases=aliases)
    assert ("test", new.id, "capacitors-discharged") in words(shipped, now)
    assert not [drop for drop in dropped(shipped, now) if drop.kind == "retired"]


def test_a_caution_before_the_first_question_is_told(shipped: Knowledge) -> None:
    complaint = next(c for c in shipped.complaints.values() if c.hazards_first)
    bare = replace(complaint, hazards_first=())
    now = replace(shipped, complaints={**shipped.complaints, complaint.id: bare})
    assert [drop.word for drop in dropped(shipped, now)] == [complaint.id] * len(
        complaint.hazards_first
    )


THINNER = list(thinner(load_shipped()))


@given(st.lists(st.sampled_from(THINNER), min_size=1, max_size=4, unique_by=lambda t: t[1].id))
def test_several_losses_are_all_told(lost: list[tuple[tuple[str, str, str], Test]]) -> None:
    rules = load_shipped()
    before = replace(rules, tests={t.id: rules.tests[t.id] for _, t in lost}, complaints={})
    now = replace(before, tests={test.id: test for _, test in lost})
    drops: list[Drop] = list(dropped(before, now))
    assert {what for what, _ in lost} == {(drop.kind, drop.id, drop.word) for drop in drops}


def test_a_trigger_that_waits_for_what_readings_were_taken_for_is_told(shipped: Knowledge) -> None:
    """Within the meter's accuracy it was called up before; now only by the reading itself."""
    hazard = shipped.hazards["gas-pressure-too-high"]
    triggers = tuple(replace(trigger, as_taken=True) for trigger in hazard.triggers)
    told = words(shipped, with_hazard(shipped, replace(hazard, triggers=triggers)))
    assert told and {(kind, id_) for kind, id_, _ in told} == {("hazard", hazard.id)}
    assert words(with_hazard(shipped, replace(hazard, triggers=triggers)), shipped) == []


def test_what_a_hazard_no_longer_forbids_is_told(shipped: Knowledge) -> None:
    breaker = shipped.hazards["repeated-breaker-resets"]
    free = with_hazard(shipped, replace(breaker, forbids=()))
    assert words(shipped, free) == [("hazard", breaker.id, "forbids")]
    assert words(free, shipped) == []
    jumper = shipped.hazards["jumpered-safety"]
    assert jumper.forbids == (), "its STOP forbids everything as it is"
    narrow = with_hazard(shipped, replace(jumper, forbids=breaker.forbids))
    assert words(shipped, narrow) == [("hazard", jumper.id, "forbids")]
    assert words(narrow, shipped) == []
