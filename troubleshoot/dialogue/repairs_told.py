"""Repairs that somebody tells of: asked about once, echoed and kept.

One is of this visit where its part was looked at here, or where it is told as of now; else it was
made before.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.picking import pick
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Back, DangerCalled, Leave, Talk
from troubleshoot.dialogue.yes_no import YesNo, yes_or_no
from troubleshoot.knowledge.model import Fault
from troubleshoot.visit.events import Noted, RepairedBefore
from troubleshoot.visit.hearing.opposites import is_opposite, likeliest, was_only_set
from troubleshoot.visit.hearing.repairs_told import (
    is_told_of_before,
    is_told_of_now,
    repairs_told,
)

if TYPE_CHECKING:  # first prompts go without all that reasons
    from troubleshoot.reasoning.conclusions import Conclusions

MOST_ASKED: Final = 8
"""Causes of one part that are shown to choose from."""
IN_THIS_VISIT: Final = "in this visit"
BEFORE_IT: Final = "before this visit"
WHAT_WAS_WRONG: Final = "What was wrong with it then?"
KEPT_AS_A_NOTE: Final = "Kept as a note: it speaks for no cause."
NOT_KEPT: Final = (
    "Not kept. What is put right in this visit is told by: repaired, and words of its cause."
)


def ask_repairs_told(
    book: VisitBook, voice: Voice, said: str, conclusions: Conclusions | None = None
) -> Talk[bool]:
    """Ask once of each repair that words tell of whether it was made before; False where none is.

    What it proves is asked in its turn. `conclusions`: where there are any, the leading cause is
    what was repaired in this visit, if the words fit it. Raises Leave, DangerCalled.
    """
    told = repairs_told(said)
    kept = {(before.words, before.fault) for before in book.state.repairs_before}
    if not told or said in {words for words, _ in kept}:
        return bool(told)
    listener = Listener(book.knowledge, voice)
    listener.hear(said)
    listener.ask_about(said)
    try:
        mended: list[Fault] = []
        for each in told:
            mended += yield from _ask_of(book, voice, each.part, said, conclusions, mended)
    except (Leave, DangerCalled):
        book.add(Noted(f"told, and not confirmed: {said}"))
        raise
    return True


def _ask_of(
    book: VisitBook,
    voice: Voice,
    part: str,
    said: str,
    conclusions: Conclusions | None,
    mended: list[Fault],
) -> Talk[tuple[Fault, ...]]:
    """Ask what was wrong with one part, and keep its repair; what was kept, if anything.

    `mended`: by the same words, of the parts before it. New cable and fuse are one repair.
    """
    from troubleshoot.visit.hearing.causes_by_words import heard_fault  # first prompts go without

    named = [cause.fault.id for cause in conclusions.causes] if conclusions is not None else []
    heard = heard_fault(book.knowledge, said).said
    causes = (each for each in _causes_of(book, part) if not was_only_set(each, said))
    faults = likeliest(causes, said, named=named, heard=heard)
    is_now = is_told_of_now(said) or (
        not is_told_of_before(said) and any(_was_looked_at(book, fault) for fault in faults)
    )
    fault = _leading(book, conclusions, part, said) if is_now else None
    if any(each in (fault, *faults) for each in mended):
        return ()
    when = IN_THIS_VISIT if is_now else BEFORE_IT
    voice.say(f"Put right {when}, as told: {part}.")
    if fault is None and faults:
        fault = yield from _which(book, voice, faults, when)
    if fault is not None and is_now:
        from troubleshoot.dialogue.repairing import repaired  # first prompts go without

        repaired(book, voice, fault)
        return (fault,)
    if fault is not None:
        book.add(RepairedBefore(fault.id, said))
        voice.say(
            f"Kept: repaired before this visit, {fault.name}. What proves it is asked on the way "
            "out; until then it proves nothing. u takes it back."
        )
        return (fault,)
    if len(faults) != 1:
        book.add(Noted(f"put right {when}, as told: {said}"))
        voice.say(KEPT_AS_A_NOTE)
    else:
        voice.say(NOT_KEPT)
    return ()


def _leading(
    book: VisitBook, conclusions: Conclusions | None, part: str, said: str
) -> Fault | None:
    """The leading cause, where the part is its own and it did not stand the other way round."""
    if conclusions is None:
        return None
    from troubleshoot.dialogue.meaning import leading_of  # first prompts go without

    leading = leading_of(book, conclusions, part)
    return None if leading is None or is_opposite(leading, said) else leading


def _was_looked_at(book: VisitBook, fault: Fault) -> bool:
    """Whether something that shows a fault was read in this visit."""
    read = {answer.test for answer in book.state.answers}
    shown = (*fault.evidence, *(e for picture in fault.pictures for e in picture.evidence))
    return any(finding.test in read for each in shown for finding in each.findings)


def _which(
    book: VisitBook, voice: Voice, faults: tuple[Fault, ...], when: str
) -> Talk[Fault | None]:
    """Which of the causes was put right; None where none was."""
    if len(faults) > 1:
        names = [fault.name for fault in faults]
        index = yield from pick(book, voice, WHAT_WAS_WRONG, names)
        return None if index is None else faults[index]
    question = YesNo(f"Repaired {when}: {faults[0].name}. Is it so?")
    try:
        is_so = yield from yes_or_no(Listener(book.knowledge, voice), question)
    except Back:
        return None
    return faults[0] if is_so else None


def _causes_of(book: VisitBook, part: str) -> tuple[Fault, ...]:
    """The causes that a part may have had: by all of its words, else by fewer."""
    from troubleshoot.visit.hearing.causes_by_words import heard_fault  # first prompts go without

    words, faults = part.split(), book.knowledge.faults
    for most in range(len(words), 0, -1):
        heard = heard_fault(book.knowledge, " ".join(words[:most]))
        found = heard.which if heard.taken is None else (heard.taken,)
        if found:
            return tuple(faults[name] for name in found[:MOST_ASKED])
    return ()
