"""`calc`: one computation by name, with units, formula, source and cautions."""

import shutil
import textwrap
from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

import click

from troubleshoot.cli.door import put, tell, told
from troubleshoot.cli.json_output import say_json
from troubleshoot.quantities.span import Span

if TYPE_CHECKING:
    from troubleshoot.quantities.calculations.model import Calculation, Parameter
    from troubleshoot.quantities.catalogue import Answer, Answered, WrongUse

_USAGE: Final = 2
_NOT_UNDERSTOOD: Final = 3
_NARROWEST: Final = 40
_WIDEST: Final = 100
_FOUR_FIGURES: Final = 1e4


@click.command("calc", add_help_option=False)
@click.argument("name", required=False)
@click.argument("pairs", metavar="[KEY=VALUE]...", nargs=-1)
@click.option("--json", "as_json", is_flag=True, help="Print one JSON object, for scripts.")
@click.option("--help", "wants_help", is_flag=True, help="Show this, or what NAME takes.")
@click.pass_context
def calc(
    context: click.Context, name: str | None, pairs: Sequence[str], as_json: bool, wants_help: bool
) -> None:
    """Compute one quantity, such as: calc slip sync="1800 rpm" running="1750 rpm".

    Without NAME, list what can be computed. NAME --help shows what it takes, with units. A value
    is typed with its unit; quote it when it holds a blank.
    """
    # Here, not above: every formula of the house comes with it.
    from troubleshoot.quantities import catalogue

    if name is None:
        put(context.get_help() if wants_help else _listing())
        return
    try:
        if wants_help:
            put(_description(catalogue.find(name)))
            return
        found = catalogue.answer(name, _split(pairs))
    except catalogue.WrongUse as wrong:
        _complain(wrong, as_json)
        code = _NOT_UNDERSTOOD if isinstance(wrong, catalogue.WrongValue) else _USAGE
        context.exit(code)
    if as_json:
        say_json(_as_plain(found))
    else:
        put(_as_text(found))


def _split(pairs: Sequence[str]) -> list[tuple[str, str]]:
    """Return keys and values; raise WrongUse naming every argument that is no pair."""
    from troubleshoot.quantities.catalogue import Problem, WrongUse

    stray = [pair for pair in pairs if "=" not in pair]
    if stray:
        instead = "write key=value, and quote a value with a blank: temperature='40 F'"
        raise WrongUse([Problem(pair, f"{pair} is no key=value", instead) for pair in stray])
    split = [pair.split("=", 1) for pair in pairs]
    return [(key.strip(), value) for key, value in split]


def _complain(wrong: "WrongUse", as_json: bool) -> None:
    if as_json:
        problems = [
            {"key": each.key, "problem": each.problem, "instead": each.instead}
            for each in wrong.problems
        ]
        say_json({"error": problems})
        return
    for each in wrong.problems:
        tell(str(each), err=True)


def _listing() -> str:
    from troubleshoot.quantities.catalogue import TOPICS

    lines = [told("What calc can compute; calc NAME --help shows what it takes.")]
    for topic, calculations in TOPICS.items():
        lines += ["", told(topic)]
        for each in calculations:
            names = ", ".join(one.name for one in each.results)
            lines += _wrapped(f"  {each.name:<30}", names)
    return "\n".join(lines)


def _description(calculation: "Calculation") -> str:
    lines = [calculation.name, "", told("Takes")]
    for one in calculation.parameters:
        about = f"{one.meaning}{_condition(one)}"
        lines += _wrapped(f"  {one.name:<26}{_unit_words(one.unit):<10}", told(about))
    for choice in calculation.choices:
        lines += _wrapped("  ", told(f"({choice.how_many} of {', '.join(choice.of)})"))
    lines += ["", told("Gives")]
    for result in calculation.results:
        lines += _wrapped(
            f"  {result.name:<26}{_unit_words(result.unit):<10}", told(result.meaning)
        )
    return "\n".join([*lines, "", *_explanation(calculation, calculation.cautions)])


def _condition(parameter: "Parameter") -> str:
    """Return how a parameter may be given, where there is something to say."""
    said = []
    if parameter.fewest and not parameter.plate:
        said.append("several: 40/5/10")
    if parameter.choices:
        said.append(f"one of {', '.join(parameter.choices)}")
    if parameter.default is not None:
        said.append(f"{parameter.default} if left out")
    elif not parameter.required:
        said.append("may be left out")
    return f" ({'; '.join(said)})" if said else ""


def _as_plain(found: "Answer") -> dict[str, object]:
    results: dict[str, dict[str, float | str | None]] = {}
    for each in found.results:
        if isinstance(each.figure, Span):
            ends = {"low": each.figure.low, "high": each.figure.high}
            results[each.name] = {**ends, "unit": each.unit}
            continue
        results[each.name] = {"value": _tidy(each.figure), "unit": each.unit}
        if each.spread is not None:
            results[each.name]["plus_minus"] = _tidy(each.spread)
    return {
        "calculation": found.calculation.name,
        "results": results,
        "formula": found.calculation.formula,
        "source": found.calculation.source,
        "cautions": [*found.given.notes, *found.cautions],
    }


def _as_text(found: "Answer") -> str:
    lines = [found.calculation.name]
    for each in found.results:
        lines.append(f"  {each.name:<26}{told(_figure_words(each))}")
    for note in found.given.notes:
        lines += _told("Note: ", note)
    return "\n".join([*lines, *_explanation(found.calculation, found.cautions)])


def _explanation(calculation: "Calculation", cautions: Sequence[str]) -> list[str]:
    lines = _told("Formula: ", calculation.formula) + _told("Source: ", calculation.source)
    for caution in cautions:
        lines += _told("Caution: ", caution)
    return lines


def _figure_words(result: "Answered") -> str:
    if result.figure is None:
        return "none here"
    if isinstance(result.figure, str):
        return result.figure
    if isinstance(result.figure, Span):
        return f"{result.figure} {_unit_words(result.unit or '')}"
    spread = "" if result.spread is None else f" +/- {result.spread:.2g}"
    return f"{_round(result.figure)}{spread} {_unit_words(result.unit or '')}".rstrip()


def _round(figure: float) -> str:
    """Return four figures, or all before the point where there are more."""
    return f"{figure:.0f}" if abs(figure) >= _FOUR_FIGURES else f"{figure:.4g}"


def _tidy(figure: float | str | None) -> float | str | None:
    """Return a number without the dust of binary arithmetic in its last places."""
    return float(f"{figure:.10g}") if isinstance(figure, float) else figure


def _unit_words(unit: str) -> str:
    from troubleshoot.quantities.units import UNITS

    return UNITS[unit].spoken if unit in UNITS else unit


def _told(head: str, text: str) -> list[str]:
    """Return a head and its text, both in the language in use."""
    return _wrapped(told(head), told(text))


def _wrapped(head: str, text: str) -> list[str]:
    """Return the text behind its head, later lines set in under the text."""
    width = min(max(shutil.get_terminal_size().columns, _NARROWEST), _WIDEST)
    indent = " " * min(len(head), width // 2)
    return textwrap.wrap(text, width, initial_indent=head, subsequent_indent=indent)
