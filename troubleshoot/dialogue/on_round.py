"""A routine round as it is walked: its season, how far it has come, and what is not sound."""

from __future__ import annotations

from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.prompts import Choose, Progress
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.shelf import Shelf
from troubleshoot.dialogue.taking_back import take_back
from troubleshoot.dialogue.talk import Back, Talk, words_or_back
from troubleshoot.outside.numbers import choice
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.unit.places import spoken, with_place
from troubleshoot.safety.stops.record import Spot
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.deciding.on_round import apart_from, round_found
from troubleshoot.visit.events import FindingsKept, RoundGoneOn, SearchBegun
from troubleshoot.visit.events.on_round import FindingAt
from troubleshoot.visit.round.found import PointFound, latest, unsound

WHAT_NOW: Final = (
    "keep it for the end, and go on with the round",
    "find the cause now, and come back to the round",
)
ONE_OF_THEM: Final = "1, Enter or keep: for the end; 2 or now: the cause now."
WHY_ASKED: Final = "A finding of a round has its cause looked for, now or at the end."
BACK_TO_IT: Final = frozenset({"round", "go on", "on with the round", "back to the round"})
_KEEPS: Final = frozenset({"", "1", "keep", "end", "later", "go on", "for the end"})
_NOW: Final = frozenset({"2", "now", "cause", "diagnose", "diagnose now", "find the cause"})


class OnRound:
    """What a round adds to the turns of a visit; nothing where none is walked."""

    def __init__(
        self, book: VisitBook, voice: Voice, decider: Decider, shelf: Shelf | None = None
    ) -> None:
        self.book = book
        self.voice = voice
        self.decider = decider
        self.shelf = shelf
        self._point_told = 0

    def progress(self, decision: Decision, conclusions: Conclusions) -> Progress | None:
        """Which point a test is for, and how far the round has come.

        What the point says, and its limit, the first time.
        """
        if self.book.state.walking is None or decision.aim is None:
            return None
        points = self.found(conclusions)
        here = next((p.here for p in points if decision.aim in p.here.spots), None)
        if here is None:
            return None
        is_new = here.number != self._point_told
        self._point_told = here.number
        point, limit = (here.point.point, here.point.limit) if is_new else ("", "")
        done = sum(point.is_whole for point in points)
        before = self._read_before(decision)
        return Progress(here.number, len(points), done, point, limit, before)

    def _read_before(self, decision: Decision) -> str:
        """What the test in hand has read on earlier visits; empty where nothing is known of it."""
        unit, test = self.book.state.name, decision.test
        if self.shelf is None or test is None or not unit:
            return ""
        return self.shelf.read_before(unit, test.id, spoken(decision.at), self.book.visit_id)

    def found(self, conclusions: Conclusions) -> tuple[PointFound, ...]:
        """The points as they stand; none where no round is walked."""
        return round_found(self.decider, self.book.state, conclusions)

    def tell_how_far(self, conclusions: Conclusions) -> None:
        """On the way out say what the round has come to; its report has the rest."""
        points = self.found(conclusions)
        if points:
            sound = sum(point.result == "sound" for point in points)
            bad = sum(point.result == "abnormal" for point in points)
            left = sum(not point.is_whole for point in points)
            self.voice.say(
                f"Of {len(points)} points {sound} are sound and {bad} are not; of {left} something "
                "was not taken. The report has each with its reading, or why there is none."
            )

    def ask_what_now(self, decision: Decision, conclusions: Conclusions) -> Talk[None]:
        """Say what is not sound, and ask whether its cause is looked for now or at the end.

        What else may be typed at an ending may be typed here. Raises Leave, DangerCalled.
        """
        found = "; ".join(_in_words(conclusions, spot) for spot in decision.findings)
        prompt = Choose(f"Not sound: {found}. What now?", WHAT_NOW, why=WHY_ASKED)
        listener = Listener(self.book.knowledge, self.voice)
        while True:
            try:
                typed = yield from words_or_back(prompt)
            except Back:
                take_back(self.book, self.voice, self.decider.reasoner)
                return
            said = typed.lower().strip()
            if said in _KEEPS:
                self.book.add(FindingsKept(FindingAt.all_of(decision.findings)))
                return
            if said in _NOW:
                self._search(decision.findings, conclusions)
                return
            self.book.changed = False
            if not (yield from self.voice.serves(typed)):
                listener.not_understood(typed, ONE_OF_THEM)
            elif self.book.changed:
                return

    def takes(self, typed: str, conclusions: Conclusions) -> bool:
        """Take what is typed at an ending and is of the round: back to it, or a finding kept."""
        state = self.book.state
        if state.round is None:
            return False
        if state.round.search:
            return self.goes_on(typed, conclusions)
        kept = self.kept(conclusions)
        number = choice(typed, len(kept))
        if number is None:
            return False
        self._search((kept[number - 1],), conclusions)
        return True

    def goes_on(self, typed: str, conclusions: Conclusions) -> bool:
        """Go back from a search to the round where that is typed, at a test or at an ending."""
        on = self.book.state.round
        if on is None or not on.search or typed.lower().strip() not in BACK_TO_IT:
            return False
        go_on(self.book, conclusions)
        return True

    def kept(self, conclusions: Conclusions) -> tuple[Spot, ...]:
        """What was kept for the end and still is not sound, in the order of the points."""
        state = self.book.state
        if state.walking is None:
            return ()
        kept = state.walking.kept
        return tuple(
            spot for spot in unsound(self.book.knowledge, state, conclusions) if spot in kept
        )

    def _search(self, findings: tuple[Spot, ...], conclusions: Conclusions) -> None:
        apart = apart_from(self.book.knowledge, self.book.state, conclusions, findings)
        self.book.add(SearchBegun(FindingAt.all_of(findings), FindingAt.all_of(apart)))


def go_on(book: VisitBook, conclusions: Conclusions) -> None:
    """Back from a search to the round where it stood; nothing that it met is asked about anew."""
    on = book.state.round
    assert on is not None
    known = on.kept | on.searched | on.apart
    met = (s for s in unsound(book.knowledge, book.state, conclusions) if s not in known)
    book.add(RoundGoneOn(FindingAt.all_of(met)))


def _in_words(conclusions: Conclusions, spot: Spot) -> str:
    """A finding: the test, where, what was read and what it came to."""
    test = conclusions.hypotheses.knowledge.tests[spot[0]]
    where = conclusions.case.unit.layout.shown(test.per, spot[1])
    reading = latest(conclusions)[spot]
    read = f" ({reading.text})" if reading.text else ""
    return f"{with_place(test.name, where)}: {', '.join(map(test.spoken, reading.seen))}{read}"
