"""The user's folder: designs and shops as plain files, builds in a database, backups beside them."""

from __future__ import annotations

import os
import re
import tempfile
from dataclasses import dataclass
from pathlib import Path

from tommybar.bench.words_of_errors import refusal_of
from tommybar.refusals import Refusal, nearest

NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9 _.-]{0,79}")
LARGEST = 1_000_000  # characters, as many as are read
_DEVICES = {"con", "prn", "aux", "nul"} | {f"{port}{n}" for port in ("com", "lpt") for n in range(1, 10)}


def home_folder() -> Path:
    """Where the user's things lie when no folder is named: $TOMMYBAR_HOME, or the share folder."""
    given = os.environ.get("TOMMYBAR_HOME", "").strip()
    return Path(given).expanduser() if given else Path.home() / ".local" / "share" / "tommybar"


def refuse_name(name: str) -> str:
    """The name of a design or shop, or a refusal when it cannot be that of a plain file.

    >>> refuse_name("my wheel")
    'my wheel'
    """
    good = NAME.fullmatch(name) and ".." not in name and not name.endswith((".", " "))
    if not good or name.split(".")[0].lower() in _DEVICES:
        raise Refusal(
            f'"{name[:80]}" cannot be a name; letters, digits, spaces, _ . and - can stand in one,'
            " up to 80 of them, a letter or digit first.",
            "Choose another name.",
        )
    return name


@dataclass(frozen=True)
class Folder:
    """A folder of the user's that is there and can be written in. Make one with :func:`open_folder`."""

    path: Path

    @property
    def database(self) -> Path:
        """The database of the builds."""
        return self.path / "builds.sqlite"

    def designs(self) -> tuple[str, ...]:
        """Names of the designs, in alphabetical order."""
        return self._names("designs")

    def shops(self) -> tuple[str, ...]:
        """Names of the shops, in alphabetical order."""
        return self._names("shops")

    def _names(self, group: str) -> tuple[str, ...]:
        return tuple(
            sorted(one.stem for one in (self.path / group).glob("*.yaml") if NAME.fullmatch(one.stem))
        )

    def design_path(self, name: str) -> Path:
        """The file of a design, there or not."""
        return self.path / "designs" / f"{refuse_name(name)}.yaml"

    def shop_path(self, name: str) -> Path:
        """The file of a shop, there or not."""
        return self.path / "shops" / f"{refuse_name(name)}.yaml"

    def design_text(self, name: str) -> str:
        """The text of a design; a refusal with the nearest name when there is none."""
        return self._text(self.design_path(name), "design", self.designs())

    def shop_text(self, name: str) -> str:
        """The text of a shop; a refusal with the nearest name when there is none."""
        return self._text(self.shop_path(name), "shop", self.shops())

    def _text(self, place: Path, what: str, known: tuple[str, ...]) -> str:
        from tommybar.design.yaml_file import file_text

        if not place.exists():
            there = f"There are {', '.join(known)}." if known else "There are none yet."
            raise Refusal(f'There is no {what} "{place.stem}".', nearest(place.stem, known) or there)
        return file_text(place)

    def save_design(self, name: str, text: str) -> Path:
        """Write a design file: whole or not at all, and on the disk when this returns."""
        return write_text(self.design_path(name), text)

    def save_shop(self, name: str, text: str) -> Path:
        """Write a shop file: whole or not at all, and on the disk when this returns."""
        return write_text(self.shop_path(name), text)


def open_folder(path: str | Path | None = None) -> Folder:
    """The user's folder, made when it is not there; its database is brought up to date."""
    from tommybar.bench.database import prepare

    folder = Folder(Path(path) if path is not None else home_folder())
    try:
        for group in ("designs", "shops", "backups"):
            (folder.path / group).mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise refusal_of(error, folder.path) from None
    prepare(folder.database, folder.path / "backups")
    return folder


def write_text(place: Path, text: str) -> Path:
    """Write beside the file, sync, and take its place in one move; the old text stands until then."""
    if len(text) > LARGEST:
        raise Refusal(
            f"{place.name} would have {len(text)} characters; at most {LARGEST} are read.", "Divide it."
        )
    try:
        number, name = tempfile.mkstemp(dir=place.parent, prefix=f".{place.name}.", suffix=".new")
        try:
            with os.fdopen(number, "w", encoding="utf-8", newline="") as file:
                file.write(text)
                file.flush()
                os.fsync(file.fileno())
            os.chmod(name, 0o644)
            os.replace(name, place)
        except BaseException:
            Path(name).unlink(missing_ok=True)
            raise
        sync_folder(place.parent)
    except OSError as error:
        raise refusal_of(error, place) from None
    return place


def sync_folder(path: Path) -> None:
    """Have the names in a folder on the disk, where the system can do that."""
    if os.name != "posix":
        return
    number = os.open(path, os.O_RDONLY)
    try:
        os.fsync(number)
    finally:
        os.close(number)
