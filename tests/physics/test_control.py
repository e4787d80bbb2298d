"""The 24 V chain, by Ohm's law."""

from __future__ import annotations

import pytest

from troubleshoot.physics.control import HELD, control


def test_what_the_wires_take_is_missing_at_the_coil() -> None:
    """Source: Ohm's law; several contactors on one wire take several times as much."""
    for ohms in (0.5, 2.0, 6.0):
        for many in (1, 2):
            chain = control(1.0, 1.0, ohms, many)
            assert chain.secondary - chain.coil == pytest.approx(HELD * many * ohms)


def test_a_tenth_less_at_the_transformer_is_a_tenth_less_behind_it() -> None:
    """Source: a transformer's ratio; what its own load takes stays the same."""
    sound, low = control(1.0, 1.0, 1.4), control(0.9, 1.0, 1.4)
    assert sound.secondary - low.secondary == pytest.approx(2.7, abs=0.1)
    assert control(0.9, 1.0, 1.4) == control(1.0, 0.9, 1.4), "a wrong tap is a low supply"


def test_a_contactor_that_would_hold_may_not_pull_in() -> None:
    """Direction: a coil takes about three times its holding amps to pull in (common practice)."""
    chain = control(1.0, 1.0, 8.0)
    assert chain.coil > 18 and not chain.pulls_in
    assert control(1.0, 1.0, 1.4).pulls_in
