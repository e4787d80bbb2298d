"""A report as one page: well-formed, whole, harmless, and nothing that is fetched for it."""

from __future__ import annotations

import re
from collections.abc import Callable
from html.parser import HTMLParser
from pathlib import Path

import pytest

from tests.cli.whole_visit import whole_visit
from troubleshoot.cli import clock
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.marked import marked, unescaped
from troubleshoot.outside.text import markdown
from troubleshoot.records.page import as_page

Call = Callable[..., tuple[int, str, str]]
NO_END = {"meta", "br", "link", "img", "input"}
HOSTILE = '<script>alert(1)</script> & "quoted" | **bold** `x`'


class Page(HTMLParser):
    """What stands on a page: its texts, its elements, and whether every one is closed in order."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.open: list[str] = []
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.texts: list[str] = []
        self.feed(html)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))
        if tag not in NO_END:
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        if self.open[-1:] != ["style"]:
            self.texts.append(data)

    @property
    def words(self) -> str:
        return " ".join("".join(self.texts).split())


@pytest.fixture
def kept(
    shipped: Knowledge, command: Call, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> Call:
    """The command line after the visit that the README tells."""
    monkeypatch.setattr(clock, "now", clock.now)
    monkeypatch.setenv("TROUBLESHOOT_DATA", str(tmp_path))
    whole_visit(shipped, tmp_path)
    return command


def test_the_page_says_all_that_the_report_says(kept: Call, tmp_path: Path) -> None:
    report = kept("report", "2026-11-26-1")[1]
    file = tmp_path / "report.html"
    assert kept("report", "2026-11-26-1", "--html", str(file)) == (0, f"Written: {file}\n", "")
    page = Page(file.read_text("utf-8"))
    assert page.open == []
    for line in report.splitlines():
        if not line.startswith("| ---"):
            for cell in marked(line).cells:
                assert " ".join(unescaped(cell).split()) in page.words, line


def test_nothing_is_fetched_and_nothing_runs(kept: Call, tmp_path: Path) -> None:
    file = tmp_path / "report.html"
    kept("report", "2026-11-26-1", "--html", str(file))
    text = file.read_text("utf-8")
    assert not re.search(r"https?:|url\(|@import", text)
    page = Page(text)
    assert not {"script", "link", "img", "iframe"} & {tag for tag, _ in page.elements}
    assert ("meta", {"name": "viewport", "content": "width=device-width, initial-scale=1"}) in (
        page.elements
    )
    assert "@media print" in text and "@media (max-width: 40rem)" in text


def test_each_cell_has_its_column_for_a_narrow_screen(kept: Call, tmp_path: Path) -> None:
    file = tmp_path / "report.html"
    kept("report", "2026-11-26-1", "--html", str(file))
    cells = [attrs for tag, attrs in Page(file.read_text("utf-8")).elements if tag == "td"]
    assert cells and all(attrs.get("data-column") for attrs in cells)


def test_what_people_wrote_is_text_on_the_page() -> None:
    report = f"# {markdown(HOSTILE)}\n\n- {markdown(HOSTILE)}\n\n| a | b |\n| --- | --- |\n| {markdown(HOSTILE)} |  |"  # noqa: E501
    page = Page(as_page(report, HOSTILE))
    assert page.open == []
    assert not {"script", "strong", "code"} & {tag for tag, _ in page.elements}
    assert page.words.count(HOSTILE) == 4


def test_what_is_not_to_be_missed_stands_in_a_frame() -> None:
    page = Page(as_page("# Visit\n\n**DANGER - STOP: gas**  \n\nEnding: stopped", "Visit"))
    assert ("p", {"class": "not-to-be-missed"}) in page.elements
    assert "DANGER - STOP: gas" in page.words and "**" not in page.words


def test_a_file_that_is_there_is_left_alone(kept: Call, tmp_path: Path) -> None:
    file = tmp_path / "report.html"
    file.write_text("mine")
    code, out, err = kept("report", "2026-11-26-1", "--html", str(file))
    assert (code, out) == (2, "") and "is there already; name another file" in err
    assert file.read_text() == "mine"


def test_json_goes_with_no_page(kept: Call) -> None:
    assert kept("report", "2026-11-26-1", "--json", "--occupants")[0] == 2


def test_the_note_for_the_people_says_what_was_done_without_jargon(
    kept: Call, tmp_path: Path
) -> None:
    (tmp_path / "units.csv").write_text("name,serves\nQuarry Street clinic unit 2,waiting room\n")
    assert kept("units", "import", str(tmp_path / "units.csv"))[0] == 0
    code, out, _ = kept("report", "2026-11-26-1", "--occupants")
    assert code == 0
    assert out.startswith("# For the people in the building")
    assert "It serves: waiting room" in out
    assert 'You said: "runs a while, then quits"' in out
    assert "- Repaired: Condenser fan run capacitor weak or open, and it was read" in out
    assert "go outside" in out and "uF" not in out and "%" not in out
