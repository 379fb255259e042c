"""The files that pages edit: designs, shops, what is chosen; and every earlier text of them, for undo and redo.

Beside each file lie its earlier texts, numbered; in ``ahead`` those that an
undo took away and a redo brings back; in ``undone`` those that a new edit cut
off from redo. None of them is ever deleted.
"""

from __future__ import annotations

import json
import re
from dataclasses import asdict, dataclass, field
from pathlib import Path
from typing import Literal

from tommybar.bench.folder import refuse_name, sync_folder, write_text
from tommybar.bench.words_of_errors import refusal_of
from tommybar.refusals import Refusal

Kind = Literal["designs", "shops", "choices"]
SUFFIX: dict[Kind, str] = {"designs": ".yaml", "shops": ".yaml", "choices": ".json"}


@dataclass(frozen=True)
class Choices:
    """What is chosen for one design, apart from its file."""

    shop: str = "shop-r"
    scale: str = ""  # as typed; empty: the largest that goes
    pins: dict[str, str] = field(default_factory=dict)  # size: figure as typed
    stock: Literal["rack", "buy", "ask"] = "ask"


def file_name(words: str) -> str:
    """A name for a file made of a title.

    Examples
    --------
    >>> file_name("Hand-cranked Flywheel, No. 2")
    'hand-cranked-flywheel-no-2'
    """
    plain = re.sub(r"[^a-z0-9]+", "-", words.lower()).strip("-")[:60].strip("-")
    if not plain:
        raise Refusal(f'"{words[:40]}" makes no name for a file.', "Use letters a to z and digits.")
    return plain


class Files:
    """Files by kind and name; nothing outside the folder can be named."""

    def __init__(self, path: Path) -> None:
        self.path = path.expanduser().resolve()

    def place(self, kind: Kind, name: str) -> Path:
        """Where a file lies; a name that is no plain word is refused."""
        place = self.path / kind / f"{refuse_name(name)}{SUFFIX[kind]}"
        if not place.resolve().is_relative_to(self.path):
            raise Refusal(f'"{name}" lies outside the folder {self.path}.', "Put the file itself there.")
        return place

    def names(self, kind: Kind) -> list[str]:
        """Names of all files of a kind, the one touched last first."""
        files = [one for one in (self.path / kind).glob(f"*{SUFFIX[kind]}") if not one.name.startswith(".")]
        return [one.stem for one in sorted(files, key=lambda one: (-one.stat().st_mtime, one.stem))]

    def has(self, kind: Kind, name: str) -> bool:
        """Whether a file of that name is there."""
        return self.place(kind, name).is_file()

    def text(self, kind: Kind, name: str) -> str:
        """The text of a file."""
        place = self.place(kind, name)
        try:
            return place.read_text(encoding="utf-8")
        except FileNotFoundError:
            raise Refusal(f"There is no {kind[:-1]} {name} in {self.path}.", "Look at the list.") from None
        except (OSError, UnicodeDecodeError) as error:
            raise Refusal(f"{place} cannot be read: {error}.", "Check the file.") from None

    def save(self, kind: Kind, name: str, text: str) -> None:
        """Write a file whole or not at all; its earlier text is kept, so that the edit can be undone."""
        place = self.place(kind, name)
        earlier = self.text(kind, name) if place.is_file() else None
        if earlier == text:
            return
        if earlier is not None:
            self._keep(kind, name, earlier)
        self._write(place, text)
        for cut in _texts(self._kept_folder(kind, name) / "ahead"):
            self._keep(kind, name, cut.read_text(encoding="utf-8"), "undone")
            cut.unlink()

    def add(self, kind: Kind, name: str, text: str) -> None:
        """Write a file that is not there yet."""
        if self.has(kind, name):
            raise Refusal(f"There is a {kind[:-1]} {name} already.", "Choose another name.")
        self.save(kind, name, text)

    def undo(self, kind: Kind, name: str) -> bool:
        """Put the last kept text back; what stood there waits for redo. False when there is none."""
        return self._step(kind, name, "", "ahead")

    def redo(self, kind: Kind, name: str) -> bool:
        """Put back what the last undo took away. False when there is none, or a new edit came between."""
        return self._step(kind, name, "ahead", "")

    def _step(self, kind: Kind, name: str, taken: str, kept: str) -> bool:
        """Put the last text of one row in the file's place, and what stood there at the end of the other."""
        texts = _texts(self._kept_folder(kind, name) / taken)
        if not texts:
            return False
        place = self.place(kind, name)
        if place.is_file():
            self._keep(kind, name, self.text(kind, name), kept)
        self._write(place, texts[-1].read_text(encoding="utf-8"))
        texts[-1].unlink()
        return True

    def undoable(self, kind: Kind, name: str) -> int:
        """How many earlier texts are kept."""
        return len(_texts(self._kept_folder(kind, name)))

    def redoable(self, kind: Kind, name: str) -> int:
        """How many texts an undo took away that can come back."""
        return len(_texts(self._kept_folder(kind, name) / "ahead"))

    def remove(self, kind: Kind, name: str) -> None:
        """Take a file out of the list; its text is kept and comes back with undo."""
        place = self.place(kind, name)
        self.save(kind, name, self.text(kind, name) + "\n")
        try:
            place.unlink()
            sync_folder(place.parent)
        except OSError as error:
            raise refusal_of(error, place) from None

    def choices(self, name: str) -> Choices:
        """What was chosen for a design."""
        if not self.has("choices", name):
            return Choices()
        try:
            return Choices(**json.loads(self.text("choices", name)))
        except (ValueError, TypeError):
            place = self.place("choices", name)
            raise Refusal(
                f"{place} is no record of choices.", "Take the file away; nothing else is lost."
            ) from None

    def choose(self, name: str, choices: Choices) -> None:
        """Keep what is chosen for a design."""
        if not self.has("choices", name):
            self.save("choices", name, _record(Choices()))  # so that the first choice can be undone too
        self.save("choices", name, _record(choices))

    def _kept_folder(self, kind: Kind, name: str) -> Path:
        return self.path / "kept" / kind / self.place(kind, name).stem

    def _keep(self, kind: Kind, name: str, text: str, row: str = "") -> None:
        """One more text at the end of a row."""
        folder = self._kept_folder(kind, name) / row
        number = max((int(one.stem) for one in _texts(folder)), default=0) + 1
        self._write(folder / f"{number:06d}.txt", text)

    def _write(self, place: Path, text: str) -> None:
        """Write whole or not at all; the folder is made when it is not there."""
        try:
            place.parent.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise refusal_of(error, place) from None
        write_text(place, text)


def _texts(folder: Path) -> list[Path]:
    """The texts of a row, the last one last."""
    return sorted(
        (one for one in folder.glob("*.txt") if one.stem.isdigit()), key=lambda one: (len(one.stem), one.stem)
    )


def _record(choices: Choices) -> str:
    return json.dumps(asdict(choices), indent=1) + "\n"
