"""What people have at hand is taken: an outcome's own words, a title, a code, a cause's words."""

from __future__ import annotations

import pytest

from tests.cli.lines import Lines, book_of, held
from troubleshoot.dialogue.answering import answer_event_from, answers
from troubleshoot.dialogue.board_code import keep_code
from troubleshoot.dialogue.by_word import NearlyAnAnswer, NotAnAnswer, by_own_text, by_word
from troubleshoot.dialogue.commands import ON_THE_WAY_BACK, Commands
from troubleshoot.dialogue.complaint import ask_complaint, stops_by_itself
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.mistyped import meant_by
from troubleshoot.dialogue.prompts import AskTest
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.taking_up import protects, taken_up
from troubleshoot.dialogue.talk import DangerCalled, Talk
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.hearing.dangers import spoken_of
from troubleshoot.safety.hearing.words import raw_words
from troubleshoot.safety.steps import LOCKOUT, Step
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.cases.file import ROUTINE
from troubleshoot.visit.deciding.decision import Decision, to_do
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Answered, Event, Started
from troubleshoot.visit.hearing.causes_by_words import heard_fault

START = Started(complaint="no-cooling", profiles=("technician",))


def test_a_word_of_one_outcomes_text_is_that_outcome(shipped: Knowledge) -> None:
    """Regression: blown was refused where the outcome reads "Blown or tripped"."""
    for test in shipped.tests.values():
        outcomes = tuple(o.id for o in test.outcomes)
        for outcome in test.outcomes:
            if "blown" in outcome.means.lower() and test.kind != "step":
                assert by_own_text(test, "blown", outcomes) in (outcome.id, None)
    fuse = shipped.tests["control-fuse"]
    assert by_own_text(fuse, "blown", tuple(o.id for o in fuse.outcomes)) == "open"


@pytest.mark.parametrize("typed", ["not blown", "nothing blown", "blown 3 times", "", "the"])
def test_a_denial_a_number_or_nothing_is_none(typed: str, shipped: Knowledge) -> None:
    fuse = shipped.tests["control-fuse"]
    assert by_own_text(fuse, typed, tuple(o.id for o in fuse.outcomes)) is None


def test_a_cause_is_found_by_its_words_in_any_order(shipped: Knowledge) -> None:
    for said in ("cracked heat exchanger", "heat exchanger cracked or holed"):
        assert heard_fault(shipped, said).taken == "heat-exchanger-cracked"


@pytest.mark.parametrize("said", ["contactor", "the contactor", "bad contactor"])
def test_no_first_hit_is_taken_in_silence(said: str, shipped: Knowledge) -> None:
    """Regression: repaired contactor was kept as a worn armature."""
    heard = heard_fault(shipped, said)
    assert heard.taken is None and len(heard.which) > 2


def test_the_list_of_complaints_stays_after_a_wrong_answer(shipped: Knowledge) -> None:
    book, terminal = book_of(shipped, [START]), Lines("not cooling and humid", "dunno", "99", "1")
    said, complaint = held(shipped, terminal, lambda voice: ask_complaint(book, voice))
    assert said == "not cooling and humid" and not terminal.typed
    assert complaint in shipped.complaints and complaint != ROUTINE


@pytest.mark.parametrize("end", ["", ".", " "])
def test_what_callers_say_word_for_word_is_not_asked_again(end: str, shipped: Knowledge) -> None:
    """Regression: the sentence of the list itself was answered with the list."""
    for complaint in shipped.complaints.values():
        if stops_by_itself(shipped, complaint.id) or spoken_of(shipped, complaint.says):
            continue
        book, terminal = book_of(shipped, [START]), Lines(complaint.says.lower() + end)
        said = held(shipped, terminal, lambda voice, b=book: ask_complaint(b, voice))
        assert said == (complaint.says.lower() + end, complaint.id) and not terminal.typed


@pytest.mark.parametrize(
    ("name", "typed", "named"),
    [
        ("contactor-pull-in", "dont pull in", "does-not-pull-in"),
        ("contactor-pull-in", "won't pull in", "does-not-pull-in"),
        ("contactor-pull-in", "doesn\u2019t pull in", "does-not-pull-in"),
        ("thermostat-output", "dont make", "does-not-make"),
        ("txv-bulb-response", "does not open", "does-not-open"),
        ("walk-round", "nothing odd", "clean"),
    ],
)
def test_what_is_run_together_in_a_hurry_is_read_as_it_is_meant(
    name: str, typed: str, named: str, shipped: Knowledge
) -> None:
    event = answered(shipped, name, typed)
    assert isinstance(event, Answered) and event.outcomes == (named,)


