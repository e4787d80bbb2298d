"""How the words of the closed lists are said.

What rule files bring along, outcomes, hazards, facts, quantities, areas, is said as `words.yaml`
has it (`Knowledge.spoken`). No id is ever made into words by taking its hyphens out: a word that is
said stands somewhere as a text, so that it can be mended, and translated, where it stands.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

SPOKEN: Final[Mapping[str, str]] = MappingProxyType(
    {
        "almost-always": "almost always",
        "often": "often",
        "sometimes": "sometimes",
        "seldom": "seldom",
        "never": "never",
        "very-common": "very common",
        "common": "common",
        "uncommon": "uncommon",
        "rare": "rare",
        "very-rare": "very rare",
        "whole-job": "whole job",
        "until-made-safe": "until made safe",
        "this-step": "this step",
        "any": "any",
        "running": "running",
        "running-open": "running open",
        "energised-open": "energised open",
        "locked-out": "locked out",
        "adjust": "adjust",
        "question": "question",
        "look": "look",
        "input": "input",
        "measurement": "measurement",
        "computed": "computed",
        "step": "step",
        "DANGER": "DANGER",
        "WARNING": "WARNING",
        "CAUTION": "CAUTION",
        "NOTICE": "NOTICE",
        "unit": "unit",
        "capacitor": "capacitor",
        "drive": "drive",
        "tap": "tap",
        "hook-up": "hook up",
        "circuit": "circuit",
        "jumper": "jumper",
        "draft": "draft",
        "reviewed": "reviewed",
        "under-50": "under 50 dollars",
        "50-to-250": "50 to 250 dollars",
        "250-to-1000": "250 to 1000 dollars",
        "1000-to-4000": "1000 to 4000 dollars",
        "over-4000": "over 4000 dollars",
        "meter-proved": "meter proved",
        "capacitors-discharged": "capacitors discharged",
        "gas-shut": "gas shut",
        "manometer-at-inlet": "manometer at inlet",
        "manometer-at-outlet": "manometer at outlet",
        "meter-in-rod-lead": "meter in rod lead",
        "clamp-on-heater-lead": "clamp on heater lead",
        "motor-leads-moved": "motor leads moved",
        "gauges-on": "gauges on",
        "charge-recovered": "charge recovered",
        "apprentice": "apprentice",
        "supervised": "supervised",
        "technician": "technician",
        "electrical": "electrical",
        "refrigerant": "refrigerant",
        "gas": "gas",
        "combustion": "combustion",
        "fire-alarm": "fire alarm",
        "on": "on",
        "unsure": "unsure",
        "off": "off",
        "stuck-on": "stuck on",
        "not-shown": "not shown",
        "shown": "shown",
        "tested": "tested",
        "tested-again": "tested again",
        "proved": "proved",
        "failed": "failed",
        "not-proved": "not proved",
        "none-known": "none known",
        "found": "found",
        "locked": "locked",
        "shut": "shut",
        "closed": "closed",
        "gauges-unsure": "gauges unsure",
        "charge-unsure": "charge unsure",
        "under-nitrogen": "under nitrogen",
        "under-vacuum": "under vacuum",
        "not-checked": "not checked",
        "no-go": "no go",
        "edge-near": "edge near",
        "go": "go",
        "in-service": "in service",
        "on-test": "on test",
        "stopped": "stopped",
        "proved-dead": "proved dead",
        "refrigerant-sweep-a2l": "refrigerant sweep A2L",
        "combustible-gas-sweep": "combustible gas sweep",
        "room-carbon-monoxide": "room carbon monoxide",
    }
)


def spoken(word: str) -> str:
    """A word of a closed list as people say it; what is in none of them stands as it is written."""
    return SPOKEN.get(word, word)
