"""How the words of the closed lists are said, where an id is not how people say it.

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
        "very-common": "very common",
        "very-rare": "very rare",
        "whole-job": "whole job",
        "until-made-safe": "until made safe",
        "this-step": "this step",
        "running-open": "running open",
        "energised-open": "energised open",
        "locked-out": "locked out",
        "proved-dead": "proved dead",
        "meter-proved": "meter proved",
        "capacitors-discharged": "capacitors discharged",
        "gas-shut": "gas shut",
        "manometer-at-inlet": "manometer at inlet",
        "manometer-at-outlet": "manometer at outlet",
        "gauges-on": "gauges on",
        "gauges-unsure": "gauges unsure",
        "charge-recovered": "charge recovered",
        "charge-unsure": "charge unsure",
        "under-nitrogen": "under nitrogen",
        "under-vacuum": "under vacuum",
        "fire-alarm": "fire alarm",
        "under-50": "under 50 dollars",
        "50-to-250": "50 to 250 dollars",
        "250-to-1000": "250 to 1000 dollars",
        "1000-to-4000": "1000 to 4000 dollars",
        "over-4000": "over 4000 dollars",
        "stuck-on": "stuck on",
        "not-shown": "not shown",
        "tested-again": "tested again",
        "not-proved": "not proved",
        "none-known": "none known",
        "not-checked": "not checked",
        "no-go": "no go",
        "edge-near": "edge near",
        "in-service": "in service",
        "on-test": "on test",
        "refrigerant-sweep-a2l": "refrigerant sweep A2L",
        "combustible-gas-sweep": "combustible gas sweep",
        "room-carbon-monoxide": "room carbon monoxide",
    }
)


def spoken(word: str) -> str:
    """A word of a closed list as people say it; one without hyphens is said as it stands."""
    return SPOKEN.get(word, word)
