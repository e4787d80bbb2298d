"""The core of a visit runs where there is no terminal, no disk and no clock: inside a page."""

from __future__ import annotations

import subprocess
import sys

from troubleshoot.knowledge.load import load_shipped

PROGRAM = '''
import sys

class Absent:
    """Nothing of these can be imported, as on a page."""

    def find_spec(self, name, path=None, target=None):
        if name.split(".")[0] in ("click", "fcntl", "termios", "shutil", "platformdirs"):
            raise ImportError(name)
        if name.startswith("troubleshoot.cli"):
            raise ImportError(name)

from troubleshoot.knowledge.load import load_shipped
knowledge = load_shipped()
for name in [n for n in sys.modules if n.split(".")[0] in ("click", "shutil", "platformdirs")]:
    del sys.modules[name]
sys.meta_path.insert(0, Absent())

from datetime import datetime, timezone
from troubleshoot.dialogue.book import Forgotten, VisitBook
from troubleshoot.dialogue.dialogue import Dialogue
from troubleshoot.dialogue.opening import Visitor, visit
from troubleshoot.dialogue.prompts import AskTest, AskWords, DoStep
from troubleshoot.visit.kept.on_record import Recorded

class Nowhere:
    knowledge = knowledge
    def waiting(self): return ()
    def standing(self, but=""): return ()
    def not_read(self): return ()
    def elsewhere(self, unit, but=""): return ()
    def met_meanwhile(self, unit, but): return ()
    def left_before(self, unit, but=""): return ()
    def on_record(self, unit): return Recorded()
    def read_before(self, unit, test, at, but): return ""
    def new(self):
        return VisitBook(knowledge, "visit", Forgotten(), lambda: datetime.now(timezone.utc))

def no_files(*_, **__):
    raise OSError("no files here")
import builtins, os
builtins.open = os.open = no_files

dialogue = Dialogue(lambda voice: visit(Nowhere(), voice, Visitor("RTU-7")))
assert isinstance(dialogue.prompt, AskWords), dialogue.prompt
dialogue.answer("no cooling")
for _ in range(20):
    if isinstance(dialogue.prompt, DoStep | AskTest):
        break
    dialogue.answer("1" if "nearest" in getattr(dialogue.prompt, "question", "") else "")
print(dialogue.prompt.decision.test.id)
'''


def test_a_visit_runs_without_terminal_files_or_clock_of_its_own() -> None:
    done = subprocess.run([sys.executable, "-c", PROGRAM], capture_output=True, text=True)
    assert done.returncode == 0 and done.stdout.split()[0] in load_shipped().tests, done.stderr
