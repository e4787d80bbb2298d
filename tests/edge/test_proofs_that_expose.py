"""A proof that is an act on a unit that runs comes with its cautions, and as its test is done."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock
from tests.edge.visits import begin, careful, task

HELD_BACK = {
    "heater-limit-failed": "Proof: Seen to open with the air held back",
    "heater-fuse-link-open": "Proof: The limit ahead of it opens with the air held back",
}
HOOK_UP = "Hook up"
LOCK_OFF = "Take your own lock off"
CALL = "Call for the unit"


@pytest.mark.parametrize("fault", HELD_BACK)
def test_air_is_held_back_over_heaters_only_after_its_cautions(
    fault: str, tmp_path: Path, clock: Clock
) -> None:
    """Regression: a bare line asked for it, clamp and probe not set dead, nothing told of fire."""
    with begin(tmp_path, clock, words="weak-heat") as person:
        person.types("480/3/60, electric heat, R-410A, TXV, one circuit, one fan")
        person.types(f"repaired {fault}")
        done: list[str] = []
        for _ in range(90):
            said = " ".join(person.last.split())
            if HELD_BACK[fault] in said:
                break
            is_proof, is_question = "What did you read?" in said, said.endswith("(y/n)")
            if not is_proof and not is_question:
                done.append(task(person))
            person.types("n" if is_question else "" if is_proof else careful(person))
        before = said.partition(HELD_BACK[fault])[0]
        assert "hot surfaces" in before or "heating elements burn" in before
        assert "heat will not stop" in before or "DANGER:" in before
        names = [next((k for k in (HOOK_UP, LOCK_OFF, CALL) if k in each), "") for each in done]
        assert [name for name in names if name][-3:] == [HOOK_UP, LOCK_OFF, CALL]
