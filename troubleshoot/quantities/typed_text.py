"""Cleaning what a person typed, and the refusals that the readers of typed text raise.

Only characters that have one meaning are made alike (both micro signs, curly quotes, the minus
of a phone's keyboard). Everything else stays as typed, so that nothing is guessed here.
"""

import re
import unicodedata
from typing import Final

LONGEST_TEXT: Final = 100
"""Characters accepted in one answer; longer text is refused unread."""

_ALIKE: Final = str.maketrans(
    {
        "\u00b5": "\u03bc",  # micro sign, Greek mu
        "\u2126": "\u03a9",  # ohm sign, Greek omega
        "\u00ba": "\u00b0",  # masculine ordinal, degree sign
        "\u02da": "\u00b0",  # ring above, degree sign
        "\u2212": "-",
        "\u2010": "-",
        "\u2011": "-",
        "\u2013": "-",
        "\u201c": '"',
        "\u201d": '"',
        "\u2033": '"',
        "\u2018": "'",
        "\u2019": "'",
        "\u2032": "'",
        "\u2044": "/",
        "\u00a0": " ",
        "\u2009": " ",
        "\u202f": " ",
        "\u2265": ">",
        "\u2264": "<",
    }
)

_FRACTION_SIGNS: Final = {
    "\u00bd": "1/2",
    "\u00bc": "1/4",
    "\u00be": "3/4",
    "\u215b": "1/8",
    "\u215c": "3/8",
    "\u215d": "5/8",
    "\u215e": "7/8",
}
_FRACTION_SIGN: Final = re.compile(f"(?P<joined>^|[-+ ]|)(?P<sign>[{''.join(_FRACTION_SIGNS)}])")
_POWER_OF_A_UNIT: Final = re.compile("(?<=[a-zA-Z])[\u00b2\u00b3]")


class NotUnderstood(ValueError):
    """Typed text that is no answer, or could mean two things.

    `text` is what was typed, `why` a clause that goes on from it, `instead` what to write.
    """

    def __init__(self, text: str, why: str, instead: str) -> None:
        super().__init__(text, why, instead)
        self.text = text
        self.why = why
        self.instead = instead

    def __str__(self) -> str:
        sentence = f"'{_printable(self.text)}' {self.why}; {self.instead}"
        return sentence if sentence.endswith(".") else f"{sentence}."


class Unclear(Exception):
    """A part of the text cannot be read; the reader turns this into NotUnderstood.

    An empty `instead` lets it give an example that fits the question.
    """

    def __init__(self, why: str, instead: str = "") -> None:
        super().__init__(why, instead)
        self.why = why
        self.instead = instead


def clean(text: str) -> str:
    """Return `text` without outer blanks and with like characters made one; raise Unclear."""
    bare = text.strip(" \t\r\n")
    if not bare:
        raise Unclear("holds no answer")
    if len(bare) > LONGEST_TEXT:
        raise Unclear(f"is longer than {LONGEST_TEXT} characters")
    if any(unicodedata.category(character).startswith("C") for character in bare):
        raise Unclear("holds characters that cannot be seen")
    spelled = _FRACTION_SIGN.sub(_spell_fraction, bare.translate(_ALIKE))
    spelled = _POWER_OF_A_UNIT.sub(lambda found: "2" if found[0] == "\u00b2" else "3", spelled)
    return " ".join(spelled.split())


def _spell_fraction(found: re.Match[str]) -> str:
    """Return the fraction in digits, kept apart by blanks from what stands around it."""
    fraction = _FRACTION_SIGNS[found["sign"]]
    before = found["joined"] if found["joined"] or found.start() == 0 else " "
    return f"{before}{fraction} "


def _printable(text: str) -> str:
    short = text if len(text) <= LONGEST_TEXT else text[:LONGEST_TEXT] + "..."
    return "".join(character if character.isprintable() else "?" for character in short)
