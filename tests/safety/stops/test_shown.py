"""Which numbers and words show that a danger has gone, and which of them say nothing of it."""

from __future__ import annotations

import pytest

from tests.building import base, measured
from tests.safety.stops.little_rules import hazard
from troubleshoot.knowledge.model import Knowledge, Quantity, Read
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.safety.stops.numbers_shown import numbers_in
from troubleshoot.safety.stops.reopening import NotAResult
from troubleshoot.safety.stops.shown import as_read, is_share_of_nothing, of_what

LEL, LFL, PPM, VOLTS = "percent-LEL", "percent-LFL", "ppm", "V"
WITHOUT_SWEEPS = base(
    hazards=[hazard("fumes", "whole-job")],
    quantities=[Quantity("share", LEL, "share"), Quantity("parts", PPM, "parts")],
)


@pytest.mark.parametrize(
    ("typed", "units", "told"),
    [
        ("0 ppm CO, 20.9 % O2", (PPM,), [("0 ppm", PPM)]),
        ("20 % LEL before, 0 % lel now", (LEL,), [("20 % LEL", LEL), ("0 % lel", LEL)]),
        ("under 9 ppm; now 2 ppm.", (PPM,), [("under 9 ppm", PPM), ("2 ppm", PPM)]),
        ("7 in. wc, steady", ("in-wc",), [("7 in wc", "in-wc")]),
        ("L1 5V, L2 -0.2 V", (VOLTS,), [("5 V", VOLTS), ("-0.2 V", VOLTS)]),
        (">= 1,000 ppm", (PPM,), [(">= 1,000 ppm", PPM)]),
        (".5 ppm", (PPM,), [(".5 ppm", PPM)]),
        ("8 lb 4 oz", ("lb", "oz"), [("8 lb 4 oz", "lb")]),
        ("0 % LFL", (LEL, LFL), [("0 % LFL", LFL)]),
        ("4-gas meter shows 3", (LEL,), []),
    ],
)
def test_each_number_that_is_told_in_a_unit_is_heard_with_its_bound(
    typed: str, units: tuple[str, ...], told: list[tuple[str, str]]
) -> None:
    assert list(numbers_in(typed, units)) == told


@pytest.mark.parametrize(
    ("typed", "number"),
    [
        ("3 PCT at the valve", "3"), ("3 Percent", "3"), ("3 per cent at the union", "3"),
        ("3 %", "3"), ("3 percent", "3"), ("3 pct of it", "3"), ("<3 %", "<3"),
        ("it shows 4 at all joints", "4"), ("Detector READS 5", "5"), ("it's 3", "3"),
        ("got 3", "3"),
    ],
)  # fmt: skip
def test_a_share_or_what_an_instrument_shows_is_heard_in_the_dangers_own_unit(
    typed: str, number: str
) -> None:
    assert list(numbers_in(typed, (LEL,), bare=(LEL,))) == [(number, LEL)]


@pytest.mark.parametrize(
    "typed",
    ["21 % oxygen", "reads 20.9 % O2", "45 pct RH", "it shows 50 % humidity", "3", "3 unions"],
)
def test_what_is_of_the_air_or_of_nothing_is_no_number_of_the_gas(typed: str) -> None:
    assert list(numbers_in(typed, (LEL,), bare=(LEL,))) == []


COUNTED = [
    "h", "hours", "min", "minutes", "s", "secs", "times", "joints", "unions", "fittings", "points",
    "places", "spots", "ft", "feet", "in", "inches", "psi", "psig", "degrees", "F", "C", "o'clock",
    "oclock", "am", "PM", ":30", "/4", "lbs", "sides", "ends",
]  # fmt: skip


