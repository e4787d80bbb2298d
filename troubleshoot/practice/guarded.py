"""What stops an apprentice: the same STOPs, bans and guards as on a live visit, made into slips."""

from __future__ import annotations

from troubleshoot.knowledge.model import Hazard, Test
from troubleshoot.practice.as_it_stands import AsItStands
from troubleshoot.practice.played import until_made_safe
from troubleshoot.practice.slips import Slip, gravest_need
from troubleshoot.reasoning.conclusions import FiredHazard
from troubleshoot.reasoning.unit.places import Place, spoken
from troubleshoot.safety.cautions import cautions_before
from troubleshoot.safety.guards import allowed
from troubleshoot.safety.hazard_words import danger_gone
from troubleshoot.safety.profiles import hand_over
from troubleshoot.safety.stops.lifting import lifting_finding, standing_stop
from troubleshoot.safety.stops.parts import is_all_clear
from troubleshoot.safety.stops.standing import Forbidden


class Guarded(AsItStands):
    """A unit that is watched: what may be done on it, and what is lacking for the rest."""

    stopped: FiredHazard | None = None

    def standing_stop(self) -> FiredHazard | None:
        """The STOP that stands now, unless it has been obeyed."""
        return None if self.stopped else standing_stop(self.knowledge, self.state, self.conclusions)

    def may(self, test: Test, at: Place | None) -> bool:
        """Whether a test can be begun as the unit stands: no STOP, no unmet need."""
        if self.standing_stop() is not None or test.id in self.scenario.unavailable:
            return False
        if self._forbidden(test, at) is not None:
            return False
        wanted, place = next(self.asked_for(test, at))
        return not allowed(self.state.work, wanted, spoken(place), self.state.at_work)

    def lacking(self, test: Test, at: Place | None, tried: str) -> Slip | None:
        """What a test lacks, or what is done by it: no ban, somebody who may, every need met.

        A STOP is looked at before. None where nothing is lacking.
        """
        banned = self._banned(test, at, tried)
        if banned is not None:
            return banned
        work, unit = self.state.work, self.state.at_work
        missing = allowed(work, test, spoken(at), unit)
        who = hand_over(test, self.state.profiles)
        return self._slip(tried, test, at, (*((who,) if who else ()), *missing))

    def _banned(self, test: Test, at: Place | None, tried: str) -> Slip | None:
        hazard = self._forbidden(test, at)
        return Slip(tried, (danger_gone(hazard),), None, hazard.id) if hazard else None

    def _forbidden(self, test: Test, at: Place | None) -> Hazard | None:
        return Forbidden(self.conclusions).even_if_chosen(test, at)

    def _lifts(self, stop: FiredHazard, test: Test) -> bool:
        """Whether a test may lift a STOP: its finding, or the word of who cleared the place."""
        if is_all_clear(test):
            return True
        found = lifting_finding(self.knowledge, self.state, self.conclusions, stop)
        return found is not None and found[0] == test.id

    def _made_safe(self, stop: FiredHazard, test: Test) -> bool:
        """Whether a STOP until made safe leaves room for this: dead work on a unit proved dead."""
        dead = self.state.work.energy == "proved-dead" and test.work_state == "locked-out"
        return until_made_safe(stop) and dead

    def _gravest(self, test: Test, at: Place | None) -> tuple[str, str | None] | None:
        return gravest_need(self.state.work, test, spoken(at), self.state.at_work)

    def _slip(
        self, tried: str, test: Test, at: Place | None, missing: tuple[str, ...]
    ) -> Slip | None:
        """A slip for what is missing, with the gravest of it; None where nothing is."""
        gravest, hazard = self._gravest(test, at) or (None, None)
        read = hazard or self._hazard_of(test)
        return Slip(tried, missing, gravest, read) if missing else None

    def _missed_stop(self, stop: FiredHazard, test: Test) -> Slip:
        asked = stop.hazard.what_to_do
        return Slip(test.name, (asked,), asked, stop.hazard.id, past_stop=True)

    def _hazard_of(self, test: Test) -> str | None:
        hazards = cautions_before(self.knowledge, self.state, test)
        return hazards[0].id if hazards else None
