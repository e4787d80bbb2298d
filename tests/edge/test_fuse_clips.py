"""Before a hand goes to a fuse its clips are tested for dead: the line side stays live.

NFPA 70E 120.5, from memory: absence of voltage is tested at each point of work. That the line lugs
of a fused switch stay live with its handle open is common practice, no source.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock
from tests.edge.test_unit_off_is_stopped import at, tasks_to
from tests.edge.visits import begin, careful, task

CLIPS = "Test the fuse clips for dead"
FUSES = {"fuse-continuity": "Fuse continuity", "heater-fuses": "Fuses or breakers of the heater"}


@pytest.mark.parametrize("test", FUSES)
def test_the_clips_are_tested_before_a_fuse_is_pulled(
    test: str, tmp_path: Path, clock: Clock
) -> None:
    with begin(tmp_path, clock, words="no-cooling") as person:
        person.types("480/3/60, electric heat, R-410A, TXV, one circuit, one fan")
        person.types(f"do {test}")
        if "Where?" in person.last:
            person.types("1")
        done = tasks_to(person, CLIPS, 60)
        said = " ".join(person.last.split())
        assert "stay live with its handle open" in said.partition("Step:")[0]
        person.types("dead")
        done += tasks_to(person, FUSES[test])
        assert "line side live" in " ".join(person.last.split()).partition("Test:")[0]
        assert at(done, "Discharge and meter") < at(done, CLIPS)


@pytest.mark.parametrize("word", ["live", "lugs bare", ""])
def test_a_clip_that_is_not_dead_leads_to_no_fuse(word: str, tmp_path: Path, clock: Clock) -> None:
    with begin(tmp_path, clock, words="no-cooling") as person:
        person.types("480/3/60, electric heat, R-410A, TXV, one circuit, one fan")
        person.types("do fuse-continuity")
        tasks_to(person, CLIPS, 60)
        for _ in range(6):
            person.types(word if CLIPS in task(person) else careful(person))
            assert "Test: Fuse continuity" not in person.last
