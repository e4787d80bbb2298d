"""What is told at a safety step beside its answer is asked about as what it is, and kept.

29 CFR 1910.147(e)(1): nonessential items are removed and the area is seen to be clear before
energy comes back; from memory. The sentences were written before they were tried.
"""

from __future__ import annotations

import pytest

from tests.dialogue.at_work import AtWork
from troubleshoot.dialogue.left_in import OUT_FIRST, left_in
from troubleshoot.dialogue.prompts import AtStop, Choose
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events import DangerReported, StateGone

LEFT_IN = (
    "left my pliers in the blower",
    "my flashlights still in there",
    "dropped a screw driver down by the wheel",
    "cant find my 5/16 nutdriver",
    "rag is still in the blower",
    "think i left a wrench in the condenser",
    "lost a bit in the burner box",
    "theres still a jumper in it",
    "magnet tray fell in the fan",
    "forgot my impact in the unit",
    "screws fell into the inducer",
    "still got a clamp on the lugs",
    "somebodys tool bag is inside",
)

STATES = (
    "went down to the truck for a fuse, back now",
    "somebody opened the cock already",
    "somebody messed with the disconnect",
    "the super was up here while i was gone",
    "i was off the roof 20 minutes",
    "some guy is standing by the unit",
    "a kid just came up the hatch",
    "roofers walking around it now",
    "ran out to the van quick",
    "hvac guy next door borrowed my meter",
    "boss called me down for a bit",
    "maintenance man came up and looked at it",
)

SMALL_TALK = (
    "no lightnin, sky is clear",
    "ladders tied good, nobody hurt",
    "killed the power and its dead",
    "pliers are back in my pouch",
    "this thing is old as hell",
    "customer wants it done by noon",
    "handle was stiff but ok",
    "took me a while to find it",
    "screws are stripped on this panel",
    "had to use the big wrench",
    "what a pain this one",
    "nice clean burner box",
    "all tools are in the bag",
    "whoever did this last was lazy",
    "bolts are rusty",
    "third one of these this week",
    "pigeons up here again",
    "almost done here",
    "need a new gasket on that door",
    "label is faded",
    "hose fits good",
    "boss wants pictures",
    "these screws are junk",
    "coffee break soon",
    "that was a tight squeeze",
    "same as last year",
)

DANGERS = (
    "this panel is heavy and its sliding",
    "customer says kitchen stinks",
    "nice little flame under there now",
    "old wire is smoldering",
    "this bolt just zapped me",
    "good lord that sparked",
    "a screw is glowing",
    "third time it bit me",
    "customer passed out downstairs",
    "my apprentice got dizzy",
    "ready but the valve is spitting",
    "pigeons dropping and i slipped",
    "easy now its rolling by itself",
    "radio says tornado",
    "clean but i hear hissing",
    "had to jump back when it lit up",
    "roof is soft right here",
    "almost done but my hand is bleeding",
    "this week the ladder is wobbly",
    "gasket is smoking",
    "birds all took off something popped",
)


def notes_of(visit: AtWork) -> str:
    return " | ".join(visit.book.state.notes)


@pytest.mark.parametrize("place", ["manometer", "gas-cock-open"])
@pytest.mark.parametrize("said", LEFT_IN)
def test_what_was_left_in_is_asked_about_and_kept(
    said: str, place: str, shipped: Knowledge
) -> None:
    """Regression: pliers in the blower were asked about as a danger, and n lost the words."""
    visit = AtWork(shipped, place)
    step = visit.at
    visit.types(said)
    assert isinstance(visit.prompt, Choose) and "left in" in visit.prompt.question
    visit.types("y")
    assert visit.at == step and said in notes_of(visit) and not left_in(visit.book.state)


def test_no_gas_is_opened_before_it_is_out(shipped: Knowledge) -> None:
    visit = AtWork(shipped, "gas-cock-open")
    visit.types("left my pliers in the blower")
    assert OUT_FIRST in visit.types("n")
    for typed in ("open", "n"):  # neither its word nor another no comes past the question
        visit.types(typed)
        assert isinstance(visit.prompt, Choose) and visit.book.state.work.gas == "shut"
    visit.types("y")
    assert visit.at == "gas-cock-open"


def test_what_was_left_in_elsewhere_is_asked_about_before_gas_comes_on(shipped: Knowledge) -> None:
    visit = AtWork(shipped, "manometer")
    visit.types("left my pliers in the blower")
    visit.types("n")
    assert visit.at == "manometer-on" and left_in(visit.book.state)
    visit.types("on")
    assert isinstance(visit.prompt, Choose) and "left my pliers" in visit.prompt.question


@pytest.mark.parametrize("said", STATES)
def test_what_may_have_changed_is_asked_about_and_kept(said: str, shipped: Knowledge) -> None:
    """Regression: it was asked whether somebody is in danger, and n lost the words."""
    visit = AtWork(shipped, "manometer")
    visit.types(said)
    if any(isinstance(event, StateGone) for event in visit.events):
        return
    assert isinstance(visit.prompt, Choose) and "still stand" in visit.prompt.question
    visit.types("y")
    assert visit.at == "manometer-on" and said in notes_of(visit)


@pytest.mark.parametrize("said", SMALL_TALK)
def test_small_talk_is_not_asked_about(said: str, shipped: Knowledge) -> None:
    visit = AtWork(shipped, "manometer")
    visit.types(said)
    assert visit.at == "manometer-on" and not visit.dialogue.asks_aside


@pytest.mark.parametrize("said", DANGERS)
def test_a_danger_in_everyday_words_is_no_small_talk(said: str, shipped: Knowledge) -> None:
    visit = AtWork(shipped, "manometer")
    visit.types(said)
    is_heard = any(isinstance(event, DangerReported | StateGone) for event in visit.events)
    assert is_heard or visit.dialogue.asks_aside or isinstance(visit.prompt, AtStop | Choose)


def test_what_is_said_to_be_no_danger_is_kept(shipped: Knowledge) -> None:
    visit = AtWork(shipped, "manometer")
    visit.types("the fitter waves at us")
    visit.types("n")
    assert visit.at == "manometer-on" and "the fitter waves at us" in notes_of(visit)
