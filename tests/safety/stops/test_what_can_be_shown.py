"""Which numbers an instrument can have shown of a danger, and which are of something else."""

from __future__ import annotations

from dataclasses import replace

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.reopening import NotAResult
from troubleshoot.safety.stops.shown import as_read


@pytest.mark.parametrize("instrument", ["Detector", "SNIFFER", "Monitor", "Analyser", "analyzer"])
def test_what_a_gas_instrument_shows_is_of_gas_however_it_is_written(
    instrument: str, shipped: Knowledge
) -> None:
    breach = shipped.hazards["heat-exchanger-breach"]
    with pytest.raises(NotAResult, match="400 is not sound"):
        as_read(shipped, f"{instrument} shows 400 at the return", breach)


@pytest.mark.parametrize("instrument", ["thermometer", "manometer", "gauge"])
def test_what_another_instrument_shows_is_no_number_of_gas(
    instrument: str, shipped: Knowledge
) -> None:
    """The exchanger is looked at: 150 degrees beside the look say nothing of gas in the air."""
    typed = f"{instrument} shows 150 at the exchanger"
    assert as_read(shipped, typed, shipped.hazards["heat-exchanger-breach"]) == typed


def test_a_bound_below_zero_is_no_voltage_that_is_small(shipped: Knowledge) -> None:
    """With the leads changed over, less than -0.2 V may be the whole of the supply."""
    live = shipped.hazards["live-now"]
    assert as_read(shipped, "-0.2 V", live) == "-0.2 V"
    with pytest.raises(NotAResult, match="is not sound"):
        as_read(shipped, "<-0.2 V", live)


def test_a_number_counts_with_all_the_digits_that_were_shown(shipped: Knowledge) -> None:
    live = shipped.hazards["live-now"]
    assert as_read(shipped, "0.00001 V", live) == "0.00001 V"


def test_the_most_that_there_can_be_still_is_a_reading_and_more_is_none(
    shipped: Knowledge,
) -> None:
    """Of a flame more is better."""
    flame = shipped.hazards["flame-signal-without-flame"]
    assert as_read(shipped, "1000 uA", flame) == "1000 uA"
    with pytest.raises(NotAResult, match="is not sound"):
        as_read(shipped, "1001 uA", flame)


def test_volts_are_held_to_no_share_that_is_read_off_the_same_legs(shipped: Knowledge) -> None:
    """The unbalance of three legs is a percentage of them, and cannot be 230."""
    supply = replace(shipped.hazards["motor-on-bad-supply"], all_clear="line-volts-running")
    assert as_read(shipped, "230 V", supply) == "230 V"
    with pytest.raises(NotAResult, match="is not sound"):
        as_read(shipped, "4160 V", supply)
