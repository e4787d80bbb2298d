"""What people say for words of the rules stands for one name, and for one that is looked up."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.knowledge.small_rules import said, write_rules
from troubleshoot.knowledge.load import load_rules
from troubleshoot.reasoning.matching.lexicon import lexicon_of

SYNONYMS = "synonyms.yaml"


@pytest.mark.parametrize(
    ("old", "new", "problem"),
    [
        ("[cond fan]", "[cond fan, Run-cap]", '4:29: "run cap" is said for capacitor and for '
         "condenser fan; leave one of them out"),
        ("[cap, run cap]", "[cap, condenser fan]", '3:20: "condenser fan" is a name itself; leave '
         "it out"),
        ("[cap, run cap]", "[cap, out]", '3:20: "out" counts for nothing; leave it out, here or '
         "there"),
        ("[cap, run cap]", "[cap, capacitor]", '3:20: "capacitor" is a name itself; leave it out'),
    ],
)  # fmt: skip
def test_words_that_lead_to_two_things_or_to_none_are_found(
    tmp_path: Path, old: str, new: str, problem: str
) -> None:
    folder = write_rules(tmp_path, (SYNONYMS, old, new))
    assert said(folder) == [f"rules/synonyms.yaml:{problem} [alike-words]"]


def test_a_site_adds_what_it_says(tmp_path: Path) -> None:
    folder = write_rules(tmp_path)
    pack = tmp_path / "site"
    pack.mkdir()
    (pack / "pack.yaml").write_text("format: 1\nname: Site\n", "utf-8")
    (pack / SYNONYMS).write_text("format: 1\nalike:\n  capacitor: [can]\n", "utf-8")
    lexicon = lexicon_of(load_rules([folder, pack], cache=tmp_path / "cache"))
    assert lexicon.words("the can") == lexicon.words("cap") == lexicon.words("run caps")
