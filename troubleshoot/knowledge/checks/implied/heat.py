"""Gas trains, burners and what they put into the air."""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.checks.implied.implication import OPENS, PRACTICE, Implication, words

_OF_GAS: Final = r"(?:gas|manifold|regulator|drip legs?|cocks?)\b"
_CLOSES: Final = r"(?:plugs?|caps?|unions?|fittings?|test (?:screws?|ports?)|taps?)\b"
_GAS_OPENED: Final = words(
    rf"{OPENS}[^.;,]{{0,30}}?\b{_CLOSES}[^.;,]{{0,20}}?\b{_OF_GAS}",
    rf"{OPENS}[^.;,]{{0,20}}?\b{_OF_GAS}[^.;,]{{0,15}}?\b{_CLOSES}",
    rf"{OPENS}[^.;,]{{0,12}}?\bdrip leg",
    rf"{OPENS}[^.;,]{{0,30}}?\b{_CLOSES}[^.;,]{{0,30}}?\b(?:sniff|smell|hiss)",
    r"bleed\b[^.;,]{0,20}?\bgas\b",
)

HEAT: Final = (
    Implication(
        of="a gas train that is opened",
        why="only licensed people open it, swept, with every joint tested after",
        source="NFPA 54, chapter 8, from memory",
        areas=("gas",),
        states=("locked-out", "running-open", "energised-open"),
        hazards=("gas-train-work",),
        who=("gas",),
    ),
    Implication(
        of="a gas train opened with the power off",
        why="the cock is shut and the place swept before a plug comes out",
        source="NFPA 54, chapter 8, from memory",
        areas=("gas",),
        states=("locked-out",),
        needs_state=("gas-shut",),
    ),
    Implication(
        of="a plug, a cap or a union of a gas train that comes off",
        why="only licensed people open it, dead, with its cock shut and the place swept",
        source="NFPA 54, chapter 8, from memory",
        words=_GAS_OPENED,
        hazards=("gas-train-work",),
        needs_state=("gas-shut",),
        work_states=("locked-out",),
        who=("gas",),
    ),
    Implication(
        of="a manometer on the gas train of a burner that runs",
        why="the hose goes on with the call off, the cock shut and the place swept",
        source="NFPA 54, chapter 8, from memory",
        instrument=words(r"manometer"),
        areas=("gas",),
        states=("running", "running-open"),
        one_need_of=("manometer-at-inlet", "manometer-at-outlet"),
    ),
    Implication(
        of="burners that run",
        why="they can put carbon monoxide into the rooms, so the room air is read first",
        source="carbon-monoxide-summaries; " + PRACTICE,
        areas=("gas", "ignition", "combustion"),
        states=("running", "running-open"),
        fact=("heat", "gas"),
        hazards=("carbon-monoxide-in-room",),
    ),
    Implication(
        of="burners or elements that run in an open unit",
        why="exchanger, flue, igniter and elements burn",
        source=PRACTICE,
        areas=("gas", "ignition", "combustion", "electric-heat"),
        states=("running-open",),
        hazards=("hot-surfaces",),
    ),
    Implication(
        of="burners that are lit to be watched",
        why="a late light-off throws flame out of the box",
        source=PRACTICE,
        areas=("ignition",),
        states=("running", "running-open"),
        hazards=("delayed-light-off",),
    ),
    Implication(
        of="a combustion analyzer",
        why="what it finds in the flue may already be in the rooms",
        source="carbon-monoxide-summaries; " + PRACTICE,
        instrument=words(r"combustion analy[sz]er", r"(?:CO|carbon monoxide) (?:meter|monitor)"),
        meters=("oxygen-analyser", "carbon-monoxide-analyser"),
        hazards=("carbon-monoxide-in-room",),
    ),
)
