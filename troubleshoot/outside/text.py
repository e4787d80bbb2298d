"""Text from outside: what is turned away at the door, and how it is written at each way out.

At the door nothing is quietly changed: a line with a character that hides text or drives a terminal
is turned away, for a digit lost from a reading is worse than a line typed twice. What came in
before there was a door (old journals, names of files) is made harmless where it goes out.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.outside.refusal import NotUsable

MOST_TYPED: Final = 2_000
"""Letters in one line that a person types, or in one value of a file of theirs."""

MOST_NAME: Final = 80
"""Letters in the name of a unit or a person."""

MOST_SENTENCE: Final = 1_000
"""Letters of a sentence that says what is wrong with a text; it may hold that text."""
_LEFT_OUT: Final = " ... "

_REFUSED: Final = re.compile(
    "["
    "\x00-\x08\x0b-\x1f\x7f-\x9f"  # control characters, save tab and line feed
    "\u061c\u200b-\u200f\u202a-\u202e\u2060-\u206f\ufeff"  # invisible, and direction of writing
    "\u2028\u2029"  # line breaks that an editor does not show as such
    "\ufff0-\uffff\U000e0000-\U000e007f"  # no characters at all, and invisible tags
    "\ud800-\udfff"  # halves of characters, and bytes that are no text
    "]"
)
_UNDECODED: Final = re.compile("[\udc80-\udcff]")
_MARKS: Final = re.compile(r"[\\`*_\[\]<>|~&#]")
_LIST: Final = re.compile(r"^([-+=]+(?=\s|$)|[0-9]{1,9}(?=[.)](\s|$)))")


@frozen
class RefusedCharacter:
    """Where it stands, how to speak of it, and whether it is a byte that was no text."""

    index: int
    name: str
    undecoded: bool = False


def first_refused(text: str) -> RefusedCharacter | None:
    """Return the first refused character of the text and how to speak of it, or None."""
    match = _REFUSED.search(text)
    if match is None:
        return None
    character = match.group()
    if _UNDECODED.match(character):
        return RefusedCharacter(match.start(), "a byte that is no UTF-8 text", True)
    import unicodedata  # only where something is refused: half a megabyte of names

    name = unicodedata.name(character, "control character").lower()
    return RefusedCharacter(match.start(), f"the {name} U+{ord(character):04X}")


def line_and_column(text: str, index: int) -> tuple[int, int]:
    """Line and column, counted from 1, of the character at `index`."""
    return text.count("\n", 0, index) + 1, index - (text.rfind("\n", 0, index) + 1) + 1


def one_line(text: str, where: str, most: int = MOST_TYPED) -> str:
    """A line that a person gave, trimmed, its tabs made spaces. Raises NotUsable."""
    if len(text) > most:
        raise NotUsable(where, f"more than {most} letters", "say it in fewer")
    line = text.rstrip("\r\n").replace("\t", " ")
    refused = first_refused(line)
    if refused is not None or "\n" in line:
        name = "a second line" if refused is None else refused.name
        raise NotUsable(where, f"{name} in it", "write it with plain letters, on one line")
    return line.strip()


def plain_words(text: str) -> str:
    """What was typed, as words are compared: small letters, hyphens as blanks, single blanks."""
    return " ".join(text.lower().replace("-", " ").split())


def as_said(text: str) -> str:
    """What was typed, as patterns read it: small letters, the apostrophe of a phone straight."""
    return text.lower().replace("\u2019", "'")


def without_apostrophes(text: str) -> str:
    """What was typed, with can't as cant, whichever way its apostrophe was typed."""
    return text.replace("'", "").replace("\u2019", "")


def begun(phrase: str) -> str:
    """A phrase as a sentence begins with it; the rest of it stays as it is written."""
    return f"{phrase[:1].upper()}{phrase[1:]}"


def shortened(text: str, most: int = MOST_SENTENCE) -> str:
    """A sentence about what came from outside: of a long one its beginning and its end."""
    if len(text) <= most:
        return text
    half = (most - len(_LEFT_OUT)) // 2
    return f"{text[:half]}{_LEFT_OUT}{text[-half:]}"


def shown(text: str) -> str:
    """Text on its way to a terminal: what would hide or drive is written out, as <U+001B>."""
    return _REFUSED.sub(lambda match: f"<U+{ord(match.group()):04X}>", text)


def in_json(text: str) -> str:
    """JSON on its way to a terminal: the same, with what would hide or drive as its escape."""
    return _REFUSED.sub(lambda match: _escape(match.group()), text)


def _escape(character: str) -> str:
    """A character as JSON escapes it: one beyond U+FFFF as two halves."""
    halves = character.encode("utf-16-be", "surrogatepass")
    return "".join(f"\\u{halves[at]:02x}{halves[at + 1]:02x}" for at in range(0, len(halves), 2))


def markdown(text: str) -> str:
    """Text on its way into a line of Markdown (CommonMark): every letter stands for itself."""
    line = _MARKS.sub(r"\\\g<0>", shown(" ".join(text.split())))
    return _LIST.sub(_no_list, line)


def _no_list(match: re.Match[str]) -> str:
    """A beginning that would open a list or a rule, so that it opens none.

    After a number it is the mark behind it that is escaped.
    """
    begun = match.group()
    return f"\\{begun}" if begun[0] in "-+=" else f"{begun}\\"
