"""Words that are shown stand somewhere as a text: no id is made into words by its hyphens."""

from __future__ import annotations

import ast
from pathlib import Path
from typing import get_args

import pytest

from tests.knowledge.small_rules import said, write_rules
from troubleshoot.dialogue.answering import answers
from troubleshoot.dialogue.by_word import by_word
from troubleshoot.knowledge import vocabulary
from troubleshoot.knowledge.load import load_rules
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.spoken import SPOKEN, spoken
from troubleshoot.safety import declaration, work_state
from troubleshoot.safety.profiles import PROFILES
from troubleshoot.safety.steps import GAS_SWEEP, REFRIGERANT_SWEEP, ROOM_AIR

PACKAGE = Path(vocabulary.__file__).parent.parent
WORDS = "words.yaml"

NO_SCREEN = {
    ("outside/text.py", "plain_words"): "what was typed, to be compared",
    ("dialogue/hand_over_result.py", "_named"): "what was typed, to be compared",
    ("dialogue/which_lock.py", "cannot_be_locked"): "what was typed, to be compared",
    ("dialogue/not_known.py", "is_not_known"): "what was typed, to be compared",
    ("knowledge/forms/declared.py", "key"): "a field's name as the key of a rule file",
    ("reasoning/unit/beyond_said.py", "_of_a_fact"): "a fact's name, to be compared",
    ("visit/kept/understanding.py", "_odd_values"): "a key of a case as the key of a journal",
}
"""Where hyphens or underscores are changed, and nobody is shown what comes of it."""


def changes(path: Path) -> set[str]:
    """Functions of a module that change the letters that join an id's words."""
    found = set()
    for function in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(function, ast.FunctionDef):
            for node in ast.walk(function):
                if not (isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute)):
                    continue
                first = node.args[0] if node.args else None
                parts = first.value if isinstance(first, ast.Constant) else ""
                joins = isinstance(parts, str) and ("-" in parts or "_" in parts)
                if node.func.attr == "title" or (node.func.attr == "replace" and joins):
                    found.add(function.name)
    return found


def test_no_id_is_shown_with_its_hyphens_taken_out() -> None:
    found = {
        (path.relative_to(PACKAGE).as_posix(), name)
        for path in PACKAGE.rglob("*.py")
        for name in changes(path)
    }
    assert found == set(NO_SCREEN)


def test_every_word_of_a_closed_list_that_is_shown_has_its_words() -> None:
    lists = (
        vocabulary.Grade, vocabulary.HowCommon, vocabulary.StopScope, vocabulary.WorkStateName,
        vocabulary.PartCost, vocabulary.TestKind, work_state.Power, work_state.Panels,
        work_state.Calls, work_state.Dead, work_state.Meter, work_state.SecondSource,
        work_state.Gas, work_state.Circuit, work_state.Roof, work_state.FirePanel,
        work_state.Energy,
    )  # fmt: skip
    shown = {word for each in lists for word in get_args(each)}
    shown |= {*get_args(declaration.At), *get_args(vocabulary.Signal), *get_args(vocabulary.Status)}
    shown |= {*PROFILES, *vocabulary.NEEDS, REFRIGERANT_SWEEP, GAS_SWEEP, ROOM_AIR}
    assert shown == set(SPOKEN)
    assert not [words for words in map(spoken, shown) if "-" in words]


def test_every_shipped_outcome_can_be_typed_as_it_is_shown(shipped: Knowledge) -> None:
    for test in shipped.tests.values():
        all_of_it = tuple(outcome.id for outcome in test.outcomes)
        for outcome in test.outcomes:
            word = answers(test, (outcome.id,))[0]
            assert by_word(test, word.lower(), all_of_it, several=False) == (outcome.id,)


@pytest.mark.parametrize(
    ("change", "problem"),
    [
        (
            (WORDS, "  not-cleared: not cleared\n", ""),
            "rules/tests/refrigerant.yaml:43:10: nobody says how not-cleared is said; "
            "add not-cleared to words.yaml",
        ),
        (
            (WORDS, "  stored-charge: stored charge\n", ""),
            "rules/hazards.yaml:3:5: nobody says how stored-charge is said; "
            "add stored-charge to words.yaml",
        ),
        (
            (WORDS, "two-or-more: two or more", "two-or-more: several"),
            'rules/words.yaml:14:3: "several", typed, does not lead back to two-or-more; '
            "keep the words of the id; capitals and commas are free",
        ),
        (
            (WORDS, "two-or-more: two or more", "two-or-more: two or more\n  lost: lost"),
            "rules/words.yaml:15:3: lost is the id of nothing that is shown; delete the line",
        ),
    ],
)
def test_a_word_that_lacks_or_misleads_is_found(
    tmp_path: Path, change: tuple[str, str, str], problem: str
) -> None:
    assert said(write_rules(tmp_path, change)) == [f"{problem} [spoken-words]"]


def test_a_hazard_is_called_what_the_words_say(tmp_path: Path) -> None:
    folder = write_rules(tmp_path, (WORDS, "gas-smell: gas smell", "gas-smell: a smell of gas"))
    assert said(folder) == []
    rules = load_rules(folder, cache=tmp_path / "cache")
    assert rules.hazards["gas-smell"].spoken == "a smell of gas"


def test_an_id_without_words_stands_as_it_is_written(tmp_path: Path) -> None:
    folder = write_rules(tmp_path, (WORDS, "  not-cleared: not cleared\n", ""))
    rules = load_rules(folder, cache=tmp_path / "cache")
    own = next(t for t in rules.tests.values() if any(o.id == "not-cleared" for o in t.outcomes))
    assert own.spoken("not-cleared") == "not-cleared"
