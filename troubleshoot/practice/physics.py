"""What no machine does: a liquid line colder than the air that cools it, amps that fit no load.

Bands are wide, common practice, no source. Temperatures in F, pressures in psig.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.quantities.typed import Leg, NotUnderstood
from troubleshoot.reasoning.answers import Case
from troubleshoot.reasoning.measuring import read_text
from troubleshoot.reasoning.places import Place
from troubleshoot.reasoning.values import Values

HAIR: Final = 0.7
"""Degrees by which two thermometers may differ."""
WARM_HEAT: Final = 105.0
"""Supply air this warm is heated air."""
LOAD_AT_100: Final = 0.62
"""Share of rated load amps that a compressor draws at 100 F condensing."""
LOAD_PER_DEGREE: Final = 0.008
LOAD_BAND: Final = 0.15
STALLED: Final = 3.0
"""Times rated load amps from which a motor is taken to be stalled."""

Known = Callable[[str, Place | None], float | None]


def physical_problems(knowledge: Knowledge, case: Case, values: Values) -> Iterator[str]:
    """What cannot be so, one sentence each."""

    def known(quantity: str, place: Place | None = None) -> float | None:
        value = values.get(quantity, place)
        return None if value is None else value.number

    yield from _air(known)
    for circuit in case.unit.layout.places("circuit"):
        yield from _circuit(known, circuit)
        yield from _discharge(known, circuit)
    for test, place, legs in _typed_legs(knowledge, case):
        if test == "compressor-amps":
            yield from _compressor_amps(known, case, place, legs)
        elif test == "condenser-fan-amps":
            yield from _fan_amps(case, place, legs)
        elif test == "compressor-windings":
            yield from _windings(case, place, legs)
        elif test.startswith("line-volts"):
            yield from _line_volts(case, legs)
        elif test == "capacitance-out-of-circuit":
            yield from _capacitance(case, place, legs)


def _typed_legs(
    knowledge: Knowledge, case: Case
) -> Iterator[tuple[str, Place | None, tuple[float, ...]]]:
    """Every typed reading that counts, at each of its places, leg by leg."""
    for answer in case.answers:
        test = knowledge.tests[answer.test]
        if answer.text is None or answer.valid is False or not test.reads:
            continue
        try:
            legs: tuple[Leg, ...] = read_text(test, answer.text, knowledge).values
        except NotUnderstood:
            continue
        for place in answer.places:
            yield test.id, place, tuple(leg.value for leg in legs)


def _air(known: Known) -> Iterator[str]:
    indoor, mixed = known("return-air-temperature", None), known("mixed-air-temperature", None)
    outdoor, supply = known("outdoor-temperature", None), known("supply-air-temperature", None)
    heated = known("heating-supply-temperature", None)
    wet = known("return-wet-bulb", None)
    if indoor is not None and mixed is not None and outdoor is not None:
        low, high = sorted((indoor, outdoor))
        if not low - HAIR <= mixed <= high + HAIR:
            yield f"mixed air {mixed:.1f} F lies outside {low:.1f} to {high:.1f} F"
    if indoor is not None and wet is not None and wet > indoor:
        yield f"wet bulb {wet:.1f} F above dry bulb {indoor:.1f} F"
    entering = indoor if mixed is None else mixed
    if supply is not None and entering is not None and entering + HAIR < supply < WARM_HEAT:
        yield f"cooled supply air {supply:.1f} F is warmer than {entering:.1f} F entering"
    if heated is not None and indoor is not None and heated <= indoor:
        yield f"heated supply air {heated:.1f} F is no warmer than the return, {indoor:.1f} F"


def _circuit(known: Known, circuit: Place | None) -> Iterator[str]:
    suction, head = known("suction-pressure", circuit), known("head-pressure", circuit)
    if suction is not None and head is not None and suction >= head:
        yield f"{circuit}: suction {suction:.0f} psig is not below head {head:.0f} psig"
    evaporating = known("evaporating-temperature", circuit)
    condensing = known("condensing-temperature", circuit)
    outdoor = known("outdoor-temperature", None)
    if condensing is not None and outdoor is not None and condensing < outdoor + 3:
        yield f"{circuit}: condensing at {condensing:.1f} F gives no heat to {outdoor:.1f} F air"
    liquid = known("liquid-line-temperature", circuit)
    if liquid is not None and condensing is not None and liquid > condensing + HAIR:
        yield f"{circuit}: liquid line {liquid:.1f} F above condensing {condensing:.1f} F"
    if liquid is not None and outdoor is not None and liquid < outdoor - HAIR:
        yield f"{circuit}: liquid line {liquid:.1f} F below the outdoor air, {outdoor:.1f} F"
    line = known("suction-line-temperature", circuit)
    if line is not None and evaporating is not None and line < evaporating - HAIR:
        yield f"{circuit}: suction line {line:.1f} F below evaporating {evaporating:.1f} F"
    indoor = known("return-air-temperature", None)
    mixed = known("mixed-air-temperature", None)
    warmest = max((t for t in (outdoor, indoor, mixed) if t is not None), default=None)
    if line is not None and warmest is not None and line > warmest + 5:
        yield f"{circuit}: suction line {line:.1f} F is warmer than any air round it"
    entering = indoor if mixed is None else mixed
    if evaporating is not None and entering is not None and evaporating > entering - 5:
        yield f"{circuit}: evaporating at {evaporating:.1f} F takes no heat from {entering:.1f} F"


def _discharge(known: Known, circuit: Place | None) -> Iterator[str]:
    discharge = known("discharge-temperature", circuit)
    condensing = known("condensing-temperature", circuit)
    if discharge is not None and condensing is not None and discharge < condensing + 8:
        yield f"{circuit}: discharge {discharge:.0f} F is not above condensing {condensing:.1f} F"
    if discharge is not None and discharge > 290:
        yield f"{circuit}: at a discharge of {discharge:.0f} F the oil is burnt and nothing runs"


def _compressor_amps(
    known: Known, case: Case, place: Place | None, legs: tuple[float, ...]
) -> Iterator[str]:
    rated = case.unit.plate_value("compressor-rla", place)
    if rated is None or max(legs) == 0:
        return
    share = max(legs) / rated
    if share >= STALLED:
        stalled = case.unit.plate_value("compressor-lra", place) or 8 * rated
        if max(legs) > 1.05 * stalled:
            yield f"{place}: {max(legs):.0f} A is more than the motor draws when stalled"
        return
    if share > 1.3:
        yield f"{place}: {max(legs):.1f} A is {100 * share:.0f} % of {rated:g} A rated load"
    condensing = known("condensing-temperature", _circuit_of(case, place))
    if condensing is not None and min(legs) > 0:
        load = LOAD_AT_100 + LOAD_PER_DEGREE * (condensing - 100)
        if abs(share - load) > LOAD_BAND:
            yield (
                f"{place}: {100 * share:.0f} % of rated load amps does not fit condensing at "
                f"{condensing:.0f} F; about {100 * load:.0f} % would"
            )


def _circuit_of(case: Case, place: Place | None) -> Place | None:
    circuits = case.unit.layout.places("circuit")
    if place is None:
        return circuits[0]
    return next((c for c in circuits if c is not None and c.number == place.number), None)


def _fan_amps(case: Case, place: Place | None, legs: tuple[float, ...]) -> Iterator[str]:
    rated = case.unit.plate_value("condenser-fan-fla", place)
    if rated is not None and max(legs) > 6 * rated:
        yield f"{place}: {max(legs):.1f} A is over six times the fan's {rated:g} A"


def _windings(case: Case, place: Place | None, legs: tuple[float, ...]) -> Iterator[str]:
    """Three pairs of one motor: either all can be added up, or one that is open shows twice."""
    opened = sum(leg == float("inf") for leg in legs)
    if len(legs) == 3 and opened == 1:
        yield f"{place}: one open winding opens two pairs, not one"
    if any(0 < leg < 0.05 for leg in legs):
        yield f"{place}: {min(legs):g} ohm is a bolted short, not a winding"


def _line_volts(case: Case, legs: tuple[float, ...]) -> Iterator[str]:
    rated = case.unit.plate_value("nameplate-volts", None)
    for leg in legs if rated is not None else ():
        assert rated is not None
        if leg > 5 and abs(leg - rated) > 0.25 * rated:
            yield f"{leg:.0f} V is on no {rated:.0f} V supply"


def _capacitance(case: Case, place: Place | None, legs: tuple[float, ...]) -> Iterator[str]:
    rated = case.unit.plate_value("capacitor-rated", place)
    if rated is not None and max(legs) > 1.5 * rated:
        yield f"{place}: {max(legs):g} uF where {rated:g} uF is rated"
