"""Whatever somebody says that a state has gone voids it at once, at whatever prompt it is said.

Lock and proof: 29 CFR 1910.147(d) and (f)(3), NFPA 70E 120.5 (what was proved dead counts as long
as the lock stays on), from memory; the roof: 29 CFR 1926.501, from memory; the rest
common practice.
"""

from __future__ import annotations

from datetime import timedelta

import pytest

from tests.dialogue.at_work import AtWork
from tests.dialogue.gone_sentences import ASKED, GONE, HARMLESS, NO_SIGN, TOLD_IN_PASSING
from troubleshoot.dialogue.prompts import AtStop, Choose
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.gone import contradicted
from troubleshoot.safety.hearing.among_words import told_among
from troubleshoot.safety.hearing.dangers import spoken_of
from troubleshoot.safety.hearing.gone import hinted_gone
from troubleshoot.safety.needs import needs_of
from troubleshoot.safety.route import steps_to
from troubleshoot.safety.work_state import cautious
from troubleshoot.visit.events import Answered, DangerReported, Noted, StateGone, replay
from troubleshoot.visit.events.codec import event_of, record_of
from troubleshoot.visit.telling.lapses import FED_TWICE, NOT_READY, STOP_FIRST

ON_THE_WAY = ("stop-by-controls", "lockout", "tester-proof", "verified-dead", "tester-proof")


@pytest.mark.parametrize("place", GONE)
def test_it_is_heard(place: str, shipped: Knowledge) -> None:
    """As a state that has gone, or as a danger that stops."""
    visit = AtWork(shipped, place)
    unheard = [
        sentence
        for sentence in GONE[place]
        if visit.dialogue.told_gone(sentence) is None
        and not spoken_of(shipped, sentence)
        and not told_among(shipped, sentence)
    ]
    assert not unheard


@pytest.mark.parametrize("place", HARMLESS)
def test_what_only_looks_like_it_voids_nothing(place: str, shipped: Knowledge) -> None:
    visit = AtWork(shipped, place)
    assert not [each for each in HARMLESS[place] if visit.dialogue.told_gone(each) is not None]


@pytest.mark.parametrize("place", ASKED)
def test_what_nobody_can_tell_is_asked_about(place: str, shipped: Knowledge) -> None:
    """A no voids, and no reading is taken meanwhile; a yes leaves all as it stands."""
    work = AtWork(shipped, place).work
    at_work = AtWork(shipped, place).book.state.at_work
    for sentence in ASKED[place]:
        assert contradicted(work, hinted_gone(shipped, sentence), at_work), sentence
    first = ASKED[place][0]
    for answer, voids in (("n", True), ("y", False)):
        visit = AtWork(shipped, place)
        visit.types(first)
        assert isinstance(visit.prompt, Choose) and "still stand" in visit.prompt.question
        steps = contradicted(work, hinted_gone(shipped, first), at_work)
        names = [shipped.tests[step].name for step in steps]
        assert names and all(f"{name}: " in visit.prompt.question for name in names)
        visit.types(answer)
        assert any(isinstance(event, StateGone) for event in visit.events) is voids


def test_a_long_silence_at_the_question_is_seen_before_the_test_stands_again(
    shipped: Knowledge,
) -> None:
    visit = AtWork(shipped, "in")
    visit.types("the switch is not open")
    assert isinstance(visit.prompt, Choose)
    visit.moment += timedelta(minutes=90)
    visit.types("y")
    assert visit.at == "roof-conditions" and visit.book.state.work.power == "unsure"


@pytest.mark.parametrize(
    ("place", "sentence"),
    [(place, sentence) for place in TOLD_IN_PASSING for sentence in TOLD_IN_PASSING[place]],
)
def test_what_is_told_in_passing_is_heard_or_asked_about(
    place: str, sentence: str, shipped: Knowledge
) -> None:
    """Regression: a smell at the manometer was no answer, and the cock was opened next."""
    visit = AtWork(shipped, place)
    visit.types(sentence)
    is_heard = any(isinstance(event, StateGone | DangerReported) for event in visit.events)
    assert is_heard or visit.dialogue.asks_aside or isinstance(visit.prompt, Choose)


