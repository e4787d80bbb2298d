"""Numbers as people say them: one twenty eight, nineteen point two, twelve and a half.

The libraries that were weighed read "one twenty eight" as 28 or as two numbers. This reads what is
said one way only, and leaves all else as it stands:

- in full: one hundred (and) twenty eight, twelve hundred fifty, two thousand thirty;
- by the trade's short way: one twenty eight, two oh eight, twelve fifty; one twenty is 120, as no
  meter is read "one, then twenty";
- figure by figure from three figures on: one one five, two zero eight;
- a point and its figures, a half, a quarter, three quarters, below zero with minus or negative.

Not read, since it may be two things: two figures alone (one five), ten five, nineteen two, a
hundred-odd, dozens. Ordinals and numbers past 9999 are no readings.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Final

from troubleshoot.outside.numbers import whole_number

_DIGITS: Final = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
    "nine": 9,
}  # fmt: skip
_TEENS: Final = {
    "ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15,
    "sixteen": 16, "seventeen": 17, "eighteen": 18, "nineteen": 19,
}  # fmt: skip
_TENS: Final = {
    "twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70,
    "eighty": 80, "ninety": 90,
}  # fmt: skip
_NOUGHT: Final = frozenset({"oh", "o", "zero", "nought"})
_PARTS: Final = {
    ("a", "half"): "5",
    ("one", "half"): "5",
    ("half",): "5",
    ("a", "quarter"): "25",
    ("one", "quarter"): "25",
    ("quarter",): "25",
    ("three", "quarters"): "75",
}
_BELOW: Final = frozenset({"minus", "negative"})
_SPELT: Final = frozenset({*_DIGITS, *_TEENS, *_TENS, *_NOUGHT})
_JOINING: Final = frozenset({"hundred", "thousand", "point", "and", "a", "half", "quarter"})
_WORDS: Final = _SPELT | _JOINING | _BELOW | {"quarters"}
_TOKEN: Final = re.compile(r"[a-z]+|[0-9]+(?![0-9.,/])", re.IGNORECASE)
_BETWEEN: Final = re.compile(r"(?: ?- ?| )")
_JOINED_BEFORE: Final = re.compile(r"[\w.'/]$")
_JOINED_AFTER: Final = re.compile(r"[\w']")
_HYPHEN_BEFORE: Final = re.compile(r"([a-z]+)-$", re.IGNORECASE)
_HYPHEN_AFTER: Final = re.compile(r"-([a-z]+)", re.IGNORECASE)
_HALF_A: Final = re.compile(r"\b(?:0\.5|half) an? (?P<of>[a-z]+)", re.IGNORECASE)
_UNIT_BETWEEN: Final = re.compile(
    r"\b(?P<many>an?|[0-9]+) (?P<unit>[a-z]+) and (?P<part>a half|a quarter|three quarters)\b",
    re.IGNORECASE,
)
"""Where people put the unit between a number and its part: an inch and a quarter."""
_FIGURES: Final = re.compile(r"[0-9]+")
_MOST_DECIMALS: Final = 3


def in_figures(text: str) -> str:
    """The text with every number that is said in words written in figures.

    What is no number, or could be two, stays as it was typed.
    """
    written, end = "", 0
    for run in _runs(text):
        for first, last, figures in _numbers(run):
            written += text[end : first.start()] + figures
            end = last.end()
    return _UNIT_BETWEEN.sub(_before_its_unit, _HALF_A.sub(_half, written + text[end:]))


def _half(found: re.Match[str]) -> str:
    """Half of a unit; half a zero is no number."""
    return found[0] if is_spoken(found["of"]) else f"0.5 {found['of']}"


def _before_its_unit(found: re.Match[str]) -> str:
    """One and a quarter inch, of an inch and a quarter."""
    many = "1" if found["many"].isalpha() else found["many"]
    decimals = _PARTS[tuple(found["part"].lower().split())]
    return f"{many}.{decimals} {found['unit']}"


def _is_figures(word: str) -> bool:
    return _FIGURES.fullmatch(word) is not None


def is_spoken(word: str) -> bool:
    """Whether a word is one that numbers are said in."""
    return word.lower() in _WORDS


def _runs(text: str) -> Iterator[list[re.Match[str]]]:
    """Words of numbers that stand side by side, figures among them."""
    run: list[re.Match[str]] = []
    for token in _TOKEN.finditer(text):
        joined = run and _BETWEEN.fullmatch(text, run[-1].end(), token.start())
        fits = _is_apart(text, token) and (_is_figures(token[0]) or is_spoken(token[0]))
        if run and not (joined and fits):
            yield run
            run = []
        if fits:
            run = [*run, token]
    if run:
        yield run


def _is_apart(text: str, token: re.Match[str]) -> bool:
    """Whether a word stands by itself: the 2 of c2, of L1 or of 1.2 is part of another."""
    before, after = text[: token.start()], text[token.end() :]
    if _JOINED_BEFORE.search(before) or _JOINED_AFTER.match(after):
        return False
    hyphened = (_HYPHEN_BEFORE.search(before), _HYPHEN_AFTER.match(after))
    return all(each is None or is_spoken(each[1]) for each in hyphened)


def _numbers(run: Sequence[re.Match[str]]) -> Iterator[tuple[re.Match[str], re.Match[str], str]]:
    """First word, last word and figures of each number of a run; several are joined by and.

    No part of a number is one by itself: one five is neither a one nor a five.
    """
    words = [token[0].lower() for token in run]
    joints = [at for at, word in enumerate(words) if word == "and"]
    begin = 0
    while begin < len(words):
        ends = [len(words), *(at for at in reversed(joints) if at > begin)]
        for end in ends:
            figures = _number(words[begin:end]) if end > begin else None
            if figures is not None and any(word.isalpha() for word in words[begin:end]):
                yield run[begin], run[end - 1], figures
                break
        else:
            end = ends[-1]
        begin = end + 1


def _number(words: list[str]) -> str | None:
    """The figures of a whole number of words with its decimals; None where it is none."""
    sign = "-" if words[0] in _BELOW else ""
    said = words[1:] if sign else words
    for parts, decimals in _PARTS.items():
        whole = said[: -len(parts)]
        if tuple(said) == parts:
            return f"{sign}0.{decimals}"
        if tuple(said[-len(parts) :]) == parts and whole[-1:] == ["and"]:
            number = _whole(whole[:-1])
            return None if number is None else f"{sign}{number}.{decimals}"
    if "point" not in said:
        number = _whole(said)
        return None if number is None else f"{sign}{number}"
    at = said.index("point")
    number = 0 if said[:at] in ([], ["oh"], ["o"]) else _whole(said[:at])
    decimals = _decimals(said[at + 1 :])
    return None if number is None or not decimals else f"{sign}{number}.{decimals}"


def _decimals(words: list[str]) -> str:
    """The figures behind the point: one by one, or as one number of two."""
    figures = [_figure(word) for word in words]
    if figures and all(figures) and len(figures) <= _MOST_DECIMALS:
        return "".join(figures)
    if len(words) == 1 and _is_figures(words[0]):
        return words[0]
    number = _below_100(words)
    return str(number) if number is not None and number > 9 else ""


def _figure(word: str) -> str:
    if word in _NOUGHT:
        return "0"
    if len(word) == 1 and _is_figures(word):
        return word
    return str(_DIGITS[word]) if word in _DIGITS else ""


def _whole(words: list[str]) -> int | None:
    """A whole number: in figures, in full, the short way, or figure by figure."""
    if len(words) == 1 and _is_figures(words[0]):
        return whole_number(words[0])
    if any(map(_is_figures, words)):
        return None
    if "thousand" in words:
        return _multiple(words, "thousand", 1000)
    if "hundred" in words:
        return _multiple(words, "hundred", 100)
    return _short(words)


def _multiple(words: list[str], name: str, times: int) -> int | None:
    """So many hundreds, or thousands, and what is left of them."""
    at = words.index(name)
    many = 1 if words[:at] == ["a"] else _below_100(words[:at])
    rest = words[at + 1 :]
    rest = rest[1:] if rest[:1] == ["and"] and len(rest) > 1 else rest
    if many is None or (times == 1000 and many > 9):
        return None
    if not rest:
        return many * times
    if times == 1000 and "hundred" in rest:
        left = _multiple(rest, "hundred", 100)
    else:
        left = _below_100(rest[1:] if rest[0] in _NOUGHT else rest)
    return many * times + left if left is not None and left < times else None


def _short(words: list[str]) -> int | None:
    """One twenty eight, two oh eight, twelve fifty, one one five; or a number under a hundred."""
    if words in (["zero"], ["nought"]):
        return 0
    if (number := _below_100(words)) is not None:
        return number
    figures = [_figure(word) for word in words]
    if len(figures) in (3, 4) and all(figures) and words[0] not in _NOUGHT:
        return int("".join(figures))
    for at in range(1, len(words)):
        first, last = _below_100(words[:at]), _tail(words[at:])
        if first is not None and last is not None:
            return first * 100 + last
    return None


def _tail(words: list[str]) -> int | None:
    """The last two figures of a number that is said the short way: twenty eight, oh eight."""
    if words[0] in _NOUGHT:
        return _DIGITS.get(words[1]) if len(words) == 2 else None
    number = _below_100(words)
    return number if number is not None and number > 9 else None


def _below_100(words: list[str]) -> int | None:
    if len(words) == 1:
        return (_DIGITS | _TEENS | _TENS).get(words[0])
    if len(words) == 2 and words[0] in _TENS and words[1] in _DIGITS:
        return _TENS[words[0]] + _DIGITS[words[1]]
    return None