def answered(shipped: Knowledge, name: str, typed: str) -> Event:
    """What a reply to a test is taken for. Raises NotAnAnswer, DangerCalled."""
    test = shipped.tests[name]
    outcomes = tuple(o.id for o in test.outcomes)
    prompt = AskTest(Decision("ask", test=test), None, outcomes, ())
    listener = Listener(shipped, Voice(), offered=answers(test, outcomes))
    book = book_of(shipped, [START])
    try:
        return taken_up(book, listener, prompt, typed)
    except NotAnAnswer as error:
        listener.not_understood(typed, str(error))
        raise


@pytest.mark.parametrize(
    ("test", "typed", "outcome"),
    [
        ("control-fuse", "blown", "open"),
        ("control-fuse", "blown i think", "open"),
        ("control-fuse", "it is open", "open"),
        ("control-fuse", "good i think", "good"),
        ("board-code", "2 4 flashes rollout", "code-limit"),
        ("board-code", "3 flashes, pressure switch", "code-pressure-switch"),
        ("board-code", "code: pressure switch open", "code-pressure-switch"),
        ("board-code", "e12 high pressure switch, c1", "code-high-pressure"),
        ("board-code", "3 flashes, no pressure switch code", "code-shown"),
        ("board-code", "4 flashes", "code-shown"),
        ("board-code", "code 33", "code-shown"),
        ("gas-valve-coil-ohms", "OL", "open"),
    ],
)
def test_an_answer_is_taken_in_the_words_at_hand(
    test: str, typed: str, outcome: str, shipped: Knowledge
) -> None:
    event = answered(shipped, test, typed)
    assert isinstance(event, Answered) and event.outcomes == (outcome,)


def test_no_single_word_of_a_text_calls_up_a_stop(shipped: Knowledge) -> None:
    """Regression: shut, typed at the flame current, was a current without a flame, and a STOP."""
    with pytest.raises(NearlyAnAnswer, match='Is "reads without flame" meant'):
        answered(shipped, "flame-current", "shut")
    stopping = {
        (finding.test, outcome)
        for hazard in shipped.hazards.values()
        for trigger in (hazard.triggers if hazard.stop else ())
        for finding in trigger.findings
        if shipped.tests[finding.test].kind != "step"
        for outcome in finding.outcomes
    }
    for name, found in sorted(stopping):
        test = shipped.tests[name]
        outcomes = tuple(o.id for o in test.outcomes)
        outcome = next(o for o in test.outcomes if o.id == found)
        for word in filter(str.isalpha, sorted({*raw_words(outcome.means)})):
            event = answered_or_none(shipped, name, word)
            if isinstance(event, Answered) and found in event.outcomes:
                named = by_word(test, word, outcomes, several=False)
                assert named or meant_by(shipped, test, word, outcomes), (name, word)


def answered_or_none(shipped: Knowledge, name: str, typed: str) -> Event | None:
    """What a reply to a test is taken for; None where it is none, or a cry."""
    try:
        return answered(shipped, name, typed)
    except (NotAnAnswer, DangerCalled):
        return None


def test_what_shows_a_danger_gone_is_not_taken_from_words_of_doubt(shipped: Knowledge) -> None:
    clearing = {h.all_clear for h in shipped.hazards.values()} - {None}
    looks = [shipped.tests[t] for t in sorted(clearing) if not shipped.tests[t].reads]
    assert looks
    for test in looks:
        if test.kind != "step" and test.healthy:
            with pytest.raises(NearlyAnAnswer):
                answered(shipped, test.id, f"{test.spoken(test.healthy[0])} i think")


@pytest.mark.parametrize("typed", ["box is on fire", "26 box is on fire", "blown n i smell gas"])
def test_a_danger_at_a_test_is_one(typed: str, shipped: Knowledge) -> None:
    with pytest.raises(DangerCalled):
        answered(shipped, "control-fuse", typed)


