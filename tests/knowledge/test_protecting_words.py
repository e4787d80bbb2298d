"""A pack gives no word that locks, proves, warns or denies another meaning."""

from __future__ import annotations

from dataclasses import replace

import pytest

from troubleshoot.knowledge.base import read_base, read_texts
from troubleshoot.knowledge.checks import protecting_words
from troubleshoot.knowledge.layout import RuleText
from troubleshoot.knowledge.load import shipped_folder
from troubleshoot.knowledge.rule_base import RuleBase, make_rule_base


@pytest.fixture(scope="module")
def shipped() -> RuleBase:
    return make_rule_base(read_base([shipped_folder()]))


def problems(shipped: RuleBase, words: str) -> list[str]:
    """What is said of a pack with these words alike, idle and so on."""
    data = f"format: 1\n{words}\n".encode()
    pack = read_texts([RuleText("north/synonyms.yaml", "synonyms.yaml", 1, data)])
    assert not pack.problems, pack.problems
    base = replace(shipped, files=(*shipped.files, *pack.files))
    return [str(problem) for problem in protecting_words.find(base)]


@pytest.mark.parametrize(
    ("words", "place", "why"),
    [
        ("alike: {locked: [sure thing]}", "2:9", "confirms a safety step"),
        ("alike: {done deal: [Locked]}", "2:21", "confirms a safety step"),
        ("alike: {belt: [discharged]}", "2:16", "confirms a safety step"),
        ("alike: {clean: [gas]}", "2:17", "tells of a danger"),
        ("alike: {setpoint: [i smell gas]}", "2:20", "tells of a danger"),
        ("alike: {fine: ['not']}", "2:16", "affirms or denies"),
        ("alike: {belt: [the belt]}\nidle: [half, not]", "3:14", "affirms or denies"),
        ("alike: {belt: [the belt]}\nidle: [smoke]", "3:8", "tells of a danger"),
        ("alike: {belt: [the belt]}\nloose: [locked]", "3:9", "confirms a safety step"),
        ("alike: {belt: [the belt]}\nmanner: [dead]", "3:10", "confirms a safety step"),
        ("alike: {belt: [the belt]}\nas-it-should-be: [smells a bit]", "3:19", "nothing is wrong"),
        ("alike: {belt: [the belt]}\nas-it-should-be: [cracked]", "3:19", "nothing is wrong"),
        ("alike: {belt: [the belt]}\nas-it-should-be: [not looked]", "3:19", "nothing is wrong"),
    ],
)
def test_a_word_of_safety_keeps_its_meaning(
    words: str, place: str, why: str, shipped: RuleBase
) -> None:
    """Regression: only what was alike to two names was found, and by `rules check` alone."""
    (problem,) = problems(shipped, words)
    assert problem.startswith(f"north/synonyms.yaml:{place}: ") and why in problem, problem


@pytest.mark.parametrize(
    "words",
    [
        "alike: {capacitor: [can]}",
        "alike: {gas valve: [the red one]}",
        "alike: {condenser: [the hot deck]}",
        "alike: {belt: [the belt]}\nidle: [bonny, north]",
        "alike: {belt: [the belt]}\nmanner: [wholly]\nloose: [yonder]",
        "alike: {belt: [the belt]}\nas-it-should-be: [sound as a bell, grand]",
    ],
)
def test_a_site_says_its_own_words_for_parts(words: str, shipped: RuleBase) -> None:
    assert problems(shipped, words) == []


def test_the_shipped_words_are_no_packs(shipped: RuleBase) -> None:
    assert list(protecting_words.find(shipped)) == []
