"""Where a hint begins and where it ends: how many volts or parts, whose arm, which typing error.

The figures are those of the table: 10 ppm and 100 to 600 V, 3.8 and 14 inches of water, 27.7 of
them in a psi. Common practice, no source, but for the last.
"""

from __future__ import annotations

import pytest

from troubleshoot.safety.hearing.hinting import hinted, hints


@pytest.mark.parametrize(
    "said",
    [
        "it reads 10 ppm in here", "20 parts in here", "it reads 1 percent lel here",
        "we have now 5 percent of the lel here", "took 100 off him", "took 600 off him",
        "pins and needles in my arm", "my hand has gone all grey", "it went through my arm",
        "dizzy or sick", "my helper is ok, dizzy or sick", "no smoke, i am dizzy",
        "dizzy board", "0.14 psi on the manifold", "15 inches at the inlet", "4 in manifold",
        "unconsious", "unconscioua", "umconscious", "he is daizzy", "he is smokin",
        "my eyes are streaming",
    ],
)  # fmt: skip
def test_what_hints_at_a_danger_is_asked_about(said: str) -> None:
    assert hints(said)


@pytest.mark.parametrize(
    "said",
    [
        "it reads 9 ppm in here", "it reads 0 percent lel here", "waited 20 minutes ppm steady",
        "took 99 off him", "took 601 off him", "0.137 psi on the manifold", "3.8 in manifold",
        "it reads 00 lel here", "nuconscious", "inconscious", "solder", "stream", "20 PPM",
        "1E3 ppm", "", "!!", "no dizzy or sick", "it went through the arm",
    ],
)  # fmt: skip
def test_what_is_less_or_something_else_is_not(said: str) -> None:
    assert not hints(said)


@pytest.mark.parametrize("denied", ["isnt", "wasnt", "doesnt", "didnt", "arent", "wont", "hasnt"])
def test_a_denied_hint_is_none(denied: str) -> None:
    assert not hints(f"he {denied} dizzy") and hints("he is dizzy")


def test_a_hint_that_speaks_of_no_one_danger_names_none() -> None:
    assert hinted("it went through my arm") == frozenset()
    assert hinted("he is dizzy") == {"somebody-hurt"}
