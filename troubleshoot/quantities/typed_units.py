"""How people spell units, and which unit a spelling stands for where a kind is expected.

A spelling may stand for several units ("#" is pounds or psi); the kind that the question asks
for decides, and a spelling that is left with two meanings is refused, never guessed.
"""

import re
from typing import Final

from troubleshoot.quantities.typed_text import Unclear
from troubleshoot.quantities.units import UNITS, Unit, unit

_FILLER: Final = re.compile(r"[ .]|(?<=[a-zA-Z])-(?=[a-zA-Z])")
_DEGREES: Final = frozenset({"°", "deg", "degs", "degree", "degrees"})

# Only the capital letter makes these megohms, so they are compared as typed.
_CAPITAL_MEG: Final = frozenset({"M", "Mohm", "Mohms", "M\u03a9"})

_TWO_MEANINGS: Final = {
    "m": ("could be milli, mega, minutes or months", "write the unit in full"),
    "mohm": ("could be milliohms or megohms", "write Mohm or Meg for megohms"),
    "mohms": ("could be milliohms or megohms", "write Mohm or Meg for megohms"),
    "m\u03c9": ("could be milliohms or megohms", "write Mohm or Meg for megohms"),
    "mf": ("could be millifarads or microfarads", "write uF or MFD for microfarads"),
    "mfarad": ("could be millifarads or microfarads", "write uF or MFD for microfarads"),
}

_OF_VACUUM: Final = "write 10 in Hg vacuum where it is ten inches below the air outside"

_OVER_ROOM_AIR: Final = {"psig": "psi", "kPa-gauge": "kPa-diff", "bar-gauge": "bar-diff"}
"""What a gauge is read in, and the difference that it shows where inches of water are wanted: fuel
gas and air are told by how far they stand over the air of the room."""

_BELOW_ZERO: Final = {"in-Hg": "in-Hg-gauge"}

_SPELLINGS: Final[tuple[tuple[str, str], ...]] = (
    ("F F-diff", "f degf °f degreesf fahrenheit"),
    ("C C-diff", "c degc °c degreesc celsius"),
    ("K", "k kelvin"),
    ("V", "v vac vdc volt volts voltac voltdc voltsac voltsdc acv dcv"),
    ("mV", "mv mvac mvdc millivolt millivolts"),
    ("kV", "kv kilovolt kilovolts"),
    ("A", "a aac adc amp amps ampere amperes"),
    ("mA", "ma maac madc milliamp milliamps"),
    ("uA", "u μ ua μa uadc μadc microamp microamps"),
    ("uF", "u μ uf μf mfd mfds ufd μfd microfarad microfarads"),
    ("nF", "nf nanofarad nanofarads"),
    ("ohm", "ohm ohms ω"),
    ("kohm", "k kohm kohms kω kilohm kilohms"),
    ("Mohm", "meg megs megohm megohms megaohm megaohms megω"),
    ("psig psi", "# psi lb lbs pound pounds"),
    ("psig", "psig"),
    ("psia", "psia"),
    ("kPa-gauge kPa-diff kPa", "kpa"),
    ("bar-gauge bar-diff bar", "bar"),
    ("kPa-gauge", "kpag"),
    ("kPa", "kpaa kpaabs"),
    ("bar-gauge", "barg"),
    ("bar", "bara barabs"),
    ("Pa-diff", "pa pascal"),
    ("in-Hg", 'inhg "hg incheshg inchesofmercury'),
    ("in-Hg-vacuum", 'inhgvac inhgvacuum "hgvac "vac "vacuum invac invacuum vacuum'),
    ("in-Hg-vacuum", "inchesvac inchesvacuum inchesofvac inchesofvacuum inofvac inofvacuum"),
    ("in-wc", 'inwc "wc wc incheswc iwc inwg "wg inh2o "h2o inofwater inchesofwater'),
    ("in in-wc", "in \" '' inch inches"),
    ("micron", "u μ um μm micron microns mtorr millitorr millitorrs"),
    ("torr", "torr torrs"),
    ("percent percent-points", "% percent pct"),
    ("percent", "%rh rh percentrh"),
    ("percent-points", "points point %points percentagepoints"),
    ("percent-LEL", "lel %lel percentlel"),
    ("percent-LFL", "lfl %lfl percentlfl"),
    ("times ratio", "x times :1 to1"),
    ("cfm", "cfm ft3/min cuft/min"),
    ("cfh", "cfh ft3/h ft3/hr cuft/h cuft/hr"),
    ("cfm-per-ton", "cfm/ton cfmperton"),
    ("gal/h", "gph gal/hr"),
    ("lb/h", "lb/hr lbs/hr lbs/h"),
    ("ft/min", "fpm"),
    ("ft", "ft ' foot feet"),
    ("ft2", "sqft"),
    ("in2", "sqin"),
    ("ft3", "ft3 cuft cf cubicfeet"),
    ("gal", "gal gals gallon gallons"),
    ("in-per-ft", 'in/ft inperft inperfoot "/ft "perft inchperfoot inchesperfoot'),
    ("lb", "# lb lbs pound pounds"),
    ("oz oz-per-in2", "oz ozs ounce ounces"),
    ("oz-per-in2", "oz/in2 osi ozin ozsin"),
    ("mbar", "mbar mbars millibar millibars"),
    ("kg", "kg kilo kilos"),
    ("g", "g gram grams"),
    ("s", "s sec secs second seconds"),
    ("min", "min mins minute minutes"),
    ("h", "h hr hrs hour hours"),
    ("day", "d day days"),
    ("month", "mo mos month months"),
    ("year", "y yr yrs year years"),
    ("W", "w watt watts"),
    ("kW", "kilowatt kilowatts"),
    ("hp", "horsepower"),
    ("Btu/h", "btuh btu/hr btus/h btus/hr btu btus"),
    ("ton", "ton tons"),
    ("Btu/ft3", "btu/cuft btu/cf"),
    ("lb/ft3", "lb/cuft lbs/cuft"),
    ("ft3/lb", "cuft/lb"),
    ("grains/lb", "gr/lb grain/lb"),
)


