"""The rules that come with the program, held to every check."""

from __future__ import annotations

import pytest

from tests.knowledge.small_rules import write_rules
from troubleshoot.knowledge.assembling import build_knowledge
from troubleshoot.knowledge.base import read_base
from troubleshoot.knowledge.checks import CHECKS, check_rules, page_of
from troubleshoot.knowledge.load import shipped_folder
from troubleshoot.knowledge.model import Knowledge


def test_the_shipped_rules_have_nothing_to_mend() -> None:
    found = check_rules(shipped_folder())
    assert [str(problem) for problem in found if problem.level == "error"] == []


def test_the_model_keeps_every_entry_of_the_files(shipped: Knowledge) -> None:
    files = read_base([shipped_folder()]).files
    counts = {
        "tests": (len(shipped.tests), "tests"),
        "procedures": (len(shipped.procedures), "procedures"),
        "hazards": (len(shipped.hazards), "hazards"),
        "complaints": (len(shipped.complaints), "complaints"),
    }
    for kind, (count, key) in counts.items():
        assert count == sum(len(file.data[key]) for file in files if file.kind == kind)
    assert len(shipped.faults) == sum(file.kind == "fault" for file in files)


def test_the_order_of_files_does_not_matter(shipped: Knowledge) -> None:
    files = [(file.kind, file.data) for file in read_base([shipped_folder()]).files]
    turned = build_knowledge(reversed(files), shipped.digest)
    assert turned == shipped


@pytest.mark.parametrize("check", sorted(CHECKS))
def test_every_check_has_a_page_with_the_same_headings(check: str) -> None:
    page = page_of(check)
    headings = [line.split(":")[0] for line in page if line.split(":")[0].istitle()]
    assert [heading for heading in headings if heading in ("What", "Why", "Fix")] == [
        "What", "Why", "Fix",
    ]  # fmt: skip
    assert CHECKS[check].__name__.rsplit(".", 1)[1].replace("_", "-") == check


def test_checking_twice_says_the_same(tmp_path_factory: pytest.TempPathFactory) -> None:
    folder = write_rules(tmp_path_factory.mktemp("rules"), ("hazards.yaml", "DANGER", "NOTICE"))
    assert check_rules(folder) == check_rules(folder) != []


def test_fitted_is_the_first_number_of_every_list(shipped: Knowledge) -> None:
    """Regression: five lists had 1 for fitted and two had 2, and a thumb types on."""
    lists = [fact.values for fact in shipped.facts.values() if {"fitted"} <= {*fact.values}]
    assert len(lists) > 5 and {values[:2] for values in lists} == {("fitted", "not-fitted")}
