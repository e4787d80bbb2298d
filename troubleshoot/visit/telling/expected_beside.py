"""What a sound unit would show, told beside a reading: never beside one that is a danger's."""

from __future__ import annotations

from troubleshoot.reasoning.chaining import chains
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.expected_now import Expected, expected_now
from troubleshoot.reasoning.readings.readings import Reading


def expected_beside(reading: Reading, before: Conclusions, after: Conclusions) -> Expected | None:
    """What would be read on a sound unit, where that is known and nothing graver is to be told.

    None on a unit that the rules know nothing of, where the answer between `before` and `after` has
    called a hazard up, and where the reading is what a standing one rests on.
    """
    if after.beyond:
        return None
    known = {fired.hazard.id for fired in before.hazards if fired.found}
    told = {chains.seen(reading.test, outcome) for outcome in reading.calls_up}
    told |= {chains.possible(reading.test, outcome) for outcome in reading.calls_up}
    for fired in after.hazards:
        if fired.found and (fired.hazard.id not in known or told & {*fired.because}):
            return None
    return expected_now(reading, after.values)
