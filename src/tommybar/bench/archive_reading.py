"""An archive opened with suspicion: sizes, names, checksums and every line are looked at before use."""

from __future__ import annotations

import hashlib
import json
import re
import uuid
import zipfile
import zlib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from tommybar.bench.entries import Entry, entry_from
from tommybar.bench.folder import LARGEST, refuse_name
from tommybar.bench.stored import COLUMNS, Build
from tommybar.bench.words_of_errors import refusal_of
from tommybar.refusals import Refusal

FORM = 1
MANIFEST, SUMS = "tommybar.json", "SHA256SUMS"
WANTED = (MANIFEST, "builds.jsonl", "journal.jsonl", SUMS)
MOST_FILES = 5000
MOST_BYTES = 200_000_000  # of everything, unpacked
_MEMBER = re.compile(r"(designs|shops)/([^/\\]+)\.yaml")
_AGAIN = "Export it again, or fetch it again."


@dataclass(frozen=True)
class Found:
    """What an archive holds, checked."""

    designs: dict[str, str]
    shops: dict[str, str]
    builds: tuple[Build, ...]
    entries: tuple[tuple[str, Entry], ...]  # id of the build, entry


def read_checked(place: Path) -> Found:
    """The contents of an archive; raises :class:`Refusal` with the reason when anything is not right."""
    files = _unpacked(place)
    _refuse_wrong_sums(files)
    form = _one_line(files[MANIFEST], MANIFEST).get("tommybar")
    if form != FORM:
        raise Refusal(
            f"The archive has the form {form!r}; this program reads form {FORM}.",
            "Use the version of the program that wrote it.",
        )
    groups: dict[str, dict[str, str]] = {"designs": {}, "shops": {}}
    for name, data in files.items():
        if found := _MEMBER.fullmatch(name):
            groups[found[1]][found[2]] = _text(data, name)
    builds = tuple(_build(one) for one in _lines(files["builds.jsonl"], "builds.jsonl"))
    known = {one.id for one in builds}
    if len(known) != len(builds):
        raise Refusal("The archive has a build twice.", _AGAIN)
    entries = tuple(_entry(one, known) for one in _lines(files["journal.jsonl"], "journal.jsonl"))
    if len({entry.id for _, entry in entries}) != len(entries):
        raise Refusal("The archive has an entry twice.", _AGAIN)
    return Found(groups["designs"], groups["shops"], builds, entries)


def _unpacked(place: Path) -> dict[str, bytes]:
    try:
        with zipfile.ZipFile(place) as archive:
            members = archive.infolist()
            _refuse_members(members)
            # no file unpacks to more than the size that was just looked at: zipfile stops there and refuses it
            files = {member.filename: archive.read(member) for member in members}
    except FileNotFoundError:
        raise Refusal(f"There is no file {place}.", "Check the name.") from None
    except (zipfile.BadZipFile, zlib.error, EOFError, RuntimeError) as error:
        raise Refusal(f"{place.name} is no sound zip archive: {error}.", _AGAIN) from None
    except OSError as error:
        raise refusal_of(error, place) from None
    for name in WANTED:
        if name not in files:
            raise Refusal(f"The archive lacks {name}.", _AGAIN)
    return files


def _refuse_members(members: list[zipfile.ZipInfo]) -> None:
    if len(members) > MOST_FILES:
        raise Refusal(
            f"The archive has {len(members)} files; up to {MOST_FILES} are read.", "Is it the right one?"
        )
    if sum(member.file_size for member in members) > MOST_BYTES:
        raise _too_large()
    seen: set[str] = set()
    for member in members:
        name = member.filename
        found = _MEMBER.fullmatch(name)
        if name in seen:
            raise Refusal(f'The archive has "{name[:80]}" twice.', _AGAIN)
        if not found and name not in WANTED:
            raise Refusal(
                f'The archive has a file "{name[:80]}", which does not belong in one.', "Is it the right one?"
            )
        if found:
            refuse_name(found[2])
            if member.file_size > 4 * LARGEST:
                raise _too_large()
        seen.add(name)


def _too_large() -> Refusal:
    return Refusal(
        f"Unpacked, the archive or a file of it is too large; up to {MOST_BYTES // 1_000_000} MB in all and"
        f" {LARGEST} characters a design or shop are read.",
        "Is it the right one?",
    )


def _refuse_wrong_sums(files: Mapping[str, bytes]) -> None:
    listed = {}
    for line in _text(files[SUMS], SUMS).splitlines():
        found = re.fullmatch(r"([0-9a-f]{64})  (.+)", line)
        if not found:
            raise Refusal(f'The list of checksums has a line "{line[:60]}".', _AGAIN)
        listed[found[2]] = found[1]
    for name in sorted(set(listed) - set(files)):
        raise Refusal(f"The archive lacks {name[:80]}, which its list of checksums names.", _AGAIN)
    for name, data in sorted(files.items()):
        if name == SUMS:
            continue
        if name not in listed:
            raise Refusal(f"{name[:80]} is not in the archive's list of checksums.", _AGAIN)
        if hashlib.sha256(data).hexdigest() != listed[name]:
            raise Refusal(f"{name[:80]} is damaged: its checksum is another than the list says.", _AGAIN)


def _text(data: bytes, name: str) -> str:
    try:
        return data.decode()
    except UnicodeDecodeError:
        raise Refusal(f"{name[:80]} in the archive is not UTF-8 text.", _AGAIN) from None


def _one_line(data: bytes, name: str) -> dict[str, Any]:
    for one in _lines(data, name):
        return one
    raise Refusal(f"{name} in the archive is empty.", _AGAIN)


def _lines(data: bytes, name: str) -> Iterator[dict[str, Any]]:
    for number, line in enumerate(_text(data, name).split("\n"), 1):
        if not line.strip():
            continue
        try:
            found = json.loads(line)
        except (ValueError, RecursionError):
            raise Refusal(f"{name}, line {number}, is no JSON.", _AGAIN) from None
        if not isinstance(found, dict):
            raise Refusal(f"{name}, line {number}, is no object.", _AGAIN)
        yield found


def _build(given: Mapping[str, Any]) -> Build:
    texts = [name for name in COLUMNS if name not in ("scale", "pins")]
    good = (
        set(given) == set(COLUMNS)
        and all(isinstance(given[name], str) for name in texts)
        and isinstance(given["pins"], dict)
        and all(isinstance(one, str | float | int) for one in given["pins"].values())
        and (given["scale"] is None or isinstance(given["scale"], float | int))
        and given["stock"] in ("rack", "buy", "ask")
    )
    try:
        good = good and str(uuid.UUID(given["id"])) == given["id"]
    except ValueError:
        good = False
    if not good:
        raise Refusal(f"A build of the archive is not whole: {str(given.get('id'))[:60]}.", _AGAIN)
    return Build(**given)


def _entry(given: dict[str, Any], known: set[str]) -> tuple[str, Entry]:
    build_id = given.pop("build", None)
    if build_id not in known:
        raise Refusal(
            f"An entry of the archive is of a build that is not in it: {str(build_id)[:60]}.", _AGAIN
        )
    try:
        return build_id, entry_from(given)
    except Refusal as refusal:
        raise Refusal(f"An entry of the archive is faulty: {refusal.complaints[0].what}", _AGAIN) from None
