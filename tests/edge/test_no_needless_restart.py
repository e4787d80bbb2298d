"""A unit that is locked out with a bad part in it is not restarted just to read something."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

CASE: dict[str, Any] = {
    "unit": {
        "refrigerant": "R-410A", "metering": "txv", "circuits": "one", "supply-phase": "single",
        "compressor-phase": "single", "condenser-fan-phase": "single", "condenser-fans": "one",
        "blower-motor": "three-phase", "condenser-fan-fla": "1.8 A", "nameplate-volts": "230 V",
        "capacitor-rated": {"capacitor condenser fan 1": "7.5 uF"},
    },
    "complaint": "fails-hot-afternoons",
    "readings": {
        "condenser-fan-turning": "slow",
        "capacitance-out-of-circuit": {"at": "capacitor condenser fan 1", "text": "5.1 uF"},
        "condenser-fan-amps": "2.4 A",
        "condenser-fan-hand-spin": "free",
        "condenser-coil-face": "clean",
        "head-pressure": "430 psig",
        "line-volts-running": "230/231/230",
    },
}  # fmt: skip


def test_a_bad_capacitor_found_locked_out_ends_the_search_locked_out(
    command: Callable[..., tuple[int, str, str]], case_file: Callable[[dict[str, Any]], str]
) -> None:
    """Regression: the unit was put together and started again, with the bad part in it."""
    plain = json.loads(command("diagnose", "--answers", case_file(CASE), "--json")[1])
    asked = [row["test"] for row in plain["asked"]]
    found = asked.index("capacitance-out-of-circuit")
    assert plain["causes"][0]["id"] == "condenser-fan-capacitor-weak"
    assert plain["ending"] == "named"
    assert "lock-off" not in asked[found:] and "restart-and-watch" not in asked[found:]
