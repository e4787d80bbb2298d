"""`rules watch`: what is saved is checked and tried at once."""

from __future__ import annotations

import signal
import sys
from pathlib import Path

import pexpect

from tests.knowledge.small_rules import write_files
from troubleshoot.knowledge.load import shipped_folder

CARD = "faults/contactors/contactor-coil-open.yaml"
OWN = "faults/contactors/north-coil.yaml"


def _heeds_ctrl_c() -> None:
    """As in a person's shell: what is started in the background ignores it, and so do its own."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)


def test_a_save_is_checked_and_tried_and_a_slip_is_shown(tmp_path: Path) -> None:
    text = (shipped_folder() / CARD).read_text("utf-8")
    text = text.replace("contactor-coil-open", "north-coil").replace("words: [", "words: [north ")
    text = text.replace("  never:\n", "  never:\n    - contactor-contacts: clean\n")
    manifest = "format: 1\nname: The north site\n"
    north = write_files(tmp_path / "north", {"pack.yaml": manifest})
    words = ["-m", "troubleshoot", "rules", "watch", str(north)]
    program = pexpect.spawn(
        sys.executable, words, encoding="utf-8", timeout=120, preexec_fn=_heeds_ctrl_c
    )
    try:
        program.expect("0 to fix, 0 to know")
        write_files(
            north, {OWN: text.replace("contactor-coil-ohms: open", "contactor-coil-ohm: open")}
        )
        program.expect("no test is called contactor-coil-ohm; did you mean contactor-coil-ohms")
        program.expect("1 to fix, 0 to know")
        write_files(north, {OWN: text})
        program.expect("2 examples tried, ")
        program.sendintr()
        program.expect(pexpect.EOF)
    finally:
        program.close(force=True)
    assert program.exitstatus == 0