@pytest.mark.parametrize("what", COUNTED)
def test_what_is_counted_or_read_off_a_clock_or_gauge_is_no_number_of_the_gas(what: str) -> None:
    """Said after "shows", the number would be taken for one of the gas."""
    said = f"it shows 7{'' if what[0] in ':/' else ' '}{what}"
    assert list(numbers_in("it shows 7 now", (LEL,), bare=(LEL,))) == [("7", LEL)]
    assert list(numbers_in(said, (LEL,), bare=(LEL,))) == []


def test_a_share_is_none_of_a_danger_that_is_read_in_another_unit() -> None:
    assert list(numbers_in("3 %", (PPM,), bare=(PPM,))) == []
    assert list(numbers_in("it shows 3", (PPM,), bare=(PPM,))) == [("3", PPM)]
    assert list(numbers_in("3 %", (LFL,), bare=(LFL,))) == [("3", LFL)]


@pytest.mark.parametrize("typed", ["1e-400 % LEL", "0e0 % LEL", "2E3 ppm", "1.5e-9 % LFL"])
def test_no_instrument_shows_an_exponent(typed: str, shipped: Knowledge) -> None:
    """Regression: 1e-400 was read as 400."""
    with pytest.raises(NotAResult, match="exponent"):
        as_read(shipped, typed, shipped.hazards["gas-odour"])


@pytest.mark.parametrize(
    ("name", "sound", "unsound"),
    [
        ("gas-odour", "0 % LFL", "3 % LFL"), ("gas-odour", "0 % LEL", "3 pct"),
        ("gas-odour", "0 % LEL, 4 JOINTS tight", "shows 4"), ("live-now", "-0.2 V", "40 V"),
        ("heat-exchanger-breach", "400 ppm in the Flue", "40 ppm in the room"),
        ("heat-exchanger-breach", "0 % LEL in the flue", "5 % LEL in the flue"),
        ("heat-exchanger-breach", "0 % LFL", "over 0 % LFL"),
        ("carbon-monoxide-in-room", "under 5 ppm", "over 5 ppm"),
        ("carbon-monoxide-in-room", "2 ppm in the flue", "40 ppm in the flue"),
        ("carbon-monoxide-in-room", "it shows 2 ppm", "it shows 50"),
        ("cabinet-not-bonded", "1 V", "over 1 V"),
        ("flame-signal-without-flame", "over 5 uA", "1 uA"),
    ],
)  # fmt: skip
def test_a_number_is_sound_on_the_side_that_its_all_clear_says(
    name: str, sound: str, unsound: str, shipped: Knowledge
) -> None:
    """Where less is better, "over 1 V" may be any voltage; of a flame more is better."""
    assert as_read(shipped, sound, shipped.hazards[name]) == sound
    with pytest.raises(NotAResult, match="is not sound"):
        as_read(shipped, unsound, shipped.hazards[name])


SHARES_SAID = (
    "{} LEL", "{} lel at the union", "{} % of the lel", "{} pct of LEL", "{} per cent. lfl",
    "{} of LEL", "LEL {}", "lel {} at the union", "LEL: {}", "LFL is {}", "lfl reads {} now",
    "LEL = {}", "LEL of {}", "% LEL {}", "LEL was at {}", "LEL under {}", "LEL <{}", "{} LEL 9 min",
)  # fmt: skip


@pytest.mark.parametrize("said", SHARES_SAID)
@pytest.mark.parametrize(
    "name", ["gas-odour", "flammable-refrigerant-alarm", "heat-exchanger-breach"]
)
def test_a_share_is_judged_however_it_is_said(name: str, said: str, shipped: Knowledge) -> None:
    """Regression: LEL 3, and LEL is 40 at the union, lifted a STOP for gas."""
    with pytest.raises(NotAResult, match="is not sound"):
        as_read(shipped, said.format(40), shipped.hazards[name])
    if not {"under", "<", "was"} & {*said.replace("<", "< ").split()}:
        assert as_read(shipped, said.format(0), shipped.hazards[name])