@pytest.mark.parametrize("said", ["the fitter waves at us", "something is not right here"])
def test_what_is_told_at_a_step_stops_the_job_or_is_let_be(said: str, shipped: Knowledge) -> None:
    for answer, stops in (("y", True), ("n", False)):
        visit = AtWork(shipped, "manometer")
        visit.types(said)
        assert visit.dialogue.asks_aside
        visit.types(answer)
        assert isinstance(visit.prompt, AtStop) is stops
    assert visit.at == "manometer-on"
    visit.types(said)
    assert not visit.dialogue.asks_aside  # what was said to be no danger is not asked about again


@pytest.mark.parametrize("said", ["what hose?", "where is the tap", "tap", "manometer on a tap"])
def test_a_question_and_the_steps_own_words_are_not_asked_about(
    said: str, shipped: Knowledge
) -> None:
    visit = AtWork(shipped, "manometer")
    visit.types(said)
    assert not visit.dialogue.asks_aside and not isinstance(visit.prompt, Choose)


@pytest.mark.parametrize("place", NO_SIGN)
def test_what_is_planned_or_still_stands_voids_nothing(place: str, shipped: Knowledge) -> None:
    visit = AtWork(shipped, place)
    assert not [each for each in NO_SIGN[place] if visit.dialogue.told_gone(each) is not None]


def test_the_first_line_is_what_to_do_and_the_way_is_asked_again(shipped: Knowledge) -> None:
    """Regression: hands stayed in a unit that was told to be live, and a reading was taken."""
    visit = AtWork(shipped, "in")
    said = visit.types("power is back on")
    assert said[0].startswith("Hands out: it counts as live.")
    assert all(words in said[1] for words in ("locked out", "dead", "capacitors discharged"))
    met = visit.goes_on_to("capacitance-out-of-circuit")
    places = [met.index(step) for step in ON_THE_WAY[:4]]
    assert places == sorted(places) and met.count("tester-proof") >= 3
    assert visit.book.state.work.power == "locked-out" and visit.book.state.work.dead == "proved"


@pytest.mark.parametrize(
    ("place", "sentence", "first", "again"),
    [
        ("in", "there is a second disconnect i missed", "Hands out", "second-source-locked"),
        ("in", "cap still holding 90 V", "Hands out", "capacitor-discharge"),
        ("in", "meter quit on me, i never proved the meter", "Hands out", "tester-proof"),
        ("in", "panel is back on", "Hands off the panel", "panels-off"),
        ("in", "it is raining now", "Stop, get away from the edge", "roof-conditions"),
        ("cock", "the gas is back on", "Hands and flames away", "gas-cock-shut"),
        ("live", "my helper went to the truck", "Step back from live parts", "second-person"),
        ("live", "took my gloves off", "Step back from it", "arc-clothing-on"),
        ("run", "burner tried and did not light", "No call, no spark", "purge-wait"),
    ],
)
def test_each_asks_its_own_step_again_and_comes_back(
    place: str, sentence: str, first: str, again: str, shipped: Knowledge
) -> None:
    visit = AtWork(shipped, place)
    aim = visit.at
    said = visit.types(sentence)
    assert said[0].startswith(first), said
    assert visit.at != aim and again in visit.goes_on_to(aim)


@pytest.mark.parametrize(
    "said",
    [
        "cap jumped back to 90 volts", "cap still holding 90 V", "got 60 volts back on the cap",
        "the can crept back up to 45 V", "drive bus came back to 300 volts",
    ],
)  # fmt: skip
def test_a_charge_behind_the_lock_is_acted_on_before_any_was_bled(
    said: str, shipped: Knowledge
) -> None:
    """Regression: it was refused as microfarads, as nothing yet stood on a discharge."""
    visit = AtWork(shipped, "panels-off")
    assert visit.book.state.work.power == "locked-out" and not visit.book.state.work.discharged
    assert visit.types(said)[0].startswith("Hands out: it counts as live and as charged")
    assert any(isinstance(event, StateGone) for event in visit.events)
    visit.goes_on_to("capacitor-discharge")


@pytest.mark.parametrize("place", ["live", "run"])
def test_another_feed_is_kept_in_mind_until_it_is_locked(place: str, shipped: Knowledge) -> None:
    """Regression: told of while nothing was locked out it was gone, and hands went in later."""
    visit = AtWork(shipped, place)
    said = visit.types("there is a second disconnect i missed")
    assert said[0] == FED_TWICE
    state = visit.book.state
    needs = needs_of(shipped.tests["blower-wheel"], None, state.at_work)
    way = [step.id for step in steps_to(state.work, needs, state.at_work)]
    assert way.index("second-source-locked") < way.index("verified-dead")


