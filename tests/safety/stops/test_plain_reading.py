"""A reading with other words or numbers beside it, and what a danger's own orders want shown."""

from __future__ import annotations

import pytest

from tests.safety.stops.repairs_told import NOT_SHOWN, SHOWN, rows
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.plain_reading import why_not_plain
from troubleshoot.safety.stops.reopening import NotAResult
from troubleshoot.safety.stops.shown import as_read

SMOKE, GAS = "smoke-or-heat-now", "gas-odour"


@pytest.mark.parametrize(("hazard", "typed"), rows(NOT_SHOWN))
def test_what_the_instrument_does_not_show_is_asked_for_again(
    hazard: str, typed: str, shipped: Knowledge
) -> None:
    with pytest.raises(NotAResult):
        as_read(shipped, typed, shipped.hazards[hazard])


@pytest.mark.parametrize(("hazard", "typed"), rows(SHOWN))
def test_a_number_with_where_and_when_shows_it(hazard: str, typed: str, shipped: Knowledge) -> None:
    assert as_read(shipped, typed, shipped.hazards[hazard]) == typed


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ("0 % LEL but 40 at the union", "40 may be of anything: type it with its unit, % LEL."),
        ("1/0 % LEL", "1/ may be of anything: type it with its unit, % LEL."),
        ("0 % LEL says the neighbour", "I cannot tell what the other words say of the number."),
        ("0 % LEL of CO", "I cannot tell what the other words say of the number."),
        ("0 % LEL at the valve at 9:10, 10 min after", ""), ("0 % LEL, 0 ppm CO, 20.9 % O2", ""),
    ],
)  # fmt: skip
def test_what_stands_beside_a_number_is_judged_as_at_the_sweep(typed: str, why: str) -> None:
    start = typed.index("0 % LEL")
    found = why_not_plain(typed, [(start, start + 7)], "combustible-gas-sweep", "% LEL")
    assert found.startswith(why) and bool(found) is bool(why)


@pytest.mark.parametrize(
    ("hazard", "typed", "why"),
    [
        (GAS, "soap test: no bubbles", "No look and no word shows this"),
        (GAS, "0 ppm", "may be of anything"), (GAS, "detector reads 0", "may be of anything"),
        ("wet-electrical", "all fine and dry", "have it tested"),
        ("wet-electrical", "dry, 0.4 Mohm to ground", "is not sound"),
        ("wet-electrical", "dry, under 200 Mohm", "is not sound"),
        ("wet-electrical", "dry, 118 V at the lugs", "is not sound"),
        ("wet-electrical", "dry, 0.9 Mohm to ground", "is not sound"),
        ("wet-electrical", "dead, 2.1 V at the lugs", "is not sound"),
        ("wet-electrical", "dead, over 1 V at the lugs", "is not sound"),
        ("wet-electrical", "0 V on L1 and 480", "480 may be of anything"),
        ("wet-electrical", "0/480/0 V", "may be of anything"),
        ("overhead-line-near", "ladder 9 ft from the line, measured", "^9 ft from the line is"),
        ("overhead-line-near", "looked at it from 30 yards away", "another time or place"),
        (SMOKE, "no smoke seen from 30 ft away", "another time or place"),
    ],
)  # fmt: skip
def test_what_its_own_orders_want_is_asked_for(
    hazard: str, typed: str, why: str, shipped: Knowledge
) -> None:
    """Regression: a switch that was wiped dry was lifted, and one leg of three; 20 ft was not."""
    with pytest.raises(NotAResult, match=why):
        as_read(shipped, typed, shipped.hazards[hazard])


PLAIN = (
    "ac and are at bled dc get getting got have i in is it its me meter metered now of on read "
    "reading reads says show showing shows tested the there they three to"
)


@pytest.mark.parametrize("word", PLAIN.split())
def test_a_word_that_takes_nothing_away_may_stand_beside_a_number(word: str) -> None:
    assert why_not_plain(f"0 V {word}", [(0, 3)], "verified-dead", "V") == ""


@pytest.mark.parametrize("beside", ["none", "n\u00f4w", "\uff4e\uff4f\uff57"])
def test_what_is_written_as_no_word_of_a_reading_is_asked_for_again(beside: str) -> None:
    """None of it, or letters that only look like those of now."""
    assert why_not_plain(f"0 V {beside}", [(0, 3)], "verified-dead", "V")