@pytest.mark.parametrize("typed", ["LEL 0, LEL 4", "LEL 0 at the cock, 4 at the union", "LEL 0/4"])
def test_no_second_share_passes_behind_a_sound_one(typed: str, shipped: Knowledge) -> None:
    with pytest.raises(NotAResult):
        as_read(shipped, typed, shipped.hazards["gas-odour"])


@pytest.mark.parametrize(
    ("fuel", "sound", "unsound"),
    [("natural-gas", "7 in wc", "12 in wc"), ("propane", "12 in wc", "7 in wc")],
)
def test_a_number_is_judged_by_the_limits_of_the_unit_that_it_was_read_on(
    fuel: str, sound: str, unsound: str, shipped: Knowledge
) -> None:
    unit, high = read_unit(shipped, {"fuel": fuel}), shipped.hazards["gas-pressure-too-high"]
    assert as_read(shipped, sound, high, unit) == sound
    with pytest.raises(NotAResult, match="is not sound"):
        as_read(shipped, unsound, high, unit)


@pytest.mark.parametrize(
    ("typed", "sound"),
    [("0 ppm", True), ("0 % LEL", True), ("1 ppm", False), ("-1 ppm", False), ("<1 ppm", False),
     (">0 ppm", False)],
)  # fmt: skip
def test_where_no_sweep_says_what_is_sound_only_nothing_is(typed: str, sound: bool) -> None:
    fumes = WITHOUT_SWEEPS.hazards["fumes"]
    if sound:
        assert as_read(WITHOUT_SWEEPS, typed, fumes) == typed
    else:
        with pytest.raises(NotAResult):
            as_read(WITHOUT_SWEEPS, typed, fumes)


AIR = measured(
    "air", {"normal": {"at_most": 5}, "leak": {"above": 5}}, reads=(Read("air", unit=LFL),)
)
ALARM = hazard("alarm", "whole-job", all_clear="air")
IN_LFL = base([AIR], hazards=[ALARM], quantities=[Quantity("air", LEL, "air")])


def test_a_bare_share_is_of_the_unit_in_which_the_dangers_own_sweep_is_read() -> None:
    """Its quantity is kept in another."""
    assert as_read(IN_LFL, "3 % LFL", ALARM) == "3 % LFL"
    assert as_read(IN_LFL, "0 ppm", ALARM) == "0 ppm", "of what else, no sweep of its own says"
    with pytest.raises(NotAResult, match="6 is not sound"):
        as_read(IN_LFL, "6 %, swept", ALARM)
    with pytest.raises(NotAResult, match="% LFL or % LEL or ppm"):
        as_read(IN_LFL, "3 %, swept", ALARM)


@pytest.mark.parametrize(
    ("name", "example"),
    [
        ("gas-odour", "(% LEL or % LFL or ppm)"), ("carbon-monoxide-in-room", "(ppm)"),
        ("live-now", "(V)"), ("ladder-and-hatch", "(0 ppm)"),
    ],
)  # fmt: skip
def test_whoever_tells_nothing_is_told_in_which_unit_to_read(
    name: str, example: str, shipped: Knowledge
) -> None:
    with pytest.raises(NotAResult, match="Give the reading with its unit") as refused:
        as_read(shipped, "yes", shipped.hazards[name])
    assert example in str(refused.value)


@pytest.mark.parametrize(
    ("name", "typed"),
    [
        ("gas-odour", "valve 7"), ("live-now", "fan 7"), ("ladder-and-hatch", "7"),
        ("ladder-and-hatch", "ladder"),
    ],
)  # fmt: skip
def test_one_word_or_a_number_of_nothing_shows_nothing(
    name: str, typed: str, shipped: Knowledge
) -> None:
    with pytest.raises(NotAResult, match="Give the reading with its unit"):
        as_read(shipped, typed, shipped.hazards[name])


