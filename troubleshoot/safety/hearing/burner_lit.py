"""A burner that lights and burns is what is watched at one: lights first try and burns steady.

Only where a trial, a burner or its limit is named, and nothing stands behind that burns instead:
whatever else burns, smokes or is lit is heard as it is told. Flames that stay lit with no call are
the burner's too: a valve that does not close, and no fire. Common practice, no source.
"""

from __future__ import annotations

import re
from typing import Final

_OF_A_BURNER: Final = re.compile(
    r"\b(?:first|1st|second|2nd|third|3rd|every|each) (?:attempt|shot|time|trial|try)\b|"
    r"\b(?:burners?|flame|high limit|limit|pilot|flame sensor|igniter)\b"
)
_LIGHTS_AND_BURNS: Final = re.compile(
    r"(?P<lit>(?:^|[,.;:] ?|\band )(?:(?:it|the (?:main )?burners?|(?:main )?burners?|flame) )?"
    r"(?:lights?|lit|ignites?|fires (?:up|off)|fired (?:up|off))"
    r"(?: (?:off|right|away|up|good|fine|ok|clean|on|the|first|1st|second|2nd|third|3rd|every|each|"
    r"attempt|shot|time|trial|try))*)"
    r"(?P<then>,? (?:and |then |and then )?(?:it )?)(?P<keeps>keeps )?(?:burns?|burned|burning)\b"
    r"(?= ?(?:$|[,.;:]|till?\b|until\b|then\b|and then\b|for (?:[0-9]|an?\b|about\b)|about [0-9]|"
    r"[0-9]+ ?(?:s|sec|seconds?|min|minutes?)\b|(?:steady|steadily|clean|blue|fine|good|nice|ok|"
    r"normal|right|evenly|well)\b))",
    re.IGNORECASE,
)
_FLAMES: Final = re.compile(r"\bflame['\u2019]?s\b", re.IGNORECASE)
_NO_CALL: Final = re.compile(r"\b(?:no|without a) call\b", re.IGNORECASE)
_ELSEWHERE: Final = re.compile(
    r"\b(?:board|box|cabinet|compressor|contactor|disconnect|door|duct|everywhere|filters?|"
    r"fire|floor|from|front|insulation|into|motor|of|outside|over|panel|roof|smok\w*|spread\w*|"
    r"wir\w+)\b",
    re.IGNORECASE,
)
"""Beside flames they say that it is no burner's that burns on, or not where it should."""
_FIRES: Final = re.compile(r"\bfire[sd]\b", re.IGNORECASE)


def as_watched(said: str) -> str:
    """What was said, with a burner that lights and burns as one that starts and runs."""
    if _OF_A_BURNER.search(said.lower()) is None:
        return said
    return _LIGHTS_AND_BURNS.sub(_runs, said)


def burns_on(said: str) -> bool:
    """Whether flames are told that no call asks for, where they burn: flame's still on, no call."""
    is_on = _FLAMES.search(said) is not None and _NO_CALL.search(said) is not None
    return is_on and _ELSEWHERE.search(said) is None


def _runs(found: re.Match[str]) -> str:
    lit = _FIRES.sub("starts", found["lit"])
    return f"{lit}{found['then']}{found['keeps'] or ''}runs"
