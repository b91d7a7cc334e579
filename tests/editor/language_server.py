"""A small editor: it talks to a language server for YAML as the protocol says (LSP 3.17)."""

import json
import subprocess
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any, BinaryIO, cast

LONGEST = 50_000_000


class Editor:
    """One language server, with the files of one folder open in it."""

    def __init__(self, command: list[str], folder: Path) -> None:
        """Start a server and shake hands. It fetches nothing: no store of schemas is asked."""
        self.folder = folder
        self.process = subprocess.Popen(
            command, cwd=folder, stdin=subprocess.PIPE, stdout=subprocess.PIPE
        )
        self.asked = 0
        self.found: dict[str, list[Any]] = {}
        self.settings = {
            "yaml": {
                "schemaStore": {"enable": False},
                "validate": True,
                "completion": True,
                "hover": True,
            }
        }
        root = folder.as_uri()
        folders = [{"uri": root, "name": "designs"}]
        abilities = {"workspace": {"configuration": True}}
        self.ask(
            "initialize",
            {
                "processId": None,
                "rootUri": root,
                "workspaceFolders": folders,
                "capabilities": abilities,
            },
        )
        self.tell("initialized", {})
        self.tell("workspace/didChangeConfiguration", {"settings": self.settings})

    def close(self) -> None:
        """Take leave of the server."""
        self.ask("shutdown", None)
        self.tell("exit", None)
        self.process.wait(timeout=20)

    def open(self, name: str, text: str) -> str:
        """Open a file with a text, and return its address."""
        uri = (self.folder / name).as_uri()
        document = {"uri": uri, "languageId": "yaml", "version": 1, "text": text}
        self.tell("textDocument/didOpen", {"textDocument": document})
        return uri

    def problems(self, uri: str) -> list[Any]:
        """What the server finds wrong with an open file."""
        while uri not in self.found:
            self._take(self._read())
        return self.found[uri]

    def offered(self, uri: str, line: int, column: int) -> Mapping[str, Any]:
        """What the server offers to complete at a place, by its label."""
        at = {"textDocument": {"uri": uri}, "position": {"line": line, "character": column}}
        answer = self.ask("textDocument/completion", at)
        items = answer["items"] if isinstance(answer, dict) else answer
        return {each["label"]: each for each in items or []}

    def explained(self, uri: str, line: int, column: int) -> str:
        """What the server shows of what stands at a place."""
        at = {"textDocument": {"uri": uri}, "position": {"line": line, "character": column}}
        answer = self.ask("textDocument/hover", at) or {"contents": {"value": ""}}
        return str(answer["contents"]["value"])

    def ask(self, method: str, params: Any) -> Any:
        """Ask the server, and return what it answers."""
        self.asked += 1
        number = self.asked
        self._write({"jsonrpc": "2.0", "id": number, "method": method, "params": params})
        for message in self._messages():
            if message.get("id") == number and "method" not in message:
                assert "error" not in message, message["error"]
                return message.get("result")
        raise AssertionError("the server has gone")

    def tell(self, method: str, params: Any) -> None:
        """Tell the server something that it does not answer."""
        self._write({"jsonrpc": "2.0", "method": method, "params": params})

    def _messages(self) -> Iterator[dict[str, Any]]:
        while True:
            message = self._read()
            self._take(message)
            yield message

    def _take(self, message: dict[str, Any]) -> None:
        """Keep what is found wrong; answer what the server itself asks."""
        if message.get("method") == "textDocument/publishDiagnostics":
            self.found[message["params"]["uri"]] = message["params"]["diagnostics"]
        elif "method" in message and "id" in message:
            answer: Any = None
            if message["method"] == "workspace/configuration":
                wanted = message["params"]["items"]
                answer = [self.settings.get(each.get("section", ""), None) for each in wanted]
            self._write({"jsonrpc": "2.0", "id": message["id"], "result": answer})

    def _write(self, message: dict[str, Any]) -> None:
        body = json.dumps(message).encode()
        stream = cast(BinaryIO, self.process.stdin)
        stream.write(b"Content-Length: %d\r\n\r\n%s" % (len(body), body))
        stream.flush()

    def _read(self) -> dict[str, Any]:
        stream = cast(BinaryIO, self.process.stdout)
        length = 0
        while (line := stream.readline().strip()) or not length:
            if not line and self.process.poll() is not None:
                raise AssertionError("the server has gone")
            name, _, value = line.partition(b":")
            if name.lower() == b"content-length":
                length = min(int(value), LONGEST)
        message: dict[str, Any] = json.loads(stream.read(length))
        return message
