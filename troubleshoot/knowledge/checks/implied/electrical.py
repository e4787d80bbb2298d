"""Power, stored charge and turning parts."""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.checks.implied.implication import PRACTICE, Implication, words

_INSULATION: Final = words(
    r"insulation[- ]tester", r"megohmmeter", r"(?:250|500|1,?000)[- ]V(?:olt)?s?\b"
)

ELECTRICAL: Final = (
    Implication(
        of="an insulation tester",
        why="its hundreds of volts need a dead, discharged winding and spoil electronics",
        source="29 CFR 1910.333(b)(2); IEC 61557-2",
        words=_INSULATION,
        hazards=("insulation-test-near-electronics", "stored-charge"),
        needs_state=("meter-proved", "capacitors-discharged"),
        work_states=("locked-out",),
    ),
    Implication(
        of="an insulation tester on a compressor",
        why="its volts arc over inside a compressor in a vacuum, and a terminal can blow out",
        source=PRACTICE,
        words=_INSULATION,
        areas=("compressor-windings", "compressor-electrical", "compressor-protection"),
        hazards=("compressor-in-vacuum", "compressor-terminal-venting"),
    ),
    Implication(
        of="an ohmmeter in a unit locked out",
        why="a meter that was not proved shows dead what is live",
        source="29 CFR 1910.333(b)(2)(iv)",
        words=words(r"(?:low-)?ohm ?meter", r"capacitance meter"),
        states=("locked-out",),
        needs_state=("meter-proved",),
    ),
    Implication(
        of="fuses that are pulled",
        why="the line lugs of a fused switch stay live with its handle open",
        source="NFPA 70E 120.5, from memory",
        words=words(
            r"fuse puller",
            r"pull (?:each|every|the|a|all) fuses?\b",
            r"fuses? (?:\w+ )?out of its clips",
        ),
        instrument=words(r"fuse puller"),
        hazards=("line-side-live",),
        needs_state=("clips-dead",),
        work_states=("locked-out",),
    ),
    Implication(
        of="fuse clips that are looked at with the switch open",
        why="the line lugs of a fused switch stay live with its handle open",
        source="NFPA 70E 120.5, from memory",
        words=words(r"(?:grip )?of the clips\b"),
        states=("energised-open",),
        hazards=("line-side-live",),
    ),
    Implication(
        of="what is read with the unit off",
        why="called, it may start under hands and hoses, and what is read tells nothing",
        source=PRACTICE,
        words=words(r"unit (?:is )?off\b", r"(?:unit|compressor) (?:is )?not running\b"),
        states=("any",),
        needs_state=("unit-stopped",),
    ),
    Implication(
        of="discharged capacitors",
        why="a charge that comes back or was missed can kill",
        source="29 CFR 1910.333(b)(2)(ii)(C)",
        needs=("capacitors-discharged",),
        hazards=("stored-charge",),
        work_states=("locked-out",),
        steps=True,
    ),
    Implication(
        of="a drive or an electronic motor that is opened",
        why="its bus holds a charge for minutes",
        source="29 CFR 1910.333(b)(2)(ii)(C)",
        fact=("blower-motor", "electronically-commutated"),
        states=("energised-open", "locked-out"),
        hazards=("stored-charge",),
    ),
    Implication(
        of="a variable-speed drive that is opened",
        why="its bus holds a charge for minutes",
        source="29 CFR 1910.333(b)(2)(ii)(C)",
        fact=("variable-speed-drive", "fitted"),
        states=("energised-open", "locked-out"),
        hazards=("stored-charge",),
    ),
    Implication(
        of="hands in a unit locked out",
        why="a lock proves nothing until every pair was tested dead",
        source="29 CFR 1910.147(d); 29 CFR 1910.333(b)",
        states=("locked-out",),
        hazards=("lockout-and-verify-dead",),
        steps=True,
    ),
    Implication(
        of="belts, wheels and fans within reach of hands",
        why="a wheel still coasts, and a hand turns it on the other hand",
        source="29 CFR 1910.147(a)(1); 29 CFR 1910.219",
        words=words(
            r"belts?\b", r"sheaves?\b", r"pulleys?\b", r"(?:blower )?wheel\b", r"blades?\b"
        ),
        areas=("indoor-blower", "condenser"),
        states=("locked-out",),
        hazards=("rotating-parts",),
    ),
    Implication(
        of="an open unit that runs",
        why="belts, wheels and fans turn, or start without a word",
        source="29 CFR 1910.147(a)(2)(ii); 29 CFR 1910.219",
        states=("running-open",),
        hazards=("rotating-parts",),
        steps=True,
    ),
    Implication(
        of="a call that stands while it is read",
        why="only there does a step make the call, tools and people clear; else nothing calls",
        source=PRACTICE,
        words=words(
            r"with (?:the|its) (?:call (?:on|standing)|\w+ (?:called|calling))\b",
        ),
        work_states=("running", "running-open"),
    ),
    Implication(
        of="an open unit with its power on",
        why="only a qualified and equipped person works near live parts",
        source="29 CFR 1910.333(c)(2); 29 CFR 1910.335(a)",
        states=("running-open", "energised-open"),
        hazards=("live-work",),
        steps=True,
    ),
    Implication(
        of="line parts within reach on a unit of 480 V",
        why="an arc there burns through ordinary clothing",
        source="NFPA 70E, table 130.5(C), from memory",
        states=("running-open", "energised-open"),
        exposes=("line",),
        hazards=("arc-flash-480-volt",),
        on_units={"line-volts-class": ("480-volt",)},
        steps=True,
    ),
    Implication(
        of="a meter on live parts",
        why="a meter that was not proved shows dead what is live",
        source="29 CFR 1910.333(b)(2)(iv); 29 CFR 1910.334(c)",
        meters=("voltmeter", "clamp-ammeter", "microammeter"),
        words=words(r"proved meter"),
        states=("running-open", "energised-open"),
        exposes=("line", "control"),
        needs_state=("meter-proved",),
    ),
    Implication(
        of="an electric heater that is opened",
        why="it has a feed of its own, and its elements stay hot",
        source="29 CFR 1910.147(c)(4)",
        areas=("electric-heat",),
        states=("locked-out",),
        hazards=("second-power-source",),
        fact=("heat", "electric"),
    ),
    Implication(
        of="a jumper",
        why="one that stays in defeats a control",
        source=PRACTICE,
        words=words(r"(?:flagged|test|fused|clip) (?:and \w+ )?jumper"),
        hazards=("temporary-jumper",),
    ),
)
