"""Nothing goes round a STOP: no comma, no new visit, no other name, no junk at the hand-over."""

from __future__ import annotations

from pathlib import Path

from tests.edge.person import Clock, Person
from tests.edge.started import started
from tests.edge.visits import ALL, begin, events_of, lead_to, task

DONE = "The joint that leaked was made tight, and tested under pressure"
READ = "0 % LEL"


def leak(data: Path, clock: Clock, who: str = ALL) -> Person:
    """A visit that a sweep for gas has stopped."""
    person = begin(data, clock, words="no-heat", who=who)
    person.types("do combustible-gas-sweep")
    lead_to(person, "Combustible-gas sweep")
    assert "- STOP" in person.types("leak")
    return person


def test_nothing_typed_at_a_stop_for_the_whole_job_lifts_it(data: Path, clock: Clock) -> None:
    with leak(data, clock) as person:
        for typed in ("", ",", " , ,", "again", "done", "s", "u", "1", "none", "x"):
            person.types(typed)
            assert "over, or q." in person.last, typed
        person.types("q")
    with Person(data, clock=clock) as person:
        person.types("y", ALL)
        assert "DANGER - STOP" in person.last and not task(person)


def test_a_comma_is_no_answer_where_several_may_be_given(data: Path, clock: Clock) -> None:
    with begin(data, clock) as person:
        before = task(person)
        assert before.startswith("Test: Setpoint")
        for typed in (",", ", ,", ",,,", "", "  "):
            person.types(typed)
            assert "Give a number" in person.last or "Type an answer" in person.last
    assert '"outcomes": []' not in events_of(data)


def test_a_stop_meets_whoever_names_the_unit_next(data: Path, clock: Clock) -> None:
    with leak(data, clock) as person:
        person.types("q")
    for name in ("RTU-7", "rtu 7", " RTU7 "):
        with Person(data, clock=clock) as person:
            person.types("n", name)
            assert "DANGER - STOP" in person.last and "caller say" not in person.last
            assert "Going on with visit 2026-11-26-1" in person.last


def test_a_unit_with_another_name_is_asked_about_while_a_stop_stands(
    data: Path, clock: Clock
) -> None:
    with leak(data, clock) as person:
        person.types("over", "the gas utility, by phone, just now")
    for name in ("RTU-8", ""):
        with Person(data, clock=clock) as person:
            person.types(name)
            assert "A STOP stands over:" in person.last and "RTU-7" in person.last
            person.types("")
            assert "Is this one of them?" in person.last
            person.types("1")
            assert "troubleshoot reopen 2026-11-26-1" in " ".join(person.last.split())
            assert person.exit_code == 4
    with Person(data, clock=clock) as person:
        assert "caller say" in person.types("RTU-8", "n")


def test_a_stop_is_met_by_a_scripted_visit_too(data: Path, clock: Clock, tmp_path: Path) -> None:
    with leak(data, clock) as person:
        person.types("q")
    case = tmp_path / "case.yaml"
    case.write_text("complaint: no-heat\n", "utf-8")
    with Person(data, "diagnose", "rtu 7", "--answers", str(case), clock=clock) as person:
        assert person.exit_code == 2 and "a STOP stands over rtu 7" in person.said


def handed_over(data: Path, clock: Clock) -> None:
    with leak(data, clock) as person:
        person.types("over", "the gas utility, by phone, just now")


def test_a_hand_over_takes_words_and_its_result_a_role_that_fits(data: Path, clock: Clock) -> None:
    with leak(data, clock) as person:
        for told in ("x", "x x", ",", "y y y", "12 34"):
            assert "by role" in " ".join(person.types("over" if told == "x" else told).split()) \
                or told == "x"  # fmt: skip
        person.types("the gas utility, by phone, just now")
    clock.pass_minutes(60)
    with Person(data, "reopen", "2026-11-26-1", clock=clock) as person:
        assert "Who made it safe?" in person.types(ALL)
        assert "fire alarm" not in person.last.rpartition("What came of it")[2]
        for role in ("fire-alarm", "electrician", "supervisor", "9", "me"):
            assert "Give a number from 1 to" in person.types(role)
        person.types("gas-utility")
        assert "Give the number of what was done" in person.types("y y")
        assert "with its unit" in " ".join(person.types(DONE, "y", "ok").split())
        person.types(READ, "y")
        for when in ("08:59", "2026-11-25 10:00"):
            assert "When was that?" in person.types(when)
        assert "still to come" in person.types("23:00")
        assert "Reopened." in person.types("09:30")
        lead_to(person, "Combustible-gas sweep")
        for word in ("none", "1", "nothing anywhere", "0 ppm or so"):
            person.types(word)
            assert "Combustible-gas sweep" not in person.last and "again" not in person.last, word
        assert "does it all still stand?" in " ".join(person.last.split())
        person.types("y")
        assert "No word lifts this STOP" in person.types("none")
        for bare in ("0", "0 ppm", "0 %", "0.0"):
            assert "with its unit" in " ".join(person.types(bare).split()), bare
            assert b"STOP over" in started(data, "visits").stdout
        assert "- STOP" not in person.types("0 % LEL")


