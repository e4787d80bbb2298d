"""The checks of a rule base, one small module each; its docstring is its published page.

`ESSENTIAL` checks decide whether a rule base can be used at all; they look at the located files
and run at every load that is not from the cache. `FURTHER` checks look at a base that holds
together and run when an author asks; `dropped_cautions` compares it with an earlier version. Those
of them that tell what can hurt run at such a load too where a site has rules of its own.
"""

from __future__ import annotations

import inspect
import re
from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from types import ModuleType
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.base import ReadBase, read_texts
from troubleshoot.knowledge.checks import (
    alike_cards,
    alike_words,
    bands_rise,
    clean_texts,
    complaints_lead,
    declared_subsystems,
    dropped_cautions,
    evidence_can_show,
    example_readings,
    file_names,
    given_groups,
    grade_sums,
    hazard_kinds,
    hazards_speak,
    idle_procedures,
    idle_tests,
    implied_cautions,
    known_quantities,
    limits_meet,
    mixed_sets,
    order_of_tests,
    packs,
    places,
    protecting_words,
    round_order,
    rows_of_tests,
    safe_advice,
    safe_tests,
    safety_readings,
    short_words,
    signatures,
    signed_cards,
    signed_packs,
    sound_readings,
    sourced_limits,
    spoken_words,
    stated_twice,
    typical_units,
    unique_ids,
    unknown_names,
    whole_cards,
)
from troubleshoot.knowledge.definitions import collect_definitions
from troubleshoot.knowledge.layout import RuleText, read_folders
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.problems import Problem, RulesInvalid
from troubleshoot.knowledge.rule_base import make_rule_base

ESSENTIAL: Final = (unique_ids, packs, unknown_names, bands_rise)
FURTHER: Final = (
    file_names,
    declared_subsystems,
    whole_cards,
    grade_sums,
    stated_twice,
    mixed_sets,
    given_groups,
    evidence_can_show,
    example_readings,
    places,
    rows_of_tests,
    limits_meet,
    sourced_limits,
    known_quantities,
    sound_readings,
    typical_units,
    order_of_tests,
    idle_tests,
    idle_procedures,
    complaints_lead,
    hazard_kinds,
    hazards_speak,
    safe_tests,
    implied_cautions,
    safety_readings,
    signatures,
    signed_cards,
    signed_packs,
    safe_advice,
    clean_texts,
    round_order,
    spoken_words,
    short_words,
    alike_words,
    alike_cards,
    protecting_words,
)

CAN_HURT: Final = (
    declared_subsystems,
    limits_meet,
    known_quantities,
    hazard_kinds,
    hazards_speak,
    safe_tests,
    implied_cautions,
    safety_readings,
    signatures,
    safe_advice,
    clean_texts,
    spoken_words,
    short_words,
    alike_words,
    protecting_words,
)
"""The further checks of what can hurt whoever does what the rules say: what they tell people to
do, and what becomes of what people read and type. What is untidy hurts nobody, and a site is not
left without its own cautions for it.
"""

CHECKS: Final[Mapping[str, ModuleType]] = {
    check.ID: check for check in (*ESSENTIAL, *FURTHER, dropped_cautions)
}
"""Every check by the id that its problems carry."""


@frozen
class Checked:
    """What the checks found, in order. `usable`: commands go by these rules all the same."""

    problems: tuple[Problem, ...]
    usable: bool


def check_rules(
    folders: Path | str | Sequence[Path | str], earlier: Knowledge | None = None
) -> list[Problem]:
    """Return every problem of a folder of rules, or of the shipped folder and packs, in order.

    Further checks speak only of a base that has no problem of form and names, since they would
    only repeat those. Against `earlier` rules every caution that is gone is one problem more.
    """
    return list(checked(folders, earlier).problems)


def checked(
    folders: Path | str | Sequence[Path | str], earlier: Knowledge | None = None
) -> Checked:
    """The same, with whether rules in which that was found can be used."""
    chosen = [folders] if isinstance(folders, Path | str) else list(folders)
    try:
        return check_texts(read_folders(chosen), earlier)
    except RulesInvalid as error:
        return Checked(error.problems, usable=False)


def check_texts(texts: Sequence[RuleText], earlier: Knowledge | None = None) -> Checked:
    """Check rule files that were read already, as `check_rules` does."""
    base = read_texts(texts)
    problems = [*base.problems, *essential_problems(base)]
    if problems:
        beside = file_names.find_in(collect_definitions(base.files))
        return Checked(tuple(sorted((*problems, *beside))), usable=False)
    rule_base = make_rule_base(base)
    found = [problem for check in FURTHER for problem in check.find(rule_base)]
    if earlier is not None:
        found += dropped_cautions.find_against(rule_base, earlier)
    of_a_site = any(text.folder for text in texts)
    hurting = {check.ID for check in CAN_HURT}
    hurts = any(each.check in hurting and each.level == "error" for each in found)
    return Checked(tuple(sorted(found)), usable=not (of_a_site and hurts))


def essential_problems(base: ReadBase) -> list[Problem]:
    """Return what keeps a rule base from being used, beyond problems of form.

    Nothing is said while a file cannot be read at all: what it defines is not known then.
    """
    if base.unread:
        return []
    definitions = collect_definitions(base.files)
    return [problem for check in ESSENTIAL for problem in check.find(base.files, definitions)]


def harm_in_packs(base: ReadBase) -> list[Problem]:
    """Return what can hurt in a site's own rules, of a base that holds together; a site that was
    told so by `rules check` is not led by them all the same.

    The shipped rules were checked before they were shipped: their texts are not read again.
    """
    own = tuple(file for file in base.files if file.folder)
    if not own:
        return []
    rule_base = make_rule_base(base)
    texts_of_packs = replace(rule_base, files=own)
    of_texts = (safe_advice, clean_texts)
    found = (check.find(texts_of_packs if check in of_texts else rule_base) for check in CAN_HURT)
    return [problem for problems in found for problem in problems if problem.level == "error"]


def page_of(check: str) -> list[str]:
    """The published page of a check: what it finds, why it matters, how to fix it."""
    return paragraphs_of_check(inspect.getdoc(CHECKS[check]) or "")


def paragraphs_of_check(docstring: str) -> list[str]:
    """A check's docstring as it is shown: a line for each of What, Why and Fix, and before."""
    parts = re.split(r"\n+(?=What: |Why: |Fix: )", inspect.cleandoc(docstring))
    return [" ".join(part.split()) for part in parts if part.strip()]
