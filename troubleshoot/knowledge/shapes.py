"""The little language in which the forms of rule files are described.

A form is data: it drives the reading of files, the JSON Schema for editors, the order of keys
when a file is formatted, and the check of names. A shape says what may stand in one place; unions
are told apart by a key, never by trial and error.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Final

from troubleshoot.frozen import frozen

LONGEST_TEXT: Final = 600


@frozen
class Text:
    """Words for people. Runs of white space count as one space."""

    longest: int = LONGEST_TEXT


@frozen
class NewId:
    """The id of the entry itself: words joined by hyphens."""


@frozen
class Name:
    """The id of something defined elsewhere. `of` says what: test, fault, hazard, ..."""

    of: str


@frozen
class Word:
    """A free word without spaces that is no id: an area, a value of an equipment fact."""


@frozen
class Choice:
    """`before`: words that files had before, which are still read."""

    options: tuple[str, ...]
    before: tuple[str, ...] = ()


@frozen
class Number:
    least: float | None = None
    most: float | None = None
    whole: bool = False


@frozen
class Exactly:
    """One number and no other: the version of the format."""

    number: int


@frozen
class Percent:
    """A share as people write it: 60 %."""

    least: int
    most: int


@frozen
class Truth:
    """true or false."""


@frozen
class Anything:
    """What a person might answer: a text, a number, or a short list or mapping of those."""


@frozen
class ListOf:
    """`block`: written one item a line; `apart`: with an empty line between items."""

    item: Shape
    least: int = 0
    most: int = 400
    block: bool = False
    apart: bool = False


@frozen
class OneOrMore:
    """A single item, or a list of them; read as a list.

    `alone`: a single item is written without brackets.
    """

    item: Shape
    most: int = 60
    alone: bool = False


@frozen
class Pairs:
    """A mapping whose keys the author chooses."""

    key: Shape
    value: Shape
    least: int = 0
    most: int = 60


@frozen
class Findings:
    """A mapping test: outcome, or test: [outcomes], each of which counts."""

    least: int = 1
    most: int = 1


@frozen
class Facts:
    """A mapping of equipment facts to the word, or words, any of which will do.

    A nameplate value may stand there too, with the word known or not-known; in a limit a quantity.
    """


@frozen
class Field:
    """One key of a record. `meaning` is shown by editors."""

    key: str
    shape: Shape
    meaning: str
    required: bool = False


@frozen
class Member:
    """A field of an object: the keys that lead to its value, and what becomes of that value.

    Without `make` the value is built as its shape says.
    """

    name: str
    keys: tuple[str, ...]
    shape: Shape
    make: Callable[[Any], Any] | None = None


@frozen
class Record:
    """A mapping with known keys, in the order in which they are written.

    Of `some_of` at least one key must be there. `block`: written with one key a line, even where
    all would fit on one. `makes` is the class whose `members` are filled; without it the mapping
    stays one.
    """

    name: str
    fields: tuple[Field, ...]
    some_of: tuple[str, ...] = ()
    block: bool = False
    makes: Callable[..., Any] | None = None
    members: tuple[Member, ...] = ()

    def field(self, key: str) -> Field | None:
        return next((field for field in self.fields if field.key == key), None)


@frozen
class Tagged:
    """A union told apart by which of the keys stands in the mapping."""

    name: str
    options: tuple[tuple[str, Shape], ...]
    otherwise: Shape | None = None


@frozen
class Later:
    """A shape that is named before it is made, for forms that hold themselves."""

    name: str
    get: Callable[[], Shape]


Shape = (
    Text
    | NewId
    | Name
    | Word
    | Choice
    | Number
    | Exactly
    | Percent
    | Truth
    | Anything
    | ListOf
    | OneOrMore
    | Pairs
    | Findings
    | Facts
    | Record
    | Tagged
    | Later
)


def required(key: str, shape: Shape, meaning: str) -> Field:
    return Field(key, shape, meaning, required=True)


def optional(key: str, shape: Shape, meaning: str) -> Field:
    return Field(key, shape, meaning)
