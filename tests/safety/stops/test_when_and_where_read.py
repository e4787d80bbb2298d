"""What is told is of this unit, of now and of the danger, or the person is told what it lacks.

Read below, at the next unit, before the repair or by a nose, it shows nothing of the gas that
whoever lights this unit would stand in.
"""

from __future__ import annotations

import pytest

from troubleshoot.safety.steps import GAS_SWEEP, REFRIGERANT_SWEEP, ROOM_AIR
from troubleshoot.safety.stops.no_result import why_no_look, why_no_result
from troubleshoot.safety.stops.of_the_danger import why_by_no_instrument, why_not_now
from troubleshoot.safety.stops.reopening import NotAResult
from troubleshoot.safety.stops.shown import of_this_unit

SWEEPS = (GAS_SWEEP, REFRIGERANT_SWEEP, ROOM_AIR)
ELSEWHERE = "read at another time or place"
NO_READING = "read by no instrument that was on and proved"


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("remade the union at RTU-3", "RTU-2"),
        ("unit 12 locked out", "RTU-2"),
        ("0 V at AHU 1", "4"),
    ],
)
def test_what_was_done_at_another_unit_leaves_this_one_as_it_was(typed: str, name: str) -> None:
    with pytest.raises(NotAResult, match="of another unit than this one"):
        of_this_unit(typed, name)


@pytest.mark.parametrize(
    ("typed", "name"),
    [("remade the union at RTU-2", "RTU-2"), ("union remade", "RTU-2"), ("RTU-3 shut", "kitchen")],
)
def test_what_names_no_other_number_is_of_this_unit(typed: str, name: str) -> None:
    of_this_unit(typed, name)


@pytest.mark.parametrize(
    ("said", "why"),
    [
        ("0 % lel before the repair", "read before it was made safe"),
        ("0 % lel when we arrived", "read before it was made safe"),
        ("0 % lel before the repair, 0 % lel after it", ""),
        ("6 % lel at first, 0 now", ""),
        ("0 % lel", ""),
    ],
)
def test_a_reading_from_before_counts_only_with_one_from_since(said: str, why: str) -> None:
    found = why_not_now(said)
    assert why in found and bool(found) is bool(why)


@pytest.mark.parametrize(
    ("said", "sweep", "why"),
    [
        ("0 % lel in the lobby", GAS_SWEEP, ELSEWHERE),
        ("0 % lfl in the lobby", REFRIGERANT_SWEEP, ELSEWHERE),
        ("2 ppm in the lobby", ROOM_AIR, ""),
        *(("the alarm went quiet", sweep, NO_READING) for sweep in SWEEPS),
        *(("the alarm went quiet at 0", sweep, "") for sweep in SWEEPS),
        *(("it looks tight", sweep, NO_READING) for sweep in SWEEPS),
        *(("0 at every joint", sweep, "") for sweep in SWEEPS),
        ("the alarm went quiet", "made-safe", ""),
        ("it looks sound", "made-safe", ""),
        ("the ladder is tied, looks safe", "", ""),
    ],
)
def test_gas_in_the_air_is_read_at_its_place_by_what_shows_it(
    said: str, sweep: str, why: str
) -> None:
    """A danger that no sweep shows is looked at: a ladder is safe by the eye."""
    found = why_by_no_instrument(said, sweep)
    assert why in found and bool(found) is bool(why)


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ("nothing was found", "is not put right. The STOP stands until it is"),
        ("leak not found, union remade", "is not put right. The STOP stands until it is"),
        ("nobody ever came", "nobody came for it"),
        ("nobody was hurt, union remade", ""),
        ("found the limit jumpered, pulled the jumper", ""),
        ("the rag was taken out of the flue, called the owner", ""),
        ("found the limit jumpered", "makes nothing safe: have it undone first"),
    ],
)
def test_why_a_result_is_none_is_said_and_an_honest_one_passes(typed: str, why: str) -> None:
    found = why_no_result(typed)
    assert why in found and bool(found) is bool(why)


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ("bubbles at the union", "shows that the danger is still there. The STOP stands"),
        ("union still leaking", "is not put right"),
        ("0 ppm with the limit jumpered", "makes nothing safe: have it undone first"),
        ("nobody looked", "nothing was read or looked at"),
        ("no bubbles at the union", ""),
        ("0 ppm, jumper removed from the limit", ""),
    ],
)
def test_why_a_look_shows_nothing_is_said_and_a_sound_one_passes(typed: str, why: str) -> None:
    found = why_no_look(typed)
    assert why in found and bool(found) is bool(why)
