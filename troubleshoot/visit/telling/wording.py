"""How causes, places and numbers are said to people, everywhere alike."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from troubleshoot.knowledge.model import Fault, Knowledge, Proof
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.evidence.ranking import Cause
from troubleshoot.reasoning.unit.places import with_place
from troubleshoot.safety.profiles import spoken

BAR_CELLS = 10
LIKELY = 0.6
TAG_OUT = "Stop, tag the unit out and hand it over; the repair is for those named below."
"""What comes before a repair that its card leaves to others."""
OUTSIDE_WHAT_THE_RULES_KNOW = (
    "No cause is named and no test proposed: what holds for other units may be wrong on this one. "
    "Go by the unit's own sheets, or hand it to somebody who knows such units. Cautions, STOPs and "
    "danger hold as ever."
)


def percent(probability: float) -> str:
    """A chance as people read it: no false precision at the ends."""
    if probability > 0.99:
        return "over 99 %"
    if probability < 0.01:
        return "under 1 %"
    return f"{100 * probability:.0f} %"


def who_repairs(fault: Fault) -> str:
    """Who may repair a fault: all of them together, or any one."""
    if fault.repair.who_rule == "all":
        return spoken(fault.repair.who)
    return " or ".join(spoken((each,)) for each in fault.repair.who)


def counted(number: int, one: str, several: str) -> str:
    """A number of things: 1 test, 2 tests."""
    return f"{number} {one if number == 1 else several}"


def bar(probability: float) -> str:
    """A bar of ten cells; the number always stands beside it."""
    full = round(probability * BAR_CELLS)
    return "#" * full + "." * (BAR_CELLS - full)


def band(probability: float) -> str:
    """A chance in a word."""
    for least, word in ((0.9, "named"), (LIKELY, "likely"), (0.2, "possible"), (0.03, "unlikely")):
        if probability >= least:
            return word
    return "very unlikely"


def at_place(conclusions: Conclusions, cause: Cause) -> str:
    shown = conclusions.case.unit.layout.shown(cause.fault.per, cause.at)
    return f" ({shown})" if shown else ""


def cause_line(conclusions: Conclusions, cause: Cause, with_bar: bool = True) -> str:
    """One cause with its chance, and a bar where there is room for one."""
    where = at_place(conclusions, cause)
    chance = percent(cause.probability)
    chance = f"{bar(cause.probability)} {chance:>9}" if with_bar else f"{chance:>4}"
    return f"{chance}  {cause.fault.name}{where}"


def effect_line(conclusions: Conclusions, effect: Cause) -> str:
    return f"an effect, find its cause: {effect.fault.name}{at_place(conclusions, effect)}"


def proof_line(proof: Proof) -> str:
    """What proves a repair, and whether it takes another day to show."""
    return f"{'Proof on another day' if proof.later else 'Proof'}: {proof.text}"


def not_judged_line(knowledge: Knowledge, row: Mapping[str, Any]) -> str:
    """A reading that came to nothing, as the account has it, and what would judge it."""
    name = with_place(knowledge.tests[row["test"]].name, row["at"])
    if not row["missing"]:
        return f"{name} ({row['text']}) lies in none of its limits: read it again"
    return f"{name} ({row['text']}) is missing {', '.join(row['missing'])}"
