"""What a part did at the restart, in a mechanic's words: fans run but the compressor just hums.

Each clause has to be foreseen here, word for word; what runs beside what does not changes nothing.
It is asked about and never confirms. Common practice, no source.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.outside.text import without_apostrophes

_PARTED: Final = re.compile(r"\s*[,;.]\s*|\s+(?:and|but|then|&)\s+")
_PART: Final = (
    r"(?:(?:the |both |all )*(?:it|blower|indoor fan|fans?|cond(?:enser)?(?: fans?)?|"
    r"comp(?:ressor)?s?|inducer)(?: just)? )?(?:just )?"
)
_NOT: Final = r"(?:does not|doesnt|dont|do not|will not|wont|would not|never)"
_RUNS: Final = re.compile(
    rf"{_PART}(?:(?:and )?(?:blower|fans?|cond|comp) )*(?:is |are )?"
    r"(?:runs?|running|turns?|turning|going|starts?|started|comes? on)(?: (?:fine|good|ok|well))?"
)
_STRUGGLES: Final = re.compile(
    rf"{_PART}(?:(?:sits|sitting) (?:there|here) )?(?:hums?|humming|buzz(?:es)?|buzzing|struggles?|"
    r"struggling|trips?|drops|cuts|kicks|runs backwards?)(?: (?:off|out|there|again))?"
)
_STANDS: Final = re.compile(
    rf"{_PART}(?:{_NOT} (?:start|starts|come on|run|turn|spin)(?: up)?|(?:sits|stands) still)"
)


def came_of_it(typed: str) -> str:
    """The outcome of the restart that the clauses tell; empty where one of them tells another."""
    said = " ".join(without_apostrophes(typed.lower()).rstrip(" .!").split())
    said = re.sub(rf"\b(?:hums?|buzzes) (?={_NOT}\b)", "hums, ", said)
    clauses = [each for each in _PARTED.split(said) if each]
    struggles = [each for each in clauses if _STRUGGLES.fullmatch(each)]
    stands = [each for each in clauses if _STANDS.fullmatch(each)]
    runs = [each for each in clauses if _RUNS.fullmatch(each) and each not in struggles]
    if len(struggles) + len(stands) + len(runs) < len(clauses):
        return ""
    return "struggles" if struggles else "does-not-start" if stands else ""
