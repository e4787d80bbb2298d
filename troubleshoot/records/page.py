"""A report as one page of HTML: for a phone, for a screen, for paper. Nothing is fetched for it.

Colour carries no meaning: what must not be missed is bold, in a frame. On a narrow screen each row
of a table stands by itself, each of its cells under the name of its column.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from html import escape
from itertools import groupby
from typing import Final

from troubleshoot.outside.marked import ITEM, ROW, Marked, marked, unescaped

STYLE: Final = """\
:root { color-scheme: light dark; }
body { font: 1rem/1.45 Georgia, serif; max-width: 46rem; margin: 1.5rem auto; padding: 0 1rem;
  overflow-wrap: break-word; }
h1 { font-size: 1.35rem; line-height: 1.25; }
h2 { font-size: 1.1rem; margin: 1.6rem 0 .4rem; border-bottom: 1px solid; }
ul { padding-left: 1.2rem; }
.not-to-be-missed { border: 3px double; padding: .5rem .7rem; font-weight: bold; }
table { border-collapse: collapse; width: 100%; }
th, td { text-align: left; vertical-align: top; padding: .2rem .5rem .2rem 0;
  border-bottom: 1px solid #8888; }
figure { margin: 1rem 0; }
svg { width: 100%; max-width: 32rem; }
@media (max-width: 40rem) {
  thead { display: none; }
  tr { display: block; padding: .4rem 0; border-bottom: 1px solid #8888; }
  td { display: flex; border: 0; padding: .05rem 0; }
  td:empty { display: none; }
  td::before { content: attr(data-column); flex: 0 0 6.5rem; font-style: italic; }
}
@media print {
  @page { margin: 18mm 15mm; }
  body { font-size: 10.5pt; max-width: none; margin: 0; padding: 0; color: #000; }
  h2 { break-after: avoid; }
  li, tr, .not-to-be-missed, figure { break-inside: avoid; }
}
"""


def as_page(report: str, title: str, figures: Sequence[str] = ()) -> str:
    """A report in this program's Markdown as a page. `figures`: as HTML, shown before its end."""
    blocks = list(_blocks([marked(line) for line in report.split("\n")]))
    body = "\n".join((*blocks[:-1], *figures, *blocks[-1:]))
    return (
        '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{escape(title)}</title>\n<style>\n{STYLE}</style>\n</head>\n<body>\n"
        f"{body}\n</body>\n</html>\n"
    )


def _kind(line: Marked) -> str:
    """What block a line belongs to: a heading stands alone, what follows alike goes together."""
    if line.head in (ITEM, ROW):
        return line.head
    if line.head.startswith("#"):
        return f"h{len(line.head.strip())}"
    if line.strong:
        return "strong"
    return "lines" if line.text else ""


def _blocks(lines: Sequence[Marked]) -> Iterator[str]:
    for kind, group in groupby(lines, _kind):
        own = list(group)
        if kind == ROW:
            yield _table(own)
        elif kind == ITEM:
            items = "\n".join(f"<li>{_text(line.text)}</li>" for line in own)
            yield f"<ul>\n{items}\n</ul>"
        elif kind.startswith("h"):
            yield from (f"<{kind}>{_text(line.text)}</{kind}>" for line in own)
        elif kind:
            more = ' class="not-to-be-missed"' if kind == "strong" else ""
            yield f"<p{more}>{'<br>'.join(_text(line.text) for line in own)}</p>"


def _table(rows: Sequence[Marked]) -> str:
    """A table; its second row only rules off the heads."""
    heads = [_text(cell) for cell in rows[0].cells]
    head = "".join(f"<th>{cell}</th>" for cell in heads)
    body = "\n".join(
        "<tr>"
        + "".join(
            f'<td data-column="{name}">{_text(cell)}</td>'
            for name, cell in zip(heads, row.cells, strict=True)
        )
        + "</tr>"
        for row in rows[2:]
    )
    return f"<table>\n<thead><tr>{head}</tr></thead>\n<tbody>\n{body}\n</tbody>\n</table>"


def _text(text: str) -> str:
    return escape(unescaped(text).strip())
