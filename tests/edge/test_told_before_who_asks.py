"""A STOP told in the first words: its all-clear is no shorter than that of any other."""

from __future__ import annotations

from pathlib import Path

from tests.edge.person import Clock, Person
from tests.edge.visits import ALL, events_of

MENDED = "It was fetched, nobody was hit, and it is on again, whole, with all its screws"


def test_who_and_the_roof_come_before_what_was_put_right(data: Path, tmp_path: Path) -> None:
    """Regression: two lines and a bare 1 lifted it, and nobody had said who or how the roof is."""
    with Person(data, clock=Clock(tmp_path)) as person:
        assert "CAUTION - STOP" in person.types("RTU-7", "panel blew off")
        assert "Who is asking?" in person.types("again")
        assert "What was done to make it safe?" in person.types("3")
        assert "Step: Roof, go or no go" in person.types(MENDED)
        assert "Test: What was dangerous has been put right" in person.types("15 ft safe")
        assert 'Is "put right" meant? Then type it so.' in " ".join(person.types("1").split())
        assert "nothing stands out yet" in person.types("put right")


def test_u_at_that_question_leaves_the_stop(data: Path, tmp_path: Path) -> None:
    with Person(data, clock=Clock(tmp_path)) as person:
        person.types("RTU-7", "panel blew off", "again")
        assert "again, over, or q." in person.types("u")
        person.types("again", "technician, gas", MENDED)
        assert "Step: Roof, go or no go" in person.last
    assert '"profiles": ["gas", "technician"]' in events_of(data)


def test_a_bang_at_light_up_leads_and_the_loose_panel_stands_beside_it(
    data: Path, tmp_path: Path
) -> None:
    """Regression: the bang was never spoken of, and holding the panel lifted all."""
    with Person(data, clock=Clock(tmp_path)) as person:
        said = " ".join(person.types("RTU-7", "boom when it starts, panel blew off").split())
        assert "DANGER - STOP One bang is enough" in said
        assert "Also stands: CAUTION - STOP, unsupported panels" in said
        assert "over, or q." in person.types("again")
    kept = events_of(data)
    assert "delayed-light-off" in kept and "unsupported-panels" in kept


def test_the_call_that_a_danger_broke_in_on_is_asked_once_that_is_gone(tmp_path: Path) -> None:
    """Regression: the STOP was lifted, the call was never asked, and the visit knew of none."""
    with Person(tmp_path / "data", clock=Clock(tmp_path)) as person:
        person.types("RTU-7", "the ladder is gone", "again", ALL)
        person.types("1", "safe", "put right")
        assert "What does the caller say?" in person.last
        person.types("runs all day and never gets there")
        assert "nothing stands out yet" not in person.last
        assert '"complaint": "weak-cooling"' in events_of(tmp_path / "data")
