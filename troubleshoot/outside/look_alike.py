"""Letters that look like others, folded onto plain ones before words are compared.

A name or a sentence is what people see: full width, accents, other alphabets' letters of the same
shape and what cannot be seen make no other word of it. The idea is that of Unicode Technical
Standard 39 ("confusables"); the table is from memory, of Cyrillic, Greek and a few Latin letters.
"""

from __future__ import annotations

from typing import Final

_CYRILLIC: Final = ("АВЕЅІЈКМНОРСТУХаеѕіјорсухԁһԛԝѵ", "ABESIJKMHOPCTYXaesijopcyxdhqwv")
_GREEK: Final = ("ΑΒΕΖΗΙΚΜΝΟΡΤΥΧανορυχικτϲ", "ABEZHIKMNOPTYXavopuxiktc")
_SHAPES: Final = str.maketrans(
    "".join(alike for alike, _ in (_CYRILLIC, _GREEK)) + "ıßłđøɡɑ",
    "".join(plain for _, plain in (_CYRILLIC, _GREEK)) + "isldoga",
)


def as_seen(text: str) -> str:
    """The text in plain letters and figures, as it looks; what cannot be seen is left out."""
    if text.isascii():
        return text
    import unicodedata  # only where something is not plain: half a megabyte of names

    def plain(letter: str) -> str:
        kind = unicodedata.category(letter)
        if kind in ("Cf", "Mn", "Me"):
            return ""
        return str(unicodedata.decimal(letter)) if kind == "Nd" else letter

    apart = unicodedata.normalize("NFKD", text)
    return "".join(map(plain, apart)).translate(_SHAPES)
