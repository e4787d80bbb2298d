"""A plain finding, and what was plainly done, bring no question whether all stands.

It was asked at 26 of the 40 findings here and 18 of the 30 deeds, and answered unread by then.
"""

from __future__ import annotations

import pytest

from tests.dialogue import at_work
from tests.dialogue.at_work import AtWork
from tests.dialogue.finding_sentences import DONE, DONE_APART, FOUND, FOUND_APART
from tests.dialogue.test_good_news import at_step
from tests.dialogue.test_other_words import asks_of, at, found
from troubleshoot.dialogue.prompts import Choose
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.visit.events import StateGone, StepDone

MOST_ASKED_WHETHER_ALL_STANDS = 6
"""Of 20 findings; 15 and 11 before."""
MOST_ASKED_OF_DANGER = 5
"""Of 15 deeds; 9 and 9 before."""
LED_TO_BY = {
    "gauges-on": ("no-cooling", "do suction-pressure at circuit 1"),
    "gauges-off": ("no-cooling", "do suction-pressure at circuit 1"),
    "manometer-on": ("no-heat", "do gas-manifold-pressure"),
    "capacitor-discharge": (
        "no-cooling",
        "do capacitance-out-of-circuit at capacitor condenser fan 1",
    ),
}


def asks_whether_all_stands(visit: AtWork) -> bool:
    return isinstance(visit.prompt, Choose) and "still stand" in visit.prompt.question


def at_the(shipped: Knowledge, step: str, monkeypatch: pytest.MonkeyPatch) -> AtWork:
    call, first = LED_TO_BY.get(step, ("no-heat", "do burner-orifices"))
    monkeypatch.setitem(at_work.PLACES, f"step-{step}", (call, first, step))
    return AtWork(shipped, f"step-{step}")


@pytest.mark.parametrize("told", [FOUND, FOUND_APART], ids=["found", "apart"])
def test_few_findings_have_it_asked_whether_all_stands(
    told: tuple[tuple[str, str, str], ...], shipped: Knowledge
) -> None:
    asked, wrong = [], []
    for name, said, meant in told:
        visit = at(shipped, name)
        visit.types(said)
        asked += [said] * asks_whether_all_stands(visit)
        wrong += [said] * any(meant not in each for _, each in found(visit))
    assert len(asked) <= MOST_ASKED_WHETHER_ALL_STANDS, asked
    assert not wrong


@pytest.mark.parametrize("told", [DONE, DONE_APART], ids=["done", "apart"])
def test_few_deeds_have_it_asked_whether_somebody_is_in_danger(
    told: tuple[tuple[str, str], ...], shipped: Knowledge, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked = []
    for step, said in told:
        visit = at_the(shipped, step, monkeypatch)
        visit.types(said)
        asked += [said] * visit.dialogue.asks_aside
        assert not any(isinstance(event, StateGone) for event in visit.events), said
    assert len(asked) <= MOST_ASKED_OF_DANGER, asked


@pytest.mark.parametrize(
    ("name", "said", "never"),
    [
        ("contactor-contacts", "nice and silver, flat faces", "pole-burnt-away"),
        ("blower-belt", "nice and tight, no cracks, lines up", "overtight"),
        ("drain-pan", "half inch of scum in it, outlet plugged", "drains"),
        ("ignition-trials", "lights right off and stays lit", "delayed-light"),
    ],
)
def test_the_opposite_of_what_is_said_is_not_asked_about(
    name: str, said: str, never: str, shipped: Knowledge, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Regression: the first four were; a thumb on y records it."""
    monkeypatch.setitem(at_work.PLACES, "ignition-trials", ("no-heat", "do ignition-trials", name))
    visit = at(shipped, name)
    visit.types(said)
    assert not asks_of(visit, [shipped.tests[name].spoken(never)]) and not found(visit)


def test_a_finding_of_two_looks_is_taken_as_both(shipped: Knowledge) -> None:
    """Regression: the filters, the second fault, were dropped to a note."""
    visit = at(shipped, "evaporator-coil-face")
    visit.types("coil is clean but the filters are loaded after all")
    assert found(visit) == [("air-filters", ("loaded",)), ("evaporator-coil-face", ("clean",))]


def test_a_finding_that_is_not_taken_is_kept(shipped: Knowledge) -> None:
    visit = at(shipped, "burner-orifices")
    visit.types("spider web in number three")
    assert asks_of(visit, ["blocked"])
    visit.types("n")
    assert visit.at == "burner-orifices" and "spider web" in " | ".join(visit.book.state.notes)


@pytest.mark.parametrize(
    ("said", "came"),
    [
        ("fans run but the compressor just hums and trips off", "struggles"),
        ("compressor struggles", "struggles"),
        ("blower hums does not start", "struggles"),
        ("condenser runs, blower just sits there humming", "struggles"),
        ("blower wont come on", "does-not-start"),
    ],
)
def test_what_a_part_did_at_the_restart_is_asked_about(
    said: str, came: str, shipped: Knowledge, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Regression: is somebody or something in danger now? and the finding was lost."""
    visit = at_step(shipped, "restart-and-watch", monkeypatch)
    visit.types(said)
    assert isinstance(visit.prompt, Choose)
    visit.types("y")
    assert [e.outcomes for e in visit.events if isinstance(e, StepDone)][:1] == [(came,)]


@pytest.mark.parametrize(
    "said", ["blower runs", "fans run, no idea of the rest", "all of it hums?"]
)
def test_what_runs_only_in_part_confirms_no_restart(
    said: str, shipped: Knowledge, monkeypatch: pytest.MonkeyPatch
) -> None:
    visit = at_step(shipped, "restart-and-watch", monkeypatch)
    visit.types(said)
    confirmed = CONFIRMED["restart-and-watch"]
    assert not any(isinstance(e, StepDone) and confirmed in e.outcomes for e in visit.events)


@pytest.mark.parametrize(
    ("step", "said"),
    [
        ("tell-fire-panel", "hands out, tools in the bag, clear"),
        ("tell-occupants", "panel is on test, talked to the monitoring company"),
        ("roof-conditions", "told the owner, he's ok with it"),
    ],
)
def test_a_report_of_another_step_is_a_note_and_no_danger(
    step: str, said: str, shipped: Knowledge, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Regression: typed a prompt early it was asked whether somebody is in danger."""
    visit = at_step(shipped, step, monkeypatch)
    told = visit.types(said)
    assert visit.at == step and not visit.dialogue.asks_aside
    assert any("of another step" in each for each in told)
    assert said in " | ".join(visit.book.state.notes)


def test_a_report_that_takes_a_state_away_is_acted_on(
    shipped: Knowledge, monkeypatch: pytest.MonkeyPatch
) -> None:
    visit = at_step(shipped, "verified-dead", monkeypatch)
    visit.types("lock is off, switch is on")
    assert any(isinstance(event, StateGone) for event in visit.events)


def test_what_is_sound_is_left_out_where_the_words_tell_otherwise(shipped: Knowledge) -> None:
    """Regression: edge is a word of sound, and with it stood no guess at all."""
    visit = at(shipped, "control-wiring-look")
    visit.types("rubbed through at the curb edge")
    assert not asks_of(visit, ["sound"]) and (asks_of(visit, ["rubbed"]) or found(visit))


def test_what_is_good_of_the_thing_itself_is_asked_about_by_its_word(shipped: Knowledge) -> None:
    """Regression: filters are ok was refused."""
    visit = at(shipped, "air-filters")
    visit.types("filters are ok, a little gray")
    assert asks_of(visit, ["clean"])
