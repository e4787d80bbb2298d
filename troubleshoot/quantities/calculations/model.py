"""What a calculation is: its parameters and results with units, formula, source and cautions."""

from collections.abc import Callable, Mapping
from dataclasses import field
from typing import Any, Final, Literal

from troubleshoot.frozen import frozen
from troubleshoot.quantities.atmosphere import standard_pressure
from troubleshoot.quantities.span import Span
from troubleshoot.quantities.units import STANDARD_ATMOSPHERE_PSIA

ANY_UNIT: Final = "any"
"""A parameter or result in whatever unit the first such parameter was typed in."""

WORD: Final = "word"
"""A parameter that is a word, such as the refrigerant, and a result that is a verdict."""

Value = float | tuple[float, ...] | str
Figure = float | str | Span | None


@frozen
class Parameter:
    """One thing to give. `default` is text as a person would type it; `choices` limits a word and
    `standard_name` turns it into the name that the formulas know.

    `fewest` above zero allows several values and tells how many there must be. `share` marks a
    percentage that people also write as 0.2; `difference` one that is a difference of ANY_UNIT;
    `spread` one that people write with a plus-or-minus in front; `open` one that may be over range;
    `plate` volts that may be typed as they are stamped (460/3/60).
    """

    name: str
    unit: str
    meaning: str
    required: bool = True
    default: str | None = None
    choices: tuple[str, ...] = ()
    standard_name: Callable[[str], str] | None = None
    fewest: int = 0
    share: bool = False
    difference: bool = False
    spread: bool = False
    open: bool = False
    plate: bool = False


@frozen
class Result:
    """One thing that comes out, and its unit."""

    name: str
    unit: str
    meaning: str


@frozen
class Choice:
    """How many of some parameters are to be given."""

    of: tuple[str, ...]
    how_many: Literal["exactly one", "at least one", "at most one"]


@frozen
class Given:
    """The values that were given, in the units of the parameters, defaults included.

    `unit` is the unit that stands for ANY_UNIT; `spreads` holds each typed plus-or-minus; `notes`
    tell what was assumed.
    """

    values: Mapping[str, Value]
    unit: str = ""
    spreads: Mapping[str, float] = field(default_factory=dict)
    notes: tuple[str, ...] = ()

    def has(self, name: str) -> bool:
        """Say whether the parameter has a value."""
        return name in self.values

    def number(self, name: str) -> float:
        """Return one number; raise TypeError where the catalogue declares something else."""
        value = self.values[name]
        if not isinstance(value, float):
            raise TypeError(f"{name} is not one number")
        return value

    def numbers(self, name: str) -> tuple[float, ...]:
        """Return several numbers, none if they were not given."""
        value = self.values.get(name, ())
        if not isinstance(value, tuple):
            raise TypeError(f"{name} is not several numbers")
        return value

    def optional(self, name: str) -> float | None:
        """Return one number, or None if it was not given."""
        return self.number(name) if name in self.values else None

    def word(self, name: str) -> str:
        """Return a word; raise TypeError where the catalogue declares something else."""
        value = self.values[name]
        if not isinstance(value, str):
            raise TypeError(f"{name} is not a word")
        return value

    def atmosphere(self) -> float:
        """Return the pressure of the air in psia: at `altitude` if given, else at sea level."""
        altitude = self.optional("altitude")
        return STANDARD_ATMOSPHERE_PSIA if altitude is None else standard_pressure(altitude)


@frozen
class Computed:
    """Results by name (a result that does not exist here is left out), and cautions they raise."""

    figures: Mapping[str, Figure]
    cautions: tuple[str, ...] = ()


@frozen
class Calculation:
    """One named calculation: everything that a person or a script needs to use and to trust it."""

    name: str
    parameters: tuple[Parameter, ...]
    results: tuple[Result, ...]
    formula: str
    source: str
    compute: Callable[[Given], Computed]
    cautions: tuple[str, ...] = ()
    choices: tuple[Choice, ...] = ()

    def parameter(self, name: str) -> Parameter | None:
        """Return the parameter so named, or None."""
        return next((one for one in self.parameters if one.name == name), None)


ATMOSPHERE: Final = "atmosphere"
"""Handed to a formula: the pressure of the air at the site's altitude, not the altitude."""


def direct(
    result: str | Mapping[str, str], function: Callable[..., Any], *names: str
) -> Callable[[Given], Computed]:
    """Return a computation that hands parameters to a formula in this order.

    `result` names its number; where several come out it says which attribute each is. What was not
    given is None.
    """

    def compute(given: Given) -> Computed:
        values = (given.atmosphere() if n == ATMOSPHERE else given.values.get(n) for n in names)
        found = function(*values)
        if isinstance(result, str):
            return Computed({result: found})
        return Computed({name: getattr(found, of) for name, of in result.items()})

    return compute


ALTITUDE: Final = Parameter(
    "altitude", "ft", "altitude of the site above the sea; none is sea level", required=False
)
"""The site's altitude, wherever the pressure of the air matters."""