def _key(spelling: str) -> str:
    """Return the spelling without blanks, full stops and the hyphens within a word."""
    return _FILLER.sub("", spelling)


def _all_spellings() -> dict[str, tuple[str, ...]]:
    """Return the units of every spelling; each unit's own id and spoken form are spellings too."""
    found: dict[str, list[str]] = {}
    for ids, words in _SPELLINGS:
        for word in words.split():
            found.setdefault(word, []).extend(ids.split())
    for one in UNITS.values():
        for own in (_key(one.id).lower(), _key(one.spoken).lower()):
            if own and own not in _TWO_MEANINGS:
                found.setdefault(own, []).append(one.id)
    return {spelling: tuple(dict.fromkeys(ids)) for spelling, ids in found.items()}


_UNITS_OF: Final = _all_spellings()


def read_unit(spelling: str, expected: Unit, below_zero: bool = False) -> str | None:
    """Return the id of the unit that `spelling` stands for where `expected` is asked for.

    `below_zero`: the number is. No absolute pressure lies there: -5 inHg is what a compound gauge
    shows in a vacuum.
    None means that none was typed, or only "degrees", so that the caller assumes `expected`.
    Raises Unclear for an unknown word, a unit of another kind, or a spelling with two meanings.
    """
    as_typed = _key(spelling)
    key = as_typed.lower()
    if spelling in ("", ".") or (key in _DEGREES and expected.kind.startswith("temperature")):
        return None
    meanings = ("Mohm",) if as_typed in _CAPITAL_MEG else _UNITS_OF.get(key)
    if meanings is None:
        why, instead = _TWO_MEANINGS.get(key, (f"holds no unit I know ({spelling})", ""))
        raise Unclear(why, instead)
    if expected.id == "in-wc":
        meanings = tuple(dict.fromkeys(_OVER_ROOM_AIR.get(one, one) for one in meanings))
    if below_zero and expected.kind == "gauge pressure":
        meanings = tuple(_BELOW_ZERO.get(one, one) for one in meanings)
    fitting = [one for one in meanings if unit(one).kind == expected.kind]
    if expected.id in fitting:
        return expected.id
    if len(fitting) == 1:
        return fitting[0]
    if fitting:
        raise Unclear(f"could be in {' or '.join(fitting)}", "write the unit in full")
    instead = _OF_VACUUM if "in-Hg" in meanings and expected.kind == "gauge pressure" else ""
    raise Unclear(f"is given as {_kinds_of(meanings)} where {expected.kind} is asked for", instead)


def is_unit(spelling: str) -> bool:
    """Whether people spell some unit so, of whatever kind."""
    as_typed = _key(spelling)
    key = as_typed.lower()
    return as_typed in _CAPITAL_MEG or key in _UNITS_OF or key in _TWO_MEANINGS or key in _DEGREES


def _kinds_of(unit_ids: tuple[str, ...]) -> str:
    """Return the kinds of the units in words; a difference goes without saying beside its kind."""
    kinds = dict.fromkeys(unit(one).kind for one in unit_ids)
    plain = [kind for kind in kinds if "difference" not in kind]
    return " or ".join(plain or kinds)
