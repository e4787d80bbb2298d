"""A number that hardly any unit shows is asked about once: it may be a slip of the finger.

What is then meant counts as it stands, and on the worse side for safety like any other reading.
"""

from __future__ import annotations

from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.talk import Back, Talk
from troubleshoot.dialogue.yes_no import YesNo, yes_or_no
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.readings.doubted import doubted


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
