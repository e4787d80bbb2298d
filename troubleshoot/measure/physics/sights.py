"""What is seen on a drawn unit: from its knobs and its state alone."""

from __future__ import annotations

from collections.abc import Iterator

from troubleshoot.measure.physics.draws import Drawn
from troubleshoot.physics.gas_heat import Fired
from troubleshoot.physics.knobs import CircuitFaults
from troubleshoot.physics.plate import DRAFT_SET_POINT
from troubleshoot.physics.unit import CircuitRead, Cooling

Row = dict[str, str]

STARTS = {"": "starts", "will not start": "hums-and-trips", "turns backward": "runs-backward"}
OPENED = {
    "high-pressure switch": "high-pressure-open",
    "low-pressure switch": "low-pressure-open",
}
LEAK_HEARD = 0.15
"""Share of its flow that leaks back, from which a compressor no longer pulls down as it should."""
SEEN_FROM = 0.2
"""Dirt on a coil or a wheel, as a share, from which it is seen."""


def _row(test: str, outcome: str, at: str = "") -> Row:
    return {"test": test, "outcome": outcome, **({"at": at} if at else {})}


def sights(drawn: Drawn, made: Cooling | None, fired: Fired | None) -> Iterator[Row]:
    """Looks that a mechanic takes, right as far as what is wrong can be seen."""
    air = drawn.faults.air
    yield _row("air-filters", "loaded" if air.filter > 3 else "clean")
    yield _row("blower-wheel", "dirty" if air.wheel_dirt > SEEN_FROM else "clean")
    if drawn.plate.three_phase:
        yield _row("blower-belt", "slipping" if air.belt_slip > 0.05 else "good")
        backward = drawn.faults.supply.reversed
        yield _row("phase-rotation", "reversed" if backward else "correct")
    yield _row("ducts-and-dampers", _ducts(air.duct))
    if made is not None:
        yield _row("evaporator-coil-face", "dirty" if air.coil_dirt > SEEN_FROM else "clean")
        yield from _of_circuits(drawn, made)
    if fired is not None:
        yield from _of_heat(drawn, fired)


def freezes(read: CircuitRead) -> bool:
    """Whether the coil of a circuit is cold enough to freeze what it draws from the air."""
    return read.running is not None and read.running.evaporated.surface < -0.5


def _ducts(resistance: float) -> str:
    if resistance > 2:
        return "damper-closed"
    if resistance < 0.35:
        return "disconnected"
    return "leaking" if resistance < 0.6 else "normal"


def _of_circuits(drawn: Drawn, made: Cooling) -> Iterator[Row]:
    blocked = drawn.faults.refrigerant.coil_blocked
    face = "matted" if blocked > 0.55 else "dirty" if blocked > SEEN_FROM else "clean"
    yield _row("condenser-coil-face", face)
    for number, read in enumerate(made.circuits, start=1):
        wrong = drawn.faults.of_circuit(number)
        yield from _of_fan(number, wrong, read)
        contactor = f"contactor {number}"
        pitted = "pitted" if wrong.pole_drop > 1 else "clean"
        yield _row("contactor-contacts", pitted, contactor)
        pulls = "pulls-in" if made.control.pulls_in else "chatters"
        yield _row("contactor-pull-in", pulls, contactor)
        if read.stopped in STARTS:
            yield _row("compressor-start-attempt", STARTS[read.stopped], f"compressor {number}")
        if read.running is not None:
            weak = "weak" if wrong.valve_leak > LEAK_HEARD else "pumps"
            yield _row("compressor-pumping", weak, f"compressor {number}")
        walk = OPENED.get(read.stopped, "all-closed")
        yield _row("safety-string-walk", walk, f"circuit {number}")
        if drawn.plate.metering == "fixed-orifice":
            size = "right" if abs(wrong.orifice - 1) < 0.05 else "wrong-size"
            yield _row("fixed-orifice", size, f"circuit {number}")
        yield _row("ice-on-coil", "frost" if freezes(read) else "none", f"circuit {number}")


def _of_fan(number: int, wrong: CircuitFaults, read: CircuitRead) -> Iterator[Row]:
    at = f"condenser fan {number}"
    slow = "slow" if read.fan.speed < 0.85 else "normal"
    yield _row("condenser-fan-turning", slow if read.fan.turns else "stopped", at)
    yield _row("condenser-fan-volts", "absent" if wrong.fan_dead else "present", at)
    if not read.fan.turns:
        yield _row("condenser-fan-hum", "silent" if wrong.fan_dead else "hums", at)
    yield _row("condenser-fan-hand-spin", "drags" if wrong.fan_drag > 0.2 else "free", at)


def _of_heat(drawn: Drawn, fired: Fired) -> Iterator[Row]:
    gas = drawn.faults.gas
    flue = "blocked" if gas.flue_blocked > 0.3 else "sooted" if gas.soot > 0.3 else "clear"
    yield _row("flue-outlet-and-hood", flue)
    yield _row("heat-exchanger-look", "soot" if gas.soot > 0.15 else "sound")
    wrong = "wrong-fuel" if abs(gas.orifice - 1) > 0.05 else "right"
    yield _row("burner-orifices", "blocked" if gas.burners_blocked > 0.1 else wrong)
    yield _row("flame-rod", "coated" if gas.rod < 0.5 else "clean")
    if fired.draft >= DRAFT_SET_POINT:
        yellow = fired.carbon_monoxide > 300
        yield _row("flame-picture", "yellow" if yellow else "even-blue")
