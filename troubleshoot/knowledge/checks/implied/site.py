"""The roof, and the alarm of the building."""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.checks.implied.implication import Implication, words

SITE: Final = (
    Implication(
        of="a smoke detector or its panel",
        why="a signal sends people out and the fire service in",
        source="NFPA 72, from memory",
        fact=("duct-smoke-detector", "fitted"),
        hazards=("fire-alarm-interlock",),
    ),
    Implication(
        of="a ladder, a hatch or a skylight",
        why="most who die on roofs fall from them or through them",
        source="29 CFR 1910.23; 29 CFR 1910.28(b)",
        words=words(r"ladder\b", r"hatch\b"),
        hazards=("ladder-and-hatch",),
        steps=True,
    ),
    Implication(
        of="a skylight or a hole in the roof",
        why="neither bears a person",
        source="29 CFR 1910.28(b)(3)",
        words=words(r"skylights?\b", r"roof holes?\b"),
        hazards=("skylight-or-roof-hole",),
        steps=True,
    ),
    Implication(
        of="work at the edge of a roof",
        why="within 6 ft of it there is fall protection, always",
        source="29 CFR 1910.28(b)(13)",
        words=words(r"roof edge", r"lanyard", r"guard ?rail", r"fall protection"),
        hazards=("roof-edge-under-6-ft",),
        steps=True,
    ),
)
