"""Loading folders, and keeping what was read for the next start."""

from __future__ import annotations

import hashlib
import os
import pickle
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.knowledge.small_rules import CAPACITORS, LOW_CHARGE, said, write_rules
from troubleshoot.knowledge import cache as cache_module
from troubleshoot.knowledge import load
from troubleshoot.knowledge.cache import MOST_KEPT, cache_folder
from troubleshoot.knowledge.load import load_rules, load_shipped, shipped_folder
from troubleshoot.knowledge.problems import RulesInvalid


@pytest.fixture
def rules(tmp_path: Path) -> Path:
    return write_rules(tmp_path)


@pytest.fixture
def cache(tmp_path: Path) -> Path:
    return tmp_path / "cache"


def kept(cache: Path) -> list[Path]:
    return sorted(cache.iterdir()) if cache.is_dir() else []


def forbid_reading(monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(*of: object) -> None:
        raise AssertionError("the rule files were read anew")

    monkeypatch.setattr(load, "read_rules", fail)


def test_what_was_kept_is_what_was_read(
    rules: Path, cache: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    first = load_rules(rules, cache=cache)
    forbid_reading(monkeypatch)
    assert load_rules(rules, cache=cache) == first


def test_loading_what_was_kept_does_not_import_the_yaml_parser(rules: Path, cache: Path) -> None:
    load_rules(rules, cache=cache)
    program = (
        "import sys\n"
        "from troubleshoot.knowledge.load import load_rules\n"
        f"print(len(load_rules({str(rules)!r}, cache={str(cache)!r}).tests))\n"
        "heavy = ('yaml', 'platformdirs', 'difflib', 'pint', 'troubleshoot.knowledge.forms')\n"
        "print([m for m in heavy if m in sys.modules])\n"
    )
    shown = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True
    )
    assert shown.stdout.splitlines() == ["6", "[]"]


def test_changed_rules_are_read_anew(tmp_path: Path, cache: Path) -> None:
    first = load_rules(write_rules(tmp_path / "a"), cache=cache)
    changed = write_rules(tmp_path / "b", (CAPACITORS, "minutes: 6", "minutes: 7"))
    second = load_rules(changed, cache=cache)
    assert second.tests["capacitance-one-side-off"].minutes == 7
    assert first.digest != second.digest
    assert len(kept(cache)) == 2


def test_the_digest_tells_rules_not_places(tmp_path: Path, cache: Path) -> None:
    here, there = write_rules(tmp_path / "a"), write_rules(tmp_path / "b")
    assert load_rules(here, cache=cache).digest == load_rules(there, cache=cache).digest


@pytest.mark.parametrize(
    "damage",
    [
        lambda data: b"",
        lambda data: data[:-10],
        lambda data: data.replace(b"WARNING", b"CAUTION"),
        lambda data: data.replace(b"rules", b"ruses", 1),
        lambda data: b"\x00" * len(data),
    ],
    ids=["empty", "cut off", "changed", "another mark", "zeros"],
)
def test_a_damaged_copy_is_made_anew(
    rules: Path, cache: Path, damage: object, monkeypatch: pytest.MonkeyPatch
) -> None:
    first = load_rules(rules, cache=cache)
    (copy,) = kept(cache)
    whole = copy.read_bytes()
    copy.write_bytes(damage(whole))  # type: ignore[operator]
    assert load_rules(rules, cache=cache) == first
    forbid_reading(monkeypatch)
    assert load_rules(rules, cache=cache) == first


def test_a_folder_that_cannot_be_written_only_costs_time(rules: Path, tmp_path: Path) -> None:
    blocked = tmp_path / "a file"
    blocked.write_text("no folder", "utf-8")
    assert load_rules(rules, cache=blocked / "cache").tests
    assert blocked.read_text("utf-8") == "no folder"


def test_nothing_unfinished_is_left_when_the_disk_is_full(rules: Path, cache: Path) -> None:
    program = (
        "import resource, sys\n"
        "resource.setrlimit(resource.RLIMIT_FSIZE, (100, 100))\n"
        "from troubleshoot.knowledge.load import load_rules\n"
        "print(len(load_rules(sys.argv[1], cache=sys.argv[2]).tests))\n"
    )
    done = subprocess.run(
        [sys.executable, "-B", "-c", program, str(rules), str(cache)],
        capture_output=True,
        text=True,
        check=True,
    )
    assert done.stdout == "6\n" and cache.is_dir()
    assert kept(cache) == []


def test_what_is_kept_is_kept_for_its_owner_alone(rules: Path, tmp_path: Path) -> None:
    cache = tmp_path / "new" / "cache"
    load_rules(rules, cache=cache)
    (copy,) = kept(cache)
    modes = [path.stat().st_mode & 0o777 for path in (cache.parent, cache, copy)]
    assert modes == [0o700, 0o700, 0o600]


def _written_into(cache: Path) -> None:
    """A kept file that says the meter need not be proved, with its right sum."""
    (copy,) = kept(cache)
    head, _, body = copy.read_bytes().partition(b"\n")
    forged = body.replace(b"WARNING", b"CAUTION")
    assert forged != body
    words = head.split(b" ")
    words[-1] = hashlib.sha256(forged).hexdigest().encode()
    copy.write_bytes(b" ".join(words) + b"\n" + forged)


def _others_may_write_the_folder(cache: Path) -> None:
    cache.chmod(0o777)


def _the_folder_is_anothers(cache: Path) -> None:
    os.chown(cache, 12345, -1)


def _the_file_is_anothers(cache: Path) -> None:
    os.chown(kept(cache)[0], 12345, -1)


def _others_may_write_the_file(cache: Path) -> None:
    kept(cache)[0].chmod(0o666)


@pytest.mark.parametrize(
    "exposed",
    [
        _others_may_write_the_folder,
        _the_folder_is_anothers,
        _the_file_is_anothers,
        _others_may_write_the_file,
    ],
)
def test_nothing_is_taken_from_where_another_user_may_have_written(
    rules: Path, cache: Path, exposed: Callable[[Path], None]
) -> None:
    """Regression: the sum is no secret; a shared folder put words into what is shown."""
    first = load_rules(rules, cache=cache)
    _written_into(cache)
    assert load_rules(rules, cache=cache) != first  # the sum does not protect it
    try:
        exposed(cache)
    except PermissionError:
        pytest.skip("only root can give a file away")
    assert load_rules(rules, cache=cache) == first


def test_a_pipe_in_the_place_of_a_kept_file_holds_nothing_up(rules: Path, cache: Path) -> None:
    first = load_rules(rules, cache=cache)
    (copy,) = kept(cache)
    copy.unlink()
    os.mkfifo(copy)
    assert load_rules(rules, cache=cache) == first


def test_a_kept_file_of_great_depth_is_made_anew(rules: Path, cache: Path) -> None:
    first = load_rules(rules, cache=cache)
    (copy,) = kept(cache)
    body = b"[" * 100_000
    head = copy.read_bytes().partition(b"\n")[0].split(b" ")
    head[-1] = hashlib.sha256(body).hexdigest().encode()
    copy.write_bytes(b" ".join(head) + b"\n" + body)
    assert load_rules(rules, cache=cache) == first


def test_rules_with_problems_are_not_kept(tmp_path: Path, cache: Path) -> None:
    folder = write_rules(tmp_path, (LOW_CHARGE, "is: cause", "is: because"))
    with pytest.raises(RulesInvalid) as caught:
        load_rules(folder, cache=cache)
    assert [f"{p} [{p.check}]".replace(f"{tmp_path}/", "") for p in caught.value.problems] == said(
        folder
    )
    assert kept(cache) == []


def test_only_the_newest_copies_are_kept(tmp_path: Path, cache: Path) -> None:
    for number in range(MOST_KEPT + 3):
        change = (CAPACITORS, "minutes: 6", f"minutes: {number}")
        load_rules(write_rules(tmp_path / str(number), change), cache=cache)
        for age, copy in enumerate(reversed(kept(cache))):
            os.utime(copy, (age, age))
    assert len(kept(cache)) == MOST_KEPT


class _Call:
    """What a pickle of somebody else's could hold: a call."""

    def __reduce__(self) -> tuple[object, tuple[str]]:
        return os.mkdir, ("called",)


@pytest.mark.parametrize("held", [_Call(), Path, [1, 2], {"tests": {}}, None])
def test_a_kept_copy_makes_rules_and_runs_nothing(
    rules: Path, cache: Path, held: object, monkeypatch: pytest.MonkeyPatch
) -> None:
    first = load_rules(rules, cache=cache)
    (copy,) = kept(cache)
    monkeypatch.chdir(cache.parent)
    body = pickle.dumps(held)
    head = copy.read_bytes().partition(b"\n")[0].split(b" ")
    head[-1] = hashlib.sha256(body).hexdigest().encode()
    copy.write_bytes(b" ".join(head) + b"\n" + body)
    assert load_rules(rules, cache=cache) == first
    assert not Path("called").exists()


def test_the_environment_names_the_folder_or_turns_keeping_off(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("TROUBLESHOOT_CACHE", str(tmp_path / "mine"))
    assert cache_folder() == tmp_path / "mine"
    assert cache_folder(tmp_path / "other") == tmp_path / "other"
    monkeypatch.setenv("TROUBLESHOOT_CACHE", "")
    assert cache_folder() is None
    monkeypatch.delenv("TROUBLESHOOT_CACHE")
    monkeypatch.setenv("HOME", str(tmp_path))
    folder = cache_folder()
    assert folder is not None
    assert folder.name == "troubleshoot"


def test_the_shipped_rules_are_found_in_the_checkout_or_in_the_package(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    assert (shipped_folder() / "complaints.yaml").is_file()
    installed = tmp_path / "troubleshoot" / "knowledge" / "load.py"
    monkeypatch.setattr(load, "__file__", str(installed))
    assert shipped_folder() == tmp_path / "rules"
    (tmp_path / "troubleshoot" / "shipped" / "rules").mkdir(parents=True)
    assert shipped_folder() == tmp_path / "troubleshoot" / "shipped" / "rules"


def test_packs_may_stand_beside_the_shipped_rules(tmp_path: Path) -> None:
    with pytest.raises(RulesInvalid, match=r"nowhere:1:1: the folder of rules cannot be read"):
        load_shipped([tmp_path / "nowhere"])


def test_a_changed_program_does_not_meet_what_the_old_one_kept(
    rules: Path, cache: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A form, a check or a class may have changed: only what this very program kept is used."""
    program = shutil.copytree(Path(cache_module.__file__).parent, tmp_path / "knowledge")
    monkeypatch.setattr(cache_module, "__file__", str(program / "cache.py"))
    first = load_rules(rules, cache=cache)
    with (program / "checks" / "packs.py").open("a", encoding="utf-8") as changed:
        changed.write("# one line more\n")
    assert load_rules(rules, cache=cache) == first
    assert len(kept(cache)) == 2
    forbid_reading(monkeypatch)
    assert load_rules(rules, cache=cache) == first
