"""Rule files in an editor: its own server, with the schemas that `rules schema` writes.

The server is yaml-language-server of the npm registry, tried at 1.25.0. Where it is not on the path
these tests are skipped: what the standard says of the schemas is held in
`test_schema_in_editors.py`, and only completion is not.
"""

from __future__ import annotations

import json
import shutil
from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest

from tests.knowledge.editor import Editor
from troubleshoot.knowledge.forms import FORMS
from troubleshoot.knowledge.layout import PACK_MANIFEST, kind_of
from troubleshoot.knowledge.load import shipped_folder
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.schema import json_schema

SERVER = shutil.which("yaml-language-server")
pytestmark = pytest.mark.skipif(
    SERVER is None,
    reason="yaml-language-server is not on the path: npm install yaml-language-server",
)


@pytest.fixture(scope="module")
def samples() -> Mapping[str, tuple[str, str]]:
    """A shipped file of each kind, as its name inside the folder and its text; and a pack."""
    folder = shipped_folder()
    found = {"pack": (PACK_MANIFEST, "format: 1\nname: The north site\n")}
    for path in sorted(folder.rglob("*.yaml")):
        name = path.relative_to(folder).as_posix()
        found.setdefault(kind_of(name) or "", (name, path.read_text("utf-8")))
    return found


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("rules")


@pytest.fixture(scope="module")
def editor(
    folder: Path, samples: Mapping[str, tuple[str, str]], shipped: Knowledge
) -> Iterator[Editor]:
    schemas = {}
    for kind, (name, _) in samples.items():
        path = folder / f"{kind}.schema.json"
        path.write_text(json.dumps(json_schema(kind, shipped)), "utf-8")
        schemas[path] = "**/faults/*/*.yaml" if kind == "fault" else f"**/{name}"
    with Editor(str(SERVER), folder, schemas) as opened:
        yield opened


@pytest.mark.parametrize("kind", FORMS)
def test_a_sound_file_is_let_be_and_a_wrong_word_underlined(
    kind: str, editor: Editor, folder: Path, samples: Mapping[str, tuple[str, str]]
) -> None:
    name, text = samples[kind]
    assert editor.opens(folder / "sound" / name, text) == []
    (said,) = editor.opens(folder / "broken" / name, f"{text}no-such-field: 1\n")
    assert "no-such-field" in said


@pytest.mark.parametrize(
    ("typed", "offered"),
    [
        ("look", "look-alikes"),
        ("how-common: ", "very-rare"),
        ("evidence:\n  often:\n    - {contac", "contactor-contacts"),
        ("evidence:\n  often:\n    - contactor-coil-ohms: ", "open"),
        ("look-alikes: [contac", "contactor-welded-closed"),
        ("source: ", "common practice, no source"),
        ("repair:\n  par", "part-cost"),
    ],
)
def test_what_may_stand_there_is_offered(
    typed: str, offered: str, editor: Editor, folder: Path
) -> None:
    """Regression: no outcome of a test was offered, and no source."""
    card = folder / "faults" / "contactors" / f"{offered}.yaml"
    text = f"format: 1\nfault: north-coil\n{typed}"
    editor.opens(card, text)
    *above, last = text.split("\n")
    assert offered in editor.completes(card, len(above), len(last))
