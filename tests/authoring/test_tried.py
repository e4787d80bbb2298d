"""A drafted card is checked and tried as if it lay in its folder, and nothing is written."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from tests.authoring.test_draft import DRAFT
from tests.knowledge.small_rules import write_files
from troubleshoot.authoring.tried import try_draft
from troubleshoot.knowledge.load import shipped_folder
from troubleshoot.knowledge.model import Knowledge

COIL = "contactor-coil-open"


def test_a_near_twin_is_told_before_anything_is_written(shipped: Knowledge, tmp_path: Path) -> None:
    """Regression: a card told once more under another name came to no word at all."""
    twin = shipped.faults[COIL]
    draft = replace(DRAFT, seen=twin.evidence[:7], per=twin.per, calls=(("often", "no-cooling"),))
    north = write_files(tmp_path / "north", {"pack.yaml": "format: 1\nname: The north shop\n"})
    tried = try_draft(shipped, draft, [shipped_folder(), north])
    assert tried.problems == () and tried.knowledge is not None
    assert draft.id in tried.knowledge.faults and len(tried.trials) == 2
    (notice,) = (each for each in tried.notices if each.check == "alike-cards")
    assert COIL in notice.what
    assert [path.name for path in north.rglob("*.yaml")] == ["pack.yaml"]


def test_bad_advice_is_not_written(shipped: Knowledge, tmp_path: Path) -> None:
    twin = shipped.faults[COIL]
    assert DRAFT.repair is not None
    bad = replace(DRAFT.repair, what="Jumper out the high-pressure switch and let it run.")
    draft = replace(DRAFT, seen=twin.evidence[:2], repair=bad)
    new = tmp_path / "north"
    manifest = "format: 1\nname: The north shop\n"
    tried = try_draft(shipped, draft, [shipped_folder(), new], manifest)
    assert {each.check for each in tried.problems} == {"safe-advice"} and tried.trials == ()
    assert not new.exists()