def test_a_reading_that_contradicts_is_no_answer_to_the_test(shipped: Knowledge) -> None:
    """Regression: 240 was taken for the microfarads of the capacitor in hand."""
    visit = AtWork(shipped, "in")
    visit.types("reading 240 across the lugs")
    assert visit.book.state.work.dead == "not-shown" and visit.at == "stop-by-controls"


def test_a_note_voids_as_well_and_its_words_are_kept(shipped: Knowledge) -> None:
    visit = AtWork(shipped, "in")
    visit.types("note lock is off, i needed it below")
    assert visit.book.state.work.power == "unsure"
    assert any("lock is off, i needed it below" in note for note in visit.book.state.notes)


def test_a_danger_in_the_same_words_is_reported_and_voids(shipped: Knowledge) -> None:
    for said in ("danger power is back on", "somebody switched it on"):
        visit = AtWork(shipped, "in")
        visit.types(said)
        assert isinstance(visit.prompt, AtStop), said
        assert any(isinstance(event, DangerReported) for event in visit.events)
    visit = AtWork(shipped, "in")
    visit.types("danger power is back on")
    assert visit.book.state.work.power == "unsure"


@pytest.mark.parametrize(
    ("place", "said"),
    [
        ("live", "bare wire hanging against the cabinet and its live"),
        ("run", "note bare wire hanging against the cabinet and its live"),
        ("in", "danger power is back on"),
    ],
)
def test_a_stop_in_the_same_words_stands_before_what_counts_no_more(
    place: str, said: str, shipped: Knowledge
) -> None:
    """Regression: a live wire was told behind "Switch nothing on" and "every lead back"."""
    visit = AtWork(shipped, place)
    before = visit.types(said)
    assert isinstance(visit.prompt, AtStop)
    assert not {NOT_READY, STOP_FIRST} & {*before}
    assert not any(line.startswith("It counts no more") for line in before)
    assert any(line.startswith("It counts no more") for line in visit.prompt.gone)
    visit.types("why")
    assert isinstance(visit.prompt, AtStop)


def test_undo_takes_back_the_words_and_not_what_hands_have_done(shipped: Knowledge) -> None:
    visit = AtWork(shipped, "in")
    visit.types("power is back on")
    voided = visit.book.state.work
    said = visit.types("u")
    assert said[0].startswith('Taken back: "power is back on".')
    assert visit.book.state.work == cautious(visit.work, voided)
    assert not visit.book.state.notes and visit.at != "capacitance-out-of-circuit"


def test_the_journal_tells_it_again(shipped: Knowledge) -> None:
    visit = AtWork(shipped, "cock")
    visit.types("gas is back on")
    record = record_of(visit.events[-1])
    assert record["event"] == "aim" or record["steps"] == ["gas-cock-shut"]
    again = [event_of(record_of(event)) for event in visit.book.events]
    assert replay(shipped, again).work == visit.book.state.work


@pytest.mark.parametrize(
    ("place", "sentence"),
    [
        ("lock-off", "power is back on"),
        ("verified-dead", "208 V between L1 and L2"),
        ("gas-cock-open", "gas is back on"),
        ("run", "the fan is running now"),
        ("run", "i put the power back on"),
    ],
)
def test_what_answers_the_step_or_contradicts_nothing_voids_nothing(
    place: str, sentence: str, shipped: Knowledge
) -> None:
    visit = AtWork(shipped, place)
    visit.types(sentence)
    assert not any(isinstance(event, StateGone) for event in visit.events)


def test_it_is_heard_at_a_question_in_between(shipped: Knowledge) -> None:
    """A reading that was not confirmed before it is kept as a note, and weighs nothing."""
    visit = AtWork(shipped, "in")
    visit.types("reading 7.5 uF at the roundel")
    assert visit.at == ""  # it is asked whether what was understood is to be taken
    visit.types("the lock is off")
    assert visit.book.state.work.power == "unsure" and visit.at == "stop-by-controls"
    assert not any(isinstance(event, Answered) for event in visit.events)
    assert any(isinstance(e, Noted) and "roundel" in e.text for e in visit.events)
