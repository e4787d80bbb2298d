"""What may be a slip of the finger is asked about once: an odd number, a fact told otherwise.

What is then meant counts as it stands, and on the worse side for safety like any other reading.
"""

from __future__ import annotations

from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.talk import Back, Talk
from troubleshoot.dialogue.yes_no import YesNo, yes_or_no
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.readings.doubted import doubted
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.facts_said import in_words
from troubleshoot.visit.events import FactTold


def is_meant(listener: Listener, knowledge: Knowledge, test: Test, text: str | None) -> Talk[bool]:
    """Whether a reading may be kept as it was typed. Raises Leave, DangerCalled."""
    doubt = None if text is None else doubted(knowledge, test, text)
    if doubt is None:
        return True
    try:
        if (yield from yes_or_no(listener, YesNo(f"{doubt} Is it meant?"))):
            return True
    except Back:
        pass
    listener.voice.say("Not kept. Type what you read.")
    return False


def replaces_the_told(listener: Listener, unit: Unit, event: FactTold) -> Talk[bool]:
    """Whether a fact that a step settles is to replace what was told of the unit before.

    Raises Leave, DangerCalled.
    """
    before, now = unit.facts.get(event.name), str(event.value)
    if before in (None, now):
        return True
    rules = listener.knowledge
    told, said = (in_words(rules, event.name, str(word)) for word in (before, now))
    question = YesNo(f"Told before: {told}. This says: {said}. Is this right, and that wrong?")
    try:
        if (yield from yes_or_no(listener, question)):
            return True
    except Back:
        pass
    listener.voice.say(f"Not kept: {told}, as told before.")
    return False