def test_an_apprentice_takes_no_hand_over_back(data: Path, clock: Clock) -> None:
    handed_over(data, clock)
    for who in ("1", "1 2", "1 2 6"):
        with Person(data, "reopen", "2026-11-26-1", clock=clock) as person:
            assert "an apprentice takes no hand-over back" in " ".join(person.types(who).split())
            assert person.exit_code == 4


def test_a_complaint_that_is_a_stop_is_handed_over_like_any_other(data: Path, clock: Clock) -> None:
    with begin(data, clock, words="gas-smell") as person:
        assert "No further test is offered" in person.last
        person.types("again", "cleared", "1")
        assert not task(person) and "over, or q." in person.last


def test_no_other_test_is_listed_before_the_finding_that_lifts_it(data: Path, clock: Clock) -> None:
    with leak(data, clock) as person:
        person.types("over", "the gas utility, just now")
    clock.pass_minutes(60)
    with Person(data, "reopen", "2026-11-26-1", clock=clock) as person:
        person.types(ALL, "gas utility", DONE, "y", READ, "y", "2026-11-26 09:50")
        assert "Reopened" in person.said and task(person).startswith("Step: ")
        for typed in ("tests", "do 1", "do walk-round"):
            person.types(typed)
            assert "no other test before the finding" in person.last, typed
            assert "do N takes one" not in person.last


def test_a_note_on_the_way_to_a_reopening_opens_nothing(data: Path, clock: Clock) -> None:
    """Found by the long walk: the visit counted as open again, and a repair was shown in it."""
    with leak(data, clock) as person:
        person.types("over", "the gas utility, by phone, just now")
    with Person(data, "reopen", "2026-11-26-1", clock=clock) as person:
        person.types("6", "2", "note the fan sings", "q")
    with Person(data, clock=clock) as person:
        assert "Which unit" in person.last, person.last
        person.types("RTU-7")
        assert "DANGER - STOP" in person.last and not task(person)


def test_a_danger_in_between_ends_the_way_to_the_rest(data: Path, clock: Clock) -> None:
    """Found by the long walk: once it was lifted the sweep for the gas STOP was led to unasked."""
    with begin(data, clock, words="gas-smell") as person:
        person.types("over", "the gas utility, by phone, just now")
    clock.pass_minutes(60)
    with Person(data, "reopen", "2026-11-26-1", clock=clock) as person:
        person.types(ALL, "gas utility", DONE, "y", READ, "y", "2026-11-26 09:50")
        assert "Reopened" in person.said
        person.types("cleared")
        assert task(person).startswith("Step: ")
        assert "DANGER - STOP" in person.types("danger: power line near the unit")
        person.types("again", "2", "safe", "put right")
        assert "DANGER - STOP" in person.last and not task(person)
        assert "over, or q." in person.types("again")


def test_who_made_it_safe_is_kept_in_their_words_and_stands_in_tag_and_report(
    data: Path, clock: Clock
) -> None:
    """Regression: of crew, foreman and badge only the role was kept, in the journal too."""
    crew = "gas utility crew, foreman Q, badge 77"
    handed_over(data, clock)
    clock.pass_minutes(60)
    with Person(data, "reopen", "2026-11-26-1", clock=clock) as person:
        assert "Who made it safe?" in person.types(ALL, "gas utility apprentice")
        person.types(crew, DONE, "y", READ, "y", "2026-11-26 09:50")
        assert "Reopened." in person.said
        lead_to(person, "Combustible-gas sweep")
        assert "- STOP" in person.types("leak")
        assert f'the gas utility ("{crew}")' in " ".join(person.last.split())
        person.types("q")
    assert "badge 77" in events_of(data)
    report = started(data, "report", "2026-11-26-1").stdout.decode()
    assert f'made safe by the gas utility ("{crew}"): ' in report
