"""STOPs that stand over a unit from earlier visits: they meet whoever names it next."""

from __future__ import annotations

from troubleshoot.dialogue.prompts import Choose
from troubleshoot.dialogue.said import StopElsewhere, Voice
from troubleshoot.dialogue.shelf import Shelf, Stopped, same_unit
from troubleshoot.dialogue.talk import Talk, words


def met_by(shelf: Shelf, voice: Voice, visit: str, unit: str) -> Stopped | None:
    """The STOP of another visit to the unit of this one, told; none where there is none.

    A visit may have been begun before that STOP, or be named after its unit only later.
    """
    others = shelf.stopped(but=visit)
    stopped = next((s for s in others if same_unit(s.unit, unit)), None)
    return None if stopped is None else told(voice, stopped)


def meet_standing(shelf: Shelf, voice: Voice, unit: str) -> Talk[Stopped | None]:
    """The STOP that stands over this unit, told; none where it is another unit's or there is none.

    A name may be mistyped and a visit may have none, so whoever begins is shown what stands.
    """
    standing = tuple(shelf.stopped())
    for stopped in standing:
        if same_unit(stopped.unit, unit):
            return told(voice, stopped)
    if not standing:
        return None
    voice.say("A STOP stands over:")
    names = tuple(
        f"{s.unit or 'a unit without a name'}: {s.fired.hazard.id.replace('-', ' ')}"
        for s in standing
    )
    which = Choose("Is this one of them? Its number, or n", names, repeated=True)
    while True:
        typed = (yield from words(which)).lower()
        if typed in ("n", "no"):
            return None
        for number, stopped in enumerate(standing, start=1):
            if typed == str(number) or same_unit(stopped.unit, typed):
                return told(voice, stopped)


def told(voice: Voice, stopped: Stopped) -> Stopped:
    """Tell of a STOP that stands over a unit from an earlier visit, and how that visit goes on."""
    voice.tell(StopElsewhere(stopped))
    if stopped.over:
        voice.say(
            f"Visit {stopped.visit} was handed over at this STOP. Once it has been made safe it "
            f"goes on by: troubleshoot reopen {stopped.visit}"
        )
    else:
        voice.say(f"Going on with visit {stopped.visit}, where it stands.")
    return stopped
