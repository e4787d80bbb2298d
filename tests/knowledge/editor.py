"""An editor without a screen: it opens rule files at a YAML language server and completes there.

The messages are those of the Language Server Protocol 3.17, on the server's standard input and
output: what it says of a file that was opened comes unasked, and what it asks for itself is its
settings.
"""

from __future__ import annotations

import json
import subprocess
from collections.abc import Callable, Mapping
from pathlib import Path
from threading import Timer
from types import TracebackType
from typing import Any

LONGEST = 300
"""Seconds after which a server that says nothing is ended, so that no test waits for ever."""
SETTINGS = "workspace/configuration"

Message = dict[str, Any]


class Editor:
    """One run of a server in a folder. `schemas`: the names of files that each schema is for."""

    def __init__(self, server: str, folder: Path, schemas: Mapping[Path, str]) -> None:
        self._settings = {
            "schemas": {schema.as_uri(): [names] for schema, names in schemas.items()},
            "schemaStore": {"enable": False},  # nothing is fetched
            "validate": True,
            "completion": True,
        }
        self._program = subprocess.Popen(
            [server, "--stdio"], stdin=subprocess.PIPE, stdout=subprocess.PIPE
        )
        self._patience = Timer(LONGEST, self._program.kill)
        self._patience.start()
        self._asked = 0
        root = folder.as_uri()
        self._ask(
            "initialize",
            processId=None,
            rootUri=root,
            workspaceFolders=[{"uri": root, "name": "rules"}],
            capabilities={"workspace": {"configuration": True, "workspaceFolders": True}},
        )
        self._tell("initialized")
        self._answer(self._wait(lambda message: message.get("method") == SETTINGS))

    def __enter__(self) -> Editor:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self._patience.cancel()
        self._program.kill()
        self._program.communicate()

    def opens(self, path: Path, text: str) -> list[str]:
        """What is underlined in a file of that name and text; each is opened once."""
        uri = path.as_uri()
        file = {"uri": uri, "languageId": "yaml", "version": 1, "text": text}
        self._tell("textDocument/didOpen", textDocument=file)
        said = self._wait(
            lambda message: (
                message.get("method") == "textDocument/publishDiagnostics"
                and message["params"]["uri"] == uri
            )
        )
        return [each["message"] for each in said["params"]["diagnostics"]]

    def completes(self, path: Path, line: int, letter: int) -> list[str]:
        """What is offered at a place of an open file, both counted from 0."""
        said = self._ask(
            "textDocument/completion",
            textDocument={"uri": path.as_uri()},
            position={"line": line, "character": letter},
        )
        return [each["label"] for each in said["result"]["items"]]

    def _ask(self, method: str, **params: Any) -> Message:
        self._asked += 1
        number = self._asked
        self._send({"id": number, "method": method, "params": params})
        return self._wait(lambda message: message.get("id") == number and "method" not in message)

    def _tell(self, method: str, **params: Any) -> None:
        self._send({"method": method, "params": params})

    def _wait(self, wanted: Callable[[Message], bool]) -> Message:
        """The next message that is wanted; meanwhile what the server asks for is answered."""
        while True:
            message = self._read()
            if wanted(message):
                return message
            if "method" in message and "id" in message:
                self._answer(message)

    def _answer(self, message: Message) -> None:
        items = message["params"]["items"] if message["method"] == SETTINGS else ()
        result = [self._settings if item["section"] == "yaml" else {} for item in items]
        self._send({"id": message["id"], "result": result or None})

    def _send(self, message: Message) -> None:
        body = json.dumps({"jsonrpc": "2.0", **message}).encode()
        pipe = self._program.stdin
        assert pipe is not None
        pipe.write(b"Content-Length: %d\r\n\r\n%b" % (len(body), body))
        pipe.flush()

    def _read(self) -> Message:
        pipe = self._program.stdout
        assert pipe is not None
        length = 0
        while (line := pipe.readline()) not in (b"\r\n", b""):
            name, _, value = line.partition(b":")
            if name.lower() == b"content-length":
                length = int(value)
        assert line, "the server has ended"
        message: Message = json.loads(pipe.read(length))
        return message