@pytest.mark.parametrize(
    ("typed", "more", "note"),
    [
        ("code shown", ("4 flashes",), "Board lamp, code and history: 4 flashes"),
        ("2 4 flashes rollout", (), "Board lamp, code and history: 2 4 flashes rollout"),
        ("code shown", ("dunno",), None),
        ("code shown", ("",), None),
    ],
)
def test_which_code_is_shown_is_kept(
    typed: str, more: tuple[str, ...], note: str | None, shipped: Knowledge
) -> None:
    """Regression: a rollout code was refused, and after a code nobody asked which."""
    book, terminal = book_of(shipped, [START]), Lines(*more)

    def part(voice: Voice) -> Talk[None]:
        listener = Listener(shipped, voice)
        return (yield from keep_code(book, listener, shipped.tests["board-code"], typed))

    held(shipped, terminal, part)
    assert book.state.notes == ((note,) if note else ())
    assert (note is None) or "Noted with it" in terminal.text


def test_a_danger_beside_a_code_is_heard(shipped: Knowledge) -> None:
    book = book_of(shipped, [START])
    listener, test = Listener(shipped, Voice()), shipped.tests["board-code"]
    said = "4 flashes, box is on fire"
    with pytest.raises(DangerCalled):
        held(
            shipped,
            Lines(),
            lambda voice: keep_code(book, listener, test, said),
        )
    assert book.state.notes


def test_why_on_the_way_back_is_told(shipped: Knowledge) -> None:
    """Regression: w at a step of the way back answered with nothing."""
    book, terminal = book_of(shipped, [START]), Lines()
    decision = to_do(shipped, book.state, Step(LOCKOUT))
    commands: list[Commands] = []

    def part(voice: Voice) -> Talk[bool]:
        commands.append(Commands(book, voice, Decider(shipped)))
        found = conclude_visit(commands[0].decider.reasoner, book.state)
        return (yield from commands[0].serve("w", decision, found))

    assert held(shipped, terminal, part)
    assert ON_THE_WAY_BACK in terminal.text


@pytest.mark.parametrize(
    ("name", "typed", "wanted"),
    [
        ("blower-bearings", "rough, loose", {"rough", "loose"}),
        ("blower-bearings", "rough and loose", {"rough", "loose"}),
        ("blower-bearings", "Rough/loose", {"rough", "loose"}),
        ("blower-bearings", "hot", {"hot"}),
    ],
)
def test_several_things_that_are_so_are_said_in_one_answer(
    name: str, typed: str, wanted: set[str], shipped: Knowledge
) -> None:
    """Regression: a list that said several may be true took one word of it alone."""
    test = shipped.tests[name]
    outcomes = tuple(o.id for o in test.outcomes)
    assert {*answer_event_from(shipped, test, None, typed, outcomes).outcomes} == wanted


def test_what_is_sound_is_not_said_beside_what_is_not(shipped: Knowledge) -> None:
    test = shipped.tests["blower-bearings"]
    outcomes = tuple(o.id for o in test.outcomes)
    with pytest.raises(NotAnAnswer, match="cannot be true together"):
        answer_event_from(shipped, test, None, "rough, normal", outcomes)


@pytest.mark.parametrize(
    ("name", "typed", "wanted"),
    [
        ("condenser-fan-turning", "stopped, humming", "stopped"),
        ("condenser-fan-turning", "humming", "stopped"),
        ("condenser-fan-turning", "not humming", None),
    ],
)
def test_the_words_of_an_outcome_count_beside_those_of_its_text_in_any_ending(
    name: str, typed: str, wanted: str | None, shipped: Knowledge
) -> None:
    test = shipped.tests[name]
    assert by_own_text(test, typed, tuple(o.id for o in test.outcomes)) == wanted


@pytest.mark.parametrize("typed", ["looks fine", "Looks fine.", "good", "all good"])
def test_of_a_look_nothing_wrong_is_its_sound_outcome_where_it_protects_nobody(
    typed: str, shipped: Knowledge
) -> None:
    """Regression: looks fine was refused at a walk round the unit, and set right at a damper."""
    taken = set()
    for name, test in shipped.tests.items():
        if test.kind == "look":
            try:
                event = answered(shipped, name, typed)
            except (NotAnAnswer, DangerCalled):
                continue
            assert isinstance(event, Answered) and {*event.outcomes} <= {*test.healthy}, name
            assert not protects(shipped, test), name
            taken.add(name)
    assert {"walk-round", "air-filters"} <= taken
    assert "heat-exchanger-look" not in taken


@pytest.mark.parametrize(
    "typed", ["not good", "good enough", "fine but loud", "looked fine before"]
)
def test_what_is_more_than_nothing_wrong_is_not_taken_for_it(
    typed: str, shipped: Knowledge
) -> None:
    for name in ("walk-round", "air-filters"):
        with pytest.raises((NotAnAnswer, DangerCalled)):
            answered(shipped, name, typed)
