"""Which caution is read first, as a page; and a single file of hazards brought to its kinds."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from troubleshoot.knowledge.model import Knowledge

Call = Callable[..., tuple[int, str, str]]

ONE_FILE = """\
# Kept for the north site.
format: 1
source: from memory
hazards:
  - id: {first}
    signal: DANGER
    what-to-do: Go out.

  - id: lightning
    signal: DANGER
    what-to-do: Go down.
"""


def test_the_page_holds_every_hazard_under_its_gravity(command: Call, shipped: Knowledge) -> None:
    code, page, _ = command("rules", "explain", "order-of-cautions")
    assert code == 0
    for kind in shipped.hazard_kinds.values():
        assert kind.about in page
    heads = [line for line in page.splitlines() if line.endswith(":") and "STOP" in line]
    assert heads[0] == "DANGER, STOP, whole job:"
    assert heads[-1] == "NOTICE, no STOP:"
    listed = page.partition("whole job:")[2]
    assert all(hazard.spoken in listed for hazard in shipped.hazards.values())
    assert listed.index("somebody hurt") < listed.index("gas odor") < listed.index("lightning")


def test_a_hazard_says_its_kind(command: Call) -> None:
    assert "Kind: roof" in command("rules", "explain", "skylight-or-roof-hole")[1]


def test_one_file_of_known_hazards_becomes_a_file_a_kind(command: Call, tmp_path: Path) -> None:
    file = tmp_path / "hazards.yaml"
    file.write_text(ONE_FILE.format(first="gas-odour"), "utf-8")
    code, said, _ = command("rules", "format", "--check", str(file))
    assert (code, said.count("would change"), file.exists()) == (1, 2, True)
    code, said, _ = command("rules", "format", str(file))
    assert (code, said.count("written anew"), file.exists()) == (0, 2, False)
    parts = sorted((tmp_path / "hazards").iterdir())
    assert [part.name for part in parts] == ["gas.yaml", "weather-and-crew.yaml"]
    assert command("rules", "format", "--check", *map(str, parts))[:2] == (0, "")


def test_a_file_with_a_hazard_of_ones_own_stays_whole(command: Call, tmp_path: Path) -> None:
    file = tmp_path / "hazards.yaml"
    file.write_text(ONE_FILE.format(first="swans"), "utf-8")
    assert command("rules", "format", str(file))[:2] == (0, "")
    assert [path.name for path in tmp_path.iterdir()] == ["hazards.yaml"]


def test_what_already_lies_in_files_by_kind_is_not_written_over(
    command: Call, tmp_path: Path
) -> None:
    file, folder = tmp_path / "hazards.yaml", tmp_path / "hazards"
    file.write_text(ONE_FILE.format(first="gas-odour"), "utf-8")
    folder.mkdir()
    (folder / "gas.yaml").write_text("format: 1\nkind: gas\nhazards: []\n", "utf-8")
    assert command("rules", "format", str(file))[:2] == (0, "")
    assert (folder / "gas.yaml").read_text("utf-8").endswith("hazards: []\n")
    assert file.exists()
