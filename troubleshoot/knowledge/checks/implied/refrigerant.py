"""Circuits under pressure, in a vacuum, or under a torch."""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.checks.implied.implication import OPENS, PRACTICE, Implication, words

_GAUGES: Final = words(
    r"(?<!tension )(?<!groove )(?<!drill )(?<!vacuum )gauges\b",
    r"(?:low|high)-side gauge",
    r"refrigerant identifier",
    r"acid test",
)
_PORTS: Final = r"(?:service|liquid|suction|schrader|access) (?:line )?(?:valves?|ports?)\b"
_CIRCUIT_OPENED: Final = words(
    rf"{OPENS}[^.;,]{{0,20}}?\b(?:flares?\b|flare nuts?|schraders?|(?:valve )?cores?\b|"
    rf"king valves?|{_PORTS})",
    rf"(?:press|push|depress|poke|dab)\b[^.;,]{{0,15}}?\b(?:pin|core|stem)\b[^.;,]{{0,15}}?{_PORTS}",
)

REFRIGERANT: Final = (
    Implication(
        of="gauges on a circuit",
        why="liquid freezes skin and eyes, and only certified people may open a circuit",
        source="40 CFR 82.161; " + PRACTICE,
        instrument=_GAUGES,
        meters=("low-side-gauge", "high-side-gauge"),
        one_need_of=("gauges-on", "charge-recovered"),
        who=("refrigerant",),
    ),
    Implication(
        of="a circuit with gauges on it",
        why="liquid freezes skin and eyes, and only certified people may open a circuit",
        source="40 CFR 82.161; " + PRACTICE,
        needs=("gauges-on",),
        hazards=("refrigerant-contact",),
        who=("refrigerant",),
        steps=True,
    ),
    Implication(
        of="a flare, a core or a service valve that is opened",
        why="liquid freezes skin and eyes, and only certified people may open a circuit",
        source="40 CFR 82.161; " + PRACTICE,
        words=_CIRCUIT_OPENED,
        hazards=("refrigerant-contact",),
        one_need_of=("gauges-on", "charge-recovered"),
        who=("refrigerant",),
    ),
    Implication(
        of="a circuit that is emptied",
        why="only certified people recover a charge, and the unit stands still for it",
        source="40 CFR 82.154; 40 CFR 82.161",
        needs=("charge-recovered",),
        work_states=("locked-out",),
        who=("refrigerant",),
    ),
    Implication(
        of="recovery",
        why="a cylinder that is too full bursts, and letting go is unlawful",
        source="40 CFR 82.154; 49 CFR 173.304a",
        words=words(r"recovery (?:machine|cylinder)"),
        hazards=("recovery-cylinder", "refrigerant-contact", "refrigerant-venting"),
        who=("refrigerant",),
        steps=True,
    ),
    Implication(
        of="nitrogen",
        why="a cylinder without regulator and relief bursts a coil",
        source="29 CFR 1910.101; " + PRACTICE,
        words=words(r"nitrogen (?:in\b|through|regulator|test)", r"with (?:dry )?nitrogen"),
        hazards=("nitrogen-pressure",),
        who=("refrigerant",),
        steps=True,
    ),
    Implication(
        of="a circuit in a vacuum",
        why="a compressor neither runs nor is tested there: it arcs over inside",
        source=PRACTICE,
        words=words(r"vacuum (?:gauge|pump)"),
        meters=("vacuum-gauge",),
        hazards=("compressor-in-vacuum",),
        needs_state=("charge-recovered",),
    ),
    Implication(
        of="a pressure switch that is driven to its limit",
        why="past the plate's limit a shell or a coil can burst",
        source="29 CFR 1910.147(d)(5); " + PRACTICE,
        areas=("refrigerant-switches",),
        states=("running-open", "running"),
        hazards=("pressure-switch-testing",),
    ),
    Implication(
        of="a torch",
        why="hot work sets roofs on fire and a closed circuit bursts",
        source="29 CFR 1910.252(a)",
        words=words(r"torch(?:es)?\b", r"braz(?:e|ing)\b", r"solder(?:ing)?\b", r"unsweat"),
        hazards=("brazing",),
        steps=True,
    ),
    Implication(
        of="a refrigerant that burns",
        why="no tool, spark or power comes before a sweep",
        source="UL 60335-2-40, from memory",
        fact=("refrigerant-class", "a2l"),
        hazards=("flammable-refrigerant",),
        on_units={"refrigerant-class": ("a2l",)},
        steps=True,
    ),
)
