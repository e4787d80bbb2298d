"""What a call brings up before anything is asked or done: its cautions, and its first looks.

Light, since it comes before all that reasons is imported.
"""

from __future__ import annotations

from troubleshoot.cli.terminal import Terminal
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.hazard_words import first_orders, gravest_first, said_standing


def show_call_cautions(terminal: Terminal, knowledge: Knowledge, complaint: str | None) -> None:
    """The hazards of such a call, the gravest first; a call that is itself a STOP says so."""
    call = knowledge.complaints.get(complaint or "")
    names = () if call is None else call.hazards_first
    for hazard in gravest_first(knowledge.hazards[name] for name in names):
        stops = any(trigger.complaint == complaint for trigger in hazard.triggers)
        head, *more = said_standing(hazard, stops)
        terminal.say(head, strong=True)
        for line in more:
            terminal.say(line, 2)


def first_of_call(knowledge: Knowledge, complaint: str) -> str:
    """The first orders of a call that is itself a STOP; empty for any other."""
    call = knowledge.complaints.get(complaint)
    hazards = (
        () if call is None else gravest_first(knowledge.hazards[n] for n in call.hazards_first)
    )
    for hazard in hazards:
        if hazard.stop and any(trigger.complaint == complaint for trigger in hazard.triggers):
            return first_orders(hazard)
    return ""


def show_looks(terminal: Terminal, knowledge: Knowledge, complaint: str) -> None:
    """Looks on such a call that cost almost nothing."""
    looks = knowledge.complaints[complaint].looks
    if looks:
        terminal.say(f"First looks: {looks}")