@pytest.mark.parametrize(
    ("typed", "share"),
    [
        ("0 %", True), ("3 pct.", True), (" <1 PCT ", True), ("0 per cent", True),
        ("0 % LEL", False), ("0 ppm", False), ("0", False), ("gas 0 %", False),
    ],
)  # fmt: skip
def test_a_share_without_a_word_is_of_nothing_yet(typed: str, share: bool) -> None:
    assert is_share_of_nothing(typed) is share


INSTRUMENTS = [
    "meter", "Detector", "sniffer", "analyser", "analyzer", "monitor", "gauge", "gage", "tester",
    "probe", "sensor", "instrument", "scope", "CGI", "gas tech", "thermometer", "camera", "clamp",
]  # fmt: skip


@pytest.mark.parametrize("instrument", INSTRUMENTS)
def test_of_a_share_it_is_said_of_what_it_is_and_what_showed_it(
    instrument: str, shipped: Knowledge
) -> None:
    said = f"gas, {instrument}"
    assert of_what(shipped, said) == said


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ("LEL, gas", "Say both"), ("detector", "Say both"), ("the detector", "Say both"),
        ("detector and", "Say both"), ("with detector", "Say both"), ("of it, scope", "Say both"),
        ("something, scope", "Say both"), ("no detector at hand, gas", "nothing was read"),
    ],
)  # fmt: skip
def test_a_share_of_nothing_known_or_that_nothing_showed_is_asked_of_again(
    typed: str, why: str, shipped: Knowledge
) -> None:
    with pytest.raises(NotAResult, match=why):
        of_what(shipped, typed)


def test_one_word_of_the_trade_among_others_says_of_what_it_is(shipped: Knowledge) -> None:
    assert of_what(shipped, "somethingelse, gas, scope")


@pytest.mark.parametrize(
    ("name", "typed"),
    [
        ("live-now", "4160 V"), ("live-now", "99999 V"), ("live-now", "-400 V"),
        ("gas-odour", "5000 % LEL at the union"), ("gas-odour", "3 PCT at the union and valve"),
        ("gas-odour", "3 per cent at the union"), ("gas-odour", "under 5 % LEL at the union"),
        ("carbon-monoxide-in-room", "99999999 ppm"),
        ("flammable-refrigerant-alarm", "3 % at the union and valve"),
        ("flammable-refrigerant-alarm", "detector shows 12 at the coil"),
        ("heat-exchanger-breach", "detector shows 400 at the return"),
    ],
)  # fmt: skip
def test_no_number_beyond_what_can_be_and_none_of_the_danger_shows_it_gone(
    name: str, typed: str, shipped: Knowledge
) -> None:
    """Regression: what no outcome takes counted as sound, and so did a share without its unit."""
    with pytest.raises(NotAResult):
        as_read(shipped, typed, shipped.hazards[name])


@pytest.mark.parametrize(
    ("name", "typed"),
    [
        ("gas-odour", "detector was 10.30.12, no gas at the union"),
        ("gas-odour", "it shows 1.2.3 at the valve"), ("gas-odour", "reads 1,2,3 at the valve"),
        ("live-now", "it shows 1.2.3 V"),
    ],
)  # fmt: skip
def test_what_is_no_number_is_refused_in_words(name: str, typed: str, shipped: Knowledge) -> None:
    """Regression: it was a traceback at the reopening."""
    with pytest.raises(NotAResult):
        as_read(shipped, typed, shipped.hazards[name])


@pytest.mark.parametrize(
    ("name", "typed"),
    [
        ("live-now", "0 V"), ("live-now", "-0.2 V"), ("gas-odour", "0 % LEL at the union"),
        ("carbon-monoxide-in-room", "2 ppm"),
        ("flammable-refrigerant-alarm", "detector shows 0 at the coil"),
        ("heat-exchanger-breach", "exchanger replaced, burners looked at, flame steady"),
    ],
)  # fmt: skip
def test_what_reads_sound_still_shows_it_gone(name: str, typed: str, shipped: Knowledge) -> None:
    assert as_read(shipped, typed, shipped.hazards[name]) == typed
