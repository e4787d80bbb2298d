"""An ending without a cause offers by itself what would tell more, with the minutes it takes."""

from __future__ import annotations

from tests.cli.lines import Lines
from tests.dialogue.constant import ConstantVisit, Mode
from troubleshoot.cli.screens.findings import WOULD_TELL_MORE, show_ending
from troubleshoot.dialogue.dialogue import Dialogue
from troubleshoot.dialogue.opening import turns
from troubleshoot.dialogue.prompts import AskFact, AskTest, DoStep, Settled
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner

UNIT = {"heat": "gas", "refrigerant": "R-410A", "refrigerant-class": "a1", "circuits": 1}


def ended(knowledge: Knowledge, mode: Mode) -> tuple[ConstantVisit, Settled]:
    visit = ConstantVisit(Reasoner(knowledge), UNIT, "weak-cooling", mode)
    visit.drive()
    assert isinstance(visit.end, Settled)
    return visit, visit.end


def test_a_shortlist_offers_what_would_tell_more(shipped: Knowledge) -> None:
    """Regression: a visit ended on a list of a hundred causes before gauges were on."""
    _, end = ended(shipped, "unknown")
    assert end.decision.ending == "shortlist"
    assert 0 < len(end.left) <= 3
    terminal = Lines()
    show_ending(terminal, end)
    offered = terminal.said[terminal.said.index(WOULD_TELL_MORE) + 1 :]
    for other, line in zip(end.left, offered, strict=True):
        assert line.strip().startswith(f"do {other.number} {other.test.name}")
        assert line.endswith(f"{other.minutes:.0f} min")


def test_do_and_its_number_goes_there(shipped: Knowledge) -> None:
    visit, end = ended(shipped, "unknown")
    dialogue = Dialogue(lambda voice: turns(visit.book, voice, decider=visit.decider))
    assert isinstance(dialogue.prompt, Settled)
    dialogue.answer("do 1")
    while isinstance(dialogue.prompt, AskFact):
        dialogue.answer("")
    assert isinstance(dialogue.prompt, AskTest | DoStep)
    assert visit.state.aim is not None
    assert visit.state.aim[0] == end.left[0].test.id
