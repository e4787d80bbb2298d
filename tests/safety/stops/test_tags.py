"""The tag says what was found, how the cock stands, who was told, and who alone removes it."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import FiredHazard
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.safety.stops.reopening import fitting_roles
from troubleshoot.safety.stops.tags import found_words, tag_lines
from troubleshoot.visit.events import (
    Answered,
    DangerReported,
    Event,
    Halted,
    Started,
    StepDone,
    VisitEnded,
    replay,
)

UNIT: dict[str, Any] = {"heat": "gas", "refrigerant": "R-410A"}
BLANK = "Hung by: ____________, on ______ at ______."
NOT_TOLD = "Told: ____________ at ______."
Events = list[Event]


def tag(shipped: Knowledge, hazard: str, events: Events) -> tuple[str, ...]:
    state = replay(shipped, events)
    conclusions = conclude_visit(Reasoner(shipped), state)
    fired = next(f for f in conclusions.hazards if f.hazard.id == hazard)
    return tag_lines(shipped, state, conclusions, fired)


def start(**more: Any) -> Event:
    return Started(**{"complaint": "no-heat", "unit": UNIT, **more})


def crack(test: str = "heat-exchanger-look", outcome: str = "crack") -> Event:
    return Answered(test, outcomes=(outcome,))


STOP = Halted("heat-exchanger-breach", "heat-exchanger-look")
TOLD = VisitEnded("stopped", "the owner", "2026-11-26 15:12")


def test_a_tag_has_a_line_for_each_thing_in_their_order(shipped: Knowledge) -> None:
    hazard = shipped.hazards["heat-exchanger-breach"]
    look = shipped.tests["heat-exchanger-look"]
    means = next(o.means for o in look.outcomes if o.id == "crack")
    lines = tag(shipped, hazard.id, [start(name="RTU-7"), crack()])
    assert lines == (
        f"Do not start RTU-7. {hazard.tag or hazard.what_to_do}",
        f"Found: {look.name}: {means or 'crack'}.",
        "Gas cock: not known to be shut.",
        NOT_TOLD,
        lines[4],
        BLANK,
    )
    assert lines[4].startswith("Only ") and lines[4].endswith(" may remove this tag.")


def test_a_stop_that_a_site_wrote_no_sentence_for_says_on_its_tag_what_to_do(
    shipped: Knowledge,
) -> None:
    bare = replace(shipped.hazards["heat-exchanger-breach"], tag="")
    knowledge = replace(shipped, hazards={**shipped.hazards, bare.id: bare})
    lines = tag(knowledge, bare.id, [start(name="RTU-7"), crack()])
    assert lines[0] == f"Do not start RTU-7. {bare.what_to_do}"


def test_a_unit_without_a_name_and_one_without_gas_leave_their_words_out(
    shipped: Knowledge,
) -> None:
    electric = start(unit={**UNIT, "heat": "electric"})
    lines = tag(shipped, "heat-exchanger-breach", [electric, crack()])
    assert lines[0].startswith("Do not start. ")
    assert not any(line.startswith("Gas cock") for line in lines)
    unknown = tag(shipped, "heat-exchanger-breach", [start(unit={}), crack()])
    assert any(line.startswith("Gas cock") for line in unknown)


def test_the_cock_is_shut_once_it_was_shut(shipped: Knowledge) -> None:
    shut = [StepDone(s, (o,))
            for s, o in (("roof-conditions", "safe"), ("gas-cock-shut", "shut"))]  # fmt: skip
    lines = tag(shipped, "heat-exchanger-breach", [start(), crack(), *shut])
    assert "Gas cock: shut." in lines


def test_who_was_told_stands_on_it_once_somebody_was(shipped: Knowledge) -> None:
    events = [start(), crack(), STOP]
    assert NOT_TOLD in tag(shipped, "heat-exchanger-breach", events)
    told = tag(shipped, "heat-exchanger-breach", [*events, TOLD])
    assert "Told: the owner, 2026-11-26 15:12." in told and NOT_TOLD not in told


@pytest.mark.parametrize(
    ("words", "said"),
    [("the duct is sparking", 'Reported: "the duct is sparking".'), ("", "Reported as a danger.")],
)
def test_a_reported_danger_stands_in_its_own_words(
    words: str, said: str, shipped: Knowledge
) -> None:
    danger = DangerReported("danger-reported", words)
    lines = tag(shipped, "danger-reported", [start(), crack(), danger])
    assert lines[1] == said


@pytest.mark.parametrize(("words", "said"), [("it stinks", '"it stinks"'), ("", '"gas-smell"')])
def test_what_the_caller_said_stands_in_the_callers_words(
    words: str, said: str, shipped: Knowledge
) -> None:
    lines = tag(shipped, "gas-odour", [start(complaint="gas-smell", words=words)])
    assert lines[1] == f"Reported by the caller: {said}."


def test_a_reading_stands_with_its_number_and_its_place(shipped: Knowledge) -> None:
    reading = Answered("room-carbon-monoxide", text="240 ppm")
    state = replay(shipped, [start(), reading])
    fired = conclude_visit(Reasoner(shipped), state).standing_stops
    assert fired
    lines = tag(shipped, fired[0].hazard.id, [start(), reading])
    assert lines[1].startswith(f"Found: {shipped.tests['room-carbon-monoxide'].name}: ")
    assert lines[1].endswith(" (240 ppm).")


def test_a_stop_on_record_says_no_more_than_is_known(shipped: Knowledge) -> None:
    stop = Halted("heat-exchanger-breach", on_record=True)
    lines = tag(shipped, "heat-exchanger-breach", [start(), stop])
    assert not any(line.startswith(("Found", "Reported")) for line in lines)


def test_who_may_remove_it_is_said_with_or_before_the_last(shipped: Knowledge) -> None:
    hazard = shipped.hazards["heat-exchanger-breach"]
    for roles, said in (
        (("gas-fitter",), "a licensed gas fitter"),
        (("gas-fitter", "supervisor"), "a licensed gas fitter or the supervisor"),
        (("gas-utility", "gas-fitter", "supervisor"),
         "the gas utility, a licensed gas fitter or the supervisor"),
    ):  # fmt: skip
        known = replace(hazard, cleared_by=roles)
        knowledge = replace(shipped, hazards={**shipped.hazards, hazard.id: known})
        assert f"Only {said} may remove this tag." in tag(knowledge, hazard.id, [start(), crack()])


def test_the_finding_is_the_one_at_its_place_with_all_that_was_seen(shipped: Knowledge) -> None:
    two = start(unit={**UNIT, "circuits": 2})
    sound = next(iter(shipped.tests["high-pressure-switch"].healthy))
    stuck = [
        Answered("high-pressure-switch", f"circuit {n}", (outcome,))
        for n, outcome in ((1, sound), (2, "stuck"))
    ]
    known = {o.id: o.means or o.id for o in shipped.tests["high-pressure-switch"].outcomes}
    lines = tag(shipped, "safety-does-not-open", [two, *stuck])
    name = shipped.tests["high-pressure-switch"].name
    assert lines[1] == f"Found: {name}, circuit 2: {known['stuck']}."


def test_a_place_without_gas_has_no_cock_on_its_tag(shipped: Knowledge) -> None:
    electric = start(unit={"heat": "electric", "refrigerant": "R-410A"})
    lines = tag(shipped, "safety-does-not-open", [electric, crack("main-limit", "stuck")])
    assert not any("cock" in line for line in lines[2:]) and all(lines)


def test_before_anybody_was_told_the_line_is_left_open(shipped: Knowledge) -> None:
    silent = VisitEnded("stopped")
    assert NOT_TOLD in tag(shipped, "heat-exchanger-breach", [start(), crack(), STOP, silent])


def test_a_number_near_a_limit_names_the_danger_that_it_may_be(shipped: Knowledge) -> None:
    """Regression: the tag of a STOP at 13.9 in w.c. named only the borderline that it was read as.

    Within the meter's accuracy it may be over the limit of 14, which is what stops the job.
    """
    test = shipped.tests["gas-inlet-pressure-idle"]
    known = {outcome.id: outcome.means or outcome.id for outcome in test.outcomes}
    read = Answered(test.id, text="13.9 inwc")
    begun = start(unit={**UNIT, "fuel": "natural-gas"})
    (reading,) = conclude_visit(Reasoner(shipped), replay(shipped, [begun, read])).readings
    assert "high" in reading.possible and "high" not in reading.seen
    lines = tag(shipped, "gas-pressure-too-high", [begun, read])
    assert known["high"] in lines[1] and lines[1].endswith(" (13.9 inwc).")


def test_an_outcome_without_words_of_its_own_is_said_by_its_name(shipped: Knowledge) -> None:
    look = shipped.tests["heat-exchanger-look"]
    bare = replace(look, outcomes=tuple(replace(o, means="") for o in look.outcomes))
    knowledge = replace(shipped, tests={**shipped.tests, look.id: bare})
    lines = tag(knowledge, "heat-exchanger-breach", [start(), crack()])
    assert lines[1] == f"Found: {look.name}: crack."


def test_what_the_caller_said_comes_before_what_was_found(shipped: Knowledge) -> None:
    state = replay(shipped, [start(words="it bangs"), crack()])
    conclusions = conclude_visit(Reasoner(shipped), state)
    hazard = shipped.hazards["heat-exchanger-breach"]
    both = FiredHazard(hazard, (1,), ("possible:heat-exchanger-look:crack", "complaint:x"), True)
    said = found_words(shipped, state, conclusions, both)
    assert said == 'Reported by the caller: "it bangs".'


def test_every_stop_of_the_rules_names_who_may_take_its_tag_off(shipped: Knowledge) -> None:
    """Regression: the tag on a second source said the supervisor, who is no electrician."""
    for hazard in shipped.hazards.values():
        assert hazard.stop is None or hazard.cleared_by, hazard.id
    assert fitting_roles(shipped.hazards["second-power-source"]) == ("electrician",)
    assert fitting_roles(shipped.hazards["flammable-refrigerant-found"]) == ("refrigerant",)
    assert fitting_roles(shipped.hazards["gas-pressure-too-high"]) == ("gas-utility", "gas-fitter")


def test_what_else_the_unit_is_stopped_for_stands_on_the_same_tag(shipped: Knowledge) -> None:
    """Whoever clears one danger must not take the tag off over the next."""
    stuck = Answered("gas-valve-shut-off", outcomes=("passes-gas",))
    lines = tag(shipped, "heat-exchanger-breach", [start(), crack(), stuck])
    other = shipped.hazards["gas-valve-does-not-close"].spoken
    assert f"Stopped for this too: {other}." in lines
    assert not any(
        "too:" in line for line in tag(shipped, "heat-exchanger-breach", [start(), crack()])
    )


def test_a_danger_that_todays_rules_have_lost_is_named_there_too(shipped: Knowledge) -> None:
    """By its words where they are still said, else by its id."""
    events = [start(), crack(), Halted("gone-by-now", on_record=True)]
    said = replace(shipped, words={**shipped.words, "gone-by-now": "a danger of before"})
    for knowledge, name in ((said, "a danger of before"), (shipped, "gone-by-now")):
        lines = tag(knowledge, "heat-exchanger-breach", events)
        assert f"Stopped for this too: {name}." in lines


def test_a_reading_that_shows_all_well_is_not_told_as_what_stopped_the_job(
    shipped: Knowledge,
) -> None:
    sound = Answered("heat-exchanger-look", outcomes=("sound",))
    stop = Halted.over("heat-exchanger-breach", ("heat-exchanger-look", None))
    lines = tag(shipped, "heat-exchanger-breach", [start(), sound, stop])
    assert not any(line.startswith("Found") for line in lines)
