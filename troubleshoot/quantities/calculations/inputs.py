"""Typed `key=value` pairs -> the values of a calculation, with every problem found at once."""

from collections.abc import Mapping, Sequence
from difflib import get_close_matches

from troubleshoot.frozen import frozen
from troubleshoot.quantities.calculations.model import Calculation, Choice, Given
from troubleshoot.quantities.calculations.values import ValueReader
from troubleshoot.quantities.ranges import OutOfRange
from troubleshoot.quantities.typed import NotUnderstood


@frozen
class Problem:
    """One thing wrong with what was given: which key, what about it, what to write instead."""

    key: str
    problem: str
    instead: str

    def __str__(self) -> str:
        named = self.problem.startswith(self.key)
        sentence = f"{self.problem if named else f'{self.key}: {self.problem}'}; {self.instead}"
        return sentence if sentence.endswith((".", "?")) else f"{sentence}."


class WrongUse(ValueError):
    """The keys do not fit the calculation: unknown, missing, twice, or too many of a choice."""

    def __init__(self, problems: Sequence[Problem]) -> None:
        self.problems = tuple(problems)
        super().__init__(" ".join(map(str, problems)))


class WrongValue(WrongUse):
    """The keys fit, but a value could not be understood or lies outside the range."""


def read_inputs(calculation: Calculation, pairs: Sequence[tuple[str, str]]) -> Given:
    """Return the values that `pairs` of key and typed text give to the calculation.

    Defaults are filled in; what was assumed is noted for the answer's cautions. Raises WrongUse
    for keys that do not fit and WrongValue for values that cannot be understood.
    """
    texts = _texts(calculation, pairs)
    reader = ValueReader(calculation, texts)
    problems: list[Problem] = []
    # The altitude comes first, for absolute pressures lean on it.
    for parameter in sorted(calculation.parameters, key=lambda one: one.name != "altitude"):
        try:
            reader.take(parameter)
        except NotUnderstood as error:
            problems.append(Problem(parameter.name, f"'{error.text}' {error.why}", error.instead))
        except OutOfRange as error:
            problems.append(Problem(parameter.name, error.problem, error.instead))
    if problems:
        raise WrongValue(problems)
    return reader.given()


def _texts(calculation: Calculation, pairs: Sequence[tuple[str, str]]) -> Mapping[str, str]:
    """Return the text for each parameter; the same key again adds to one that holds several."""
    texts: dict[str, str] = {}
    problems: list[Problem] = []
    keys = [parameter.name for parameter in calculation.parameters]
    for key, text in pairs:
        parameter = calculation.parameter(key)
        if parameter is None:
            near = get_close_matches(key, keys, n=1)
            hint = f"did you mean {near[0]}?" if near else f"it takes {', '.join(keys)}"
            problems.append(Problem(key, f"{key} is no parameter of {calculation.name}", hint))
        elif key in texts and not parameter.fewest:
            problems.append(Problem(key, f"{key} is given twice", "give it once"))
        else:
            texts[key] = f"{texts[key]}; {text}" if key in texts else text
    missing = [
        Problem(one.name, f"{one.name} is missing", f"give {one.name}=..., {one.meaning}")
        for one in calculation.parameters
        if one.required and one.default is None and one.name not in texts
    ]
    problems += missing
    problems += [problem for one in calculation.choices if (problem := _chosen(one, texts))]
    if problems:
        raise WrongUse(problems)
    return texts


def _chosen(choice: Choice, texts: Mapping[str, str]) -> Problem | None:
    """Return what is wrong with how many of the choice were given, or None."""
    given = [name for name in choice.of if name in texts]
    instead = f"give {choice.how_many} of {', '.join(choice.of)}"
    if not given and choice.how_many != "at most one":
        return Problem(choice.of[0], f"{choice.of[0]} is missing", instead)
    if len(given) > 1 and choice.how_many != "at least one":
        return Problem(given[1], f"{given[1]} comes on top of {given[0]}", instead)
    return None
