"""The rules that a command goes by: those that come with the program, and a site's own beside them.

`--rules FOLDER` names a site's folder, before the command or after it, once for each; without it
the environment may. What cannot be used fails with every problem, exit code 5.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, TypeVar

import click

from troubleshoot.cli.door import tell
from troubleshoot.cli.failures import RULES_INVALID, Failure

if TYPE_CHECKING:
    from troubleshoot.knowledge.model import Knowledge

FOLDERS_VARIABLE: Final = "TROUBLESHOOT_RULES"
"""Environment variable that names folders as a search path does; --rules goes before it."""

SITE_RULES: Final = "site-rules"
"""The key of a visit's journal that keeps which folders it began with."""

_GIVEN: Final = "troubleshoot.rules"

_Command = TypeVar("_Command", bound=Callable[..., Any])


def takes_rules(command: _Command) -> _Command:
    """Give a command the option --rules; `rules_in_use` finds what it named."""
    return click.option(
        "--rules",
        multiple=True,
        metavar="FOLDER",
        expose_value=False,
        callback=_remember,
        help="A site's own rules, beside those of the program; repeat for several.",
    )(command)


def _remember(context: click.Context, option: click.Parameter, folders: tuple[str, ...]) -> None:
    context.meta[_GIVEN] = (*context.meta.get(_GIVEN, ()), *folders)


def site_folders(*more: str) -> tuple[Path, ...]:
    """The folders of a site's own rules as they were named, and `more`; each of them once."""
    context = click.get_current_context(silent=True)
    given = () if context is None else context.meta.get(_GIVEN, ())
    if not given:
        given = (name for name in os.environ.get(FOLDERS_VARIABLE, "").split(os.pathsep) if name)
    return tuple({Path(name).absolute(): Path(name) for name in (*given, *more)}.values())


def rules_in_force() -> Knowledge:
    """The rules that a command goes by: those of the program, with those of the site."""
    return rules_of(site_folders())


def rules_of(folders: Sequence[Path]) -> Knowledge:
    """Those of the program, with those of these folders beside them."""
    from troubleshoot.knowledge.load import load_shipped

    knowledge = _loaded(lambda: load_shipped(folders))
    for folder, day in knowledge.copies.items():
        _tell_once(
            f"The rules of {folder} cannot be read now; their last good copy, of {day}, is used. "
            f"To go without them, name the folder no more in --rules or {FOLDERS_VARIABLE}."
        )
    return knowledge


@cache
def _tell_once(sentence: str) -> None:
    tell(sentence, err=True)


def rules_in(folder: str) -> Knowledge:
    """The rules of one folder by itself."""
    from troubleshoot.knowledge.load import load_rules

    knowledge = _loaded(lambda: load_rules(folder))
    if not knowledge.tests and not knowledge.hazards:
        said = f"{folder} holds no tests and no hazards; name a folder of rules"
        raise Failure([said], RULES_INVALID)
    return knowledge


def kept_with_visit(knowledge: Knowledge) -> dict[str, Any]:
    """What a new visit's journal keeps of the rules of the day, and of the folders in use."""
    from troubleshoot.visit.telling.pack_told import PACKS, pack_line

    kept: dict[str, Any] = {"rules": knowledge.digest}
    folders = [str(folder.absolute()) for folder in site_folders()]
    if folders:
        kept |= {SITE_RULES: folders, PACKS: [pack_line(each) for each in knowledge.packs]}
    return kept


def missing_rules(header: Mapping[str, Any]) -> Iterator[str]:
    """A sentence for each folder that a visit began with and that is not in use now."""
    began_with, in_use = header.get(SITE_RULES), {each.absolute() for each in site_folders()}
    for folder in began_with if isinstance(began_with, list) else ():
        if isinstance(folder, str) and Path(folder) not in in_use:
            yield (
                f"This visit began with the rules of {folder}, which are not in use now. "
                f"To have them: --rules {folder}"
            )


def _loaded(load: Callable[[], Knowledge]) -> Knowledge:
    from troubleshoot.knowledge.problems import RulesInvalid

    try:
        return load()
    except RulesInvalid as error:
        raise Failure(str(error).splitlines(), RULES_INVALID) from None
