"""Looking again at what stopped one step: what was done about it is said first, and kept."""

from __future__ import annotations

from typing import Final

from troubleshoot.dialogue.asked_outright import is_said_yes_to
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hand_over_result import ask_remedy
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.stopped import WHAT_WAS_DONE
from troubleshoot.dialogue.talk import Back, Talk
from troubleshoot.knowledge.model import Test
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.safety.stops.outright import asked_of_what_was_done
from troubleshoot.safety.stops.standing import put_right_before
from troubleshoot.visit.events import Noted

AS_FOUND: Final = "It stands as it was found."


def may_look_again(
    book: VisitBook, voice: Voice, conclusions: Conclusions, test: Test
) -> Talk[bool]:
    """Whether a test may be taken that somebody chose; False where nothing was made safe.

    Only a look whose STOP is for what somebody has to put right is asked about; whatever else found
    one decides by itself. Raises Leave, DangerCalled.
    """
    fired = put_right_before(conclusions, test)
    if fired is None:
        return True
    hazard, asked = fired.hazard, asked_of_what_was_done(fired.hazard)
    listener = Listener(book.knowledge, voice, (hazard.id,))
    try:
        if not (done := (yield from ask_remedy(listener, WHAT_WAS_DONE, hazard))):
            return False
        if asked is not None and not (yield from is_said_yes_to(listener, asked)):
            return False
    except Back:
        voice.say(AS_FOUND)
        return False
    said = "" if asked is None else f"; asked: {asked.question} Said: yes"
    book.add(Noted(f"made safe here, {hazard.spoken}: {done}{said}"))
    return True
