"""On forty columns and twenty rows nothing scrolls away unread, whatever is asked."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.edge.person import PAGE, Clock, Person
from tests.edge.visits import ALL, WALK_ROUND, careful, lead_to, task
from troubleshoot.knowledge.load import load_shipped

WIDE, HIGH = 40, 20
KNOWLEDGE = load_shipped()
PLATE = "208/1/60, gas, R-410A, TXV, one circuit, one fan, no smoke detector"


def small(tmp_path: Path, *words: str, reads: bool = True) -> Person:
    clock = Clock(tmp_path)
    return Person(tmp_path / "data", *words, clock=clock, columns=WIDE, lines=HIGH, reads=reads)


def what_is_typed(person: Person) -> str:
    """What a mechanic types who finds nothing: facts at first, the steps' own words."""
    if "Who is asking" in person.last:
        return ALL
    if "facts from the nameplate" in " ".join(person.last.split()):
        return PLATE
    return careful(person) or ("s" if "Test:" in task(person) else "")


def visit(person: Person, call: str, most: int = 45) -> Iterator[str]:
    """What is typed at each prompt of a visit; the screens are the person's."""
    for typed in ("RTU-7", call):
        yield typed
        person.types(typed)
    for _ in range(most):
        if not person.running or "The cause is named" in person.last:
            return
        typed = what_is_typed(person)
        yield typed
        person.types(typed)


@pytest.mark.parametrize("call", ["weak air", "no heat", "contactor chatters", ""])
def test_no_screen_of_a_visit_is_longer_than_the_screen(call: str, tmp_path: Path) -> None:
    with small(tmp_path) as person:
        assert len(list(visit(person, call))) > 20
        person.types("done")
        too_long = [page for page in person.screens if len(page.splitlines()) > HIGH]
        assert not too_long, too_long[0]
        assert all(len(line) <= WIDE for page in person.screens for line in page.splitlines()[1:])


def flat(text: str) -> str:
    return " ".join(text.split())


def test_a_caution_is_whole_before_its_first_step_and_one_line_after(tmp_path: Path) -> None:
    said = KNOWLEDGE.hazards["ladder-and-hatch"].what_to_do
    with small(tmp_path) as person:
        person.types("RTU-7", "weak air", ALL)
        lead_to(person, "Step: Roof")
        before, _, after = flat(person.last).partition("Step: Roof")
        assert f"WARNING: {said}" in before and said not in after
        person.types("safe")
        assert WALK_ROUND in person.last
        assert "WARNING as before: ladder and hatch." in flat(person.last)
        assert said not in flat(person.last)
        person.types("?")
        assert f"WARNING: {said}" in flat(person.last), "it is whole again where it is asked for"


def test_hours_later_a_caution_is_whole_again(tmp_path: Path) -> None:
    said = KNOWLEDGE.hazards["ladder-and-hatch"].what_to_do
    clock = Clock(tmp_path)
    with Person(tmp_path / "data", clock=clock, columns=WIDE, lines=HIGH) as person:
        person.types("RTU-7", "weak air", ALL)
        lead_to(person, "Step: Roof")
        person.types("safe")
        clock.pass_minutes(180)
        person.types("clean")
        assert "Step: Roof" in person.last and f"WARNING: {said}" in flat(person.last)


def test_a_step_done_before_is_told_short_and_whole_where_it_is_asked_for(tmp_path: Path) -> None:
    how = KNOWLEDGE.tests["tester-proof"].how[0]
    with small(tmp_path) as person:
        person.types("RTU-7", f"weak air, {PLATE}", ALL, "do wiring-burn-marks")
        lead_to(person, "Prove the meter")
        assert how in flat(person.last)
        person.types("proved")
        lead_to(person, "Prove the meter")
        assert "The same way as before; ? tells how." in flat(person.last)
        assert how not in flat(person.last)
        assert how in flat(person.types("?"))


def at_the_first_page(tmp_path: Path) -> Person:
    """Somebody who has come to the first page of the roof's cautions."""
    person = small(tmp_path, reads=False)
    person.types("RTU-7", "weak air", ALL)
    if not person.last.endswith(PAGE):
        person.types("told")
    assert person.last.endswith(PAGE)
    assert "Step: Roof" not in person.last
    return person


def test_what_is_typed_at_a_page_answers_nothing(tmp_path: Path) -> None:
    with at_the_first_page(tmp_path) as person:
        person.types("safe")
        assert person.last.endswith(PAGE) and "Step: Roof" not in person.last
        for _ in range(5):
            if not person.last.endswith(PAGE):
                break
            person.types("")
        assert task(person).startswith("Step: Roof"), "what was typed before did not confirm it"


def test_what_waits_is_thrown_away_between_pages(tmp_path: Path) -> None:
    with at_the_first_page(tmp_path) as person:
        person.pastes("\n\n\n\nsafe\nclean\n")
        assert person.last.endswith(PAGE), "a pocket turns one page, and reads no other"


@pytest.mark.parametrize("typed", ["danger gas", "i smell gas"])
def test_a_danger_is_heard_at_a_page(typed: str, tmp_path: Path) -> None:
    with at_the_first_page(tmp_path) as person:
        person.types(typed)
        assert "DANGER - STOP" in person.last


def test_whoever_leaves_at_a_page_leaves_and_is_told_all_the_next_time(tmp_path: Path) -> None:
    with at_the_first_page(tmp_path) as person:
        person.types("q")
        assert "The visit is kept" in person.last and not person.running
    with small(tmp_path) as person:
        person.types("y", ALL)
        said = KNOWLEDGE.hazards["ladder-and-hatch"].what_to_do
        assert f"WARNING: {said}" in flat(person.last)


def test_after_a_danger_that_broke_in_what_was_not_read_is_whole(tmp_path: Path) -> None:
    with at_the_first_page(tmp_path) as person:
        person.reads = True
        person.types("danger", "typo")
        said = KNOWLEDGE.hazards["solar-array"].what_to_do
        assert f"WARNING: {said}" in flat(person.last)


def test_a_window_made_smaller_holds_the_next_screen(tmp_path: Path) -> None:
    with Person(tmp_path / "data", clock=Clock(tmp_path), columns=100, lines=60) as person:
        person.types("RTU-7", "weak air")
        person.resizes(WIDE, HIGH)
        person.screens.clear()
        person.types(ALL)
        lead_to(person, "Step: Roof")
        assert all(len(page.splitlines()) <= HIGH for page in person.screens)
        assert all(len(line) <= WIDE for page in person.screens for line in page.splitlines()[1:])


@pytest.mark.parametrize("called", ["my helper just got bit by the 480", "lightning", "smoke"])
def test_the_first_page_of_a_stop_says_what_to_do(called: str, tmp_path: Path) -> None:
    """Regression: "DANGER - STOP" stood alone, and what to do came after an Enter."""
    with small(tmp_path, reads=False) as person:
        person.types("RTU-7")
        page = person.types(called)
        assert "STOP" in page and PAGE in page
        assert len(page.splitlines()) > HIGH // 2, page
