"""A call for help that names nothing: it stops first, and asks; what is said then counts, or takes
it back.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.visits import begin, events_of, lead_to, takes_over, task

GAS, FIRE = "gas utility", "fire service"


@pytest.mark.parametrize("call", ["danger", "danger?", "DANGER!", "dangerous", "stop", "Stop!",
                                  "emergency", "mayday", "help me", "somebody help"])  # fmt: skip
def test_a_call_that_names_nothing_stops_first_and_asks_once(
    call: str, data: Path, clock: Clock
) -> None:
    with begin(data, clock) as person:
        said = person.types(call)
        assert "STOP." in said and "What is wrong?" in said
        assert '"hazard": "danger-reported"' in events_of(data)
        assert "DANGER - STOP" in person.types("")
        assert "supervisor" in takes_over(person)


@pytest.mark.parametrize(
    ("more", "who"), [("gas smell", GAS), ("danger fire", FIRE), ("a thing that hums", "super")]
)
def test_what_is_then_said_is_the_danger(more: str, who: str, data: Path, clock: Clock) -> None:
    with begin(data, clock) as person:
        person.types("mayday", more)
        assert "- STOP" in person.last and who in takes_over(person)
        person.types("over", "the office, just now")
    with Person(data, "visits", clock=clock):
        pass
    assert events_of(data).count('"event": "stop"') == 0


@pytest.mark.parametrize(
    "more",
    [
        "done",
        "0.2 V",
        "locked",
        "stopped",
        "invalid the leads were on the wrong terminals",
        "hatch",
    ],
)
def test_what_names_no_danger_makes_nothing_less_of_the_call(
    more: str, data: Path, clock: Clock
) -> None:
    with begin(data, clock) as person:
        person.types("danger", more)
        assert "supervisor" in takes_over(person)
        assert "over, or q." in person.types("again")


def test_a_call_is_kept_though_nobody_comes_back(data: Path, clock: Clock) -> None:
    with begin(data, clock) as person:
        person.types("stop")
    with Person(data, clock=clock) as person:
        assert "DANGER - STOP" in person.types("y", "3")


@pytest.mark.parametrize(
    "back", ["nothing", "typo", "nothing wrong typo", "False alarm.", "it's nothing"]
)
def test_a_call_that_was_none_is_taken_back_and_stays_on_record(
    back: str, data: Path, clock: Clock
) -> None:
    with begin(data, clock) as person:
        person.types("do wiring-burn-marks")
        lead_to(person, "Stop the unit by its controls")
        asked = task(person)
        assert "What is wrong?" in person.types("danger")
        assert "Taken back" in person.types(back) and task(person) == asked
        assert "- STOP\n" not in person.last
    kept = events_of(data)
    assert '"event": "danger"' in kept and f'"words": "{back}"' in kept
    with Person(data, clock=clock) as person:
        assert "- STOP" not in person.types("y", "3")


@pytest.mark.parametrize(
    "still", ["", "i do not know", "nothing good", "nothing is fine", "no", "smoke", "gas, no typo"]
)
def test_anything_else_keeps_the_call(still: str, data: Path, clock: Clock) -> None:
    with begin(data, clock) as person:
        person.types("danger")
        assert "DANGER - STOP" in person.types(still)


def test_what_takes_a_call_back_takes_no_danger_back_that_was_named(
    data: Path, clock: Clock
) -> None:
    with begin(data, clock) as person:
        assert "DANGER - STOP" in person.types("danger smoke")
        assert "Taken back" not in person.types("nothing") + person.types("typo")


UNFORESEEN = "danger the purple gizmo wobbles"


@pytest.mark.parametrize("led_by", [(), ("do capacitance",), ("do 1", "do head-pressure")])
def test_words_nobody_foresaw_stop_at_once_with_the_first_orders_and_ask_nothing(
    led_by: tuple[str, ...], data: Path, clock: Clock
) -> None:
    """Whatever is answered to the STOP, a number or none of these, the STOP stays and says so."""
    with begin(data, clock) as person:
        person.types(*led_by)
        said = person.types(UNFORESEEN)
        assert said.index("DANGER - STOP") < said.index("Stop and get yourself")
        assert "Which of these" not in said and "What is wrong" not in said
        for typed in ("1", "none of these", "", "the flange", "Which?", "do 1"):
            assert "over, or q." in person.types(typed)
        for typed in ("u", "undo"):
            assert "Undo never reaches past a STOP. over, or q." in person.types(typed)
    assert '"hazard": "danger-reported"' in events_of(data)
    with Person(data, clock=clock) as person:
        assert "DANGER - STOP" in person.types("y", "3")


@pytest.mark.parametrize("more", ["1", "none of these", "none", "", "?!", "not sure", "yes", "911"])
def test_what_names_nothing_leaves_the_call_as_it_was_made(
    more: str, data: Path, clock: Clock
) -> None:
    """Regression: "none of these" was written on the tag as what was reported."""
    with begin(data, clock) as person:
        said = person.types("danger", more)
        assert "supervisor" in takes_over(person) and f'Reported: "{more}"' not in said
    assert events_of(data).count('"event": "danger"') == 1


def test_u_takes_back_no_danger_that_was_called(data: Path, clock: Clock) -> None:
    with begin(data, clock) as person:
        said = " ".join(person.types("danger", "u").split())
        assert "Undo takes no danger back" in said and "What is wrong?" in said
        assert "DANGER - STOP" in person.types("")
